package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// What a text says that a measure, a shot or a jigger holds, each of them holds throughout it. The first
// amount in brackets is what all of them come to, or what one does where that alone is usual.
func TestMeasuresHoldWhatTheTextSays(t *testing.T) {
	for text, want := range map[string]string{
		"one measure (25 ml) gin to four measures tonic":                       "gin 25 + tonic 100",
		"1 measure (25ml) gin\n2 measures pineapple juice\n1/2 measure lime":   "gin 25 + pineapple juice 50 + lime 12.5",
		"gin 1 measure (25ml)\ntonic 4 measures":                               "gin 25 + tonic 100",
		"Pour a measure (25 ml) of gin and four measures of tonic over ice.":   "gin 25 + tonic 100",
		"4 measures (100 ml) tonic\n2 measures (50 ml) gin":                    "tonic 100 + gin 50",
		"4 measures (25 ml) tonic\n2 measures gin":                             "tonic 100 + gin 50",
		"1 shot (35 ml) gin\n1 shot lemon\n1/2 shot honey syrup":               "gin 35 + lemon 35 + honey syrup 17.5",
		"2 shots gin (50 ml)\n1 shot lemon":                                    "gin 50 + lemon 25",
		"1 measure = 25 ml\n2 measures gin\n1 measure lemon":                   "gin 50 + lemon 25",
		"2 measures gin\n1 measure lemon\n(1 measure = 25 ml)":                 "gin 50 + lemon 25",
		"gin 2 shots\nlemon 1 shot\nour shots are 25 ml":                       "gin 50 + lemon 25",
		"2 jiggers bourbon (jigger 45ml)\n1 jigger lemon":                      "bourbon 90 + lemon 45",
		"jigger = 2 oz\n1 jigger bourbon\n1/2 jigger lemon":                    "bourbon 59.15 + lemon 29.57",
		"1 jigger (50 ml) bourbon\n1/2 jigger lemon":                           "bourbon 50 + lemon 25",
		"1/6 gill gin, 1/6 gill dry vermouth (gill = 144 ml)":                  "gin 24 + dry vermouth 24",
		"1 part (25 ml) gin\n2 parts pineapple juice":                          "gin 25 + pineapple juice 50",
		"1 shot espresso (30 ml)\n2 oz vodka\n1/2 shot coffee liqueur\nshake":  "espresso 30 + vodka 59.15 + coffee liqueur 22.18", // coffee has a shot of its own
		"2 measures dark rum (25ml each), 4 measures ginger beer":              "dark rum 50 + ginger beer 100",
		"2 shots (35 ml each) gin\n1 shot lemon":                               "gin 70 + lemon 35",
		"50 ml gin\n25 ml lemon\n(1 measure = 25 ml)":                          "gin 50 + lemon 25",
		"One shot (30 ml) of gin, two of pineapple juice, half of lemon.":      "gin 30 + pineapple juice 60 + lemon 15",
		"a measure of gin, one of lemon and half of honey syrup; measure=25ml": "gin 25 + lemon 25 + honey syrup 12.5",
		"2 parts (60 ml) of bourbon, one of lemon, half of honey syrup":        "bourbon 60 + lemon 30 + honey syrup 15",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}

// Sizes that do not agree, what may be one or all of them, and a size beside bare numbers are asked for.
func TestSizesOfMeasuresAreAskedFor(t *testing.T) {
	for _, text := range []string{
		"1 measure (35 ml) rum, 1 measure (25 ml) gin\n2 measures soda",
		"2 measures (40 ml) gin\n1 measure lemon",
		"2 jiggers (50 ml) gin\n1 jigger lemon",
		"2 gin\n1 lemon\n1 honey syrup\n1 shot = 25 ml",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", text, s.Pours)
	}
}

// Bars that pour millilitres pour imperial pints, and "pt" is a pint where parts are none.
func TestPints(t *testing.T) {
	for text, want := range map[string]string{
		"½ pt stout\n½ pt champagne":                  "stout 236.59 + champagne 236.59",
		"25 ml gin\n1/4 pt tonic":                     "gin 25 + tonic 142.07",
		"1 pint lager, 25 ml lime cordial":            "lager 568.26 + lime cordial 25",
		"2 oz gin\n1/2 pt ginger beer":                "gin 59.15 + ginger beer 236.59",
		"4 cl gin\n1 gill milk":                       "gin 40 + milk 142.07",
		"4 pts gin\n1 pt dry vermouth":                "gin 120 + dry vermouth 30",
		"2 pts gin, 1 pt lemon, 3 pts soda":           "gin 60 + lemon 30 + soda 90",
		"1 pint (500 ml) lager\n1/2 pint ginger beer": "lager 500 + ginger beer 250",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}
