package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// What a drink in a ratio comes to scales its parts, and amounts and names that take turns are paired:
// common practice, no source.
func TestAmountsThatStandApartFromTheirNames(t *testing.T) {
	for text, want := range map[string]string{
		"6:1 gin to dry vermouth, 70ml total. Stir. Coupe. Twist":                                                "60 london-dry-gin, 10 dry-vermouth",
		"daisy 4:2:1 — blanco tequila : lime : agave. whole drink 3.5oz before dilution. shake, coupe":           "59 blanco-tequila, 30 lime-juice, 15 agave-syrup",
		"4:2:1 blanco tequila : lime : agave, total 105 ml. shake, coupe":                                        "60 blanco-tequila, 30 lime-juice, 15 agave-syrup",
		"equal parts gin, red bitter aperitif, sweet vermouth, total 60 ml. stir, rocks":                         "20 london-dry-gin, 20 red-bitter-aperitif, 20 sweet-vermouth",
		"1-1-1 oz gin, red bitter aperitif, sweet vermouth. stir, rocks":                                         "30 london-dry-gin, 30 red-bitter-aperitif, 30 sweet-vermouth",
		"30 30 30\ngin\nsweet vermouth\nred bitter aperitif\nstir, rocks":                                        "30 london-dry-gin, 30 sweet-vermouth, 30 red-bitter-aperitif",
		"2:1 gin, sweet vermouth, 2 dashes orange bitters, 90 ml total. stir, up":                                "60 london-dry-gin, 30 sweet-vermouth, 2 orange-bitters",
		"Jack Rose\napplejack, two oz\nlime, three-quarters\ngrenadine (real), half an ounce\nshake, up":         "59 apple-brandy, 22 lime-juice, 15 grenadine",
		"Rye whiskey, 2 ounces. Lemon juice, 1/2 ounce. Grenadine, 1 teaspoonful. Shake with ice":                "59 rye-whiskey, 15 lemon-juice, 5 grenadine",
		"For this drink I am using sake sixty milliliters, with gin thirty, and the lemon juice is fifteen only": "60 sake, 30 london-dry-gin, 15 lemon-juice",
		"rye, 2. amaro, 1. ang one. stir. up.":                                                                   "59 rye-whiskey, 30 medium-amaro, 1 aromatic-bitters",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
}

// Another amount beside what all comes to, and a chain with a link too
// few are asked about.
func TestAmountsThatMayBeOfEitherNameAreAsked(t *testing.T) {
	for _, text := range []string{
		"4:2:1 blanco tequila : lime : agave, 105 ml. shake, coupe",
		"4:2:1 — blanco tequila : lime : agave. 3.5 oz after dilution. shake, coupe",
		"2:1 honey syrup, lemon, 50 gin. shake",
		"gin, 45 lemon, 20 sugar, 15. shake",
		"half ounce of gin one ounce lime three quarter demerara syrup half and shake, up",
		"gin forty five, no lime twenty, sugar ten. shake up",
		"lime or lemon twenty, gin forty five, sugar ten",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}
