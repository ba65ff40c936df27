package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// Numbers that count, refer or tell of another amount pour nothing, and how far a glass is filled up
// is a top: common practice, no source.
func TestNumbersThatPourNothing(t *testing.T) {
	for text, want := range map[string]string{
		"DEV 3 / 11 March\nAged Jamaican rum 45\nPineapple juice 30\nLime 20\nShake":                               "Aged Jamaican rum 45 + Pineapple juice 30 + Lime 20",
		"Recipe 5.1 - Rhubarb Highball\nBase: Irish whiskey, 40 ml\nModifier: rhubarb cordial, 20 ml":              "Irish whiskey 40 + rhubarb cordial 20",
		"COMPETITOR 21 / ROUND 2\nName: Gull\nAquavit 45 ml / Lemon juice 22.5 ml\nshake":                          "Aquavit 45 + Lemon juice 22.5",
		"Rye 50ml -> 45ml. Dry vermouth 20ml. Maraschino 5ml → 7.5ml. Stir, coupe.":                                "Rye 45 + Dry vermouth 20 + Maraschino 7.5",
		"vodka 55, dry vermouth 8, water 15. straight from freezer, lemon twist. x12 per bottle":                   "vodka 55 + dry vermouth 8 + water 15",
		"irish whiskey ..... 50\nsweet vermouth ..... 25\norange bitters ..... ii\nstir, up":                       "irish whiskey 50 + sweet vermouth 25 + orange bitters 1.6",
		"white bitter 30\nblanc vermouth 30\nsoda up to the rim\nice, long":                                        "white bitter 30 + blanc vermouth 30 + soda 90",
		"60 ml tequila\n15 ml lime\ncola, fill to neck\nsalt rim":                                                  "tequila 60 + lime 15 + cola 90",
		"tequila 50\nlime 20\nhoney syrup 10\nwater 10 to loosen the honey\nshake":                                 "tequila 50 + lime 20 + honey syrup 10 + water 10",
		"red vermouth 60 ml, soda 40 ml. On the rocks with an olive and a slice.":                                  "red vermouth 60 + soda 40",
		"4 gin\n3 rhubarb cordial\n2 lemon\n(cl, highball, shake first 3)":                                         "gin 40 + rhubarb cordial 30 + lemon 20",
		"sp: white port 50\nln: tonic 100\nmet: build\ngl: highball":                                               "white port 50 + tonic 100",
		"86: mint, oat milk. FEATURE: Cherry Sour - 2 oz bourbon, 3/4 oz lemon, 3/4 oz cherry syrup. Shake, rocks": "bourbon 59.15 + lemon 22.18 + cherry syrup 22.18",
		"sweet vermouth 30, blanc vermouth 30. Stir, rock. (Was 45/15, 50/50 is nicer.)":                           "sweet vermouth 30 + blanc vermouth 30",
		"gin 50 ml, lemon 20 ml, simple 20 ml, egg white 20 ml. Shake, up. Deck 9 and 12":                          "gin 50 + lemon 20 + simple 20 + egg white 20",
		"gin 50 ml, lemon 20 ml, simple 20 ml. Shake, up. Serve with 2 biscuits":                                   "gin 50 + lemon 20 + simple 20",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for _, text := range []string{
		"Umeboshi 20 / 3 March\nAquavit 45 ml / Lemon juice 22.5 ml\nshake", // the first may be poured
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}

// What a bracket on the glass, a step or a weight stands beside is poured or asked about, and never passed
// over: common practice, no source.
func TestNothingIsLostBesideAGlass(t *testing.T) {
	for text, want := range map[string]string{
		"Brandy Fix (large tumbler) 1 tbsp sugar, juice of half a lemon, 2 oz brandy. shake": "sugar 7.87 + lemon 22.18 + brandy 59.15",
		"Brandy Fix (large tumbler) 1 tbsp sugar, the juice of 1 lime, 2 oz brandy. shake":   "sugar 7.87 + lime 29.57 + brandy 59.15",
		"1 lb white sugar\n1 pint lemon juice\n1 quart dark rum":                             "white sugar 285.65 + lemon juice 473.18 + dark rum 946.35",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for text, says := range map[string]string{
		"melt 1/2 lb loaf sugar in a quart of water; add 1 pint lemon juice, 1 quart dark rum":       "a quart of water",
		"Sherry Cup. (Use small glass.) 1½ wine-glass of sherry, 1 teaspoonful of sugar. shake well": "stands in a step",
		"250 ml milk, 40 g dark choc, hot":                 "is no liqueur",
		"250 ml milk, 40 g milk chocolate, 30 ml rum, hot": "is no liqueur",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.ErrorContains(t, err, says, text)
	}
}
