package service

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/coaching"
	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
)

func triangleOf(drink string, ml float64) coaching.TriangleRequest {
	return coaching.TriangleRequest{TriangleRequest: tasting.TriangleRequest{Tasters: 6, Alpha: 0.05, Power: 0.8, Share: 0.5, Seed: 7}, Drink: drink, GlassML: ml}
}

// No taster gets more alcohol than in a flight, even if the drink is unknown. The glass
// that the refusal suggests is accepted.
func TestTriangleStaysBelowTheAlcoholLimit(t *testing.T) {
	s := testHouse(t)
	drink := s.Menu[0].Spec
	judged, err := s.Judge.Score(&drink)
	require.NoError(t, err)
	for name, abv := range map[string]float64{drink.Name: judged.Drink.ABV, "a drink of nobody's": coaching.SpiritABV} {
		for ml := coaching.LeastTriangleML; ml <= coaching.MostTriangleML; ml += 5 {
			a, err := s.Triangle(t.Context(), triangleOf(name, ml))
			var alcohol *coaching.AlcoholError
			if err != nil {
				require.ErrorAs(t, err, &alcohol)
				assert.ErrorIs(t, err, flavor.ErrInvalid)
				assert.Greater(t, alcohol.EthanolG, tasting.MaxTasterDrinks*tasting.USDrinkG)
				assert.InDelta(t, abv, alcohol.ABVPct, 1e-9)
				a, err = s.Triangle(t.Context(), triangleOf(name, alcohol.FitML))
				require.NoError(t, err)
			}
			// 0.7893 g in a millilitre of ethanol at 20 °C: OIML R 22.
			assert.InDelta(t, 3*min(ml, fit(alcohol, ml))*abv/100*0.7893, a.EthanolG, 0.02)
			assert.LessOrEqual(t, a.EthanolG, tasting.MaxTasterDrinks*tasting.USDrinkG)
			assert.Equal(t, name != drink.Name, a.Assumed)
			assert.Equal(t, 0.8, a.Wanted)
			assert.Greater(t, a.Enough, 6)
		}
	}
}

func fit(e *coaching.AlcoholError, ml float64) float64 {
	if e == nil {
		return ml
	}
	return e.FitML
}

func TestTriangleFaults(t *testing.T) {
	s := testHouse(t)
	for field, r := range map[string]coaching.TriangleRequest{"each": triangleOf("x", 1), "tasters": {TriangleRequest: tasting.TriangleRequest{Tasters: 101, Alpha: 0.05, Power: 0.8, Share: 0.5}, Drink: "x", GlassML: 20},
		"share": {TriangleRequest: tasting.TriangleRequest{Alpha: 0.05, Power: 0.9, Share: 0.2}, Drink: "x", GlassML: 20}} {
		_, err := s.Triangle(t.Context(), r)
		var fault *flavor.DataFault
		require.ErrorAs(t, err, &fault)
		assert.Equal(t, field, fault.Place().Field)
	}
}

// What B is: the drink with the cover in place of the pour that it covers, re-balanced, or
// another drink of the menu; batches of both are enough for every glass.
func TestTriangleSaysHowBothArePoured(t *testing.T) {
	s := testHouse(t)
	drink := s.drinkCalled("Brass Chronometer")
	require.NotNil(t, drink)
	for _, c := range []struct {
		cover, instead string
	}{{"dry orange curaçao", "triple sec"}, {"Lime juice", "lemon juice"}, {"Ropewalk", ""}} {
		r := triangleOf(drink.Name, 20)
		r.Cover = c.cover
		a, err := s.Triangle(t.Context(), r)
		require.NoError(t, err, c.cover)
		require.NotNil(t, a.B, c.cover)
		if c.instead != "" {
			require.NotNil(t, a.Instead, c.cover)
			assert.Equal(t, c.instead, a.Instead.Name, c.cover)
			assert.False(t, a.B.Spec.Has(func(p *flavor.Profile) bool { return p == a.Instead }), "%s still pours %s", c.cover, c.instead)
		} else {
			assert.Nil(t, a.Instead)
		}
		assert.Equal(t, 3*6+2, a.A.Glasses+a.B.Glasses, "three for each of six tasters, and one of each to spare")
		for _, side := range []*coaching.TriangleSide{a.A, a.B} {
			tops := 0.0
			for i := range side.Sheet.Tops {
				tops += side.Sheet.Tops[i].ML
			}
			assert.InDelta(t, 20, side.Sheet.PourML+tops, 1, "mL in a glass of %s", c.cover) // what sugar, contraction and marks do
			assert.InDelta(t, float64(side.Glasses)*side.Sheet.PourML, side.Sheet.TotalML, 0.01)
		}
	}
}

// No test of a drink against itself, nor against what nobody would pour in it.
func TestTriangleRefusesWhatIsNoCover(t *testing.T) {
	s := testHouse(t)
	for cover, says := range map[string]string{"triple sec": "is in Brass Chronometer already", "brass chronometer": "nobody can tell it from itself", "cola": "covers nothing in Brass Chronometer"} {
		r := triangleOf("Brass Chronometer", 20)
		r.Cover = cover
		_, err := s.Triangle(t.Context(), r)
		var fault *flavor.DataFault
		require.ErrorAs(t, err, &fault, cover)
		assert.Equal(t, "cover", fault.Place().Field, cover)
		assert.Contains(t, fault.Message, says)
	}
	unknown := triangleOf("Brass Chronometer", 20)
	unknown.Cover = "moon dust"
	a, err := s.Triangle(t.Context(), unknown)
	require.NoError(t, err, "the bar may pour what nobody here knows")
	assert.Nil(t, a.B)
}
