package draw

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

func lookOf(t require.TestingT, glass mix.Glass, ml float64, s flavor.Service) *kitchen.Look {
	f, err := glass.Fill(ml, s)
	require.NoError(t, err)
	return &kitchen.Look{Swatch: sense.Swatch{R: 222, G: 155, B: 60}, Service: s, Filling: f}
}

func TestGlassGolden(t *testing.T) {
	got := string(GlassSVG("glass", lookOf(t, mix.Glass{Name: "rocks glass", ML: 300}, 90, flavor.Rocks)))
	path := filepath.Join("testdata", "glass.golden.svg")
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run with -update to write it")
	assert.Equal(t, string(want), got)
	assert.Contains(t, got, "Amber, over ice, in a 300\u00a0mL rocks glass: 105\u00a0mL under the rim.")
	assert.Contains(t, string(GlassSVG("a", lookOf(t, mix.Glass{Name: "coupe", ML: 150}, 168, flavor.Up))), "over by 18 mL")
}

// Every glass of the trade has a shape, in which the drink stands as high as its
// share of the volume: half a glass is half of what the shape holds.
func TestGlassLevelMatchesTheVolume(t *testing.T) {
	for _, g := range mix.Glasses() {
		assert.Contains(t, shapes, g.Name)
	}
	rapid.Check(t, func(t *rapid.T) {
		g := rapid.SampledFrom(mix.Glasses()).Draw(t, "glass")
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		s := shapes[g.Name]
		const tolerance = 1e-6 // of the volume; the height is halved forty times
		assert.InDelta(t, share, s.volumeTo(s.heightOf(share))/s.volumeTo(s.top()), tolerance)
		assert.LessOrEqual(t, s.heightOf(share), s.top())
	})
}

func TestEveryGlassIsDrawn(t *testing.T) {
	for _, g := range append(mix.Glasses(), mix.Glass{Name: "jar & <lid>", ML: 500}) {
		for _, s := range flavor.Services() {
			for _, ml := range []float64{0, 90, 900} {
				got := string(GlassSVG(`a"b`, lookOf(t, g, ml, s)))
				wellFormed(t, got)
				assert.NotContains(t, got, "NaN", g.Name)
			}
		}
	}
}
