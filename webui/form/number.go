package form

import (
	"errors"
	"fmt"
	"net/url"
	"regexp"
	"strconv"
	"strings"
)

var (
	plainNumber = regexp.MustCompile(`^[+-]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)$`)
	// thousands matches a number such as 1,234, which is one and a bit for some readers
	// and a thousand for others.
	thousands = regexp.MustCompile(`^[1-9][0-9]{0,2},[0-9]{3}$`)
)

// ErrTwoWays is a number that readers understand differently by a factor of a thousand.
var ErrTwoWays = errors.New("can be read two ways")

// Number parses a typed number with a decimal point or comma. It accepts only digits and
// a decimal mark: no exponent, no infinity. in says how to write the number, such as "in
// g", for the error, which says what is wrong and how to write it.
func Number(text, in string) (float64, error) {
	switch {
	case thousands.MatchString(text):
		return 0, fmt.Errorf("%q %w; write %s or %s", text, ErrTwoWays, strings.Replace(text, ",", "", 1), strings.Replace(text, ",", ".", 1))
	case !plainNumber.MatchString(text):
		return 0, fmt.Errorf("%q is not a number; write digits alone, %s", text, in)
	}
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil {
		return 0, fmt.Errorf("%q is too large; write it %s", text, in)
	}
	return v, nil
}

// Version reads the version of the record on which a form is based; 0 if the form has
// none.
func Version(sent url.Values) (int64, error) {
	text := sent.Get("version")
	if text == "" {
		return 0, nil
	}
	v, err := strconv.ParseInt(text, 10, 64)
	if err != nil || v < 0 {
		return 0, fmt.Errorf("%w: version %q", ErrUnreadable, text)
	}
	return v, nil
}
