package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// Names before their amounts keep them, however short they are: an amount left over at the end is no
// reason to give each name that of the next. Common practice, no source.
func TestShortNamesKeepTheirAmounts(t *testing.T) {
	for text, want := range map[string]string{
		"g 1.5 sv 1.5 ob 2d / stir / up":               "44 london-dry-gin, 44 sweet-vermouth, 2 orange-bitters",
		"g 50 lem 25 ss 20 shk":                        "50 london-dry-gin, 25 lemon-juice, 20 simple-syrup",
		"tq 50, trip 20, lim 20, shk, mtini gls":       "50 blanco-tequila, 20 triple-sec, 20 lime-juice",
		"2 gin, qtr mara, hlf lem, shk":                "59 london-dry-gin, 7 maraschino-liqueur, 15 lemon-juice",
		"2 gin, three qtrs lem, half mara, shk":        "59 london-dry-gin, 22 lemon-juice, 15 maraschino-liqueur",
		"2 oz gin, a qtr oz of ss, 1 oz lemon, shake":  "59 london-dry-gin, 7 simple-syrup, 30 lemon-juice",
		"2 oz cream, 1 oz gin, 1 oz hlf n hlf, shake":  "59 heavy-cream, 30 london-dry-gin, 30 half-and-half",
		"apl brdy 50 / lem 20 / gren 15 / shake / cpe": "50 apple-brandy, 20 lemon-juice, 15 grenadine",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
	for _, text := range []string{
		"k 2 sv 1 ab 2d stir", "zq 2 dv .5 ob 1d / stir", // a pour in short, and no name of a drink
		"g 45 / ch 15 / lem 20",         // nobody knows what the second is
		"2 gin, half mara, blurb oz ss", // a measure is not passed over
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%s: %v", text, s.Pours)
	}
	s, err := reading.Read("V 2: 50 gin, 20 lemon, 20 simple, shake", wholeCatalogue(t))
	if assert.NoError(t, err) {
		assert.Len(t, s.Pours, 3)
	}
}

// A word between names that share an amount is poured, though it is an everyday one.
func TestNothingOfASharedAmountIsPassedOver(t *testing.T) {
	for _, text := range []string{
		"25 ml each gin / garden / lemon, shake", "1 oz ea gin / window / lem / ss, shk", "gin / meeting / lemon: 25 ml each. shake", "equal parts gin | garden | lemon. shake",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%s: %v", text, s.Pours)
	}
	assert.Equal(t, "25 london-dry-gin, 25 dry-vermouth", listed(t, "Garden / 25 ml each gin / dry vermouth / stir, up / window table"), "a title, and a remark behind the service")
}
