package mix

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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
			content := syrupOf(r.brix, 0).SugarGPerL
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

func TestSyrupsRefuse(t *testing.T) {
	nan := math.NaN()
	for name, err := range map[string]error{
		"too thick":     second(MakeSyrup(86, 100)),
		"below zero":    second(MakeSyrup(-1, 100)),
		"not a number":  second(MakeSyrup(nan, 100)),
		"no yield":      second(MakeSyrup(50, 0)),
		"endless yield": second(MakeSyrup(50, math.Inf(1))),
	} {
		assert.ErrorIs(t, err, flavor.ErrInvalid, name)
	}
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
