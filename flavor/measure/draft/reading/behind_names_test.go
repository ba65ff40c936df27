package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// common practice, no source.
func TestWarmthAndNoughts(t *testing.T) {
	s, err := reading.Read("1 1/2 0z aged rum\nblack tea 4oz hot\n.5 oz honey syrup", wholeCatalogue(t))
	require.NoError(t, err)
	assert.InDelta(t, 44.36, s.Pours[0].ML, 0.01)
	assert.Equal(t, "black-tea", s.Pours[1].Profile.ID)
	assert.Equal(t, flavor.HeatHot, s.Pours[1].Heat)
	assert.Equal(t, flavor.Hot, s.Service)
}

// What is pressed of a fruit is poured, whatever article stands before it, and so is what has its amount in
// a bracket behind it: common practice, no source.
func TestPouredInTheFirstSentence(t *testing.T) {
	for text, want := range map[string]string{
		"The juice of one lime, half a teaspoon of sugar, 2 oz white rum. Shake": "30 lime-juice, 1 white-sugar, 59 white-rum",
		"The juice of half a lemon\n2 oz gin\n.5 oz simple syrup\nshake":         "22 lemon-juice, 59 london-dry-gin, 15 simple-syrup",
		"Stir gin (60 ml), dry vermouth (15 ml) and a dash of orange bitters":    "60 london-dry-gin, 15 dry-vermouth, 1 orange-bitters",
		"Shake rum (60 ml), lime (25 ml) and simple syrup (20 ml). Coupe":        "60 white-rum, 25 lime-juice, 20 simple-syrup",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
	assert.Equal(t, "15 vodka, 15 london-dry-gin, 15 white-rum, 22 lemon-juice", listed(t, "L.I. tea: ½ oz each vodka, gin, white rum, ¾ lemon"), "the name of the drink cuts no amount in two")
}

// A measure in brackets says more exactly what a count comes to: common practice, no source.
func TestAMeasureBehindACount(t *testing.T) {
	x := wholeCatalogue(t)
	for text, ml := range map[string]float64{
		"juice of half a lemon (20 ml)": 20, "white of 1 egg (about 1 oz)": 29.57, "1 egg white (about 1 oz)": 29.57, "juice of 1 lime (25 ml)": 25,
		"heavy cream, floated ...... 20 ml": 20,
	} {
		s, err := reading.Read("2 oz gin\n"+text+"\n.75 oz simple syrup", x)
		if assert.NoError(t, err, text) {
			assert.InDelta(t, ml, s.Pours[1].ML, 0.01, text)
		}
	}
}

// What a bottle is made without is in its name, and never set aside: a guest may have asked for
// it. Common practice, no source.
func TestWhatABottleIsMadeWithout(t *testing.T) {
	x := wholeCatalogue(t)
	for text, id := range map[string]string{
		"1 dash Worcestershire-style sauce without fish": "fishless-worcestershire-style-sauce",
		"2 dashes aromatic bitters without alcohol":      "glycerine-aromatic-bitters",
		"2 dashes aromatic bitters no alcohol":           "glycerine-aromatic-bitters",
		"1 dash tobacco-style bitters without tobacco":   "tobacco-style-bitters",
	} {
		s, err := reading.Read("2 oz gin\n"+text+"\nstir, up", x)
		if assert.NoError(t, err, text) && assert.Len(t, s.Pours, 2, text) {
			assert.Equal(t, id, s.Pours[1].Profile.ID, text)
			assert.Empty(t, s.Steps, text)
		}
	}
}

// A name that is not known is asked for, whatever of it is known; common practice, no source.
func TestHalfAKnownNameIsAskedFor(t *testing.T) {
	x := wholeCatalogue(t)
	for _, text := range []string{
		"2 oz gin\n1 oz bitters no fish\nstir, up", "2 oz gin\n1 oz orgeat no nuts\nstir, up", "2 oz gin\n1 oz moon dust\nstir, up",
		"2 gin 1 moon dust .75 lemon shk up", "2 gin 1 moon mix .75 lemon shk up", "2 gin 1 goat syrup .75 lemon shk up",
	} {
		s, err := reading.Read(text, x)
		assert.Error(t, err, "%s: %v", text, s.Pours)
	}
}

// Three quarters of a lemon, or an ounce of it, are poured, wherever they stand; common
// practice, no source.
func TestAMeasuredPourIsNoGarnish(t *testing.T) {
	s, err := reading.Read("2 oz gin 1 oz rum shake .75 oz lemon up", wholeCatalogue(t))
	require.NoError(t, err)
	require.Len(t, s.Pours, 3)
	assert.Equal(t, "lemon-juice", s.Pours[2].Profile.ID)
	assert.Empty(t, s.Garnish)
}

// What a drink is strained over is ice, or is poured and wants its amount; common practice, no
// source.
func TestStrainedOverWhatIsPoured(t *testing.T) {
	x := wholeCatalogue(t)
	_, err := reading.Read("2 oz rye\n1 oz sweet vermouth\nstir, strain over absinthe", x)
	assert.ErrorContains(t, err, "absinthe")
	s, err := reading.Read("2 oz rye\n1 oz sweet vermouth\nstir, strain over a big cube", x)
	require.NoError(t, err)
	assert.Equal(t, flavor.Rocks, s.Service)
}
