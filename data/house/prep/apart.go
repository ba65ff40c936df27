package prep

import (
	"slices"

	"counterpour/flavor"
)

// HasJuice reports whether a drink contains fresh juice, which a batch may leave out.
func HasJuice(s *flavor.Spec) bool {
	return s.Has(func(p *flavor.Profile) bool { return p.Class.Pressed() })
}

// takeApart splits a drink into what can be bottled and what is added to each drink, see
// [flavor.Class.Apart]. If juice is true, fresh juice is left out of the bottle too.
func takeApart(s flavor.Spec, juice bool) (bottled flavor.Spec, apart []flavor.Pour) {
	bottled = s.Clone()
	bottled.Pours = nil
	for _, p := range s.Pours {
		if p.Profile != nil && (p.Profile.Class.Apart(p.Unit) || juice && p.Profile.Class.Pressed()) {
			apart = append(apart, p)
		} else {
			bottled.Pours = append(bottled.Pours, p)
		}
	}
	return bottled, apart
}

// apartNotes says what to do with what is left out of the bottle.
func apartNotes(apart []flavor.Pour, place Storage, hot bool) []string {
	var out []string
	has := func(is func(flavor.Class) bool) bool {
		return slices.ContainsFunc(apart, func(p flavor.Pour) bool { return is(p.Profile.Class) })
	}
	if has(func(c flavor.Class) bool { return c.Kin() == flavor.KinFoam }) {
		text := "Egg and foam go into each drink as it is made; use pasteurised egg where the law asks for it."
		if place != ToOrder && !hot {
			text += " The water is in the batch already, so shake without ice."
		}
		out = append(out, text)
	}
	if has(flavor.Class.Solid) {
		out = append(out, "Herbs and pieces of fruit go into each drink as it is made: if you cut them ahead, they brown and turn bitter.")
	}
	if has(flavor.Class.Pressed) {
		text := "Juice goes into each drink as it is made, pressed the same day."
		if place != ToOrder && !hot {
			text += " The water for it is in the batch already."
		}
		out = append(out, text)
	}
	return out
}
