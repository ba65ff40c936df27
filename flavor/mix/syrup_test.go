package mix

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

// sucroseRows: brix; density at 20 °C in g/mL of the CRC Handbook of Chemistry
// and Physics (aqueous sucrose), of ICUMSA SPS-4 (Sugar Technologists Manual,
// 1995) and of NBS Circular 440, 1942 (from memory); g/L of the CRC. Zero: not
// given.
var sucroseRows = []struct{ brix, crc, icumsa, nbs, crcGPerL float64 }{
	{0, 0.9982, 0.9982, 0.998234, 0}, {5, 1.0178, 1.0178, 1.017854, 50.9}, {10, 1.0381, 1.0381, 1.038143, 103.8},
	{12, 1.0465, 1.0464, 0, 125.6}, {15, 1.0592, 1.0592, 1.059165, 158.9}, {20, 1.0810, 1.0810, 1.080997, 216.2},
	{25, 0, 1.1036, 1.10356, 0}, {30, 1.1270, 1.1270, 1.12698, 338.1}, {35, 0, 1.1513, 1.15128, 0},
	{40, 1.1765, 1.1765, 1.17645, 470.6}, {45, 0, 1.2026, 1.20254, 0}, {50, 1.2295, 1.2297, 1.22957, 614.8},
	{55, 0, 1.2576, 1.25754, 0}, {60, 1.2864, 1.2866, 1.28646, 771.9}, {65, 0, 1.3166, 1.31633, 0},
	{70, 1.3472, 1.3475, 1.34717, 943.1}, {75, 0, 1.3794, 0, 0}, {80, 1.4117, 0, 0, 1129.4},
}

func TestSucroseDensity(t *testing.T) {
	const (
		densityTolerance = 0.0005 // g/mL: the three tables differ by 0.0003
		contentTolerance = 0.0005 // relative, for g/L
		printed          = 0.05   // g/L, half the last digit
	)
	var worstDensity, worstContent float64
	for _, r := range sucroseRows {
		got := SyrupDensity(r.brix / 100)
		for _, want := range []float64{r.crc, r.icumsa, r.nbs} {
			if want > 0 {
				assert.InDelta(t, want, got, densityTolerance, "%v °Bx", r.brix)
				worstDensity = max(worstDensity, math.Abs(got-want))
			}
		}
		if r.crcGPerL > 0 {
			content, err := BrixToGPerL(r.brix)
			require.NoError(t, err)
			assert.InDelta(t, r.crcGPerL, content, printed+contentTolerance*r.crcGPerL, "%v °Bx", r.brix)
			worstContent = max(worstContent, math.Abs(content-r.crcGPerL))
		}
	}
	t.Logf("furthest from the tables: %.5f g/mL, %.2f g/L", worstDensity, worstContent)
}

// A profile that states the sugar of the table must come out with the water
// and the density of the table: the ledger's volume is the syrup's volume.
func TestCompleteMeetsSucroseTables(t *testing.T) {
	for _, r := range sucroseRows {
		if r.crc == 0 || r.brix == 0 {
			continue
		}
		p := made(t, 0, r.crcGPerL, 0)
		assert.InDelta(t, r.crc, p.DensityGPerML, 0.0005, "%v °Bx", r.brix)
		assert.InDelta(t, r.crc*(1-r.brix/100), p.WaterGPerML, 0.0006, "%v °Bx", r.brix)
	}
}

func TestBrixBothWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		brix := rapid.Float64Range(0, maxBrix).Draw(t, "brix")
		g, err := BrixToGPerL(brix)
		require.NoError(t, err)
		back, err := GPerLToBrix(g)
		require.NoError(t, err)
		assert.InDelta(t, brix, back, 1e-9)
	})
}

// CRC Handbook, aqueous sucrose: 50 % by mass holds 614.8 g/L at 1.2295 g/mL,
// so a litre is 614.8 g of sugar and as much water; 10 % holds 103.8 g/L.
func TestMakeSyrup(t *testing.T) {
	const tolerance = 0.3 // g
	for _, c := range []struct{ brix, yield, sugar, water float64 }{
		{50, 1000, 614.8, 614.8}, {10, 1000, 103.8, 934.3}, {60, 500, 385.95, 257.25},
	} {
		s, err := MakeSyrup(c.brix, c.yield)
		require.NoError(t, err)
		assert.InDelta(t, c.sugar, s.SugarG, tolerance, "%v °Bx", c.brix)
		assert.InDelta(t, c.water, s.WaterG, tolerance, "%v °Bx", c.brix)
		assert.InDelta(t, s.MassG, s.SugarG+s.WaterG, 1e-9)
		assert.InDelta(t, s.MassG, s.YieldML*s.DensityGPerML, 1e-9)
		assert.False(t, s.Crystals)
	}
	rich, err := MakeSyrup(200.0/3, 1000)
	require.NoError(t, err)
	assert.InDelta(t, 884.5, rich.SugarGPerL, 0.7, "two to one: 1.3266 g/mL by the ICUMSA equation, so 884 to 885")
	assert.True(t, rich.Crystals, "66.7 °Bx seeds at 20 °C")
}

// By the cross of masses, equal masses of 20 and 60 °Bx make 40 °Bx; the CRC
// densities 1.0810, 1.2864 and 1.1765 give the volumes.
func TestBlendSyrups(t *testing.T) {
	b, err := BlendSyrups(60, 20, 40, 1000)
	require.NoError(t, err)
	assert.InDelta(t, 1176.5/2, b.First.MassG, 0.3)
	assert.InDelta(t, 1176.5/2, b.Second.MassG, 0.3)
	assert.InDelta(t, 588.25/1.2864, b.First.YieldML, 0.3)
	assert.InDelta(t, 588.25/1.0810, b.Second.YieldML, 0.3)
	assert.InDelta(t, 470.6, b.Mixed.SugarGPerL, 0.3)
}

// Honey of 82.12 % sugars (USDA SR 26, NDB 19296) to 50 %: by masses, 50/82.12
// of the syrup is honey, 60.89 %; the rest is water.
func TestHoneySyrup(t *testing.T) {
	b, err := HoneySyrup(HoneySugarPercent, 50, 1000)
	require.NoError(t, err)
	assert.InDelta(t, 1229.5*0.6089, b.First.MassG, 0.5)
	assert.InDelta(t, 1229.5*0.3911, b.Second.MassG, 0.5)
	assert.InDelta(t, b.Second.MassG/WaterDensity, b.Second.YieldML, 1e-9)
	assert.InDelta(t, 614.8, b.First.SugarG, 0.3, "the sugar of a litre of 50 °Bx")
}

func TestBlendsKeepMassAndSugar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(0, 80).Draw(t, "low")
		high := rapid.Float64Range(low+0.1, maxBrix).Draw(t, "high")
		target := rapid.Float64Range(low, high).Draw(t, "target")
		b, err := BlendSyrups(high, low, target, rapid.Float64Range(1, 1e5).Draw(t, "mL"))
		require.NoError(t, err)
		assert.InEpsilon(t, b.Mixed.MassG, b.First.MassG+b.Second.MassG, 1e-9)
		assert.InDelta(t, b.Mixed.SugarG, b.First.SugarG+b.Second.SugarG, 1e-9*b.Mixed.MassG)
		assert.GreaterOrEqual(t, b.First.MassG, 0.0)
		assert.GreaterOrEqual(t, b.Second.MassG, -1e-9)
	})
}

func TestSyrupsRefuse(t *testing.T) {
	nan := math.NaN()
	for name, err := range map[string]error{
		"too thick":         second(MakeSyrup(86, 100)),
		"below zero":        second(MakeSyrup(-1, 100)),
		"not a number":      second(MakeSyrup(nan, 100)),
		"no yield":          second(MakeSyrup(50, 0)),
		"endless yield":     second(MakeSyrup(50, math.Inf(1))),
		"brix":              second(BrixToGPerL(nan)),
		"g/L":               second(GPerLToBrix(1300)),
		"target above both": second(BlendSyrups(50, 20, 55, 100)),
		"target below both": second(BlendSyrups(50, 20, 10, 100)),
		"the same twice":    second(BlendSyrups(50, 50, 50, 100)),
		"blend of NaN":      second(BlendSyrups(nan, 50, 50, 100)),
		"blend of nothing":  second(BlendSyrups(20, 50, 30, 0)),
		"honey too thin":    second(HoneySyrup(82, 84, 100)),
		"honey to water":    second(HoneySyrup(82, 0, 100)),
	} {
		assert.ErrorIs(t, err, flavor.ErrInvalid, name)
	}
	_, err := BlendSyrups(50, 20, 55, 100)
	assert.ErrorContains(t, err, "55 °Bx cannot be blended from 50 and 20 °Bx; choose a target between")
}

func second[T any](_ T, err error) error { return err }

func TestKeeping(t *testing.T) {
	last := 0
	for _, brix := range []float64{0, 29, 50, 60, 66.7, 85} {
		k, err := Keeping(brix, false)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, k.ToDays, last, "more sugar keeps no shorter")
		assert.Less(t, k.FromDays, k.ToDays)
		assert.Contains(t, k.Text, "food-safety law comes first")
		assert.Equal(t, flavor.OriginPractice, k.Origin)
		last = k.ToDays
		fresh, err := Keeping(brix, true)
		require.NoError(t, err)
		assert.LessOrEqual(t, fresh.ToDays, min(7, k.ToDays))
		assert.Contains(t, fresh.Text, "food-safety law comes first")
	}
	for _, brix := range []float64{-1, 86, math.NaN()} {
		assert.ErrorIs(t, second(Keeping(brix, false)), flavor.ErrInvalid)
	}
}
