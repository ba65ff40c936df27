package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// Nothing that a clipped line pours is lost in its words of making: common practice, no source.
func TestNothingIsLostInTheMaking(t *testing.T) {
	for text, want := range map[string]string{
		"gin 2 lem .75 ss .75 st nn cherry ang bit":                             "gin 59.15 + lem 22.18 + ss 22.18 + ang bit 1.6",
		"1.5 cognac .75 trip sec .75 lem shk coupe sugr rim":                    "cognac 44.36 + trip sec 22.18 + lem 22.18",
		"irish 40 brown sugar 2 bsp coffee 120 cream float hot":                 "irish 40 + brown sugar 4.43 + coffee 120 + cream 15",
		"2 oz gin\n1 oz lemon\n1 oz simple\nshake first bit, up":                "gin 59.15 + lemon 29.57 + simple 29.57",
		"thirty-five dark rum, fifteen lemon, ten simple, shake":                "dark rum 35 + lemon 15 + simple 10",
		"fifty gin, twenty-five of lemon, twenty of honey syrup, shake":         "gin 50 + lemon 25 + honey syrup 20",
		"2 rum, 1 lime, soda\nshake, lengthened with soda":                      "rum 59.15 + lime 29.57 + soda 90",
		"50 gin, 25 lime, top soda\nFinish with a ribbon of cucumber.":          "gin 50 + lime 25 + soda 90",
		"60 gin\n20 lemon\n7.5 peated malt (float)\nShake without the float":    "gin 60 + lemon 20 + peated malt 7.5",
		"1. Pour in 60 ml gin.\n2. Add 15 ml fino sherry.\n3. Stir, coupe.":     "gin 60 + fino sherry 15",
		"50 gin, 25 lemon, 15 simple, shake\n👍":                                 "gin 50 + lemon 25 + simple 15",
		"Tideway 2 gin 1 lemon .5 honey shk":                                    "gin 59.15 + lemon 29.57 + honey 14.79",
		"2 oz rum, 1 oz lime, .75 oz simple, shake, strain into a brandy glass": "rum 59.15 + lime 29.57 + simple 22.18",
		// what is forgotten is not poured, and what is done to a pour is none
		"Forget the egg in the fizz, it's 60 bourbon, 25 lemon, 20 simple":                           "bourbon 60 + lemon 25 + simple 20",
		"Forget the egg\n60 bourbon\n25 lemon\n20 simple":                                            "bourbon 60 + lemon 25 + simple 20",
		"2 oz gin\n.5 oz egg white, beaten\n1 oz lemon juice, freshly squeezed\n.5 oz simple":        "gin 59.15 + egg white 14.79 + lemon juice 29.57 + simple 14.79",
		"2 oz rye\n1 oz red bitter aperitif\n1. Add rye, bitter aperitif into a mixing glass, stir.": "rye 59.15 + red bitter aperitif 29.57",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}

// What may be poured as well as not, or be one bottle or another, is asked for: common practice,
// no source.
func TestWhatMayBeAnotherBottleIsAskedFor(t *testing.T) {
	for _, text := range []string{
		"zq 2 gf soda 4 lime .5 pinch salt build", // a drink of that name, or tequila behind whose name its amount stands
		"2 oz rye\n1 oz the batch\nstir", "2 oz rye\n.25 oz herbal\nstir", "2 oz rye\n.25 oz goat style herbal\nstir",
		"same as the special but with the pink stuff 25 instead, lime 20",               // a drink that stands elsewhere
		"wht rum 50/lime 25/ss 20/8 mint/soda - churn, hiball",                          // no two and a half of syrup
		"lager bottle, lime 30, hot sauce 3 dash", "ginger beer can, 50 vodka, 15 lime", // how much the drink has of it
		"2 oz gin, 1 oz moon mint, 1 oz lime", "50 gin 20 velvet basil 20 lime", "50 fino 100 lemon-lime soda mint, ice", // names of nothing, that end in a herb
		// what is not known, however it is said to go in
		"ok so 2 gin 1 lemon and a bit of moon dust shake it up", "gin 60 lemon 20 moon juice top shk", "gin 60 lemon 20 matede top shk",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", text, s.Pours)
	}
}

// The peel of a whole fruit is poured as a piece of it, which is told.
func TestPeelOfAWholeFruitIsTold(t *testing.T) {
	text := "Peel of 1 orange\n2 oz rye\n1/4 oz maple\nstir"
	assert.Equal(t, "0 orange-peel, 59 rye-whiskey, 7 maple-syrup", listed(t, text))
	s, err := reading.Read(text, wholeCatalogue(t))
	require.NoError(t, err)
	assert.Contains(t, s.Notes, "“Peel of 1 orange” is read as one piece of peel of each fruit")
}
