package cover

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// pouredABV is the strength in % vol of what a drink pours, before ice.
func pouredABV(s *flavor.Spec) float64 {
	var alcohol, ml float64
	for _, p := range s.Pours {
		alcohol += p.ML * p.Profile.ABV.Value
		ml += p.ML
	}
	return alcohol / ml
}

// What is poured stronger than the bound is too strong in the glass, and no drink needs more
// than a fifth of the slack.
func TestStrongestPouredIsSound(t *testing.T) {
	b := bartest.New(t)
	mixer, all := b.Station.Mixer, b.Catalogue.Profiles()
	var checked, near int
	rapid.Check(t, func(rt *rapid.T) {
		spec := flavor.Spec{
			Method:  rapid.SampledFrom(flavor.Methods()).Draw(rt, "method"),
			Service: rapid.SampledFrom(flavor.Services()).Draw(rt, "service"),
		}
		for range rapid.IntRange(1, 6).Draw(rt, "pours") {
			p := rapid.SampledFrom(all).Draw(rt, "ingredient")
			spec.Pours = append(spec.Pours, flavor.Pour{Profile: p, Unit: flavor.Millilitre,
				ML: rapid.Float64Range(1, 90).Draw(rt, "ml")})
		}
		drink, err := mixer.Mix(&spec)
		require.NoError(rt, err)
		if drink.ABV < 1 || drink.ABV > 60 {
			return
		}
		// A limit at the strength of the drink itself is kept by it.
		limit, err := mixer.StrongestPoured(&spec, drink.ABV)
		require.NoError(rt, err)
		poured := pouredABV(&spec)
		checked++
		assert.LessOrEqual(rt, poured, limit/(1+mix.StrengthSlack)*(1+mix.StrengthSlack/5), "%v", spec)
		if poured > limit/(1+mix.StrengthSlack)*0.97 {
			near++
		}
	})
	assert.Positive(t, checked)
	assert.Greater(t, near, checked/20, "the bound is near enough to be of use")
}

// With ice of the bar's own, and with something hot, nothing is ruled out before it is mixed.
func TestStrongestPouredWithOtherIce(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, bartest.AgaveDaisy)
	for _, c := range []struct {
		ice   mix.Ice
		usual bool
	}{
		{mix.Ice{}, true},
		{mix.Ice{Kind: mix.LargeCube, TemperatureC: -8}, false},
		{mix.Ice{TemperatureC: -30}, false},
		{mix.Ice{Wetness: 0.4}, false},
		{mix.Ice{BarC: 40}, false},
		{mix.Ice{Vessel: mix.GlassAndTin}, false},
	} {
		mixer, err := b.Station.Mixer.WithIce(c.ice)
		require.NoError(t, err)
		for _, most := range []float64{0.5, 15, 30} {
			limit, err := mixer.StrongestPoured(spec, most)
			require.NoError(t, err)
			assert.Equal(t, c.usual, !math.IsInf(limit, 1), "%+v", c.ice)
		}
	}
	hot := spec.Clone()
	hot.Pours[0].Heat = flavor.HeatHot
	limit, err := b.Station.Mixer.StrongestPoured(&hot, 15)
	require.NoError(t, err)
	assert.True(t, math.IsInf(limit, 1), "what is hot melts more ice than its strength tells")
	limit, err = b.Station.Mixer.StrongestPoured(spec, 99)
	require.NoError(t, err)
	assert.True(t, math.IsInf(limit, 1), "no spirit ends at 99 %% vol")
}
