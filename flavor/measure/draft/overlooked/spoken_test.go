package overlooked_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
)

// What is said around the pours and is not so is asked for: common practice, no source.
func TestWhatIsSaidOfThePours(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	for text, fault := range map[string]string{
		"same as friday but 20 lime, 50 gin":                                               "goes by another drink",
		"Pool Deck (0%)\n50 gin\n25 lime\n20 simple":                                       "% vol of alcohol",
		"0.0 | Pool Deck\n50 gin\n25 lime\n20 simple":                                      "% vol of alcohol",
		"alcohol free: 50 gin 25 lime 20 simple":                                           "% vol of alcohol",
		"one for me: 50 gin 25 lemon 20 simple. one for you: 50 rum 25 lime 20 simple":     "two drinks",
		"50 gin 25 lemon 20 simple shake. then try 50 rum 25 lime":                         "two drinks",
		"50 gin\n25 lemon\n20 simple\nit needs salt":                                       "tells more than what is laid",
		"tequila or mezcal 4cl, lime 2cl, agave 1cl, shake":                                "leaves a choice",
		"tequila ou mezcal 4cl, citron vert 2cl, agave 1cl, shaker":                        "leaves a choice",
		"two oz gin\nabc oz lemon":                                                         "its amount cannot be read",
		"2 oz gin, ? oz lime, 1 oz simple":                                                 "its amount cannot be read",
		"50 gin 25 lemon 20 simple we are out of lemon so use lime":                        "tells more than",
		"50 gin 25 lemon 20 simple, guests love it with egg white":                         "no amount",
		"2 gin 1 lemon 1 simple served with a shot of tequila":                             "simple served",
		"40 ml gin\n20 ml lemon juice\n15 ml simple syrup\nshake, highball, top":           "top",
		"50 gin\n25 lemon\nleave the honey out? ask\n20 honey syrup\nshake":                "leaves out",
		"gin 30\ngrapefruit juice 30 - NO grapefruit juice in this one\nshake":             "denies",
		"gin 30\norgeat 15\nlemon 20\nno orgeat for table 6, allergy":                      "denies",
		"gin 45\nlemon 20\negg white\nno egg":                                              "denies",
		"scotch 2, sweet vermouth 1, stir. or was it shake? cant remember":                 "leaves something open",
		"scotch 2, sweet vermouth 1, stir. not sure sweet or dry verm":                     "leaves something open",
		"2 oz gin, 1 oz lime, 1 oz simple (or was it half?), shake":                        "leaves something open",
		"2 oz gin\n1 oz lemon\n1 oz simple\ncheck the simple, could be half":               "leaves something open",
		"1 oz gin, 1 oz lemon, lime, some of the purple stuff. shake":                      "leaves something open",
		"2 gin 1 lemon 1 simple shake, + something green":                                  "leaves something open",
		"15 ml ??? syrup\n50 ml gin\n25 ml lemon":                                          "leaves something open",
		"low tide 15 campfire cordial; 17 gin":                                             "amid its words",
		"navy colada 2 navy / 4 pine / 1 oj / 1 coconut cream / whip":                      "may pour navy",
		"tide 2 zorbel, 1 lime, 1 simple, 2 gin":                                           "may pour zorbel",
		"low tide (bar 2) 15 campfire cordial\n17 gin":                                     "amid its words",
		"low tide (bar 2) 15 campfire cordial; 17 gin":                                     "amid its words",
		"45 gin\n20 lemon\n20 simple\ncontains: NUTS, EGG\nshake":                          "listed as an allergen",
		"45 gin\n20 lemon\nallergens: milk, nuts (orgeat 15 ml)\nshake":                    "list of allergens",
		"50 gin, 25 lemon, 20 simple. no, wait: no garnish":                                "stands among what is poured",
		"gin 22, green herbal 22, maraschino 22, lime 22 -- NO sorry all 25 not 22. shake": "\"all 25 not 22\" may set the amounts of several",
		"boulevardier, but gin for the whiskey. equal parts. orange":                       "tells of several pours",
		"last word with rum in it, equal parts, lemon":                                     "tells of several pours",
		"rum 45, red bitter 20, lime 15, dem 15. shake":                                    "stands among what is poured",
		"5 cl gin, no, 4 cl pear spirit, 2 cl lemon":                                       "takes back",
		"50 gin, wait, 40 mezcal, 25 lime, 20 agave. shake":                                "takes back",
		"1.5 oz rye\n1 oz sweet vermouth, sorry, 3/4 oz dry vermouth\nstir, up":            "takes back",
	} {
		_, err := c.ReadSpec("", text)
		assert.ErrorContains(t, err, fault, text)
	}
	for _, text := range []string{
		"1 oz gin\n3 oz nut-free falernum syrup (alcohol-free)\nshake",
		"Pool Deck (0%)\n50 pineapple juice\n25 lime juice\n20 simple syrup\n2 dashes aromatic bitters\nshake",
		"Mai Tai\n2 oz aged rum\n1 oz lime juice\n1/2 oz dry orange curaçao\n1/2 oz orgeat\nshake, crushed",
		"frozen mai tai: 2 oz aged rum, 1 oz lime juice, 1/2 oz dry orange curaçao, 1/2 oz orgeat, blend",
		"1½ oz aged rum\n½ oz overproof rum\n¾ oz lime juice\n½ oz grapefruit juice\nshake, crushed",
		"45 gin\n20 lemon\n20 orgeat\n1 egg white\ncontains: NUTS (orgeat), egg\nshake",
		"30 brandy, 15 demerara syrup, 1 whole egg, 60 stout. shake w/o the stout, strain, pour stout in",
		"45 gin\n20 lime\n20 simple\nno lime wheel\nshake, up",
		"45 gin\n20 lime\n20 simple\nno lemon, no sugar rim\nshake, up",
		"Pier 39 Sour: 50 gin, 25 lemon, 20 simple",
		"French 75: gin 30, lemon 15, simple 15, top sparkling wine",
		"2 gin, 1 lime, .5 agave, 1/2 salt rim",
		"2 gin 1 lime .5 agave shake ½ smoked salt rim",
		"2 oz gin, 1 oz lemon, 1 oz simple, shake, something green on top if you have it",
		"2 oz gin, 1 oz lemon, 1 oz simple, shake, make sure it is cold",
		"Pier 5 Sour / 2 gin / 1 lemon / 1 simple",
		"Punch No. 4, 2 gin, 1 lemon, 1 simple",
		"45 gin\n20 lemon\n20 simple\nallergens: none\nshake",
		"50 gin 25 lemon 20 simple. finish with soda",
		"50 gin, 25 lemon - no, 20 lemon, 20 simple, top soda",
		"2 oz gin, make that 1.5, 3/4 oz lemon, 3/4 oz simple",
		"rum 50 (12 btl left)\nlime 25 (2 trays)\nsugar 15\nshake",
		"gin 60, lemon 30, simple 20, shake 12, serve 2",
		"50 ml gin, 25 ml lemon, 20 ml simple, 1 shot espresso, shake, coupe, 3 beans",
	} {
		_, err := c.ReadSpec("", text)
		assert.NoError(t, err, text)
	}
}
