package mix

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

// Computed elsewhere from OIML R 22: 100 mL of 96 % and 100 mL of water make
// 193.92 mL at 49.50 % vol; 50 mL of 40 % and 50 mL of water 99.96 mL at 20.01.
func TestDilute(t *testing.T) {
	for _, c := range []struct{ ml, from, to, water, final float64 }{
		{100, 96, 49.505, 100, 193.92},
		{50, 40, 20.008, 50, 99.96},
		{50, 100, 51.834, 50, 96.46},
	} {
		d, err := Dilute(c.ml, c.from, c.to)
		require.NoError(t, err)
		assert.InDelta(t, c.water, d.WaterML, 0.05)
		assert.InDelta(t, c.final, d.FinalML, 0.05)
		assert.InDelta(t, c.to, d.ABV, 1e-9)
	}
}

// Alcoholometric tables give 40 % vol as 33.300 % by mass and 96 % as 93.838, of 0.80742
// g/mL (OIML R 22): a kilogram of the one becomes 93.838/33.300 kg of the other.
func TestDiluteByTheScales(t *testing.T) {
	const tolerance = 0.2 // g, of tables printed to 0.001 %
	d, err := Dilute(1000/0.80742, 96, 40)
	require.NoError(t, err)
	assert.InDelta(t, 1000*93.838/33.300-1000, d.WaterG, tolerance)
	assert.InDelta(t, 1000, d.SpiritG, tolerance)
	assert.InDelta(t, 33.300, d.MassPercent, 0.001)
}

func TestDilutionsAgree(t *testing.T) {
	const rounding = 1e-5 // the density of ethanol is stated to five digits
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.Float64Range(1, 100).Draw(t, "from")
		to := rapid.Float64Range(0.5, from).Draw(t, "to")
		ml := rapid.Float64Range(1, 4000).Draw(t, "ml")
		d, err := Dilute(ml, from, to)
		require.NoError(t, err)
		assert.InEpsilon(t, ml, d.SpiritML, 1e-9)
		assert.InDelta(t, d.FinalG, d.SpiritG+d.WaterG, 1e-9*d.FinalG, "mass")
		assert.InEpsilon(t, ml*from, d.FinalML*to, rounding, "the ethanol stays")
		assert.GreaterOrEqual(t, d.WaterML, -1e-9)
		assert.InDelta(t, d.ContractionML, d.SpiritML+d.WaterML-d.FinalML, 1e-9)
		back, err := DiluteTo(d.FinalML, from, to)
		require.NoError(t, err)
		assert.InEpsilon(t, ml, back.SpiritML, rounding)
	})
}

func TestDiluteRefuses(t *testing.T) {
	nan := math.NaN()
	for name, err := range map[string]error{
		"upwards":       second(Dilute(100, 40, 50)),
		"to nothing":    second(Dilute(100, 40, 0)),
		"above 100":     second(Dilute(100, 101, 50)),
		"NaN":           second(Dilute(100, nan, 50)),
		"NaN target":    second(Dilute(100, 40, nan)),
		"no spirit":     second(Dilute(0, 40, 20)),
		"no volume":     second(DiluteTo(nan, 40, 20)),
		"volume up":     second(DiluteTo(100, 20, 40)),
		"from nothing":  second(DiluteTo(100, 0, 0)),
		"endless":       second(Dilute(math.Inf(1), 40, 20)),
		"scale":         second(Scale(&flavor.Spec{}, 0)),
		"scale NaN":     second(Scale(&flavor.Spec{}, nan)),
		"scale endless": second(Scale(&flavor.Spec{}, math.Inf(1))),
	} {
		assert.ErrorIs(t, err, flavor.ErrInvalid, name)
	}
	_, err := Dilute(100, 40, 50)
	assert.ErrorContains(t, err, "50 % vol cannot be reached from 40 % vol with water; choose a target")
}
