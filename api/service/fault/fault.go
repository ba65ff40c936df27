// Package fault collects faults of a request, sets their places, and quotes values from
// the request safely.
package fault

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"counterpour/data/house"
	"counterpour/flavor"
)

// ErrNotFound means that the id or name in the path of a request does not exist.
var ErrNotFound = errors.New("not found")

// Collect appends the faults that err holds to faults. It returns err itself if it is not
// a fault but an internal error.
func Collect(faults *flavor.DataFaults, err error) error {
	found := flavor.DataFaultsOf(err)
	*faults = append(*faults, found...)
	if len(found) == 0 {
		return err
	}
	return nil
}

// At returns err with location as the place of those of its faults that have none.
func At(location string, err error) error {
	return Placed(err, func(own string) string {
		if own == "" {
			return location
		}
		return own
	})
}

// Placed returns err with the place of each of its faults replaced by move of it.
func Placed(err error, move func(location string) string) error {
	return flavor.Relocated(err, func(f *flavor.DataFault) { f.Location = move(f.Location) })
}

// OfRule returns an error that breaks a rule of the house as a fault, which the user can
// mend, and any other error unchanged.
func OfRule(err error) error {
	var rule *house.Error
	if errors.As(err, &rule) && errors.Is(err, house.ErrInvalid) {
		return flavor.Invalid("", "", "%s", rule.Message)
	}
	return err
}

// InRange appends a fault unless low <= n <= high.
func InRange(faults *flavor.DataFaults, location string, n, low, high int) {
	if n < low || n > high {
		*faults = append(*faults, flavor.OutOfRange(location, n, low, high, fmt.Sprintf("give %d to %d", low, high)))
	}
}

// mostQuoted is how many characters of a value are quoted.
const mostQuoted = 200

// Quotable returns the first characters of s as valid UTF-8, for use in a message.
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
