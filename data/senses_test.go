package data

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

// Every line is about something that the catalogue has, and every class has one.
func TestSenseTableIsOfTheCatalogue(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	s, err := loadSenses()
	require.NoError(t, err)
	for id := range s.ingredients {
		_, ok := c.ByID(id)
		assert.True(t, ok, "ingredient %q is not in the catalogue", id)
	}
	for name := range s.materials {
		_, ok := c.materials[name]
		assert.True(t, ok, "material %q is not in the catalogue", name)
	}
	for _, class := range flavor.Classes() {
		_, ok := s.classes[class]
		assert.True(t, ok, "class %q has no line", class)
	}
}

func TestSenseFaultsAreErrors(t *testing.T) {
	pigments := map[string]flavor.Colour{"red": {Green: 1}}
	for _, text := range []string{"", "red", "red much", "red -1", "red NaN", "mauve 1", "umami 1; umami 2", "umami 9000"} {
		_, err := parseSensing(text, pigments)
		assert.Error(t, err, "%q", text)
	}
	for _, text := range []string{"", "takes 1 1", "1 1 1", "takes 1 1 1; mauve 2"} {
		_, err := parseTakes(text, pigments)
		assert.Error(t, err, "%q", text)
	}
}

// What each looks like, common practice, no source: r, g and b in rough order.
func TestColours(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	look := func(id string) sense.Swatch {
		p, ok := c.ByID(id)
		require.True(t, ok, id)
		v := c.Space().PerML(p)
		return v.Swatch()
	}
	const near = 12
	for _, id := range []string{"vodka", "london-dry-gin", "blanco-tequila", "white-rum", "simple-syrup", "soda-water", "triple-sec", "kirsch", "water", "tonic-water", "saline"} {
		s := look(id)
		assert.InDelta(t, 255, float64(s.B), near, "%s is clear, not %s", id, s.Hex())
		assert.Zero(t, math.Round(s.Cloudy*20), "%s is not cloudy", id)
	}
	for _, x := range []struct{ id, most, least string }{
		{"red-bitter-aperitif", "r", "b"}, {"grenadine", "r", "g"}, {"raspberry-liqueur", "r", "g"}, {"blue-curacao", "b", "r"},
		{"green-creme-de-menthe", "g", "b"}, {"green-herbal-liqueur", "g", "b"}, {"aged-rum", "r", "b"}, {"bourbon", "r", "b"}, {"sweet-vermouth", "r", "b"},
		{"lager", "r", "b"}, {"orange-juice", "r", "b"}, {"creme-de-violette", "b", "g"}, {"limoncello", "r", "b"}, {"ruby-port", "r", "g"},
	} {
		s := look(x.id)
		bands := map[string]uint8{"r": s.R, "g": s.G, "b": s.B}
		for _, v := range bands {
			assert.GreaterOrEqual(t, bands[x.most], v, "%s is %s", x.id, s.Hex())
			assert.LessOrEqual(t, bands[x.least], v, "%s is %s", x.id, s.Hex())
		}
		assert.Greater(t, int(bands[x.most])-int(bands[x.least]), 40, "%s is %s", x.id, s.Hex())
	}
	for _, id := range []string{"espresso", "stout", "cola", "fernet", "soy-sauce", "pedro-ximenez-sherry"} {
		s := look(id)
		assert.Less(t, int(s.G), 110, "%s is dark, not %s", id, s.Hex())
	}
	for _, id := range []string{"heavy-cream", "whole-milk", "lemon-juice", "orange-juice", "orgeat", "coconut-cream", "tomato-juice"} {
		assert.Greater(t, look(id).Cloudy, 0.9, "%s is cloudy", id)
	}
	// darker in this order
	for _, order := range [][]string{{"pilsner", "pale-ale", "brown-ale", "stout"}, {"white-rum", "gold-rum", "aged-rum", "dark-rum"},
		{"fino-sherry", "amontillado-sherry", "oloroso-sherry", "pedro-ximenez-sherry"}, {"green-tea", "black-tea", "coffee"}} {
		for i := 1; i < len(order); i++ {
			assert.Less(t, look(order[i]).B, look(order[i-1]).B, "%s against %s", order[i], order[i-1])
		}
	}
}

// What a bartender calls the look of each, common practice, no source.
func TestColourWords(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	for id, words := range map[string][]string{
		"vodka": {"clear"}, "soda-water": {"clear"}, "fino-sherry": {"straw"}, "dry-vermouth": {"straw", "gold"}, "lager": {"gold", "amber"}, "bourbon": {"amber"},
		"aged-rum": {"amber"}, "sweet-vermouth": {"copper", "red", "ruby", "brown"}, "stout": {"black"}, "cola": {"brown", "black"}, "red-bitter-aperitif": {"red"},
		"grenadine": {"red", "ruby"}, "blue-curacao": {"blue"}, "green-creme-de-menthe": {"green"}, "creme-de-violette": {"violet"},
		"orange-juice": {"cloudy orange", "cloudy amber"}, "lemon-juice": {"cloudy straw", "cloudy yellow", "cloudy"}, "heavy-cream": {"white"}, "rose-wine": {"pink"},
		"red-wine": {"ruby", "purple", "red"}, "espresso": {"cloudy black"}, "light-orange-bitter-aperitif": {"orange", "amber"}, "limoncello": {"yellow", "cloudy yellow"},
	} {
		p, ok := c.ByID(id)
		require.True(t, ok, id)
		v := c.Space().PerML(p)
		assert.Contains(t, words, v.Swatch().Words(), "%s is %s", id, v.Swatch().Hex())
	}
}

func TestColourChanges(t *testing.T) {
	b := newBench(t)
	stirred := b.glass("2 1/2 oz vodka\n1/2 oz blanc vermouth\nstir, up")
	text, told := sense.ColourChange(stirred, b.glass("2 1/2 oz bourbon\n1/2 oz blanc vermouth\nstir, up"))
	assert.True(t, told)
	assert.Contains(t, text, "clear turns ")
	_, told = sense.ColourChange(stirred, b.glass("2 1/2 oz London dry gin\n1/2 oz blanc vermouth\nstir, up"))
	assert.False(t, told)
	// What is blue or green is told of a blend too.
	for _, c := range []struct{ was, is, told string }{
		{"1 oz blue curaçao\n1 oz vodka\n3/4 oz lemon juice\n4 oz lemon-lime soda\nbuild, long", "1 oz triple sec\n1 oz vodka\n3/4 oz lemon juice\n4 oz lemon-lime soda\nbuild, long", "blue turns "},
		{"2 oz cognac\n3/4 oz triple sec\n3/4 oz lemon juice\nshake, up", "2 oz cognac\n3/4 oz blue curaçao\n3/4 oz lemon juice\nshake, up", " turns cloudy green"},
		{"2 oz brandy\n3/4 oz crème de menthe\nstir, up", "2 oz brandy\n3/4 oz green crème de menthe\nstir, up", " turns green"},
		{"1 oz green crème de menthe\n1 oz crème de cacao\n1 oz heavy cream\nshake, up", "1 oz crème de menthe\n1 oz crème de cacao\n1 oz heavy cream\nshake, up", "green turns white"},
	} {
		text, told := sense.ColourChange(b.glass(c.was), b.glass(c.is))
		assert.True(t, told, c.was)
		assert.Contains(t, text, c.told, c.was)
	}
}

// What bites, cools, dries and savours, common practice: the first more than the
// second.
func TestOtherSensesInOrder(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	for _, x := range []struct {
		sense sense.Sense
		pairs [][2]string
	}{
		{sense.Umami, [][2]string{{"soy-sauce", "tomato-juice"}, {"tomato-juice", "orange-juice"}, {"fish-sauce", "vegetable-stock"}, {"msg-solution", "soy-sauce"}}},
		{sense.Pungent, [][2]string{{"ginger-beer", "ginger-ale"}, {"chilli-tincture", "chilli-syrup"}, {"ginger-syrup", "cinnamon-syrup"}, {"hot-pepper-sauce", "ginger-beer"}, {"pepper-vodka", "vodka"}}},
		{sense.Cooling, [][2]string{{"peppermint-extract", "creme-de-menthe"}, {"peppermint", "mint"}, {"mint-fernet", "artichoke-amaro"}}},
		{sense.Astringent, [][2]string{{"red-wine", "dry-white-wine"}, {"black-tea", "chamomile-tea"}, {"bourbon", "vodka"}, {"vintage-port", "aged-tawny-port"}}},
		{sense.Carbonation, [][2]string{{"brut-champagne", "lager"}, {"soda-water", "sake"}, {"tonic-water", "lime-juice"}}},
		{sense.Foam, [][2]string{{"egg-white", "pineapple-juice"}, {"pineapple-juice", "orange-juice"}, {"egg-white", "chickpea-water"}}},
	} {
		for _, pair := range x.pairs {
			more, ok := c.ByID(pair[0])
			require.True(t, ok, pair[0])
			less, ok := c.ByID(pair[1])
			require.True(t, ok, pair[1])
			a, b := c.Space().PerML(more), c.Space().PerML(less)
			assert.Greater(t, a[x.sense], b[x.sense], "%s of %s and %s", x.sense, pair[0], pair[1])
		}
	}
}
