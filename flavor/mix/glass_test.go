package mix

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

func TestFillText(t *testing.T) {
	coupe := Glass{"coupe", 150}
	for _, c := range []struct {
		ml      float64
		service flavor.Service
		glasses []Glass
		want    string
	}{
		{138, flavor.Up, []Glass{coupe, {"coupe", 120}}, "fills a 150 mL coupe to 92 %; spills a 120 mL one by 18 mL"},
		{90, flavor.Rocks, []Glass{{"rocks glass", 300}}, "fills a 300 mL rocks glass to 65 % with the ice"},
		{250, flavor.Long, []Glass{{"highball glass", 350}, {"collins glass", 400}}, "fills a 350 mL highball glass to 96 % with the ice; fills a 400 mL collins glass to 95 % with the ice"},
		{40, flavor.Up, []Glass{{"coupe", 80}, {"coupe", 180}}, "fills an 80 mL coupe to 50 %; fills a 180 mL one to 22 %"},
		{0, flavor.Crushed, []Glass{{"julep cup", 350}}, "fills a 350 mL julep cup to 50 % with the ice"},
		{0, flavor.Up, nil, ""},
	} {
		got, err := FillText(c.ml, c.service, c.glasses...)
		require.NoError(t, err)
		assert.Equal(t, c.want, got)
	}
	f, err := coupe.Fill(138, flavor.Up)
	require.NoError(t, err)
	assert.Equal(t, "fills a 150 mL coupe to 92 %", f.String())
}

func TestFillings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := rapid.SampledFrom(glassesFor(rapid.SampledFrom(flavor.Services()).Draw(t, "service"))).Draw(t, "glass")
		s := rapid.SampledFrom(flavor.Services()).Draw(t, "service")
		ml := rapid.Float64Range(0, 600).Draw(t, "ml")
		f, err := g.Fill(ml, s)
		require.NoError(t, err)
		assert.InDelta(t, g.ML, f.IceML+ml+f.WashML-f.SpillML, 1e-9)
		assert.True(t, f.WashML == 0 || f.SpillML == 0)
		assert.Equal(t, f.Level > 1, f.SpillML > 0)
		assert.Equal(t, s == flavor.Up || s == flavor.Hot || s == flavor.Neat, f.IceML == 0)
	})
}

func TestGlassesRefuse(t *testing.T) {
	for _, c := range []struct {
		glass Glass
		ml    float64
	}{{Glass{"none", 0}, 10}, {Glass{"odd", math.NaN()}, 10}, {Glass{"coupe", 150}, -1}, {Glass{"coupe", 150}, math.NaN()}} {
		assert.ErrorIs(t, second(c.glass.Fill(c.ml, flavor.Up)), flavor.ErrInvalid)
		assert.ErrorIs(t, second(FillText(c.ml, flavor.Up, c.glass)), flavor.ErrInvalid)
	}
	for _, s := range flavor.Services() {
		glasses := glassesFor(s)
		assert.Len(t, glasses, len(usual[s]), "%s: every glass is one of those with a size", s)
		assert.NotEmpty(t, glasses, s)
		for i := range glasses[1:] {
			assert.Less(t, glasses[i].ML, glasses[i+1].ML, "%s: the smallest first", s)
		}
	}
}

// A drink stands in the smallest glass that holds it; what none holds spills from
// the largest.
func TestFillUsual(t *testing.T) {
	for _, c := range []struct {
		ml      float64
		service flavor.Service
		glass   string
		spillML float64
	}{{140, flavor.Up, "coupe", 0}, {168, flavor.Up, "large coupe", 0}, {210, flavor.Up, "large coupe", 0}, {240, flavor.Up, "wine glass", 0}, {900, flavor.Up, "wine glass", 550}, {280, flavor.Long, "collins glass", 0}} {
		f, err := fillUsual(c.ml, c.service)
		require.NoError(t, err)
		assert.Equal(t, c.glass, f.Glass.Name)
		assert.InDelta(t, c.spillML, f.SpillML, 1e-9)
	}
	assert.ErrorIs(t, second(fillUsual(math.NaN(), flavor.Up)), flavor.ErrInvalid)
	assert.ErrorIs(t, second(fillUsual(150, "bucket")), flavor.ErrInvalid)
}

// Nominal pours fit the glass that bars pour them into, and what is too much runs
// over: common practice, no source. Volumes are those with the water of the ice.
func TestWhatFitsAGlass(t *testing.T) {
	for _, c := range []struct {
		glass   string
		ml      float64
		service flavor.Service
		fits    bool
	}{
		{"highball", 215, flavor.Long, true},           // 50 and 150 mL
		{"highball glass", 235, flavor.Long, true},     // 2 and 5 oz
		{"tall collins", 250, flavor.Long, true},       // 2, 1, ¾ and 3 oz, shaken
		{"rocks glass", 180, flavor.Rocks, true},       // a sour
		{"wine glass", 225, flavor.Rocks, true},        // 3, 2 and 1 of a spritz
		{"julep cup", 120, flavor.Crushed, true},       // 2½ oz and its ice
		{"pint", 355, flavor.Up, true},                 // beer, without ice
		{"chilled Nick & Nora", 130, flavor.Up, false}, // no such name
		{"nick-and-nora", 130, flavor.Up, true},
		{"highball", 430, flavor.Long, false}, // 12 oz of ginger ale
		{"wine glass", 380, flavor.Rocks, false},
		{"coupe", 240, flavor.Up, false},
		{"coupe", 310, flavor.Up, false},
	} {
		g, ok := GlassNamed(c.glass)
		fits := false
		if ok {
			f, err := g.Fill(c.ml, c.service)
			require.NoError(t, err)
			fits = f.SpillML == 0
		}
		assert.Equal(t, c.fits, fits, "%v mL in a %s", c.ml, c.glass)
	}
	large, _ := GlassNamed("a chilled large coupe")
	assert.Equal(t, "large coupe", large.Name)
	double, _ := GlassNamed("double rocks glass")
	assert.Equal(t, "double rocks glass", double.Name)
}

func TestAMugOfIceIsTheLargeOne(t *testing.T) {
	for service, want := range map[flavor.Service]string{flavor.Hot: "mug", flavor.Crushed: "copper mug", flavor.Long: "copper mug"} {
		g, ok := GlassOf(&flavor.Spec{Service: service, Glass: "mug"})
		assert.True(t, ok, "%s", service)
		assert.Equal(t, want, g.Name, "%s", service)
	}
}

func TestFillOf(t *testing.T) {
	for _, c := range []struct {
		glass string
		want  string
	}{{"", "fills a 150 mL coupe to 93 %"}, {"flute", "fills a 180 mL flute to 78 %"}, {"bucket", "fills a 150 mL coupe to 93 %"}} {
		f, err := FillOf(140, &flavor.Spec{Service: flavor.Up, Glass: c.glass})
		require.NoError(t, err)
		assert.Equal(t, c.want, f.String())
	}
	assert.ErrorIs(t, second(FillOf(-1, &flavor.Spec{Service: flavor.Long})), flavor.ErrInvalid)
}
