package weigh

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
)

// mostDashesML is the mL of bitters up to which a spirit with them is served as it is: six dashes.
// Common practice.
const mostDashesML = 5.0

// Straight reports whether a draft is no mixed drink: a spirit as it is, neat or on ice, or pink
// with a few dashes of bitters, and perhaps water. What is called after a drink is meant to be
// that; and gin stirred up lacks its vermouth as whiskey with bitters on ice lacks its sugar.
func (b *Build) Straight() bool {
	dashes, gin := 0.0, true
	var base *flavor.Profile
	for i := range b.parts {
		switch p := &b.parts[i]; {
		case makeup.IsBase(p) && base == nil:
			base, gin = p.Profile, p.Profile.Class == flavor.ClassGin
		case p.Profile.Class == flavor.ClassCocktailBitters:
			dashes += p.Amount(b.ml)
		case !p.Profile.Class.Free():
			return false
		}
	}
	if base == nil || dashes > mostDashesML {
		return false
	}
	served := []flavor.Service{flavor.Neat, flavor.Rocks}
	if dashes > 0 { // by the same dashes a gin is pink however it is served
		served = []flavor.Service{flavor.Neat}
	}
	called, _ := b.Forgotten().Called(base)
	return !called && (slices.Contains(served, b.spec.Service) || gin && dashes > 0 && b.spec.Service != flavor.Long)
}
