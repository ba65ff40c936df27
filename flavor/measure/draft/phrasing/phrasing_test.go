package phrasing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/phrasing"
)

// Turns of phrase as bars write them, and the same in plain phrases: common practice, no source.
func TestOf(t *testing.T) {
	for text, want := range map[string]string{
		"2 rye 2 maraschino dashes 2 absinthe dashes":              "2 rye 2 dashes maraschino 2 dashes absinthe",
		"1 sugar cube, soaked in 3 dashes bitters":                 "1 sugar cube soaked in 3 dashes bitters",
		"1 absinthe-soaked sugar cube":                             "1 sugar cube soaked in absinthe",
		"coupe washed with absinthe":                               "coupe rinsed with absinthe",
		"a healthy 2 oz pour of gin":                               "a healthy 2 oz of gin",
		"a short 2 oz of gin":                                      "a scant 2 oz of gin",
		"2ish oz gin":                                              "about 2 oz gin",
		"just shy of an ounce of gin":                              "about an ounce of gin",
		"a little more than half an ounce of gin":                  "about half an ounce of gin",
		"2 oz gin, 1 oz simple syrup Method: shake":                "2 oz gin, 1 oz simple syrup\nMethod: shake",
		"2 oz gin, 1 oz simple syrup Glass: coupe":                 "2 oz gin, 1 oz simple syrup\nGlass: coupe",
		"served in a cocktail glass: 2 oz gin":                     "served in a cocktail glass: 2 oz gin",
		"2 oz scant gin":                                           "2 oz gin",
		"2 oz gin, generous":                                       "2 oz gin",
		"2 oz heavy cream, 2 oz light rum":                         "2 oz heavy cream, 2 oz light rum",
		"2 rye, 3 orange bitters drops":                            "2 rye, 3 drops orange bitters",
		".75 of everything: gin, lemon, triple sec":                ".75 each: gin, lemon, triple sec",
		"eq pts mezcal / bitter / rosso":                           " equal parts mezcal / bitter / rosso",
		"half a lime squeezed and dropped":                         "half a lime squeezed",
		"stir. lemon, bin it":                                      "stir. lemon twist",
		"stir, up, orange peel discarded":                          "stir, up, orange twist",
		"muddle light, crushed":                                    "muddle lightly, crushed",
		"5 mint w 20 sugar":                                        "5 mint, 20 sugar",
		"3 ango tall soda":                                         "3 ango, tall, top soda",
		"1 oz sv (batch x20 = 20/20/20 + 10 water)":                "1 oz sv",
		"step 1: 2 oz gin\nstep 2: 1 oz lemon":                     "2 oz gin\n1 oz lemon",
		"top slowly with 100ml cider":                              "top with 100ml cider",
		"Lecture 4, exercise 2. Sour: 60 ml rye":                   "Sour: 60 ml rye",
		"60 ml rye; optional egg white 20 ml; 30 ml lemon":         "60 ml rye; egg white 20 ml optional; 30 ml lemon",
		"200ml dry cider, heated to 65 C":                          "200ml dry cider heated",
		"tequila (100% agave) 2 oz":                                "tequila 2 oz",
		"1 oz each gin, 151 rum":                                   "1 oz each gin, overproof demerara rum",
		"JAL 2 SL":                                                 "JAL 2 slices",
		"60 gin, bunch of basil":                                   "60 gin, handful of basil",
		"tequila 1.25/pour (160)":                                  "tequila 1.25",
		"stir once. No garnish.":                                   "stir once\nNo garnish.",
		"cognac, rum 20ml apiece":                                  "cognac, rum 20ml each",
		"Tbl 14 seat 2\n1x OLD FASH - bourbon 60":                  "OLD FASH - bourbon 60",
		"#212 BAR\n1 MARG\nTEQ 2":                                  "MARG\nTEQ 2",
		"egg white 22ml\nDS, WS, coupe":                            "egg white 22ml\ndry shake, shake, coupe",
		"stir, DS into coupe":                                      "stir, double strain into coupe",
		"22ml all the way. Scotch, lemon":                          "22ml each: Scotch, lemon",
		"mimosa: OJ and bubbly 50:50, flute. 75ml of each":         "mimosa: 75ml each OJ and bubbly, flute",
		"60 vodka, 20 lime, side shot prosecco":                    "60 vodka, 20 lime, prosecco on the side",
		"shake all but the cider, top with it":                     "shake all but the cider, top with cider",
		"30 demerara 151, 30 lime":                                 "30 overproof demerara rum, 30 lime",
		"the 2:1:1. We used 50ml cognac, 25ml curacao, 25ml lemon": "50ml cognac, 25ml curacao, 25ml lemon",
		"whisky 45, soda 135 (1:3)":                                "whisky 45, soda 135",
		"TBL 6 // 1 x Marg, SUB mezcal, NO salt: 2 mezcal, 1 lime": "Marg: 2 mezcal, 1 lime",
		"2 gin\n-- batch: 700ml bottle = 11 serves":                "2 gin",
		"Cut 1 lime in 8 pieces and muddle":                        "Cut 1 lime and muddle",
		"5 oz hot water at 190°F":                                  "5 oz hot water",
		"120ml water @ 80 C":                                       "120ml hot water",
		"30 tea at 20 C":                                           "30 tea",
		"1/2 lime, in 4 pieces":                                    "1/2 lime",
		"half salt rim\n2 tequila":                                 "rim: salt\n2 tequila",
		"2 vodka (crossed out: 1 cranberry)":                       "2 vodka",
		"build, olive if they ask":                                 "build, olive optional",
		"10ml 2:1. Shake. Coupe.":                                  "10ml 2:1\nShake. Coupe.",
		"Sour,gin,2,lemon,.75,shake":                               "Sour;gin;2;lemon;.75;shake",
		"\"Sour\",2,\"gin\",.75,\"lemon\",\"shake\"":               "\"Sour\";2;\"gin\";.75;\"lemon\";\"shake\"",
		"gin 4,5 cl, lemon 2 cl":                                   "gin 4,5 cl, lemon 2 cl",
		"gin,4,5,lemon,2,shake":                                    "gin,4,5,lemon,2,shake",
		"Gin(2) Lemon(3/4) shake":                                  "Gin 2, Lemon 3/4, shake",
		"2 gin (2) shake":                                          "2 gin (2) shake",
		"red wine & cola, half & half":                             "red wine & cola,  equal parts",
		"1 oz half & half, 2 oz rum":                               "1 oz half & half, 2 oz rum",
		"2 rye, (optional: 1 egg white), shake":                    "2 rye, 1 egg white optional, shake",
		"1 egg white opt. Shake":                                   "1 egg white optional Shake",
		"8 mint lvs gently pressed":                                "8 mint lvs",
		"75 ml prosecco slowly on top":                             "75 ml prosecco on top",
		"- [x] 2 gin\n- [ ] 1 lime":                                "2 gin\n1 lime",
		"Step 1: stir 2 gin. Step 2: 1 lime":                       "stir 2 gin\n1 lime",
		"strain onto 1 large rock":                                 "strain onto a large rock",
		"express orange, drop it in":                               "express orange",
		"espresso 30ml (1 shot)":                                   "espresso 30ml",
		"NA: double espresso, 120 tonic":                           "NA: 2 shots espresso, 120 tonic",
		"lemon 3/4 scant, gin 2":                                   "lemon 3/4, gin 2",
		"a bit of salt":                                            "pinch of salt",
		"shake w/ crushed, strain up":                              "shake, strain up",
		"LIME 1 / HALF SALT / RX":                                  "LIME 1 / SALT rim / RX",
		"rim: sugar, half. 2 cognac":                               "rim: sugar. 2 cognac",
		"hot water 5 oz (just off boil ~85C)":                      "hot water 5 oz",
		"an ounce apiece of gin, lime":                             "1 oz each gin, lime",
		"2 gin\nshake. nut allergy on table 4!!":                   "2 gin\nshake. \nnote: nut allergy on table 4!!",
	} {
		assert.Equal(t, want, phrasing.Of(text).Text, text)
	}
	for _, text := range []string{
		"2 oz rye, 2 dashes bitters", "1 oz gin 2 dash orange bitters", "2 of rye and dashes", // the measure stands where it should
		"2 oz lemon, bin the rest of it", "muddle light brown sugar",
		"Marg, SUB mezcal: 2 tequila, 1 lime", "Sour, NO egg: 2 rye, 1 egg white", "Marg, NO salt, ALLERGY nuts: 2 mezcal", // what is poured says otherwise, or may harm
		"step 1: all of it", "1 GIN 2 LIME", "2 gin, 1 honey syrup (3:1)", "a 2:1, 60 gin, 20 lemon", "DRESS, shake", "shake with crushed, dump", // other ratios, other words
	} {
		assert.Equal(t, text, phrasing.Of(text).Text)
	}
	assert.Equal(t, []string{"batch x20 = 20/20/20"}, phrasing.Of("1 oz sv (batch x20 = 20/20/20)").Aside)
}
