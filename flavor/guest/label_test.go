package guest

import (
	"testing"

	"counterpour/flavor"
)

// A label decides what is possible or not stated, and nothing else that is in a guest's way.
func TestWhatALabelDecides(t *testing.T) {
	plain := &flavor.Profile{AllergensKnown: true, ABV: flavor.Figure{Value: 20}}
	unstated := &flavor.Profile{ABV: flavor.Figure{Value: 20}}
	carries := func(c flavor.Certainty) *flavor.Profile {
		return &flavor.Profile{AllergensKnown: true, AllergenMarks: []flavor.AllergenMark{{Allergen: flavor.Eggs, Certainty: c}}}
	}
	egg := Guest{Avoid: []flavor.Allergen{flavor.Eggs}}
	for name, c := range map[string]struct {
		guest Guest
		of    *flavor.Profile
		want  bool
	}{
		"not stated":                       {egg, unstated, true},
		"possible":                         {egg, carries(flavor.MayContain), true},
		"there":                            {egg, carries(flavor.Contains), false},
		"known to be free":                 {egg, plain, false},
		"nothing is avoided":               {Guest{}, unstated, false},
		"not stated, and holds alcohol":    {Guest{Avoid: egg.Avoid, NoAlcohol: true}, unstated, false},
		"possible, and made with an egg":   {Guest{Avoid: egg.Avoid, NoAnimal: []string{"egg"}}, &flavor.Profile{Animal: []string{"egg"}}, false},
		"not stated, and without a price":  {Guest{Avoid: egg.Avoid, MaxCost: 1}, unstated, false},
		"what is free of it is not waited": {egg, &flavor.Profile{FreeOf: []flavor.Allergen{flavor.Eggs}}, false},
	} {
		if got := c.guest.LabelDecides(c.of); got != c.want {
			t.Errorf("%s: a label decides: %v, want %v", name, got, c.want)
		}
	}
}
