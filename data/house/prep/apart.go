package prep

import (
	"slices"

	"counterpour/flavor"
)

// freshJuices are the classes that spoil within hours of pressing.
var freshJuices = []flavor.Class{flavor.ClassSourJuice, flavor.ClassJuice}

// HasJuice reports whether a drink contains fresh juice, which a batch may leave out.
func HasJuice(s *flavor.Spec) bool {
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return slices.Contains(freshJuices, p.Profile.Class) })
}

// takeApart splits a drink into what can be bottled and what is added to each drink, see
// [flavor.Class.Apart]. If juice is true, fresh juice is left out of the bottle too.
func takeApart(s flavor.Spec, juice bool) (bottled flavor.Spec, apart []flavor.Pour) {
	bottled = s.Clone()
	bottled.Pours = nil
	for _, p := range s.Pours {
		if p.Profile != nil && (p.Profile.Class.Apart(p.Unit) || juice && slices.Contains(freshJuices, p.Profile.Class)) {
			apart = append(apart, p)
		} else {
			bottled.Pours = append(bottled.Pours, p)
		}
	}
	return bottled, apart
}

// apartNotes says what to do with what is left out of the bottle.
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
		out = append(out, "Herbs and pieces of fruit go into each drink as it is made: if you cut them ahead, they brown and turn bitter.")
	}
	if is(freshJuices...) {
		text := "Juice goes into each drink as it is made, pressed the same day."
		if place != ToOrder {
			text += " The water for it is in the batch already."
		}
		out = append(out, text)
	}
	return out
}
