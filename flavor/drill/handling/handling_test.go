package handling_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/drill/handling"
)

const (
	sour    = "2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up"
	stirred = "2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up"
	tall    = "2 oz London dry gin\n4 oz tonic water\nbuild, long"
	rocks   = "2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, rocks"
	white   = "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 egg white\ndry shake, up"
)

func bench(t *testing.T) (*datatest.Data, *handling.Bench) {
	t.Helper()
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	b, err := handling.NewBench(d.Mixer)
	require.NoError(t, err)
	return d, b
}

// Which mistakes are made with which drink, and which way each moves the glass: common
// practice, no source.
func TestMishaps(t *testing.T) {
	d, b := bench(t)
	const less, more = -1, 1
	for _, c := range []struct {
		text                 string
		way                  handling.Way
		water, cold, bigness int // against the proper drink; 0 is not asked
		look                 handling.Look
	}{
		{sour, handling.StirredInstead, less, less, less, handling.Still},
		{sour, handling.WithoutIce, less, less, less, handling.Airy},
		{sour, handling.OnSlush, more, less, more, handling.Airy},
		{sour, handling.FromHotBar, more, less, more, handling.Airy},
		{stirred, handling.ShakenInstead, more, more, more, handling.Airy},
		{stirred, handling.WithoutIce, less, less, less, handling.Still},
		{tall, handling.Fizzless, 0, 0, 0, handling.Flat},
		{tall, handling.WithoutIce, less, less, less, handling.Sparkling},
		{rocks, handling.BuiltInstead, less, less, less, handling.Still},
		{white, handling.StirredInstead, less, less, less, handling.Headless},
	} {
		s := d.Spec(t, c.text)
		proper, made, err := b.Mishaps(s)
		require.NoError(t, err)
		i := slices.IndexFunc(made, func(m handling.Mishap) bool { return m.Way == c.way })
		require.GreaterOrEqual(t, i, 0, "%s: %d", c.text, c.way)
		m := &made[i]
		towards := func(was, is float64) int {
			switch {
			case is > was:
				return more
			case is < was:
				return less
			}
			return 0
		}
		assert.Equal(t, c.water, towards(proper.WaterPct, m.WaterPct), "%d: water", c.way)
		assert.Equal(t, c.cold, -towards(proper.TemperatureC, m.TemperatureC), "%d: cold", c.way)
		assert.Equal(t, c.bigness, towards(proper.VolumeML, m.VolumeML), "%d: size", c.way)
		assert.Equal(t, c.look, m.Look, "%d: look", c.way)
	}
}

// Without ice a drink is as strong as its pours: 2 oz of 40 % in 3¾ oz is 21.3 % vol, to the
// contraction of ethanol and water and the alcohol of nothing else, and as warm as the bar.
func TestWithoutIce(t *testing.T) {
	d, b := bench(t)
	_, made, err := b.Mishaps(d.Spec(t, sour))
	require.NoError(t, err)
	i := slices.IndexFunc(made, func(m handling.Mishap) bool { return m.Way == handling.WithoutIce })
	require.GreaterOrEqual(t, i, 0)
	assert.InDelta(t, 21.3, made[i].ABV, 0.3)
	assert.InDelta(t, 20, made[i].TemperatureC, 0.1)
	assert.InDelta(t, 0, made[i].WaterPct, 1e-9)
}

// Whatever the drink: every mistake shows by a step at least, and none is made with what
// meets no ice.
func TestMistakesShow(t *testing.T) {
	d, b := bench(t)
	times := [handling.NumWays]int{}
	for i := range d.Proven {
		s := &d.Proven[i].Spec
		proper, made, err := b.Mishaps(s)
		require.NoError(t, err)
		assert.True(t, s.Service != flavor.Hot || len(made) == 0, s.Name)
		for k := range made {
			m := &made[k]
			times[m.Way]++
			assert.GreaterOrEqual(t, m.Steps(&proper), 1.0, "%s, %d", s.Name, m.Way)
			assert.InDelta(t, m.Steps(&proper), proper.Steps(&m.Served), 1e-9, "as far there as back")
		}
	}
	for way, n := range times {
		assert.Positive(t, n, way)
	}
}
