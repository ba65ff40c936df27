// Package drafttest is for tests: a finder over a handful of ingredients.
package drafttest

import (
	"errors"
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/measuretest"
)

// Shelf is a finder over a handful of ingredients. Names that differ by one
// slip are a fuzzy match, as with the real one.
type Shelf map[string]*flavor.Profile

// Resolve finds a name, its alias or a slip of the pen; "broken" breaks the shelf.
func (s Shelf) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
	if written == "broken" {
		return nil, flavor.Match{}, errors.New("the index is closed")
	}
	key := flavor.NormaliseName(written)
	if p, ok := s[key]; ok {
		how := flavor.MatchAlias
		if key == flavor.NormaliseName(p.Name) {
			how = flavor.MatchExact
		}
		return p, flavor.Match{Asked: key, How: how}, nil
	}
	for name, p := range s {
		if len(key) > 4 && len(measure.Nearest(key, []measure.Spelling{{Written: name, Means: name}})) > 0 {
			return p, flavor.Match{Asked: key, How: flavor.MatchFuzzy}, nil
		}
	}
	return nil, flavor.Match{}, fmt.Errorf("shelf: %w", &flavor.DataFault{Kind: flavor.ErrUnknown, Value: written,
		Message: fmt.Sprintf("%q is not on the shelf", written), Suggest: []string{"London dry gin"}})
}

// Bar is a shelf with something of most classes.
func Bar() Shelf { return Shelf(measuretest.Bar()) }
