// Package fault gathers what is wrong with a request as faults, puts each in its
// place, and quotes what was sent.
package fault

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"counterpour/data/house"
	"counterpour/flavor"
)

// ErrNotFound: an id or a name that nothing answers to, where the whole request
// is about what it names.
var ErrNotFound = errors.New("not found")

// Collect adds the faults that an error holds to those found before. It returns
// an error that is no fault: the program's, and not the user's to mend.
func Collect(faults *flavor.Faults, err error) error {
	found := flavor.FaultsOf(err)
	*faults = append(*faults, found...)
	if len(found) == 0 {
		return err
	}
	return nil
}

// At returns err with its faults placed at location where they have no place.
func At(location string, err error) error {
	return Placed(err, func(own string) string {
		if own == "" {
			return location
		}
		return own
	})
}

// Placed returns err with its faults where move puts them.
func Placed(err error, move func(location string) string) error {
	return flavor.Relocated(err, func(f *flavor.Fault) { f.Location = move(f.Location) })
}

// OfRule returns what breaks a rule of the house as a fault, which is the user's
// to mend, and any other error as it is.
func OfRule(err error) error {
	var rule *house.Error
	if errors.As(err, &rule) && errors.Is(err, house.ErrInvalid) {
		return flavor.Invalid("", "", "%s", rule.Message)
	}
	return err
}

// InRange adds a fault unless n is from low to high.
func InRange(faults *flavor.Faults, location string, n, low, high int) {
	if n < low || n > high {
		*faults = append(*faults, flavor.OutOfRange(location, n, low, high, fmt.Sprintf("give %d to %d", low, high)))
	}
}

// mostQuoted is how many characters of what was sent are sent back.
const mostQuoted = 200

// Quotable returns the first characters of what was sent, in valid UTF-8, fit to
// stand in a message.
func Quotable(s string) string {
	s = strings.ToValidUTF8(s, string(utf8.RuneError))
	n := 0
	for i := range s {
		if n == mostQuoted {
			return s[:i] + "…"
		}
		n++
	}
	return s
}
