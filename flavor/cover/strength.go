package cover

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/cover/fill"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/mix"
)

// strengthSlack is by how much, relatively, what sugar and contraction do to
// volumes may move the strength of a drink from that of a spirit with as much
// alcohol in it: the tests find a fifth of it over the catalogue.
const strengthSlack = 0.1

// strongest returns the strength in % vol, the alcohol over what is poured,
// from which a drink ends stronger than most once the ice has thinned it.
// Mixing a drink takes long, and a search asks about very many. Of drinks with
// as much alcohol in as much liquid none takes more water than one that meets
// the ice whole, and what is stronger when it meets it ends stronger: so the
// answer is the strength of the spirit that ends at most, and some slack. It is
// infinite if no spirit ends stronger, and where the water depends on more than
// strength: with ice of one's own, and where something is poured hot.
func (t *task) strongest(most float64) (float64, error) {
	if !t.finder.mixer.IceByStrength(t.req.Spec) {
		return math.Inf(1), nil
	}
	low, high := 0.0, neutralABV
	for range 20 {
		at := (low + high) / 2
		drink, err := t.spirit(at)
		if err != nil {
			return 0, err
		}
		if drink.ABV <= most {
			low = at
		} else {
			high = at
		}
	}
	if high == neutralABV {
		return math.Inf(1), nil
	}
	return high * (1 + strengthSlack), nil
}

// neutralABV is the strongest spirit there is, in % vol.
const neutralABV = 96.0

// spirit mixes a spirit as the drink is mixed.
func (t *task) spirit(abv float64) (*mix.Drink, error) {
	p := flavor.Profile{Name: "spirit", Class: flavor.ClassVodka, ABV: flavor.Figure{Value: abv}}
	if err := mix.Complete(&p); err != nil {
		return nil, err
	}
	const enough = 100 // mL; the strength does not depend on it
	return t.finder.mixer.Mix(&flavor.Spec{Method: t.req.Spec.Method, Service: t.req.Spec.Service,
		Pours: []flavor.Pour{{Profile: &p, Amount: enough, Unit: flavor.Millilitre, ML: enough}}})
}

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
