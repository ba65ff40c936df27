package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// The amounts of a batch beside those of one drink are passed over, however they are written:
// common practice, no source.
func TestAmountsOfABatch(t *testing.T) {
	for _, text := range []string{
		"45 ml / 450 ml gin\n20 ml / 200 ml lemon\n15 ml / 150 ml simple\nshake, up",
		"SINGLE / BATCH (x12)\ngin 45 ml / 540 ml\nlemon 20 ml / 240 ml\nsimple 15 ml / 180 ml\nshake, up",
		"x1 / x20\ngin 45 ml | 900 ml\nlemon 20 ml | 400 ml\nsimple 15 ml | 300 ml\nshake, up",
		"            1 serve    20 serves\ngin         45 ml      900 ml\nlemon       20 ml      400 ml\nsimple      15 ml      300 ml",
		"Ingredient, per drink (ml), x20 (ml)\ngin, 45, 900\nlemon, 20, 400\nsimple, 15, 300",
		"Name;Glass;Method;Spec;Garnish\nSouth Gate;Coupe;Shake;45ml gin, 20ml lemon, 15ml simple;Lemon twist",
		"South Gate\nServings: 1 | Prep time: 5 min\n45 ml gin\n20 ml lemon\n15 ml simple",
	} {
		assert.Equal(t, "gin 45 + lemon 20 + simple 15", poured(t, text), text)
	}
	for _, text := range []string{
		"gin 4 / 40\nlemon 2 / 20\nsimple 2 / 20",          // centilitres and millilitres, or a batch
		"45 ml / 450 ml gin\n20 ml / 240 ml lemon\nshake",  // no one batch
		"45 ml / 90 ml gin, 20 ml lemon, 15 ml simple, up", // one line proves none
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}

// Ice is not poured, however much of it is told, nor is it the wine: common practice, no source.
func TestIceWithItsAmount(t *testing.T) {
	for _, text := range []string{
		"45 gin, 20 lemon, 15 simple, ice 1 cup, blend", "45 ml gin\n20 ml lemon\n15 ml simple\nIce 12 oz scoop\nblend", "45 gin, 20 lemon, 15 simple. stir, one cube",
	} {
		assert.Equal(t, "gin 45 + lemon 20 + simple 15", poured(t, text), text)
	}
	assert.Equal(t, "ice wine 45 + lemon 20", poured(t, "45 ml ice wine\n20 ml lemon"))
}

// A herb without an amount goes in where it stands before what mixes it, or on its own line, and is
// laid on the drink elsewhere: common practice, no source.
func TestHerbsWithoutAnAmount(t *testing.T) {
	for text, in := range map[string]bool{
		"45 gin/20 lemon/15 simple/basil - shake - rox":         true,
		"45 gin, 20 lemon, lots of mint, 15 simple, shake":      true,
		"45 ml gin\n20 ml lemon\n15 ml simple\nmint\nhighball":  true,
		"45 gin, 20 lemon, 15 simple, lots of mint, highball":   true,
		"45 gin, 20 lemon, 15 simple, shake, coupe, basil":      false,
		"45 gin, 20 lemon, 15 simple, mint, lime wheel, shake":  false,
		"45 gin, 20 lemon, 15 simple, top soda, mint. highball": false,
		"45 gin, 20 lemon, 15 simple, rosemary":                 false,
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		herb := s.Pours[len(s.Pours)-1].Profile.Class == flavor.ClassFreshHerb || s.Pours[2].Profile.Class == flavor.ClassFreshHerb
		assert.Equal(t, in, herb, text)
		assert.Equal(t, !in, s.Garnish != "", text)
	}
}

// The name of the drink tells which whiskey, and a step refers to bitters that are poured already:
// common practice, no source.
func TestWhatTheNameAndTheStepsTell(t *testing.T) {
	for text, want := range map[string]string{
		"Irish coffee: 40 whiskey, 15 demerara syrup, 120 coffee":                                             "irish-whiskey",
		"scotch sour: 60 whisky, 25 lemon, 20 simple, shake":                                                  "blended-scotch",
		"60 ml aged rum\n30 ml lime\n15 ml simple\n4 dashes aromatic bitters\nSwizzle all. Top with bitters.": "aged-rum",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Equal(t, want, s.Pours[0].Profile.ID, text)
		assert.LessOrEqual(t, len(s.Pours), 4, text)
	}
	s, err := reading.Read("coffee: 40 whiskey, 15 demerara syrup, 120 coffee", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Equal(t, "bourbon", s.Pours[0].Profile.ID, "no name tells which")
	assert.Contains(t, strings.Join(s.Notes, "; "), "write rye whiskey, blended Scotch whisky or Irish blended whiskey if that is meant")
}

// What fills the glass up may say so behind its name: common practice, no source.
func TestFilledUp(t *testing.T) {
	for _, text := range []string{"45 gin, 20 lemon, soda full up. tall glass", "gin 45 lemon 20 soda UP - highball", "45 ml gin\n20 ml lemon\nsoda, fill up"} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Len(t, s.Pours, 3, text)
		assert.Equal(t, flavor.Long, s.Service, text)
	}
}

// Eggs and fruits that are named in the plural are counted where the rest is enough for so many, and are
// asked about where it is not: common practice, no source.
func TestManyPiecesOfABatch(t *testing.T) {
	for text, want := range map[string]string{
		"9 eggs, 600ml cognac, 1L milk, 300 ml simple":    "eggs 450 + cognac 600 + milk 1000 + simple 300",
		"6 egg yolks\n400 ml dark rum\n700 ml cream":      "egg yolks 102 + dark rum 400 + cream 700",
		"pisco 500\nlemon 250\nsimple 250\negg whites 10": "pisco 500 + lemon 250 + simple 250 + egg whites 310",
		"pisco 60\nlemon 30\nsimple 20\negg white 20":     "pisco 60 + lemon 30 + simple 20 + egg white 20",
		"pisco 60\nlemon 30\nsimple 20\negg whites 15":    "pisco 60 + lemon 30 + simple 20 + egg whites 15",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	_, err := reading.Read("60 ml dark rum\n20 ml simple\n5 eggs\nshake", wholeCatalogue(t))
	assert.ErrorContains(t, err, "eggs")
}

// A bottle of wine holds the same everywhere, and one of a spirit does not: common practice, no source.
func TestBottlesOfABowl(t *testing.T) {
	for text, want := range map[string]string{
		"2 bottles of cava, 300 ml orange juice":                      "cava 1500 + orange juice 300",
		"1 btl red wine, 90 ml brandy, 60 ml triple sec, 90 ml lemon": "red wine 750 + brandy 90 + triple sec 60 + lemon 90",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for _, text := range []string{"1 bottle gin, 500 ml lemon, 500 ml simple", "1 bottle sweet vermouth, 700 ml gin", "1 can red wine, 90 ml brandy"} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.ErrorContains(t, err, "no unit of the bar", text)
	}
}

// A bottle that is prepared and the drink that is poured of it are no one drink: common practice, no source.
func TestAMakingAndItsDrink(t *testing.T) {
	for _, text := range []string{
		"Brown butter rye\n700 ml rye whiskey\n80 g butter\nfreeze and strain\n\nDrink\n60 ml rye whiskey\n10 ml maple syrup\nstir",
		"750 ml gin\n30 g juniper berries\n\n2 oz gin\n1 oz dry vermouth\nstir",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.ErrorContains(t, err, "one making and one drink", text)
	}
	assert.Equal(t, "gin 600 + lemon 300 + simple 300 + lemon 150", poured(t, "gin 600 ml, lemon 300 ml, simple 300 ml, lemon 150 ml"))
}

// What holds a batch, how much of it makes a drink and what is done with it then pour nothing: common practice,
// no source.
func TestVesselsOfABatch(t *testing.T) {
	for text, want := range map[string]string{
		"2 L jug: 700 ml white rum, 300 ml lime juice, 300 ml simple syrup":                         "white rum 700 + lime juice 300 + simple syrup 300",
		"Rye sour for a 1 litre bottle -> 500 rye whiskey, 250 lemon juice, 250 simple syrup":       "rye whiskey 500 + lemon juice 250 + simple syrup 250",
		"Bottle 700ml → vodka 300, lime cordial 200, water 100. Freezer. To serve: shake 80 ml, up": "vodka 300 + lime cordial 200 + water 100",
		"1 bottle prosecco (750), 300 ml peach purée":                                               "prosecco 750 + peach purée 300",
		"half pint lager, half pint lemonade":                                                       "lager 284.13 + lemonade 284.13",
		"pint stout, 25 ml crème de cassis":                                                         "stout 568.26 + crème de cassis 25",
		"2 quarts black tea, 1 pint dark rum, 8 oz lemon juice":                                     "black tea 1892.71 + dark rum 473.18 + lemon juice 236.59",
		"x24: dark rum 50 → 1200, lime juice 25 → 600, simple syrup 20 → 480":                       "dark rum 1200 + lime juice 600 + simple syrup 480",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for text, says := range map[string]string{
		"1 pint dark rum, 2 oz lime juice":                      "no unit of the bar",
		"700 ml rum, 300 ml lime juice. Serve 90 ml rum beside": "stands in a step",
		"fill with ginger beer: 2 oz vodka, ½ oz lime juice":    "fills the drink up",
		"sugar dissolved in hot water, 50 ml bourbon":           "not how much",
		"Dissolve sugar in hot water, add 50 ml bourbon":        "no line states an amount",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.ErrorContains(t, err, says, text)
	}
}
