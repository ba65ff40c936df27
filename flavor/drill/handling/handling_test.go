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
func TestFaults(t *testing.T) {
	d, b := bench(t)
	const less, more = -1, 1
	for _, c := range []struct {
		text, id             string
		water, cold, bigness int // against the proper drink; 0 is not asked
		look                 handling.Look
	}{
		{sour, "stirred", less, less, less, handling.Still},
		{sour, "no-ice", less, less, less, handling.Airy},
		{sour, "slush", more, less, more, handling.Airy},
		{sour, "hot-bar", more, less, more, handling.Airy},
		{stirred, "shaken", more, more, more, handling.Airy},
		{stirred, "no-ice", less, less, less, handling.Still},
		{tall, "flat", 0, 0, 0, handling.Flat},
		{tall, "no-ice", less, less, less, handling.Sparkling},
		{rocks, "built", less, less, less, handling.Still},
		{white, "stirred", less, less, less, handling.Headless},
	} {
		s := d.Spec(t, c.text)
		proper, faults, err := b.Faults(s)
		require.NoError(t, err)
		i := slices.IndexFunc(faults, func(f handling.Fault) bool { return f.ID == c.id })
		require.GreaterOrEqual(t, i, 0, "%s: %s", c.text, c.id)
		f := &faults[i]
		way := func(was, is float64) int {
			switch {
			case is > was:
				return more
			case is < was:
				return less
			}
			return 0
		}
		assert.Equal(t, c.water, way(proper.WaterPct, f.WaterPct), "%s: water", c.id)
		assert.Equal(t, c.cold, -way(proper.TemperatureC, f.TemperatureC), "%s: cold", c.id)
		assert.Equal(t, c.bigness, way(proper.VolumeML, f.VolumeML), "%s: size", c.id)
		assert.Equal(t, c.look, f.Look, c.id)
		assert.NotEmpty(t, f.Mend)
	}
}

// Without ice a drink is as strong as its pours: 2 oz of 40 % in 3¾ oz is 21.3 % vol, to the
// contraction of ethanol and water and the alcohol of nothing else, and as warm as the bar.
func TestWithoutIce(t *testing.T) {
	d, b := bench(t)
	_, faults, err := b.Faults(d.Spec(t, sour))
	require.NoError(t, err)
	i := slices.IndexFunc(faults, func(f handling.Fault) bool { return f.ID == "no-ice" })
	require.GreaterOrEqual(t, i, 0)
	assert.InDelta(t, 21.3, faults[i].ABV, 0.3)
	assert.InDelta(t, 20, faults[i].TemperatureC, 0.1)
	assert.InDelta(t, 0, faults[i].WaterPct, 1e-9)
}

// Whatever the drink: every mistake shows by a step at least, and none is made with what
// meets no ice.
func TestMistakesShow(t *testing.T) {
	d, b := bench(t)
	made := map[string]int{}
	for i := range d.Proven {
		s := &d.Proven[i].Spec
		proper, faults, err := b.Faults(s)
		require.NoError(t, err)
		assert.True(t, s.Service != flavor.Hot || len(faults) == 0, s.Name)
		for k := range faults {
			made[faults[k].ID]++
			assert.GreaterOrEqual(t, faults[k].Steps(&proper), 1.0, "%s, %s", s.Name, faults[k].Did)
			assert.InDelta(t, faults[k].Steps(&proper), proper.Steps(&faults[k].Glass), 1e-9, "as far there as back")
		}
	}
	for _, id := range []string{"stirred", "shaken", "built", "no-ice", "slush", "hot-bar", "flat"} {
		assert.Positive(t, made[id], id)
	}
}

func TestGlassInWords(t *testing.T) {
	g := handling.Glass{ABV: 14.24, VolumeML: 166.6, TemperatureC: -4.4, Look: handling.Airy}
	assert.Equal(t, "14.2 % vol, 167 ml, −4 °C, full of fine air", g.String())
	g.TemperatureC = -0.2
	assert.Contains(t, g.String(), ", 0 °C,")
}
