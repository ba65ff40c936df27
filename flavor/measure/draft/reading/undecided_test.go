package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// What a draft does not know itself, or only its house does, is asked: common practice, no source.
func TestUndecidedIsAsked(t *testing.T) {
	for _, text := range []string{
		"manhattan for 6: 12 oz rye, 6 oz vermouth (sweet? dry? the client didn't say)",
		"white rum 2 oz\nlime 1 oz\nsimple 3/4 oz\nwhite rum 1.5 oz\nshake, up\nWhich is right??",
		"rum 60 ml\nrum 45 ml\nlime 25 ml\nsimple 15 ml\n(one of the rums is the old spec, don't know which)",
		"50 ml amaretto, 25 ml lemon, 10 ml simple, and the foamy stuff as usual. dry shake, rocks",
		"gin 50, lemon 25, syrup (the new one) 20, shake coupe",
		"ALLERGY sesame?? 50 ml gin, 25 ml grapefruit, 15 ml simple. shake, rocks. check w kitchen it's in one of these",
		"1 Spritz limoncello\nlimoncello 5cl\ncava 9cl",
		"almond-washed gin 50 ml, lemon 20 ml, simple 15 ml, shake up",
		"almond-washed gin 50 ml\nlemon 20 ml\nsimple 15 ml\nshake up",
		"walnut-fat bourbon 2 oz, lemon 3/4, maple 1/2, shake, rocks",
		"brown butter rum 60 ml, lime 25 ml, simple 15 ml, shake, up",
		"sesame vodka 2 oz / lemon .75 / simple .75 / shake up",
		"day: its 50/50\nnight: 1.5 gin 1.5 dry verm?\nday: ya & dash OB\nnight: stirred, up",
		"Grab a tall glass. In goes whisky, 45 ml, then apple juice at twice that, fill up with ginger ale.",
		"Grab a tall glass. In goes gin, 45 ml, then apple juice 60 ml, fill up with ginger ale.",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", text, s.Pours)
	}
	for text, want := range map[string]string{
		"MESA 7\n1 SPRITZ LIMONCELLO\nlimoncello 5cl\ncava 9cl\nSIN menta":      "50 limoncello, 90 cava",
		"1 SPRITZ LIMONCELLO\nlimoncello 5cl\ncava 9cl\nsoda 3cl":               "50 limoncello, 90 cava, 30 soda-water",
		"1 spritz absinthe\n2 oz gin\n¼ oz lemon\nshake, up":                    "0 absinthe, 59 london-dry-gin, 7 lemon-juice",
		"¼ spritz aromatic bitters\n2 oz gin\n¼ oz aromatic bitters\nshake, up": "0 aromatic-bitters, 59 london-dry-gin, 7 aromatic-bitters",
		"Rim: half salt\n2 oz reposado tequila\n1 oz lime\nshake, rocks":        "59 reposado-tequila, 30 lime-juice",
		"2 oz reposado tequila / 1 oz lime / HALF SALT / rocks":                 "59 reposado-tequila, 30 lime-juice",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
}
