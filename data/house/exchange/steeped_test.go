package exchange_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor"
)

// What steeps and is strained out gives aroma and allergens, and neither strength nor volume.
func TestSteepedSolids(t *testing.T) {
	shelf := shelf(t)
	water := house.Pour{Ingredient: "water", Amount: 500, Unit: flavor.Millilitre}
	sugar := house.Pour{Ingredient: "white-sugar", Amount: 500, Unit: flavor.Gram}
	plain := house.Made{ID: "house-syrup", Name: "House syrup", Class: flavor.ClassSyrup, Parts: []house.Pour{water, sugar}}
	bare, err := plain.Profile(shelf)
	require.NoError(t, err)
	for name, want := range map[string]flavor.Allergen{"blanched almonds": flavor.TreeNuts, "hazelnuts": flavor.TreeNuts, "toasted sesame seeds": flavor.Sesame,
		"peanuts": flavor.Peanuts, "rolled oats": flavor.Gluten, "pumpkin seeds": ""} {
		m := plain
		m.Steeped = []house.Steeped{{Name: name, Grams: 300}}
		require.NoError(t, house.Check(m), name)
		p, err := m.Profile(shelf)
		require.NoError(t, err, name)
		assert.InDelta(t, bare.Sugar.Value, p.Sugar.Value, 1e-9, name)
		assert.Zero(t, p.ABV.Value, name)
		if want == "" {
			assert.Empty(t, p.AllergenMarks, name)
			continue
		}
		has, marked := p.Allergen(want)
		assert.True(t, marked, name)
		assert.Equal(t, flavor.Contains, has, name)
		assert.Greater(t, p.Aroma.Total(), bare.Aroma.Total(), name)
		faults := m
		faults.Steeped = []house.Steeped{{Name: name + " liqueur", Grams: 20}}
		assert.Error(t, house.Check(faults), "what is made of it is poured")
	}
}
