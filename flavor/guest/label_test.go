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
		"not stated":                                  {egg, unstated, true},
		"possible":                                    {egg, carries(flavor.MayContain), true},
		"there":                                       {egg, carries(flavor.Contains), false},
		"known to be free":                            {egg, plain, false},
		"nothing is avoided":                          {Guest{}, unstated, false},
		"not stated, and holds alcohol":               {Guest{Avoid: egg.Avoid, NoAlcohol: true}, unstated, false},
		"possible, and made with an egg":              {Guest{Avoid: egg.Avoid, NoAnimal: []string{"egg"}}, &flavor.Profile{Animal: []string{"egg"}}, false},
		"not stated, and without a price":             {Guest{Avoid: egg.Avoid, MaxCost: 1}, unstated, false},
		"cleared with nobody knows what":              {Guest{NoAnimal: []string{"egg", flavor.Finings}}, &flavor.Profile{AllergensKnown: true, Animal: []string{flavor.Finings}}, true},
		"cleared so, and made with egg":               {Guest{NoAnimal: []string{"egg", flavor.Finings}}, &flavor.Profile{AllergensKnown: true, Animal: []string{"egg", flavor.Finings}}, false},
		"cleared so, for who eats fish":               {Guest{NoAnimal: []string{"egg"}}, &flavor.Profile{AllergensKnown: true, Animal: []string{flavor.Finings}}, false},
		"sold as free of alcohol, for who takes none": {Guest{NoAlcohol: true, NoTrace: true}, &flavor.Profile{AllergensKnown: true, ABV: flavor.Figure{Value: 0.5, Spread: 0.3}}, true},
		"weak, for who takes none":                    {Guest{NoAlcohol: true, NoTrace: true}, &flavor.Profile{AllergensKnown: true, ABV: flavor.Figure{Value: 0.8}}, false},
		"weak, for who takes no trace":                {Guest{NoTrace: true}, &flavor.Profile{AllergensKnown: true, ABV: flavor.Figure{Value: 5}}, false},
		"stated to hold none":                         {Guest{NoAlcohol: true, NoTrace: true}, &flavor.Profile{AllergensKnown: true}, false},
		"a trace, for who takes traces":               {Guest{NoAlcohol: true}, &flavor.Profile{AllergensKnown: true, ABV: flavor.Figure{Value: 0.5}}, false},
		"what is free of it is not waited":            {egg, &flavor.Profile{FreeOf: []flavor.Allergen{flavor.Eggs}}, false},
	} {
		if got := c.guest.LabelDecides(c.of); got != c.want {
			t.Errorf("%s: a label decides: %v, want %v", name, got, c.want)
		}
	}
}

// What a label decides is told by its allergens, and only by those that the guest avoids.
func TestWhatIsToBeRead(t *testing.T) {
	unstated := &flavor.Profile{}
	both := &flavor.Profile{AllergenMarks: []flavor.AllergenMark{{Allergen: flavor.Milk, Certainty: flavor.MayContain}}}
	for name, c := range map[string]struct {
		guest Guest
		of    *flavor.Profile
		want  string
	}{
		"nothing is avoided":   {Guest{}, unstated, ""},
		"one is not stated":    {Guest{Avoid: []flavor.Allergen{flavor.Gluten}}, unstated, "may carry gluten, which nobody has stated"},
		"two are not stated":   {Guest{Avoid: []flavor.Allergen{flavor.TreeNuts, flavor.Peanuts}}, unstated, "may carry tree nuts or peanuts, which nobody has stated"},
		"one is possible":      {Guest{Avoid: []flavor.Allergen{flavor.Milk}}, both, "may contain milk"},
		"possible and unknown": {Guest{Avoid: []flavor.Allergen{flavor.Milk, flavor.Eggs}}, both, "may contain milk and may carry eggs, which nobody has stated"},
		"a trace of alcohol":   {Guest{NoAlcohol: true, NoTrace: true}, &flavor.Profile{AllergensKnown: true, ABV: flavor.Figure{Value: 0.3}}, "may hold a trace of alcohol unless the label says 0.0 % vol"},
		"the label is no help": {Guest{Avoid: []flavor.Allergen{flavor.Milk}}, &flavor.Profile{AllergenMarks: []flavor.AllergenMark{{Allergen: flavor.Milk, Certainty: flavor.Contains}}}, ""},
	} {
		if got := c.guest.ToRead(c.of); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// What a label must say is told by what stands in the guest's way.
func TestWhatALabelMustSay(t *testing.T) {
	unstated := &flavor.Profile{}
	for name, c := range map[string]struct {
		guest Guest
		of    *flavor.Profile
		want  string
	}{
		"no label decides":       {Guest{}, unstated, ""},
		"one is not stated":      {Guest{Avoid: []flavor.Allergen{flavor.Gluten}}, unstated, "names no gluten"},
		"cleared with something": {Guest{NoAnimal: []string{flavor.Finings}}, &flavor.Profile{AllergensKnown: true, Animal: []string{flavor.Finings}}, "says vegan"},
		"a trace of alcohol":     {Guest{NoAlcohol: true, NoTrace: true}, &flavor.Profile{AllergensKnown: true, ABV: flavor.Figure{Value: 0.3}}, "says 0.0 % vol"},
		"both": {Guest{Avoid: []flavor.Allergen{flavor.Milk, flavor.Eggs}, NoAlcohol: true, NoTrace: true}, &flavor.Profile{ABV: flavor.Figure{Value: 0.3}},
			"names no milk or eggs and says 0.0 % vol"},
	} {
		if got := c.guest.Cleared(c.of); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// Who avoids tree nuts is startled by peanuts, unless the drink has them anyway.
func TestWhatStartles(t *testing.T) {
	carries := func(a flavor.Allergen) *flavor.Profile {
		return &flavor.Profile{AllergensKnown: true, AllergenMarks: []flavor.AllergenMark{{Allergen: a, Certainty: flavor.Contains}}}
	}
	peanut, milk := carries(flavor.Peanuts), carries(flavor.Milk)
	plain := &flavor.Spec{Pours: []flavor.Pour{{Profile: milk}}}
	nuts := Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}
	for name, c := range map[string]struct {
		guest Guest
		of    *flavor.Profile
		at    *flavor.Spec
		want  bool
	}{
		"peanuts for who avoids tree nuts": {nuts, peanut, plain, true},
		"in a drink that has them":         {nuts, peanut, &flavor.Spec{Pours: []flavor.Pour{{Profile: peanut}}}, false},
		"milk":                             {nuts, milk, &flavor.Spec{}, false},
		"for who avoids milk":              {Guest{Avoid: []flavor.Allergen{flavor.Milk}}, peanut, plain, false},
		"of which nobody has stated it":    {nuts, &flavor.Profile{}, plain, false},
	} {
		if got := c.guest.Startles(c.of, c.at); got != c.want {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}
