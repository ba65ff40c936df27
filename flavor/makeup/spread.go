package makeup

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

// Spreads returns one standard deviation of each equivalent of a spec, relative to
// it, from the tolerance of the pours, which err each on its own, and the spread of the
// profiles, which two pours of one bottle share. An axis that the drink has nothing of has
// none.
func Spreads(s *flavor.Spec) ratio.Equivalents {
	e := EquivalentsOf(s)
	var variance ratio.Equivalents
	for i := range s.Pours {
		p := &s.Pours[i]
		per := PerML(p.Profile)
		ml, first := SameBottle(s, i)
		for a := range per {
			if e[a] <= 0 {
				continue
			}
			hand := per[a] * pourSpread(p) / e[a]
			variance[a] += hand * hand
			if first {
				bottle := per[a] * ml * profileSpread(p.Profile, ratio.Axis(a)) / e[a]
				variance[a] += bottle * bottle
			}
		}
	}
	for a := range variance {
		variance[a] = math.Sqrt(variance[a])
	}
	return variance
}

// SameBottle returns the millilitres that a spec takes of the ingredient of
// pour i in all, and whether i is the first pour of it.
func SameBottle(s *flavor.Spec, i int) (ml float64, first bool) {
	first = true
	for j := range s.Pours {
		if s.Pours[j].Profile.ID == s.Pours[i].Profile.ID {
			ml += s.Pours[j].ML
			first = first && j >= i
		}
	}
	return ml, first
}

// pourSpread returns the standard deviation in mL of a pour: that of the yield
// that its profile states for the unit, or that of a hand.
func pourSpread(p *flavor.Pour) float64 {
	if y, ok := p.Profile.Yield(p.Unit); ok && y.Amount.Spread > 0 && y.Amount.Value > 0 {
		return p.ML * y.Amount.Spread / y.Amount.Value
	}
	return mix.PourSpread(p.Unit, p.ML)
}

// profileSpread returns the relative spread of what a profile brings to an axis.
func profileSpread(p *flavor.Profile, a ratio.Axis) float64 {
	var f flavor.Figure
	switch a {
	case ratio.Strong:
		f = p.ABV
	case ratio.Sweet:
		f = flavor.Figure{Value: mix.SweetOf(p), Spread: math.Hypot(p.Sugar.Spread*mix.SweetnessOf(p.Sugars), p.Sweeteners.Spread)}
	case ratio.Sour:
		f = p.Acid
	case ratio.Bitter:
		f = p.Bitter
	}
	if f.Value <= 0 {
		return 0
	}
	return f.Spread / f.Value
}
