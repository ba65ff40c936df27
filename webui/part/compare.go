package part

import (
	"math"

	"counterpour/flavor"
)

// Pair is one ingredient of two drinks: how it was poured, and how it is.
type Pair struct {
	Was, Is *flavor.Pour // nil if that drink does not pour it
	At      int          // the place of Was among the pours of its drink
}

// Compare sets the pours of two drinks beside each other by ingredient: first
// those of the second drink, in its order, then those that only the first pours.
// Of two pours of one ingredient, the first goes with the first.
func Compare(was, is []flavor.Pour) []Pair {
	var out []Pair
	taken := make([]bool, len(was))
	for i := range is {
		pair := Pair{Is: &is[i]}
		for k := range was {
			if !taken[k] && was[k].Profile.ID == is[i].Profile.ID {
				taken[k], pair.Was, pair.At = true, &was[k], k
				break
			}
		}
		out = append(out, pair)
	}
	for k := range was {
		if !taken[k] {
			out = append(out, Pair{Was: &was[k], At: k})
		}
	}
	return out
}

// Name is the name of the ingredient.
func (p *Pair) Name() string {
	if p.Is != nil {
		return p.Is.Profile.Name
	}
	return p.Was.Profile.Name
}

// Before is the amount in the first drink, empty if it has none.
func (p *Pair) Before() string { return amountOrNone(p.Was) }

// After is the amount in the second drink, empty if it has none.
func (p *Pair) After() string { return amountOrNone(p.Is) }

func amountOrNone(p *flavor.Pour) string {
	if p == nil {
		return ""
	}
	return Amount(p)
}

// hair is the most by which two amounts in different units may differ and be one,
// in mL: less than a drop.
const hair = 0.05

// Moved reports whether both drinks pour it and not as much. The same volume in
// another unit has not moved.
func (p *Pair) Moved() bool {
	switch {
	case p.Was == nil || p.Is == nil || p.Was.Amount == p.Is.Amount && p.Was.Unit == p.Is.Unit:
		return false
	case p.Was.ML > 0 && p.Is.ML > 0:
		return math.Abs(p.Was.ML-p.Is.ML) >= hair
	}
	return true
}
