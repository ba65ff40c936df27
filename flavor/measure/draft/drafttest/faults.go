package drafttest

import (
	"errors"
	"fmt"
	"slices"

	"counterpour/flavor"
)

// Want is one fault: its line, its word and, if any, a suggestion.
type Want [3]string

// Departs says how an error departs from the faults that a text should have; empty if
// it does not.
func Departs(err error, wants []Want) string {
	var fs flavor.DataFaults
	if !errors.As(err, &fs) || len(fs) != len(wants) {
		return fmt.Sprintf("%v, where %d faults are meant", err, len(wants))
	}
	for i, w := range wants {
		f := fs[i]
		if f.Location != w[0] || f.Value != w[1] || f.Message == "" || w[2] != "" && !slices.Contains(f.Suggest, w[2]) {
			return fmt.Sprintf("fault %d is %+v, where %v is meant", i+1, *f, w)
		}
	}
	return ""
}
