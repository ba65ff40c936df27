package cover

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
)

// Whatever is ruled out by what is poured would be too strong in the glass, and
// no drink needs more than a fifth of the slack.
func TestStrengthIsRuledOutSoundly(t *testing.T) {
	b := newBench(t)
	all := b.catalogue.Profiles()
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
		drink, err := b.finder.mixer.Mix(&spec)
		require.NoError(rt, err)
		if drink.ABV < 1 || drink.ABV > 60 {
			return
		}
		task := &task{finder: b.finder, req: &Request{Spec: &spec},
			gap: gap.New(&b.finder.trade, gap.Asked{Spec: &spec, Guest: &guest.Guest{}}, nil)}
		// A limit at the strength of the drink itself is kept by it.
		limit, err := task.strongest(drink.ABV)
		require.NoError(rt, err)
		poured := task.strength(&search.Filling{})
		checked++
		assert.LessOrEqual(rt, poured, limit/(1+strengthSlack)*(1+strengthSlack/5), "%v", spec)
		if poured > limit/(1+strengthSlack)*0.97 {
			near++
		}
	})
	assert.Positive(t, checked)
	assert.Greater(t, near, checked/20, "the bound is near enough to be of use")
}

// With ice of the bar's own nothing is ruled out before it is mixed.
func TestStrengthWithOtherIce(t *testing.T) {
	b := newBench(t)
	spec := b.request(t, agaveDaisy, "triple sec", 1, 5).Spec
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
		mixer, err := b.finder.mixer.WithIce(c.ice)
		require.NoError(t, err)
		task := &task{finder: NewFinder(mixer, b.finder.judge, b.finder.space, b.finder.trade.Customs, DefaultWeights()), req: &Request{Spec: spec}}
		for _, most := range []float64{0.5, 15, 30} {
			limit, err := task.strongest(most)
			require.NoError(t, err)
			assert.Equal(t, c.usual, !math.IsInf(limit, 1), "%+v", c.ice)
		}
	}
	hot := spec.Clone()
	hot.Pours[0].Heat = flavor.HeatHot
	limit, err := (&task{finder: b.finder, req: &Request{Spec: &hot}}).strongest(15)
	require.NoError(t, err)
	assert.True(t, math.IsInf(limit, 1), "what is hot melts more ice than its strength tells")
	task := &task{finder: b.finder, req: &Request{Spec: spec}}
	limit, err = task.strongest(99)
	require.NoError(t, err)
	assert.True(t, math.IsInf(limit, 1), "no spirit ends at 99 %% vol")
}
