package part

import (
	"math"

	"counterpour/flavor"
)

// Pair is one ingredient of two drinks, with its pour in each.
type Pair struct {
	Was, Is *flavor.Pour // nil if that drink does not pour it
	At      int          // index of Was among the pours of its drink
}

// Compare pairs the pours of two drinks by ingredient: first those of the second drink,
// in order, then those that only the first one has. If a drink pours an ingredient twice,
// first pairs with first.
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

// Name returns the name of the ingredient.
func (p *Pair) Name() string {
	if p.Is != nil {
		return p.Is.Profile.Name
	}
	return p.Was.Profile.Name
}

// Before returns the amount in the first drink; "" if it has none.
func (p *Pair) Before() string { return amountOrNone(p.Was) }

// After returns the amount in the second drink; "" if it has none.
func (p *Pair) After() string { return amountOrNone(p.Is) }

func amountOrNone(p *flavor.Pour) string {
	if p == nil {
		return ""
	}
	return Amount(p)
}

// hair is the largest difference, in mL, at which two amounts in different units count as
// equal: less than a drop.
const hair = 0.05

// Moved reports whether both drinks pour the ingredient, in different amounts. The same
// volume in another unit counts as equal.
func (p *Pair) Moved() bool {
	switch {
	case p.Was == nil || p.Is == nil || p.Was.Amount == p.Is.Amount && p.Was.Unit == p.Is.Unit:
		return false
	case p.Was.ML > 0 && p.Is.ML > 0:
		return math.Abs(p.Was.ML-p.Is.ML) >= hair
	}
	return true
}
