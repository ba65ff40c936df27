package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// A ratio beside the name of a drink measures what the proven drinks of that name pour, where bars agree on the
// order of the numbers; what it leaves open is asked.
func TestRatioOfADrink(t *testing.T) {
	for text, want := range map[string]string{
		"Daiquiri 2:1:¾":           "60 white-rum, 30 lime-juice, 22 simple-syrup",
		"Sidecar 50 25 25":         "50 cognac, 25 lemon-juice, 25 triple-sec",
		"Martini 5:1, stirred, up": "75 london-dry-gin, 15 dry-vermouth",
		"5:1 vodka martini, stirred, 1 dash orange bitters":            "75 vodka, 15 dry-vermouth, 1 orange-bitters",
		"Gin fizz but 60/30/20/top":                                    "60 london-dry-gin, 30 lemon-juice, 20 simple-syrup, 90 soda-water",
		"equal parts negroni, on the rocks":                            "30 london-dry-gin, 30 red-bitter-aperitif, 30 sweet-vermouth",
		"daiq, 60/30/20, shake":                                        "60 white-rum, 30 lime-juice, 20 simple-syrup",
		"Daiquiri 2:1:1, sugar rim, lime wheel. shake":                 "60 white-rum, 30 lime-juice, 30 simple-syrup",
		"Daiquiri, 8:2:1\n2 oz white rum\n0.5 oz lime\n0.25 oz simple": "59 white-rum, 15 lime-juice, 7 simple-syrup",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
	for _, text := range []string{
		"Margarita 2:1:¾",           // lime or triple sec
		"negroni 30/25/20",          // bitter or vermouth
		"daiquiri 2:¾:1",            // lime or syrup
		"daiquiri 60/25",            // of three pours
		"strawberry daiquiri 2:1:1", // of more
		"old fashioned 60/5/2",      // bars differ
		"Martini 1:5",               // turned round, or not
		"Daiquiri 2:1:¾, aged rum", "Daiquiri 2:1:¾ with mezcal",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.ErrorContains(t, err, "bars do not agree", text)
	}
}
