package tasting_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/mix"
)

// drinkOf is a finished drink of 100 mL.
func drinkOf(name string, abv, bitter, sugar float64) tasting.Poured {
	d := &mix.Drink{VolumeML: 100, ABV: abv, Bitter: bitter, SugarPer100: sugar}
	d.After.Ethanol = mix.EthanolG(abv, 100)
	return tasting.Poured{Name: name, Drink: d}
}

// The light stands before the strong, then the less bitter, then the drier; what no guest
// can tell apart is in the order of names.
func TestOrderOfSeveral(t *testing.T) {
	drinks := []tasting.Poured{drinkOf("strong", 30, 0, 5), drinkOf("sweet", 15.2, 1, 12), drinkOf("b", 15, 1, 6), drinkOf("a", 14.8, 1.2, 6.3), drinkOf("bitter", 15, 40, 6), drinkOf("light", 7, 60, 20)}
	plan, err := tasting.PlanSeveral(tasting.SeveralRequest{Drinks: drinks, EachML: 30, Guests: 4})
	require.NoError(t, err)
	var names []string
	grams := 0.0
	for _, s := range plan.Shares {
		names = append(names, drinks[s.At].Name)
		grams += drinks[s.At].Drink.After.Ethanol * 0.3
		assert.Equal(t, 2, s.Make, "120 mL of drinks of 100 mL")
		assert.InDelta(t, 80, s.LeftML, 1e-9)
	}
	assert.Equal(t, []string{"light", "a", "b", "sweet", "bitter", "strong"}, names)
	assert.InDelta(t, grams, plan.EthanolG, 1e-9)
	assert.Contains(t, plan.Cautions[0], "1.6 standard drinks", "23.0 g, 14 g each")
}

// A flight keeps to the alcohol that tastings keep to, and every fault is told at once.
func TestSeveralIsRefused(t *testing.T) {
	strong := []tasting.Poured{drinkOf("one", 35, 0, 0), drinkOf("two", 35, 0, 0), drinkOf("three", 35, 0, 0)}
	_, err := tasting.PlanSeveral(tasting.SeveralRequest{Drinks: strong, EachML: 60, Guests: 1})
	require.Len(t, flavor.DataFaultsOf(err), 1)
	assert.Contains(t, err.Error(), "pour 30 ml each")
	_, err = tasting.PlanSeveral(tasting.SeveralRequest{Drinks: strong, EachML: 30, Guests: 1})
	assert.NoError(t, err)
	_, err = tasting.PlanSeveral(tasting.SeveralRequest{Drinks: append(strong[:1:1], tasting.Poured{Name: "none"}), EachML: 500})
	var places []string
	for _, f := range flavor.DataFaultsOf(err) {
		places = append(places, f.Location)
	}
	assert.Equal(t, []string{"each_ml", "guests", "drinks"}, places)
}
