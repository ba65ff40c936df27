package mix

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// oimlTolerance is in kg/m³: the check points are rounded to 0.01.
const oimlTolerance = 0.05

// oimlPoints are densities in kg/m³ of mixtures whose strength at 20 °C is
// given: OIML R 22, Table IVa, and European Pharmacopoeia 5.5 at 20 °C; the
// general formula of OIML R 22, computed elsewhere, at other temperatures.
var oimlPoints = []struct{ percentVol, celsius, want float64 }{
	{0, 20, 998.20}, {5, 20, 991.06}, {10, 20, 984.71}, {15, 20, 978.97}, {20, 20, 973.56},
	{25, 20, 968.10}, {30, 20, 962.21}, {35, 20, 955.59}, {37.5, 20, 951.94}, {40, 20, 948.05},
	{43, 20, 943.06}, {45, 20, 939.54}, {46, 20, 937.73}, {47, 20, 935.88}, {50, 20, 930.14},
	{55, 20, 919.96}, {57.5, 20, 914.62}, {60, 20, 909.11}, {63, 20, 902.31}, {70, 20, 885.56},
	{75.5, 20, 871.48}, {80, 20, 859.27}, {90, 20, 829.18}, {95, 20, 811.38}, {96, 20, 807.42},
	{97, 20, 803.27}, {100, 20, 789.24},
	{40, 0, 960.63}, {40, -10, 966.41}, {40, -20, 971.82}, {40, 15, 951.33}, {40, 15.56, 950.97},
	{40, 30, 941.19}, {40, 40, 933.97}, {50, 15.56, 933.47}, {0, 4, 999.97}, {96, 15, 811.73}, {20, -5, 979.34},
}

func TestEthanolWaterDensityMeetsOIML(t *testing.T) {
	worst := 0.0
	for _, c := range oimlPoints {
		got := ethanolWater(MassFraction(c.percentVol/100), c.celsius)
		assert.InDelta(t, c.want, 1000*got, oimlTolerance, "%v %% vol at %v °C", c.percentVol, c.celsius)
		worst = max(worst, math.Abs(1000*got-c.want))
	}
	t.Logf("furthest from OIML R 22: %.3f kg/m³", worst)
}

// The masses per cent that belong to strengths, same table.
func TestMassFraction(t *testing.T) {
	const tolerance = 0.0006 // per cent: printed to 0.001
	for vol, mass := range map[float64]float64{5: 3.982, 10: 8.015, 20: 16.214, 37.5: 31.091, 40: 33.300, 50: 42.426,
		57.5: 49.618, 75.5: 68.375, 90: 85.665, 96: 93.838, 97: 95.305} {
		assert.InDelta(t, mass, 100*MassFraction(vol/100), tolerance, "%v %% vol", vol)
	}
	assert.InDelta(t, 0, MassFraction(-1), 1e-12)
	assert.InDelta(t, 1, MassFraction(2), 1e-12)
}

// Osborne, McKelvy and Bearce, Bulletin of the Bureau of Standards vol. 9
// (1913): densities in kg/m³ by mass per cent, measured long before OIML R 22.
func TestEthanolWaterDensityMeetsBureauOfStandards(t *testing.T) {
	const tolerance = 0.15 // kg/m³
	worst := 0.0
	for _, c := range []struct{ massPercent, celsius, want float64 }{
		{45, 20, 924.72}, {50, 20, 913.84}, {55, 20, 902.58}, {60, 20, 891.13}, {65, 20, 879.48}, {70, 20, 867.66},
		{75, 20, 855.64}, {80, 20, 843.44}, {50, 10, 921.62}, {50, 40, 897.50}, {60, 10, 899.27}, {70, 40, 850.25},
		{80, 15, 847.72}, {80, 25, 839.11},
	} {
		got := ethanolWater(c.massPercent/100, c.celsius)
		assert.InDelta(t, c.want, 1000*got, tolerance, "%v %% by mass at %v °C", c.massPercent, c.celsius)
		worst = max(worst, math.Abs(1000*got-c.want))
	}
	t.Logf("furthest from the 1913 table: %.3f kg/m³", worst)
}

// The named constants are the ends of the formula.
func TestDensityConstants(t *testing.T) {
	assert.InDelta(t, WaterDensity, ethanolWater20(0), 5e-6)
	assert.InDelta(t, EthanolDensity, ethanolWater20(1), 5e-6)
}

// ethanolWaterOf is a ledger of ml millilitres at a strength in % vol.
func ethanolWaterOf(ml, abv float64) Ledger {
	p := MassFraction(abv / 100)
	g := ml * ethanolWater20(p)
	return Ledger{Ethanol: g * p, Water: g * (1 - p)}
}

// Computed elsewhere from OIML R 22.
func TestContraction(t *testing.T) {
	for _, c := range []struct {
		firstML, firstABV, waterML float64
		wantML, wantABV            float64
	}{
		{50, 100, 50, 96.46, 51.83},
		{100, 96, 100, 193.92, 49.50},
		{50, 40, 50, 99.96, 20.01},
	} {
		l := ethanolWaterOf(c.firstML, c.firstABV)
		l.Water += c.waterML * WaterDensity
		assert.InDelta(t, c.wantML, l.VolumeML(), 0.01)
		assert.InDelta(t, c.wantABV, l.ABV(), 0.01)
	}
	half := ethanolWaterOf(50, 96)
	half.Water += 50 * WaterDensity
	assert.Less(t, half.VolumeML(), 97.0, "50 mL of 96 % and 50 mL of water")
}

// Pure ethanol and pure water contract at every share. Weak spirits and water
// do not: by OIML R 22 they swell, by no more than 0.16 %.
func TestMixingEthanolAndWaterContracts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(0.1, 1000).Draw(t, "ethanol mL"), rapid.Float64Range(0.1, 1000).Draw(t, "water mL")
		l := ethanolWaterOf(a, 100)
		l.Water += b * WaterDensity
		assert.LessOrEqual(t, l.VolumeML(), (a+b)*(1+1e-6))
	})
	rapid.Check(t, func(t *rapid.T) {
		const swells = 0.0016
		a, b := rapid.Float64Range(1, 100).Draw(t, "a mL"), rapid.Float64Range(1, 100).Draw(t, "b mL")
		one := ethanolWaterOf(a, rapid.Float64Range(0, 100).Draw(t, "a % vol"))
		two := ethanolWaterOf(b, rapid.Float64Range(0, 100).Draw(t, "b % vol"))
		mixed := one.Plus(&two, 1)
		assert.Less(t, mixed.VolumeML(), (a+b)*(1+swells))
		assert.Greater(t, mixed.VolumeML(), (a+b)*0.96)
	})
}

func TestColdMixturesAreDenserAndSmaller(t *testing.T) {
	p := parts{ethanol: 20, water: 100, sugar: 15}
	assert.Less(t, p.volumeAt(-5), p.volumeAt(20))
	assert.InDelta(t, p.volumeML(), p.volumeAt(20), 1e-9)
	assert.InDelta(t, p.volumeAt(-20), p.volumeAt(-80), 0, "the formula ends at −20 °C")
	dry := parts{sugar: 10}
	assert.InDelta(t, 10/sucroseDensity, dry.volumeAt(0), 1e-9)
}
