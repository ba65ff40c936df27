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
		{Guest{NoAnimal: []string{"egg", flavor.Finings}}, marked(true, "", 0, flavor.Finings), "may be cleared with what comes from animals (nobody has stated it: read the label)"},
		{Guest{NoAnimal: []string{"egg", flavor.Insect}}, marked(true, "", 24, flavor.Insect), "may hold what comes from insects, such as the dye carmine"},
		{Guest{NoAlcohol: true}, marked(true, "", 0.5), ""},
		{Guest{NoAlcohol: true, NoTrace: true}, marked(true, "", 0.5), "holds a trace of alcohol, 0.5 % vol"},
		{Guest{NoAlcohol: true, NoTrace: true}, marked(true, "", 0), ""},
		{Guest{MaxCost: 1}, marked(true, "", 40), ""}, // a price is not the guest's to avoid
	} {
		assert.Equal(t, c.want, c.guest.Objection(c.of), "%+v", c.guest)
		assert.Equal(t, c.want != "", !c.guest.MayHave(c.of), "%+v", c.guest)
	}
}

// A kind of bottle that holds no alcohol give or take a little is not stated to hold none.
func TestOnlyWhatStatesNoAlcoholIsFreeOfTraces(t *testing.T) {
	about := &flavor.Profile{ID: "p", Name: "p", AllergensKnown: true, ABV: flavor.Figure{Value: 0, Spread: 0.3}}
	none, trace := Guest{NoAlcohol: true}, Guest{NoAlcohol: true, NoTrace: true}
	assert.True(t, none.MayHave(about))
	assert.False(t, trace.MayHave(about))
	assert.Equal(t, "may hold a trace of alcohol (nobody has stated 0.0 % vol: read the label)", trace.Objection(about))
	about.ABV.Spread = 0
	assert.True(t, trace.MayHave(about))
}
