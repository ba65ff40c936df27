package form

import (
	"errors"
	"fmt"
	"math"
	"net/url"
	"regexp"
	"strconv"
	"strings"

	"counterpour/data/house/exchange/numeral"
	"counterpour/webui/say"
)

var (
	plainNumber = regexp.MustCompile(`^[+-]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)$`)
	// thousands matches a number such as 1,234, which is one and a bit for some readers
	// and a thousand for others.
	thousands = regexp.MustCompile(`^[1-9][0-9]{0,2},[0-9]{3}$`)
)

// errTwoWays is a number that readers understand differently by a factor of a thousand.
var errTwoWays = errors.New("form: can be read two ways")

// Number parses a typed number with a decimal point or comma. It accepts only digits and
// a decimal mark: no exponent, no infinity. in says how to write the number, such as "in
// g", for the error, which says what is wrong and how to write it.
func Number(text, in string) (float64, error) {
	switch {
	case thousands.MatchString(text):
		return 0, &spoken{errTwoWays, say.It("form.two-ways", "Typed", strconv.Quote(text), "Thousand", strings.Replace(text, ",", "", 1), "Decimal", strings.Replace(text, ",", ".", 1))}
	case !plainNumber.MatchString(text):
		return 0, noNumber(text, in)
	}
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil {
		return 0, tooLarge(text, in)
	}
	return v, nil
}

func noNumber(text, how string) error {
	return &spoken{said: say.It("form.no-number", "Typed", strconv.Quote(text), "How", how)}
}

func tooLarge(text, how string) error {
	return &spoken{said: say.It("form.too-large", "Typed", strconv.Quote(text), "How", how)}
}

// fractions are the signs by which a number is known to be one.
const fractions = "/⁄½¼¾⅓⅔⅛"

// Quantity parses a typed number with or without its unit, as a stock list may have it:
// 70cl is 700 where mL are asked for. in is the unit of a number alone and of the result;
// empty if there is none. A fraction such as ½ or 1 1/2 is read; with any other number it is
// as strict as [Number].
func Quantity(text, in string) (v float64, err error) {
	how := say.It("form.such-as-a-number")
	if in != "" {
		how = say.It("form.in-unit", "Unit", in)
	}
	figure, each, ok := numeral.In(text, in)
	if !ok {
		return 0, noNumber(text, how)
	}
	if strings.ContainsAny(figure, fractions) {
		if v, ok = numeral.Number(figure, false); !ok {
			return 0, noNumber(text, how)
		}
	} else if v, err = Number(figure, how); err != nil {
		return 0, err
	}
	if v *= each; math.IsInf(v, 0) {
		return 0, tooLarge(text, how)
	}
	return v, nil
}

// Price parses a typed price with or without its currency. code is empty if none is
// written; shared is true for a sign of several currencies, such as that of the dollar.
func Price(text, such string) (sum float64, code string, shared bool, err error) {
	figure, code, shared := numeral.Priced(text)
	sum, err = Number(figure, such)
	return sum, code, shared, err
}

// ErrCurrency is a price in another currency than the house's.
var ErrCurrency = errors.New("form: the house reckons in another currency")

// PriceIn parses a price in the currency of the house, which may be written with it.
func PriceIn(text, currency, such string) (float64, error) {
	sum, code, shared, err := Price(text, such)
	if err == nil && code != "" && code != currency && !(shared && numeral.Shares(code, currency)) {
		err = &spoken{ErrCurrency, say.It("form.another-currency", "Typed", strconv.Quote(text), "Currency", code, "House", currency)}
	}
	return sum, err
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
