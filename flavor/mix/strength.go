package mix

import (
	"math"

	"counterpour/flavor"
)

// StrengthSlack is by how much, relatively, what sugar and contraction do to
// volumes may move the strength of a drink from that of a spirit with as much
// alcohol in it: the tests of flavor/cover, which asks, find a fifth of it over the
// catalogue.
const StrengthSlack = 0.1

// neutralABV is the strongest spirit there is, in % vol.
const neutralABV = 96.0

// StrongestPoured returns the strength in % vol of what is poured, its alcohol over the sum of
// its pours, from which a drink that is made and served as s ends stronger than most once the
// ice has thinned it.
//
// A drink that meets the ice whole takes the most water of all with as much alcohol in as much
// liquid, and one that is stronger when it meets the ice ends stronger. So the answer is the
// strength of the spirit that ends at most, and some slack. It is infinite if no spirit ends
// stronger, and where the water depends on more than strength: with ice of one's own, and where
// something is poured hot. Whoever asks about very many drinks need not mix those beyond it.
func (m *Mixer) StrongestPoured(s *flavor.Spec, most float64) (float64, error) {
	if m.ice != (Ice{}) || hotPoured(s) {
		return math.Inf(1), nil
	}
	low, high := 0.0, neutralABV
	for range 20 {
		at := (low + high) / 2
		drink, err := m.spirit(at, s)
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
	return high * (1 + StrengthSlack), nil
}

// spirit mixes a spirit as a drink is mixed.
func (m *Mixer) spirit(abv float64, like *flavor.Spec) (*Drink, error) {
	p := flavor.Profile{Name: "spirit", Class: flavor.ClassVodka, ABV: flavor.Figure{Value: abv}}
	if err := Complete(&p); err != nil {
		return nil, err
	}
	const enough = 100 // mL; the strength does not depend on it
	return m.Mix(&flavor.Spec{Method: like.Method, Service: like.Service,
		Pours: []flavor.Pour{{Profile: &p, Amount: enough, Unit: flavor.Millilitre, ML: enough}}})
}
