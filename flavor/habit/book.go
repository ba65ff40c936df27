package habit

import (
	"slices"
	"sync"

	"counterpour/flavor"
)

// Part is one ingredient of a drink and how much of the drink it is.
type Part struct {
	Profile *flavor.Profile
	Share   float64 // of the volume before ice, 0 to 1
	Lead    float64 // how surely the drink is made of it first, 0 to 1
	Smells  float64 // how surely it may smell as it will, 0 to 1: what leads and what lengthens
}

// Limit is what good drinks pour of an ingredient.
type Limit struct {
	Usual float64 // in the middle, as a share of the drink before ice or as a dose
	Most  float64 // all but a few stay below, likewise
	Own   bool    // some proven drink pours this very ingredient
	// Support is how many proven drinks say so, of the ingredient or of what smells
	// like it, weighted by how near they are in make-up.
	Support float64
}

// Book is what proven drinks pour. It is read-only once built and safe for
// concurrent use.
type Book struct {
	drinks  int
	shelves map[flavor.Class]*shelf // in shares
	doses   map[flavor.Class]*shelf // in doses, of what modifies
	levels  [NumLevels]columns
	byDrink [NumLevels][]float64 // the same, logarithms alone, in the order of the drinks
	sums    [NumLevels]float64   // of those
	rooms   rooms
	high    [NumLevels]float64 // see NeverHigh
}

// NewBook reads proven drinks, each given by its parts.
func NewBook(drinks [][]Part) *Book {
	b := &Book{drinks: len(drinks), shelves: map[flavor.Class]*shelf{}, doses: map[flavor.Class]*shelf{}}
	var levels [NumLevels][]sample
	for l := range levels {
		levels[l], b.byDrink[l] = make([]sample, 0, len(drinks)), make([]float64, 0, len(drinks))
	}
	for i, parts := range drinks {
		for _, p := range parts {
			if p.Share <= 0 {
				continue
			}
			shelfIn(b.shelves, p.Profile.Class).add(p, p.Share, i)
			if p.Profile.Class.Part() == flavor.PartModifier {
				shelfIn(b.doses, p.Profile.Class).add(p, Dose(p.Share), i)
			}
		}
		b.addLevels(&levels, i, parts)
	}
	for _, s := range b.shelves {
		s.close()
		s.compare()
	}
	for _, s := range b.doses {
		s.close()
	}
	b.sortLevels(&levels)
	return b
}

// shelfIn returns the shelf of a class, a new one if there is none.
func shelfIn(shelves map[flavor.Class]*shelf, c flavor.Class) *shelf {
	s := shelves[c]
	if s == nil {
		s = &shelf{}
		shelves[c] = s
	}
	return s
}

// Pours reports whether some proven drink pours an ingredient.
func (b *Book) Pours(p *flavor.Profile) bool {
	s := b.shelves[p.Class]
	return s != nil && slices.Contains(s.profiles, p)
}

// rooms lends space to work in, so that to judge a drink hardly makes any anew.
type rooms struct{ pool sync.Pool }

// take lends n numbers, whatever they are; the borrower gives them back with put.
func (r *rooms) take(n int) *[]float64 {
	room, _ := r.pool.Get().(*[]float64)
	if room == nil {
		room = new([]float64)
	}
	*room = slices.Grow((*room)[:0], n)[:n]
	return room
}

func (r *rooms) put(room *[]float64) { r.pool.Put(room) }
