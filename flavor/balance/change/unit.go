package change

import (
	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// mostFineML is the most that is poured in units of seasoning.
const mostFineML = 5.0

// AmountNear says an amount of an ingredient in the unit that it is poured in or,
// where that is too coarse or too fine, in what a bartender takes instead.
func AmountNear(s *flavor.Spec, ml float64, like *flavor.Pour) string {
	u, amount := near(s, ml, like)
	return measure.FormatAmount(amount, u)
}

// Measured reports whether so much of an ingredient is what a hand measures at all.
func Measured(s *flavor.Spec, ml float64, like *flavor.Pour) bool {
	_, amount := near(s, ml, like)
	return amount > 0
}

// near returns the unit of AmountNear, and the amount in it.
func near(s *flavor.Spec, ml float64, like *flavor.Pour) (flavor.Unit, float64) {
	u := like.Unit
	per, ok := measure.MLPerUnit(u, like.Profile)
	switch {
	case ok && !Fine(u) && ml < measure.Step(u)*per:
		u = Finest(like.Profile, ml)
	case u == flavor.Dash && ml > mostFineML && like.Profile.Class.Part() != flavor.PartSeasoning:
		u = flavor.Ounce
		if measure.SystemOf(s) == measure.Metric {
			u = flavor.Millilitre
		}
	}
	return measure.Handy(ml, u, like.Profile)
}

// Fine reports whether a unit is one of seasoning.
func Fine(u flavor.Unit) bool {
	switch u {
	case flavor.Dash, flavor.Drop, flavor.Pinch, flavor.Leaf, flavor.Slice, flavor.Piece, flavor.Sprig, flavor.Gram:
		return true
	}
	return false
}

// Finest is the unit for a little of an ingredient: what its profile has a
// yield for, the barspoon for what is some millilitres or comes from no dasher, else the
// dash.
func Finest(p *flavor.Profile, ml float64) flavor.Unit {
	if u, ok := p.UsualUnit(flavor.Barspoon); ok && u != flavor.Gram && u != flavor.Barspoon {
		return u
	}
	dashes := p.Class.Part() == flavor.PartSeasoning || p.Class.Part() == flavor.PartModifier
	if per, ok := measure.MLPerUnit(flavor.Barspoon, p); ok && (ml >= per || !dashes) {
		return flavor.Barspoon
	}
	return flavor.Dash
}
