package prep

import (
	"slices"

	"counterpour/flavor"
)

// takeApart divides a drink into what may wait in a bottle and what goes into
// each drink as it is made, see [flavor.Class.Apart].
func takeApart(s flavor.Spec) (bottled flavor.Spec, apart []flavor.Pour) {
	bottled = s.Clone()
	bottled.Pours = nil
	for _, p := range s.Pours {
		if p.Profile != nil && p.Profile.Class.Apart(p.Unit) {
			apart = append(apart, p)
		} else {
			bottled.Pours = append(bottled.Pours, p)
		}
	}
	return bottled, apart
}

// apartNotes says what to do with what stays apart.
func apartNotes(apart []flavor.Pour, place Place) []string {
	var out []string
	is := func(classes ...flavor.Class) bool {
		return slices.ContainsFunc(apart, func(p flavor.Pour) bool { return slices.Contains(classes, p.Profile.Class) })
	}
	if is(flavor.ClassEgg, flavor.ClassFoam) {
		text := "Egg and foam go into each drink as it is made; use pasteurised egg where the law asks for it."
		if place != ToOrder {
			text += " The water is in the batch already, so shake without ice."
		}
		out = append(out, text)
	}
	if is(flavor.ClassFreshHerb, flavor.ClassFruit) {
		out = append(out, "Herbs and pieces of fruit go into each drink as it is made: cut ahead, they brown and turn bitter.")
	}
	return out
}
