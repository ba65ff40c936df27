package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// A word that means several things is what the drink of that name has everywhere, after the proven drinks.
func TestMeantByTheNameOfTheDrink(t *testing.T) {
	for text, want := range map[string]string{
		"jungle bird\n1.5 oz dark rum\n.75 oz bitter\n.5 oz lime\n.5 oz simple\n1.5 oz pineapple\nshake":       "dark-rum red-bitter-aperitif lime-juice simple-syrup pineapple-juice",
		"Garibaldi: 45 ml bitter, 120 ml orange juice, highball":                                               "red-bitter-aperitif orange-juice",
		"Manhattan\n2 oz whiskey\n1 oz vermouth\n2 dashes ango\nstir, up":                                      "rye-whiskey sweet-vermouth aromatic-bitters",
		"our house Rob Roy\n2 oz scotch\n1 oz vermouth\n2 dashes ango\nstir, up":                               "blended-scotch sweet-vermouth aromatic-bitters",
		"Batanga: 2 oz blanco, 1/2 oz limón, cola, build, salt rim":                                            "blanco-tequila lime-juice cola",
		"Singapore Sling\n30 ml gin\n15 ml cherry liqueur\n7.5 ml herbal liqueur\n60 ml pineapple\n15 ml lime": "london-dry-gin cherry-liqueur honey-herb-liqueur pineapple-juice lime-juice",
	} {
		_, got := ids(t, text)
		assert.Equal(t, want, got, text)
	}
	for _, text := range []string{ // no name, or one that settles nothing
		"2 oz gin\n1 oz vermouth\nstir, up", "House Lantern\n30 ml gin\n7.5 ml herbal liqueur\n60 ml pineapple\n15 ml lime",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}

// What a list holds is never passed over, nor is another poured in its place: common practice, no source.
func TestNothingOfAListIsPassedOver(t *testing.T) {
	for _, text := range []string{
		"old fashioned: 2 oz, .25 dem, 2 ango, big rock, stir",                                    // the name of a drink is no bottle
		"2 oz cognac + white menthe, shake, crushed", "stinger: 2 oz cognac, green menthe, shake", // a liqueur is no leaf
		"40 gin\n10 lemon\n90 cooks",                                                                        // no number of people
		"50 bourbon + 25 lemon + 20 syrup + foam. shake", "45 gin, 25 lemon, 20 sugar, 15 foamer, shake up", // egg, or not
		"45 gin\n20 lemon\n15 sugar\n20 egg white upon request\nshake", "2oz vodka, .5 lime, 3oz ginger beer (summer only)",
		"2oz gin\n1oz lemon\n.5oz honey (we dropped this)\nshake",
		"coeliac safe\n330 lager\n20 lime", "Nightcap, ok for coeliacs\n330 lager\n20 lime", "dairy-less\n40 vodka\n30 cream\n20 coffee liqueur\nshake",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", text, s.Pours)
	}
	for text, want := range map[string]string{
		"40 peach liqueur\n10 lemon\n90 pros\ntop soda\nbuild":            "peach-liqueur lemon-juice prosecco soda-water",
		"40 gin, 15 vanilla gomme, 20 lime. shake":                        "london-dry-gin vanilla-syrup lime-juice",
		"pamplemousse 6 cl\ntequila 4 cl\ncitron vert 2 cl":               "grapefruit-juice blanco-tequila lime-juice",
		"2 tequila, .5 pamplemousse, .75 lime, shake":                     "blanco-tequila grapefruit-liqueur lime-juice",
		"50 gin\n25 lemon\n15 sugar\n15 egg white\nshake, nutmeg on foam": "london-dry-gin lemon-juice simple-syrup egg-white",
	} {
		_, got := ids(t, text)
		assert.Equal(t, want, got, text)
	}
}
