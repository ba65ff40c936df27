package station

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/precedent"
)

// Parent is a drink that moves start from.
type Parent struct {
	Spec     flavor.Spec
	Kind     Kind // the last move that made it
	Moves    int
	Lost     int // pours left out without anything in their place
	made     precedent.MakeUp
	products []float64 // of made with the proven drinks
}

// ParentOf is a drink that moves start from.
func (j *Job) ParentOf(s *flavor.Spec, kind Kind, moves int) *Parent {
	p := &Parent{Spec: *s, Kind: kind, Moves: moves, made: j.Station.book.MadeOf(s)}
	p.products = j.Station.book.Products(p.made)
	return p
}

// ParentFrom is a solved drink that further moves start from.
func (j *Job) ParentFrom(s *Settled) *Parent {
	p := j.ParentOf(&s.Spec, s.Kind, s.Moves)
	p.Lost = s.Lost
	return p
}

func (j *Job) madeOf(p *flavor.Profile) precedent.MakeUp {
	if it, ok := j.Has(p); ok {
		return it.made
	}
	return precedent.MakeUpOf(p)
}

// productsOf returns the products of an ingredient with the proven drinks.
func (j *Job) productsOf(p *flavor.Profile) []float64 {
	it, ok := j.Has(p)
	if !ok {
		return j.Station.book.Products(precedent.MakeUpOf(p))
	}
	if it.products == nil {
		it.products = j.Station.book.Products(it.made)
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
		made.Add(j.madeOf(p), times)
		for i, v := range j.productsOf(p) {
			products[i] += times * v
		}
	}
	shift(came, 1)
	shift(went, -1)
	return precedent.Likely(made, products)
}

// Likely is how likely the drink itself is.
func (p *Parent) Likely() float64 { return precedent.Likely(p.made, p.products) }
