package portion_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/measure"
)

func profile(t *testing.T, id string) *flavor.Profile {
	t.Helper()
	catalogue, err := data.Embedded()
	require.NoError(t, err)
	p, found := catalogue.ByID(id)
	require.True(t, found, id)
	return p
}

// Amounts ascend, none is zero, and a liquid may be poured in the measure of what went.
func TestGrid(t *testing.T) {
	catalogue, err := data.Embedded()
	require.NoError(t, err)
	all := catalogue.Profiles()
	rapid.Check(t, func(rt *rapid.T) {
		ml := measure.OunceML * float64(rapid.IntRange(1, 16).Draw(rt, "quarters")) / 4
		g := portion.NewGrid(ml, rapid.IntRange(0, 10).Draw(rt, "pieces"), flavor.Ounce, rapid.Bool().Draw(rt, "drops"))
		p := rapid.SampledFrom(all).Draw(rt, "of")
		amounts := g.Of(p)
		for i, a := range amounts {
			assert.Positive(rt, a.ML)
			assert.True(rt, i == 0 || amounts[i-1].ML < a.ML, "%s: %v", p.ID, amounts)
		}
		const rounding = 1e-6
		if p.Class.Measured() == flavor.ByJigger {
			assert.True(rt, slices.ContainsFunc(amounts, func(a portion.Amount) bool { return a.ML > ml-rounding && a.ML < ml+rounding }), p.ID)
		}
	})
}

// What was dropped is covered by drops where what stands in is strong, and dry salt goes by the
// pinch, which is what a hand takes of it.
func TestGridOfSalt(t *testing.T) {
	for _, c := range []struct {
		of    string
		drops bool
		least flavor.Unit
	}{{"saline-five-to-one", true, flavor.Drop}, {"saline-five-to-one", false, flavor.Dash}, {"salt", true, flavor.Pinch}, {"salt", false, flavor.Pinch}, {"orange-bitters", true, flavor.Drop}} {
		amounts := portion.NewGrid(0.25, 0, flavor.Millilitre, c.drops).Of(profile(t, c.of))
		require.NotEmpty(t, amounts, c.of)
		assert.Equal(t, c.least, amounts[0].Unit, c.of)
	}
}

// A full measure is one in volume or in alcohol: an ounce of overproof rum is one of two
// ounces of rum, and neither half of it nor twice as much is.
func TestMeasureOf(t *testing.T) {
	rum, strong := profile(t, "white-rum"), profile(t, "overproof-demerara-rum")
	var was portion.Spirits
	was.Add(rum, 60)
	was.Add(profile(t, "lime-juice"), 30)
	assert.Equal(t, 1, was.Bottles, "juice is no spirit")
	for _, c := range []struct {
		of   *flavor.Profile
		ml   float64
		full bool
	}{{rum, 60, true}, {rum, 56, true}, {rum, 50, false}, {rum, 70, false}, {strong, 60 * rum.ABV.Value / strong.ABV.Value, true}, {strong, 15, false}, {strong, 90, false}} {
		var is portion.Spirits
		is.Add(c.of, c.ml)
		assert.Equal(t, c.full, is.MeasureOf(&was), "%g mL of %s", c.ml, c.of.ID)
	}
}
