package mix

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

// juice is a completed juice, in g/L; sugars of USDA SR 26.
func juice(t testing.TB, name string, sugar, citric, malic float64) *flavor.Profile {
	t.Helper()
	total := citric + malic
	p := &flavor.Profile{Name: name, Class: flavor.ClassJuice, Sugar: flavor.Figure{Value: sugar}, Sugars: flavor.SugarBlend{Sucrose: 1},
		Acid: flavor.Figure{Value: total}, Acids: flavor.AcidBlend{Citric: citric / total, Malic: malic / total}}
	require.NoError(t, Complete(p))
	return p
}

// titrated is the acidity of an adjusted juice as a burette finds it: moles of
// acid hydrogen, citric acid 192.12 g/mol with three and malic 134.09 with two,
// over the volume, given back as citric acid.
func titrated(citricG, malicG, volumeML float64) float64 {
	hydrogen := 3*citricG/192.12 + 2*malicG/134.09
	return hydrogen / 3 * 192.12 / volumeML * 1000
}

func TestAdjustAcidByTitration(t *testing.T) {
	const tolerance = 0.05 // g/L
	for _, c := range []struct {
		juice         *flavor.Profile
		citric, malic float64
	}{
		// Karadeniz, Turk J Agric For 28:267, 2004, means.
		{juice(t, "orange juice", 88, 13.28, 7.79), 13.28, 7.79},
		{juice(t, "grapefruit juice", 95, 19.61, 1.03), 19.61, 1.03},
		// 0.6 to 1.2 % with 87 % citric: composition reviews.
		{juice(t, "pineapple juice", 105, 7.0, 1.0), 7.0, 1.0},
	} {
		a, err := AdjustAcid(c.juice, 1000, LimeStrength)
		require.NoError(t, err)
		assert.InDelta(t, LimeStrength.CitricGPerL, a.After.CitricGPerL, 1e-9, c.juice.Name)
		assert.InDelta(t, LimeStrength.MalicGPerL, a.After.MalicGPerL, 1e-9, c.juice.Name)
		want := titrated(c.citric+a.CitricG, c.malic+a.MalicG, a.VolumeML)
		assert.InDelta(t, want, a.TitratableGPerL, tolerance, c.juice.Name)
		assert.InDelta(t, titrated(LimeStrength.CitricGPerL, LimeStrength.MalicGPerL, 1000), a.TitratableGPerL, tolerance, c.juice.Name)
		assert.InDelta(t, titrated(c.citric, c.malic, 1000), a.TitratableBefore, tolerance)
		t.Logf("a litre of %s: %.1f g citric, %.1f g malic, then %.0f mL", c.juice.Name, a.CitricG, a.MalicG, a.VolumeML)
	}
}

// Arnold, Liquid Intelligence, 2014 (from memory): 32 g citric and 20 g malic
// acid to a litre of orange juice of 0.8 % acid give it the strength of lime.
// The rule leaves out the room that the powder takes up, 3 %.
func TestAdjustAcidMeetsTheBook(t *testing.T) {
	a, err := AdjustAcid(juice(t, "orange juice", 88, 8, 0), 1000, LimeStrength)
	require.NoError(t, err)
	assert.InEpsilon(t, 32, a.CitricG, 0.05)
	assert.InEpsilon(t, 20, a.MalicG, 0.05)
	assert.Greater(t, a.CitricG+a.MalicG, 52.0)
	assert.InDelta(t, 1033, a.VolumeML, 2)
}

func TestAdjustAcidProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		j := juice(t, "juice", rapid.Float64Range(0, 150).Draw(rt, "sugar"), rapid.Float64Range(0.1, 20).Draw(rt, "citric"), rapid.Float64Range(0.1, 10).Draw(rt, "malic"))
		target := Acids{rapid.Float64Range(20, 200).Draw(rt, "to citric"), rapid.Float64Range(10, 200).Draw(rt, "to malic")}
		ml := rapid.Float64Range(1, 10000).Draw(rt, "ml")
		a, err := AdjustAcid(j, ml, target)
		require.NoError(t, err)
		assert.InDelta(t, target.CitricGPerL, a.After.CitricGPerL, 1e-6)
		assert.InDelta(t, target.MalicGPerL, a.After.MalicGPerL, 1e-6)
		assert.Greater(t, a.VolumeML, ml)
		twice, err := AdjustAcid(j, 2*ml, target)
		require.NoError(t, err)
		assert.InEpsilon(t, 2*a.CitricG, twice.CitricG, 1e-9)
	})
}

func TestAdjustAcidRefuses(t *testing.T) {
	j := juice(t, "lemon juice", 25, 48, 2.5)
	nan := math.NaN()
	for name, err := range map[string]error{
		"no juice":        second(AdjustAcid(nil, 100, LimeStrength)),
		"no volume":       second(AdjustAcid(j, 0, LimeStrength)),
		"volume NaN":      second(AdjustAcid(j, nan, LimeStrength)),
		"target too high": second(AdjustAcid(j, 100, Acids{CitricGPerL: 400})),
		"target NaN":      second(AdjustAcid(j, 100, Acids{CitricGPerL: 60, MalicGPerL: nan})),
		"too much citric": second(AdjustAcid(j, 100, Acids{CitricGPerL: 40, MalicGPerL: 5})),
		"too much malic":  second(AdjustAcid(juice(t, "apple juice", 100, 0.1, 6), 100, Acids{CitricGPerL: 5})),
	} {
		assert.ErrorIs(t, err, flavor.ErrInvalid, name)
	}
	_, err := AdjustAcid(j, 100, Acids{CitricGPerL: 40, MalicGPerL: 5})
	assert.ErrorContains(t, err, "g/L of acid, as citric, more than the 44.8 asked for; raise the target")
}

// Too much of one acid stands for as much of the other as is as sour: pineapple, which has a
// little malic acid, is made as sour as lemon by citric acid alone.
func TestAdjustAcidWithTooMuchOfOne(t *testing.T) {
	const tolerance = 0.05 // g/L
	for _, c := range []struct {
		juice         *flavor.Profile
		target        Acids
		citric, malic bool // which powder is added
	}{
		{juice(t, "pineapple juice", 105, 7.0, 1.0), LemonStrength, true, false},
		{juice(t, "lemon juice", 25, 48, 2.5), LimeStrength, false, true},
	} {
		a, err := AdjustAcid(c.juice, 1000, c.target)
		require.NoError(t, err, c.juice.Name)
		assert.InDelta(t, titrated(c.target.CitricGPerL, c.target.MalicGPerL, 1000), a.TitratableGPerL, tolerance, c.juice.Name)
		assert.Equal(t, []bool{c.citric, c.malic}, []bool{a.CitricG > 0, a.MalicG > 0}, c.juice.Name)
	}
}

// A juice that is as sour as is asked for takes no powder.
func TestAdjustAcidAsItIs(t *testing.T) {
	for _, c := range []struct{ citric, malic float64 }{{48, 2.5}, {60, 7}, {13.28, 7.79}, {45.86, 1.1}} {
		j := juice(t, "juice", 25, c.citric, c.malic)
		for _, ml := range []float64{1, 90, 1000, 1e6} {
			a, err := AdjustAcid(j, ml, Acids{CitricGPerL: c.citric, MalicGPerL: c.malic})
			require.NoError(t, err, "%v g/L of citric, %v mL", c.citric, ml)
			assert.InDelta(t, 0, a.CitricG+a.MalicG, 1e-6*ml)
			assert.GreaterOrEqual(t, min(a.CitricG, a.MalicG), 0.0)
		}
	}
}
