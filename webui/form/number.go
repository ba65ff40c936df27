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
	// thousands is one to one reader and a thousand to the next.
	thousands = regexp.MustCompile(`^[1-9][0-9]{0,2},[0-9]{3}$`)
)

// ErrTwoWays is a number that one reader takes for a thousand times what another
// does.
var ErrTwoWays = errors.New("can be read two ways")

// Number reads a number that was typed, with a point or a comma before its
// decimals. It takes digits alone: no exponent, no infinity, and nothing that is
// not a number. In says how the number is to be written, such as "in g". The
// error says what is wrong and how to write it.
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

// Version is the version of a record that a form was made on; 0 if the form
// names none.
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
