package tasting

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/sense"
)

// Value is what shows an axis in the glass: % vol of strength, g/100 mL of sweetness and
// acid, mg/L of bitterness and, of length, the mL of drink for each mL of alcohol.
func Value(a ratio.Axis, d *mix.Drink) float64 {
	switch a {
	case ratio.Strong:
		return d.ABV
	case ratio.Sweet:
		return d.SweetPer100
	case ratio.Sour:
		return d.AcidPer100
	case ratio.Bitter:
		return d.Bitter
	}
	return 100 / d.ABV // how far the alcohol is stretched
}

// JND returns how many just-noticeable differences of an axis lie between two amounts of it
// above zero.
func JND(a ratio.Axis, from, to float64) float64 { return threshold.JND(a, math.Log(to/from)) }

// Steps returns how many noticeable steps lie between two values of an axis in the glass, as
// [Value] gives them, above zero if there is more of it. Other than [JND] it has a floor: of
// what no tongue finds, twice as much is nothing.
func Steps(a ratio.Axis, from, to float64) float64 {
	const perLitre = 10 // g/L of each g in 100 mL
	switch a {
	case ratio.Strong:
		return sense.StepsBetween(sense.Ethanol, from, to)
	case ratio.Sweet:
		return sense.StepsBetween(sense.Sweet, perLitre*from, perLitre*to)
	case ratio.Sour:
		return sense.StepsBetween(sense.Sour, perLitre*from, perLitre*to)
	case ratio.Bitter:
		return sense.StepsBetween(sense.Bitter, from, to)
	}
	return -sense.StepsBetween(sense.Ethanol, 100/from, 100/to) // stretched is weaker
}

// leastShare is how much of an axis the pour that carries it must bring.
const leastShare = 0.6

// Carrier returns the pour that brings most of an axis and what the drink has
// of it, −1 if no pour brings enough to be the one at fault.
func Carrier(s *flavor.Spec, a ratio.Axis) (int, float64) {
	best, most := -1, 0.0
	for i := range s.Pours {
		if v := ratio.PerML(s.Pours[i].Profile)[a] * s.Pours[i].ML; v > most {
			best, most = i, v
		}
	}
	have := ratio.EquivalentsOf(s)[a]
	if best < 0 || most < leastShare*have {
		return -1, 0
	}
	return best, have
}
