// Package lookup is what may be asked of an index of ingredients, and what it
// answers. It looks nothing up itself: package index does, and whoever needs an
// index says which of these questions it asks.
package lookup

import (
	"errors"

	"counterpour/flavor"
)

// ErrClosed is the answer of an index that has been closed.
var ErrClosed = errors.New("lookup: the index is closed")

// Limits of a query.
const (
	DefaultLimit = 20  // hits, if the query does not say
	MaxLimit     = 100 // hits, at most
	MaxText      = 200 // runes of text that are read; the rest is passed over
	MaxWords     = 16  // words of text that are read
)

// Query says what to find; every part that is given must hold. The zero value
// finds everything, by id.
type Query struct {
	Text      string            // what was typed; empty finds everything
	Class     flavor.Class      // empty: any
	Family    *flavor.Family    // carried at intensity 1 or more, or as the leading note; nil: any
	BitterMin *float64          // mg/L of quinine, or more; nil: any
	ABVMax    *float64          // % vol, or less; nil: any
	Avoid     []flavor.Allergen // none of these, not even possibly
	Like      string            // id of an ingredient; sorts the hits by how near they are to its profile
	Measure   Measure           // of nearness; needed with Like
	Limit     int               // 1 to MaxLimit; 0 is DefaultLimit
}

// Measure returns how far others are from an ingredient, 0 for one just like it
// and never below. The index does not judge: whoever asks brings the measure.
type Measure func(of *flavor.Profile) func(other *flavor.Profile) float64

// Most returns how many hits are asked for.
func (q Query) Most() int {
	if q.Limit == 0 {
		return DefaultLimit
	}
	return q.Limit
}

// Hit is an ingredient that was found. Score orders the hits, higher first: for
// words it is relative to the best hit, which has 1; with Like it is
// 1/(1+distance); without either every hit has 1.
type Hit struct {
	Profile *flavor.Profile
	Score   float64
}

// Facet counts the ingredients of one class among all that match.
type Facet struct {
	Name  string
	Count int
}

// Result is what a search found. Hits are by score, then id; Total counts all
// that match, Classes likewise, most first, then by name.
type Result struct {
	Hits    []Hit
	Total   int
	Classes []Facet
}

// Need says which ingredients the solver may use. The zero value allows all.
type Need struct {
	Avoid     []flavor.Allergen // none of these, not even possibly; unknown counts as present
	Stock     []string          // only these ids; nil is all, empty is none
	Exclude   []string          // none of these ids
	NoAlcohol bool              // none stronger than 0.5 % vol
	NoAnimal  []string          // nothing from these, see flavor.Animals
}

// Refused counts ingredients that would do but for one thing. Each is counted
// once, as not in stock if it is neither in stock nor free of the allergens;
// what Exclude, NoAlcohol or NoAnimal rule out is not counted.
type Refused struct {
	ByAllergen int
	NotInStock int
}
