package cover

import (
	"counterpour/flavor/cover/fill"
	"counterpour/flavor/cover/search"
)

// strength returns the strength in % vol of what a cover pours, before ice: its
// alcohol over the sum of its pours.
func (t *task) strength(x *search.Filling) float64 {
	var alcohol, ml float64
	for p := range t.pours(x) {
		alcohol += p.ML * p.Profile.ABV.Value
		ml += p.ML
	}
	return alcohol / ml
}

// allows reports whether a cover may be within the guest's cost and strength,
// without mixing it, and is what a bartender would pour.
func (t *task) allows(x *search.Filling) bool {
	g := &t.req.Guest
	f := fill.Fill{Gap: t.gap, Drink: t.req.Spec, Parts: t.partsOf(x, make([]fill.Portion, 0, MaxParts))}
	return f.Enough() && !t.tooSharp(x) && (g.MaxCost <= 0 || t.cost(x) <= g.MaxCost) && (g.MaxABV <= 0 || t.strength(x) <= t.tooStrong)
}

// within reports whether a cover that is allowed is within the guest's strength.
func (t *task) within(x *search.Filling) (bool, error) {
	if t.req.Guest.MaxABV <= 0 {
		return true, nil
	}
	s := t.specOf(x)
	drink, err := t.finder.mixer.Mix(&s)
	if err != nil {
		return false, err
	}
	return drink.ABV <= t.req.Guest.MaxABV, nil
}
