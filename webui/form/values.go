package form

import (
	"errors"
	"net/url"
	"slices"
	"strings"

	"counterpour/webui/say"
)

// Values are the fields of a form as they were sent.
type Values url.Values

// Get returns the first value of a field, trimmed.
func (f Values) Get(name string) string { return strings.TrimSpace(url.Values(f).Get(name)) }

// Has reports whether the form has a field, filled in or not.
func (f Values) Has(name string) bool { return url.Values(f).Has(name) }

// Option returns an option of a field; it is chosen if that value was sent.
func (f Values) Option(field, value, name string) Option {
	return Option{value, name, slices.Contains(f[field], value)}
}

// Number reads the number in a field, with or without its unit. An invalid one is a fault at the field, which says
// what to write and in which unit.
func (f Values) Number(field, what, unit string) (float64, error) {
	v, err := Quantity(f.Get(field), unit)
	switch {
	case errors.Is(err, errTwoWays):
		return 0, Missing(field, err.Error())
	case err != nil:
		return 0, Missing(field, say.It("form.write-as-a-number", "What", what, "Unit", unit))
	}
	return v, nil
}
