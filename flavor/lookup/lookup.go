// Package lookup defines the queries to an index of ingredients and their results, as
// types. Package index implements the lookups.
package lookup

import (
	"errors"

	"counterpour/flavor"
)

// ErrClosed is the error of an index that has been closed.
var ErrClosed = errors.New("lookup: the index is closed")

// Limits of a query.
const (
	DefaultLimit = 20  // hits, if the query has no limit
	MaxLimit     = 100 // hits
	MaxText      = 200 // runes of text that are read; the rest is ignored
	MaxWords     = 16  // words of text that are read
)

// Query selects ingredients; an ingredient must meet every condition. The zero value
// matches all, sorted by id.
type Query struct {
	Text      string              // typed text; empty matches all
	Class     flavor.Class        // empty: any
	Family    *flavor.AromaFamily // in the aroma with intensity 1 or more, or its strongest family; nil: any
	BitterMin *float64            // at least, mg/L of quinine; nil: any
	ABVMax    *float64            // at most, % vol; nil: any
	Avoid     []flavor.Allergen   // neither contained nor possible
	Like      string              // id of an ingredient; sorts the hits by their distance from it
	Measure   Measure             // distance measure; required with Like
	Limit     int                 // 1 to MaxLimit; 0 is DefaultLimit
}

// Measure returns a function for the distance of other ingredients from one: 0 for an
// equal one, never negative. The caller supplies it, since the index does not judge
// taste.
type Measure func(of *flavor.Profile) func(other *flavor.Profile) float64

// Most returns the limit on the number of hits.
func (q Query) Most() int {
	if q.Limit == 0 {
		return DefaultLimit
	}
	return q.Limit
}

// Hit is a matching ingredient. Hits are sorted by Score, the highest first. With a text
// it is relative to the best hit, which has 1; with Like it is 1/(1+distance); otherwise
// it is 1.
type Hit struct {
	Profile *flavor.Profile
	Score   float64
}

// Facet counts the matching ingredients of one class.
type Facet struct {
	Name  string
	Count int
}

// Result is the result of a search. Hits are sorted by score, then id. Total and Classes
// count everything that matches; Classes are sorted by count, then name.
type Result struct {
	Hits    []Hit
	Total   int
	Classes []Facet
}

// Need selects ingredients for the solver. The zero value allows all.
type Need struct {
	Avoid     []flavor.Allergen // neither contained nor possible nor unstated
	Stock     []string          // only these ids; nil is all, empty is none
	Exclude   []string          // none of these ids
	NoAlcohol bool              // none stronger than 0.5 % vol
	NoAnimal  []string          // no animal sources of these kinds, see flavor.Animals
}

// Refused counts the ingredients that were ruled out. Each is counted once; if it is
// neither in stock nor free of the allergens, as not in stock. What Exclude, NoAlcohol or
// NoAnimal rule out is not counted.
type Refused struct {
	ByAllergen int
	NotInStock int
}
