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

// Accent returns how surely an ingredient is poured beside others only, 0 to 1: what many
// proven drinks have a little of and none is made of does not lead for being poured by the
// ounce.
func (b *Book) Accent(p *flavor.Profile) float64 {
	s := b.shelves[p.Class]
	if s == nil {
		return 0
	}
	return s.accent(p)
}

// Limit returns what good drinks pour of an ingredient, as shares of the drink before
// ice: of what they are made of first, or of what stands beside that. near is how near
// each proven drink of the book is in make-up, 0 to 1, in the order of [NewBook]. Four
// voices are pooled, each with the next: the ingredient itself, those of its class that
// smell like it, its class, and common practice. Each has the weight of the proven
// drinks behind it. A modifier that smells all but the same speaks for the ingredient
// itself: one orange liqueur may be poured as the next, however few drinks name it.
func (b *Book) Limit(p *flavor.Profile, first bool, near []float64) Limit {
	s := b.shelves[p.Class]
	if s == nil {
		s = &shelf{}
	}
	return s.limit(p, commonMost(p.Class), first, near, &b.rooms)
}

// LimitOfDose is Limit for what modifies, as doses, see [Dose]: it tells a large pour
// doubled from a large pour, which a share hardly does.
func (b *Book) LimitOfDose(p *flavor.Profile, first bool, near []float64) Limit {
	s := b.doses[p.Class]
	if s == nil {
		s = &shelf{}
	}
	return s.limit(p, Dose(commonMost(p.Class)), first, near, &b.rooms)
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
