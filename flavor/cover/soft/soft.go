// Package soft tells when what is left of a drink is a soft drink, for a guest who drinks no
// alcohol: long enough, and with sugar for its lemon or lime.
package soft

import (
	"iter"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
)

// leastOfDrink is the share of a drink that is left and is sour, long or milk, from which
// a soft drink can be made of it: of a sour it is the lemon, and of a stirred drink there is
// none (common practice, no source).
const leastOfDrink = 0.1

// creamFrom is the fat in g/L from which a milk is a cream, which no one drinks by the glass.
const creamFrom = 150.0

// lengthens reports whether something is drunk by the glass: a juice, a tea, a soda, a milk.
func lengthens(p *flavor.Profile) bool {
	return p.Class.Part() == flavor.PartLength || p.Class.Kin() == flavor.KinMilk && p.Fat.Value < creamFrom
}

// Leaves reports whether the pours that are kept of a drink, by their places, leave something to
// make a soft drink of.
func Leaves(drink *flavor.Spec, kept []int) bool {
	var soft float64
	for _, i := range kept {
		if p := &drink.Pours[i]; p.Profile.Class.Part() == flavor.PartSour || lengthens(p.Profile) {
			soft += p.ML
		}
	}
	return soft >= leastOfDrink*drink.VolumeML()
}

// The least share of a drink that is left, and the least share of that which lengthens it, for
// what is left to be a drink by itself: a gin fizz leaves a lemonade, a daiquiri lime and sugar
// (common practice, no source).
const leftOfAll, leftLong = 0.5, 0.4

// Long reports whether pours are a long drink, or one of milk, without anything else, where the
// drink that they are left of had so many mL.
func Long(pours iter.Seq[flavor.Pour], ofML float64) bool {
	var left, long float64
	for p := range pours {
		left += p.ML
		if lengthens(p.Profile) {
			long += p.ML
		}
	}
	return left >= leftOfAll*ofML && long >= leftLong*left && Sugared(pours)
}

// leastSweet is the syrup of one to one, as against as much lemon juice, from which what
// is sour can be drunk without its spirit: a lemonade has four fifths of it, a sharp one
// hardly half (common practice, no source).
const leastSweet = 0.4

// Sugared reports whether a drink has sugar for its lemon or lime. A juice is drunk as it is.
func Sugared(pours iter.Seq[flavor.Pour]) bool {
	var sweet, sour float64
	for p := range pours {
		per := ratio.PerML(p.Profile)
		sweet += p.ML * per[ratio.Sweet]
		if p.Profile.Class.Part() == flavor.PartSour {
			sour += p.ML * per[ratio.Sour]
		}
	}
	return sweet >= leastSweet*sour
}
