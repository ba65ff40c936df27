package guest

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

func TestObjection(t *testing.T) {
	marked := func(known bool, c flavor.Certainty, abv float64, animal ...string) *flavor.Profile {
		p := &flavor.Profile{ID: "p", Name: "p", AllergensKnown: known, ABV: flavor.Figure{Value: abv}, Animal: animal}
		if c != "" {
			p.AllergenMarks = []flavor.AllergenMark{{Allergen: flavor.Milk, Certainty: c}}
		}
		return p
	}
	for _, c := range []struct {
		guest Guest
		of    *flavor.Profile
		want  string
	}{
		{Guest{Avoid: []flavor.Allergen{flavor.Milk}}, marked(true, "", 40), ""},
		{Guest{Avoid: []flavor.Allergen{flavor.Milk}}, marked(true, flavor.Contains, 17), "contains milk"},
		{Guest{Avoid: []flavor.Allergen{flavor.Milk, flavor.Milk}}, marked(true, flavor.MayContain, 17), "may contain milk"},
		{Guest{Avoid: []flavor.Allergen{flavor.Eggs, flavor.Milk}}, marked(false, flavor.Contains, 17), "contains milk"},
		{Guest{Avoid: []flavor.Allergen{flavor.Eggs, flavor.Milk}}, marked(false, "", 44), "may carry eggs or milk (nobody has stated it: read the label)"},
		{Guest{Avoid: []flavor.Allergen{flavor.Eggs}, NoAlcohol: true}, marked(false, "", 44), "holds 44 % vol of alcohol"}, // no label clears that
		{Guest{NoAnimal: []string{"egg", "honey"}}, marked(true, "", 0, "honey"), "is made with honey"},
		{Guest{NoAlcohol: true}, marked(true, "", 0.5), ""},
		{Guest{NoAlcohol: true, NoTrace: true}, marked(true, "", 0.5), "holds a trace of alcohol, 0.5 % vol"},
		{Guest{MaxCost: 1}, marked(true, "", 40), ""}, // a price is not the guest's to avoid
	} {
		assert.Equal(t, c.want, c.guest.Objection(c.of), "%+v", c.guest)
		assert.Equal(t, c.want != "", !c.guest.MayHave(c.of), "%+v", c.guest)
	}
}
