package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// One amount may be that of each name of a list; a list of which another part is not known is asked.
func TestOneAmountForAList(t *testing.T) {
	for text, want := range map[string]string{
		"Low Tide .75 ea. mezcal / triple sec / lime .. shake coupe":                   "22 mezcal, 22 triple-sec, 22 lime-juice",
		"eqp 3/4: gin, triple sec, blanc verm, lemon. shake":                           "22 london-dry-gin, 22 triple-sec, 22 blanc-vermouth, 22 lemon-juice",
		"everything at 25: pisco, lime, pineapple, falernum. shake, up":                "25 pisco, 25 lime-juice, 25 pineapple-juice, 25 falernum",
		"House three equally (30 ml): gin, sweet vermouth, red bitter. stir":           "30 london-dry-gin, 30 sweet-vermouth, 30 red-bitter-aperitif",
		"1oz x3: white rum, dark rum, gold rum / .75 lime / 1 honey syrup. shake":      "30 white-rum, 30 dark-rum, 30 gold-rum, 22 lime-juice, 30 honey-syrup",
		"half ounce each gin vodka rum tequila, lemon 3/4, simple 3/4, top cola, tall": "15 london-dry-gin, 15 vodka, 15 white-rum, 15 blanco-tequila, 22 lemon-juice, 22 simple-syrup, 90 cola",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
	for _, text := range []string{
		"everything 3/4 except the gin: gin, lemon, honey. shake", "1 oz x3: white rum, lime. shake", ".75 each: gin, wibble, lemon. shake",
		"everything 3/4. rye, bitter amaro, lemon. shake", "25 ml each: gin, lime or lemon, syrup. shake",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}

// Of two dashes the last may say for both that they are of bitters; how often a drink is shaken pours nothing.
func TestSharedWordsOfDashes(t *testing.T) {
	assert.Equal(t, "59 london-dry-gin, 22 lime-juice, 1 orange-bitters, 1 aromatic-bitters", listed(t, "gin 2oz lime 3/4 + dash orange & dash aromatic bitters. Shake, coupe"))
	assert.Equal(t, "44 amaretto, 30 lemon-juice", listed(t, "amaretto 1.5 / lem 1 / shk x2 / rox"))
}
