package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// Numbers stand together before or behind as many names, whatever signs part them, and two of parts are a
// drink as three are: common practice, no source.
func TestNumbersAndNamesApart(t *testing.T) {
	for text, want := range map[string]string{
		"4:1 vodka dry vermouth, stirred, up":                                        "72 vodka, 18 dry-vermouth",
		"Gimlet 2:1 gin:lime cordial, shaken, coupe":                                 "60 london-dry-gin, 30 lime-cordial",
		"manhattan 2:1 rye sweet vermouth, 2 dashes bitters":                         "60 rye-whiskey, 30 sweet-vermouth, 2 aromatic-bitters",
		"stinger 2:1 cognac + white menthe, shake":                                   "60 cognac, 30 creme-de-menthe",
		"6:1 gin, dry vermouth. Stir. Coupe":                                         "77 london-dry-gin, 13 dry-vermouth",
		"whisky soda 1:3 tall":                                                       "30 blended-scotch, 90 soda-water",
		"3:1:1 daiquiri (white rum, lime, simple)":                                   "90 white-rum, 30 lime-juice, 30 simple-syrup",
		"mezcal, lime, agave - 2 / 1 / .5 - shake, rocks":                            "59 mezcal, 30 lime-juice, 15 agave-syrup",
		"2 / ¾ / ¾ aged rum / lime / grapefruit cordial, shake, up":                  "59 aged-rum, 22 lime-juice, 22 grapefruit-cordial",
		"gin / dry vermouth / triple sec\n25/15/45 ml\nstir, up":                     "25 london-dry-gin, 15 dry-vermouth, 45 triple-sec",
		"no 4: lime/orgeat/gin = 25/15/45 ml, shake, rocks":                          "25 lime-juice, 15 orgeat, 45 london-dry-gin",
		"White Lady, 40-30-20 (gin, triple sec, lemon). Shake. Chilled coupe.":       "40 london-dry-gin, 30 triple-sec, 20 lemon-juice",
		"8:2:1 daiquiri - white rum : lime : simple. Shake. Up.":                     "240 white-rum, 60 lime-juice, 30 simple-syrup",
		"daiq 2 : 1 : .75 (oz, white rum, lime, simple) shake, coupe":                "59 white-rum, 30 lime-juice, 22 simple-syrup",
		"1.25 / 1 / 2dsh — rye / sherry (oloroso) / orange bitters. stir up":         "37 rye-whiskey, 30 oloroso-sherry, 2 orange-bitters",
		"Quay 45/45/2: old tom gin, sweet vermouth, dashes orange bitters. stir":     "45 old-tom-gin, 45 sweet-vermouth, 2 orange-bitters",
		"mezcal, lime, pineapple = 3/4 3/4 3/4, shake, rocks":                        "22 mezcal, 22 lime-juice, 22 pineapple-juice",
		"gin lime sugar 60-25-15":                                                    "60 london-dry-gin, 25 lime-juice, 15 simple-syrup",
		"Sidecar 2:1:1 cognac, triple sec, lemon — 100 ml in the tin before ice. Up": "50 cognac, 25 triple-sec, 25 lemon-juice",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
	for text, want := range map[string]string{ // joined as a list is, or with a measure of the last alone
		"50 and 10, gin and dry. stirred, up":                           "50 london-dry-gin, 10 dry-vermouth",
		"Americano: 45 + 45 (red bitter + sweet vermouth), top soda":    "45 red-bitter-aperitif, 45 sweet-vermouth, 90 soda-water",
		"Evening: 50, 20, 15 - mezcal, lime, agave syrup. shake":        "50 mezcal, 20 lime-juice, 15 agave-syrup",
		"cognac, triple sec, lemon: 45, 20 and 20. shake":               "45 cognac, 20 triple-sec, 20 lemon-juice",
		"scotch/sv/ob 2-1-1d st up":                                     "59 blended-scotch, 30 sweet-vermouth, 1 orange-bitters",
		"50/20/2 dashes cognac, sweet vermouth, orange bitters, stir":   "50 cognac, 20 sweet-vermouth, 2 orange-bitters",
		"gin, dry vermouth, absinthe 50/10/1 barspoon, stir":            "50 london-dry-gin, 10 dry-vermouth, 4 absinthe",
		"House: 30 + 30 (gin + sweet vermouth), stir, orange 1/2 wheel": "30 london-dry-gin, 30 sweet-vermouth",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
	for _, text := range []string{
		"2, 1 gin, dry vermouth", "table 4, 5: gin, lemon", "2 and 1/2 gin and dry vermouth", "2 + 1 honey syrup and lemon", "rye/sv/ab 2-1-2q stir", // no list of numbers, or more than one
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
	for _, text := range []string{"1:1 honey syrup, lemon", "2:1 simple, gin, lemon", "9/10 gin vermouth", "20-25 ml lemon, gin, shake"} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}

// What a drink in parts or in fractions of one comes to says how much a part is, wherever its pours are all
// in parts: common practice, no source.
func TestPartsOfATotal(t *testing.T) {
	for text, want := range map[string]string{
		"3 parts rye, 1 part sweet vermouth, total 80 ml. stir":                      "60 rye-whiskey, 20 sweet-vermouth",
		"3 parts rye\n1 part sweet vermouth\n2 dashes orange bitters\n80 ml in all":  "60 rye-whiskey, 20 sweet-vermouth, 2 orange-bitters",
		"3/4 rye, 1/4 sweet vermouth, 80 ml altogether, stir":                        "60 rye-whiskey, 20 sweet-vermouth",
		"Half cognac, one half port, the whole to measure four ounces. Stir, strain": "59 cognac, 59 ruby-port",
		"3 parts rye, 1 part sweet vermouth, 1 oz soda, total 80 ml":                 "90 rye-whiskey, 30 sweet-vermouth, 30 soda-water",
		"45 ml rye, 15 ml sweet vermouth, total 60 ml. stir":                         "45 rye-whiskey, 15 sweet-vermouth",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
}
