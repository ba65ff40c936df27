package station

import (
	"slices"

	"counterpour/flavor"
)

// Parent is a drink that moves start from.
type Parent struct {
	Spec     flavor.Spec
	Kind     Kind // the last move that made it
	Moves    int
	Lost     int // pours left out without anything in their place
	made     makeUp
	products []float64 // of made with the proven drinks
}

// ParentOf is a drink that moves start from.
func (j *Job) ParentOf(s *flavor.Spec, kind Kind, moves int) *Parent {
	p := &Parent{Spec: *s, Kind: kind, Moves: moves, made: make(makeUp, len(j.Station.book.classes)+flavor.NumFamilies)}
	for i := range s.Pours {
		if !pouredBefore(s, i) {
			p.made.add(j.madeOf(s.Pours[i].Profile), 1)
		}
	}
	p.products = j.Station.book.products(p.made)
	return p
}

// ParentFrom is a solved drink that further moves start from.
func (j *Job) ParentFrom(s *Settled) *Parent {
	p := j.ParentOf(&s.Spec, s.Kind, s.Moves)
	p.Lost = s.Lost
	return p
}

func (j *Job) madeOf(p *flavor.Profile) makeUp {
	if it, ok := j.Has(p); ok {
		return it.made
	}
	return makeUpOf(p, j.Station.book.classes)
}

// productsOf returns the products of an ingredient with the proven drinks.
func (j *Job) productsOf(p *flavor.Profile) []float64 {
	it, ok := j.Has(p)
	if !ok {
		return j.Station.book.products(makeUpOf(p, j.Station.book.classes))
	}
	if it.products == nil {
		it.products = j.Station.book.products(it.made)
	}
	return it.products
}

// LikelyWith is how likely a drink is once came came in and went went; either
// may be nil.
func (j *Job) LikelyWith(from *Parent, came, went *flavor.Profile) float64 {
	made, products := slices.Clone(from.made), slices.Clone(from.products)
	shift := func(p *flavor.Profile, times float64) {
		if p == nil {
			return
		}
		made.add(j.madeOf(p), times)
		for i, v := range j.productsOf(p) {
			products[i] += times * v
		}
	}
	shift(came, 1)
	shift(went, -1)
	return likely(made, products)
}

// Likely is how likely the drink itself is.
func (p *Parent) Likely() float64 { return likely(p.made, p.products) }
