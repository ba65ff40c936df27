package gap_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
)

// bench makes gaps over the whole catalogue.
type bench struct {
	catalogue *data.Catalogue
	trade     gap.Trade
}

func newBench(t *testing.T) *bench {
	t.Helper()
	catalogue, err := data.Embedded()
	require.NoError(t, err)
	customs, err := catalogue.Customs()
	require.NoError(t, err)
	return &bench{catalogue, gap.Trade{Cellar: role.NewCellar(catalogue.Space(), nil), Customs: customs, Weights: gap.DefaultWeights(), Near: 4}}
}

func (b *bench) bottle(t *testing.T, id string) *role.Bottle {
	t.Helper()
	p, found := b.catalogue.ByID(id)
	require.True(t, found, id)
	return b.trade.Cellar.Of(p)
}

// gap is what a drink leaves without some ingredients.
func (b *bench) gap(t *testing.T, text string, g guest.Guest, missing ...string) *gap.Gap {
	t.Helper()
	spec, err := b.catalogue.ReadSpec("", text)
	require.NoError(t, err)
	mixer, err := mix.NewMixer()
	require.NoError(t, err)
	drink, err := mixer.Mix(&spec)
	require.NoError(t, err)
	a := gap.Asked{Spec: &spec, ABV: drink.ABV, Candidates: b.catalogue.Profiles(), Guest: &g}
	for _, id := range missing {
		a.Missing = append(a.Missing, b.bottle(t, id).Profile)
	}
	space := b.catalogue.Space()
	return gap.New(&b.trade, a, space.Near(space.Percept(&spec, drink)))
}

const (
	whiskeySour = "60 ml bourbon\n22.5 ml lemon juice\n15 ml orgeat\nshake, up"
	stirred     = "60 ml gin\n20 ml sweet vermouth\n2 dashes orange bitters\nstir, up"
	highball    = "45 ml gin\n120 ml tonic water\nbuild, long"
)

// What goes is what is out and what the guest must not have, each once; the rest stays.
func TestWhatGoes(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		name    string
		guest   guest.Guest
		missing []string
		gone    []string // ids
		keep    []int
		ml      float64
		less    bool
	}{
		{name: "one bottle", missing: []string{"orgeat"}, gone: []string{"orgeat"}, keep: []int{0, 1}, ml: 15},
		{name: "what is avoided goes too", guest: guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}, missing: []string{"lemon-juice"},
			gone: []string{"lemon-juice", "orgeat"}, keep: []int{0}, ml: 37.5},
		{name: "and the alcohol", guest: guest.Guest{NoAlcohol: true}, missing: []string{"lemon-juice"},
			gone: []string{"bourbon", "lemon-juice"}, keep: []int{2}, ml: 82.5, less: true},
		{name: "a limit that the drink keeps", guest: guest.Guest{MaxABV: 60}, missing: []string{"bourbon"}, gone: []string{"bourbon"}, keep: []int{1, 2}, ml: 60},
		{name: "and one that it does not", guest: guest.Guest{MaxABV: 5}, missing: []string{"bourbon"}, gone: []string{"bourbon"}, keep: []int{1, 2}, ml: 60, less: true},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := b.gap(t, whiskeySour, c.guest, c.missing...)
			var gone []string
			most := 0.0
			for _, q := range g.Gone {
				gone = append(gone, q.Profile.ID)
				most = math.Max(most, q.Weight)
			}
			assert.Equal(t, c.gone, gone)
			assert.Equal(t, c.keep, g.Keep)
			assert.InDelta(t, c.ml, g.ML, 1e-9, "mL")
			assert.Equal(t, c.less, g.Less)
			assert.InDelta(t, 1, most, 1e-12, "what took the most weighs one")
		})
	}
}

// Who is looked at at all, whatever it would do to the glass (common practice, no source).
func TestAdmits(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		drink, missing, bottle string
		want                   bool
	}{
		{stirred, "sweet-vermouth", "dry-vermouth", true},
		{stirred, "sweet-vermouth", "pineapple-juice", false}, // clouds what is stirred to be clear
		{whiskeySour, "orgeat", "soda-water", false},          // goes flat
		{highball, "tonic-water", "soda-water", true},
		{whiskeySour, "orgeat", "olive-oil", false},     // is mostly fat
		{whiskeySour, "orgeat", "soy-sauce", false},     // is of the kitchen
		{whiskeySour, "bourbon", "energy-drink", false}, // keeps awake
		{whiskeySour, "bourbon", "alcohol-free-juniper", false},
	} {
		g := b.gap(t, c.drink, guest.Guest{}, c.missing)
		assert.Equal(t, c.want, g.Admits(b.bottle(t, c.bottle), false), "%s for %s", c.bottle, c.missing)
	}
	dry := b.gap(t, whiskeySour, guest.Guest{NoAlcohol: true}, "bourbon")
	assert.True(t, dry.Admits(b.bottle(t, "alcohol-free-juniper"), false), "for a guest who drinks none")
}

// Of two bottles the second is the stranger in place of what went (common practice, no
// source); what nobody would pour is strange without bound.
func TestStrange(t *testing.T) {
	b := newBench(t)
	never := math.Inf(1)
	for _, c := range []struct{ drink, missing, near, far string }{
		{whiskeySour, "bourbon", "rye-whiskey", "london-dry-gin"},
		{whiskeySour, "bourbon", "aged-rum", "blanco-tequila"},
		{whiskeySour, "orgeat", "apricot-kernel-orgeat", "raspberry-syrup"},
		{whiskeySour, "lemon-juice", "lime-juice", "white-wine-vinegar"},
		{stirred, "sweet-vermouth", "rose-vermouth", "amaretto"},
	} {
		g := b.gap(t, c.drink, guest.Guest{}, c.missing)
		near, far := g.Strange(b.bottle(t, c.near), 0, -1), g.Strange(b.bottle(t, c.far), 0, -1)
		assert.Less(t, near, far, "%s, not %s, for %s", c.near, c.far, c.missing)
		assert.LessOrEqual(t, g.Strange(b.bottle(t, c.near), 0, 0), near, "a custom is let off some of it")
	}
	noBase := b.gap(t, whiskeySour, guest.Guest{}, "bourbon")
	assert.Equal(t, never, noBase.Strange(b.bottle(t, "sweet-vermouth"), 0, -1), "nothing but a spirit is a base")
	light := b.gap(t, whiskeySour, guest.Guest{MaxABV: 5}, "bourbon")
	assert.Less(t, light.Strange(b.bottle(t, "sweet-vermouth"), 0, -1), never, "but for a guest who wants less")
	herbs := b.gap(t, stirred, guest.Guest{}, "sweet-vermouth")
	assert.Equal(t, never, herbs.Strange(b.bottle(t, "thyme"), 0, -1), "herbs only season")
}

// One spirit is poured for another in its measure, and a sweetener by its sugar.
func TestAlike(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		drink, missing, bottle string
		ml                     float64
		firm                   bool
	}{
		{whiskeySour, "bourbon", "rye-whiskey", 60, true},
		{whiskeySour, "orgeat", "simple-syrup", 0, false},
		{highball, "tonic-water", "soda-water", 120, true},
		{stirred, "sweet-vermouth", "red-bitter-aperitif", 20, false},
		{whiskeySour, "lemon-juice", "lime-juice", 22.5, true},
		{whiskeySour, "lemon-juice", "verjus", 0, false},
	} {
		g := b.gap(t, c.drink, guest.Guest{}, c.missing)
		p := b.bottle(t, c.bottle).Profile
		ml, firm := g.Alike(p, g.InMeasure(p, g.Grid().Of(p)))
		assert.InDelta(t, c.ml, ml, 1e-9, "%s for %s", c.bottle, c.missing)
		assert.Equal(t, c.firm, firm > 0, "%s for %s", c.bottle, c.missing)
	}
}

// A wine is poured in the measure of the spirit, or hardly more, and what sparkles in up to
// twice of it; a spirit in half of it at the least. What the spirit is not covered by has no
// such measure, nor has a guest without a limit (common practice, no source).
func TestLightMeasure(t *testing.T) {
	b := newBench(t)
	light := guest.Guest{MaxABV: 8}
	for _, c := range []struct {
		drink, missing, bottle string
		guest                  guest.Guest
		least, most            float64 // mL
	}{
		{whiskeySour, "bourbon", "amontillado-sherry", light, 60, 75},
		{whiskeySour, "bourbon", "rye-whiskey", light, 30, 60},
		{whiskeySour, "bourbon", "prosecco", light, 0, 0}, // nobody pours it for a whiskey
		{highball, "london-dry-gin", "prosecco", light, 67.5, 90},
		{highball, "london-dry-gin", "dry-vermouth", light, 45, 56.25},
		{highball, "london-dry-gin", "dry-vermouth", guest.Guest{}, 0, 0},
		{highball, "london-dry-gin", "dry-vermouth", guest.Guest{NoAlcohol: true}, 0, 0},
	} {
		g := b.gap(t, strings.Replace(c.drink, "gin", "London dry gin", 1), c.guest, c.missing)
		least, most := g.LightMeasure(b.bottle(t, c.bottle).Profile)
		assert.InDelta(t, c.least, least, 1e-9, "least %s for %s", c.bottle, c.missing)
		assert.InDelta(t, c.most, most, 1e-9, "most %s for %s", c.bottle, c.missing)
	}
}

// A pale wine comes first for a clear spirit, a dark one for what is aged, and what sparkles
// where the drink keeps a wine (common practice, no source).
func TestLighterCustomsInOrder(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct{ drink, missing, first, later string }{
		{"60 ml white rum\n25 ml lime juice\n20 ml simple syrup\nshake, up", "white-rum", "bianco-vermouth", "oloroso-sherry"},
		{"60 ml aged rum\n25 ml lime juice\n20 ml simple syrup\nshake, up", "aged-rum", "oloroso-sherry", "bianco-vermouth"},
		{"30 ml London dry gin\n30 ml red bitter aperitif\n30 ml sweet vermouth\nstir, rocks", "london-dry-gin", "prosecco", "dry-vermouth"},
		{"60 ml London dry gin\n25 ml lemon juice\n20 ml simple syrup\nshake, rocks", "london-dry-gin", "dry-vermouth", "prosecco"},
	} {
		g := b.gap(t, c.drink, guest.Guest{MaxABV: 8}, c.missing)
		customs := g.Customs()
		assert.Less(t, customs.Place(0, c.first), customs.Place(0, c.later), "%s before %s for %s", c.first, c.later, c.missing)
	}
}

// What sparkles goes on top of what is shaken where the soda that went did, though the gin that
// went too did not; a syrup that stands for both does not (common practice, no source).
func TestAddedAfter(t *testing.T) {
	b := newBench(t)
	const collins = "45 ml London dry gin\n22.5 ml lemon juice\n20 ml simple syrup\ntop with 90 ml soda water\nshake, long"
	for _, c := range []struct {
		missing []string
		bottle  string
		want    bool
	}{
		{[]string{"soda-water"}, "prosecco", true},
		{[]string{"soda-water", "london-dry-gin"}, "prosecco", true},
		{[]string{"soda-water", "london-dry-gin"}, "vodka", false},
		{[]string{"london-dry-gin"}, "vodka", false},
	} {
		g := b.gap(t, collins, guest.Guest{}, c.missing...)
		assert.Equal(t, c.want, g.AddedAfter(b.bottle(t, c.bottle).Profile), "%s for %v", c.bottle, c.missing)
	}
}

// A liqueur is poured for its kin in some of its measure, however strong it smells, beside
// another thing that is out too (common practice, no source).
func TestInMeasureOfKin(t *testing.T) {
	b := newBench(t)
	const cream = "30 ml cognac\n30 ml white crème de cacao\n30 ml heavy cream\nshake, up"
	for _, missing := range [][]string{{"creme-de-cacao"}, {"cognac", "creme-de-cacao"}} {
		g := b.gap(t, cream, guest.Guest{}, missing...)
		dark := b.bottle(t, "dark-creme-de-cacao").Profile
		amounts := g.InMeasure(dark, g.Grid().Of(dark))
		require.NotEmpty(t, amounts)
		assert.GreaterOrEqual(t, amounts[0].ML, 20.0, missing)
		assert.LessOrEqual(t, amounts[len(amounts)-1].ML, 45.0, missing)
		coffee := b.bottle(t, "coffee-liqueur").Profile
		assert.Less(t, g.InMeasure(coffee, g.Grid().Of(coffee))[0].ML, 10.0, "it is no kin")
	}
}
