package house

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

// A bottle whose own name says what its kind does not carry may hold it until its label is read.
func TestABottleNamedAfterANut(t *testing.T) {
	kind := &flavor.Profile{ID: "white-rum", Name: "white rum", Class: flavor.ClassRum, AllergensKnown: true}
	for name, want := range map[string]flavor.Allergen{"Hazelnut rum": flavor.TreeNuts, "House almond-washed rum": flavor.TreeNuts, "Milk-washed rum": flavor.Milk, "Peanut fat washed rum": flavor.Peanuts, "Old Anchor white rum": ""} {
		list, faults := Overlay([]*flavor.Profile{kind}, []Bottle{{ID: "b", Name: name, Ingredient: "white-rum", SizeML: 700, Stock: 1}}, nil)
		assert.Empty(t, faults, name)
		c, has := list[0].Allergen(want)
		assert.Equal(t, want != "", has, name)
		if want != "" {
			assert.Equal(t, flavor.MayContain, c, name)
			list, _ = Overlay([]*flavor.Profile{kind}, []Bottle{{ID: "b", Name: name, Ingredient: "white-rum", SizeML: 700, Stock: 1, Label: &Label{ReadBy: "Wren"}}}, nil)
			assert.True(t, list[0].Avoids([]flavor.Allergen{want}), name)
		}
	}
	assert.Empty(t, kind.AllergenMarks)
}
