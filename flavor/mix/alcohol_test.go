package mix

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// NIAAA: a US standard drink is 14 g, 0.6 US fl oz of ethanol, which is 1.5 fl
// oz at 40 %, 5 fl oz at 12 % or 12 fl oz at 5 %.
func TestEthanolG(t *testing.T) {
	const tolerance = 0.05 // g: 14.0
	for ounces, abv := range map[float64]float64{1.5: 40, 5: 12, 12: 5} {
		assert.InDelta(t, 14.0, EthanolG(abv, ounces*measure.OunceML), tolerance, "%v fl oz at %v %%", ounces, abv)
	}
	assert.InDelta(t, 7.89, EthanolG(40, 25), 0.005, "25 mL of 40 %")
	l := ethanolWaterOf(25, 40)
	assert.InDelta(t, EthanolG(40, 25), l.Ethanol, 1e-3, "the ledger says the same")
}

func TestStandardDrinks(t *testing.T) {
	drinks := StandardDrinks(28)
	assert.True(t, slices.IsSortedFunc(drinks, func(a, b Standard) int { return compare(a.Country, b.Country) }))
	count := map[string]float64{}
	for _, d := range drinks {
		assert.NotEmpty(t, d.Source, d.Country)
		assert.True(t, d.Origin.Valid(), d.Country)
		assert.InDelta(t, 28, d.Count*d.Grams, 1e-9)
		count[d.Country] = d.Count
	}
	assert.Len(t, count, len(drinks), "no country twice")
	assert.InDelta(t, 2, count["United States"], 1e-9)
	assert.InDelta(t, 28/7.8924, count["United Kingdom"], 1e-9, "10 mL of ethanol")
	assert.InDelta(t, 2.8, count["Australia"], 1e-9)
	assert.InDelta(t, 1.4, count["Austria"], 1e-9)

	drinks[0].Grams = 0
	assert.NotZero(t, StandardDrinks(28)[0].Grams, "the table is not shared")
	for _, none := range []float64{0, -3, math.NaN()} {
		assert.Zero(t, StandardDrinks(none)[0].Count)
	}
}

func compare(a, b string) int {
	if a < b {
		return -1
	}
	return 1
}

// Regulation (EU) No 1169/2011, Annex XIV: kcal and kJ a gram.
func TestEnergy(t *testing.T) {
	l := ethanolWaterOf(100, 40)
	assert.InDelta(t, 221.0, EnergyKcal(&l), 0.05, "100 mL of 40 %")
	assert.InDelta(t, 29*31.57, energyKJ(&l), 0.1)
	for _, c := range []struct {
		l        Ledger
		kcal, kj float64
	}{
		{Ledger{Ethanol: 1}, 7, 29}, {Ledger{Sugar: 1}, 4, 17}, {Ledger{Acid: 1}, 3, 13},
		{Ledger{Fat: 1, Texture: 1}, 9, 37}, {Ledger{Texture: 1}, 4, 17}, {Ledger{Water: 1, Salt: 1}, 0, 0},
	} {
		assert.InDelta(t, c.kcal, EnergyKcal(&c.l), 1e-12)
		assert.InDelta(t, c.kj, energyKJ(&c.l), 1e-12)
	}
	// A daiquiri by hand: 18.94 g of ethanol, 14.2 g of sugar, 1.35 g of acid.
	d, err := mixer(t).Mix(specOf(t, "daiquiri", flavor.Shake, flavor.Up, bookDrinks[0].parts...))
	assert.NoError(t, err)
	assert.InDelta(t, 7*18.94+4*14.2+3*1.35, d.EnergyKcal, 0.3)
}

func TestEquivalentsOfAcidsAndSugars(t *testing.T) {
	assert.InDelta(t, 1, CitricOf(flavor.AcidBlend{Citric: 1}), 1e-12)
	assert.InDelta(t, 192.12/3/(134.09/2), CitricOf(flavor.AcidBlend{Malic: 1}), 1e-3, "molar masses over acid hydrogens")
	assert.InDelta(t, 64.04/60.05, CitricOf(flavor.AcidBlend{Acetic: 1}), 1e-12)
	assert.InDelta(t, 1, SweetnessOf(flavor.SugarBlend{Sucrose: 1}), 1e-12)
	assert.InDelta(t, 1, SweetnessOf(flavor.SugarBlend{Glucose: 0.5, Fructose: 0.5}), 0.01, "invert sugar")
}
