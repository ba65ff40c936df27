package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// Rows of a sheet without a head, and heads that name what their amounts are of, hold names and amounts by turns.
func TestRowsWithoutAHead(t *testing.T) {
	for text, want := range map[string]string{
		"drink,mezcal_ml,lime_ml,agave syrup_ml,soda_ml,style\nDust Road,45,20,15,top,build/long":                   "45 mezcal, 20 lime-juice, 15 agave-syrup, 90 soda-water",
		"Jetty,1.5,dark rum,0.75,red bitter,1.5,pineapple juice,0.5,lime,shake,rocks":                               "44 dark-rum, 22 red-bitter-aperitif, 44 pineapple-juice, 15 lime-juice",
		"\"Harbour sour\",blended scotch:60,lemon:22.5,ginger syrup:22.5,shake,rocks":                               "60 blended-scotch, 22 lemon-juice, 22 ginger-syrup",
		"| gin | | 50 | ml | vanilla syrup | | 15 | ml | lime | | 20 | ml | shake":                                  "50 london-dry-gin, 15 vanilla-syrup, 20 lime-juice",
		"Rye, 2, oz, 59\nSweet vermouth, 0.75, oz, 22\nAngo, 2, dash, \nSTIR / UP":                                  "59 rye-whiskey, 22 sweet-vermouth, 2 aromatic-bitters",
		"name;qty;u\ngin;50;ml\nlemon;25;ml\nhoney syrup;20;ml\n;;shake / rocks":                                    "50 london-dry-gin, 25 lemon-juice, 20 honey-syrup",
		"DRINK: Corner Spritz\nBASE.......... 1.5 oz dry vermouth\nLENGTH........ 3 oz tonic\nICE........... cubes": "44 dry-vermouth, 89 tonic-water",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
	for _, text := range []string{
		"drink,gin_ml,lemon_ml,syrup_ml\nA,50,25,20\nB,45,20,15", // two drinks
		"gin,lemon:25,honey syrup:20,shake,up",                   // no amount of one
		"Rye, 2, oz, 45\nSweet vermouth, 1, oz, 30\nstir, up",    // columns that do not agree
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}

// Figures that a scan took for letters are read as figures, which is told.
func TestScannedFigures(t *testing.T) {
	for text, want := range map[string]string{
		"scan p.41\nADONIS COCKTAIL\nl½ oz. fino sherry\nl½ oz. Italian vermouth\n2 dashes orange bitters\nStir, up": "44 fino-sherry, 44 sweet-vermouth, 2 orange-bitters",
		"O.5 oz lime\nI oz gin\nl/2 oz simple\nshake up":                                                             "15 lime-juice, 30 london-dry-gin, 15 simple-syrup",
		"6Oml gin\n25 ml lemon juice":                     "60 london-dry-gin, 25 lemon-juice",
		"l oz gin\n1 oz lemon juice":                      "30 london-dry-gin, 30 lemon-juice",
		"2 oz G1n\n3/4 oz lemon\n3/4 oz s1mple\nshake up": "59 london-dry-gin, 22 lemon-juice, 22 simple-syrup",
	} {
		assert.Equal(t, want, listed(t, text), text)
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.NoError(t, err, text)
		assert.Contains(t, s.Notes[0], "is read as", text)
	}
}
