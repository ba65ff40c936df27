package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// Old receipts write the unit before a Roman number, that may end in a j, and repeat units by "ditto"; others
// number what stands on one line. Common practice, no source.
func TestReceiptsAndNumberedLines(t *testing.T) {
	for text, want := range map[string]string{
		"rum 2 oz\nlime juice 1 oz\nabsinthe gtt. vi":                               "rum 59.15 + lime juice 29.57 + absinthe 0.3",
		"brandy oz. ij, lemon juice dr. iij, honey syrup dr. j":                     "brandy 59.15 + lemon juice 11.09 + honey syrup 3.7",
		"1 oz rye, 2 ditto sweet vermouth":                                          "rye 29.57 + sweet vermouth 59.15",
		"1. 50 ml rum 2. 25 ml lime juice 3. 15 ml honey syrup 4. shake, coupe":     "rum 50 + lime juice 25 + honey syrup 15",
		"Deck Sour: 1. 50 ml rum 2. 25 ml lime juice 3. 15 ml honey syrup 4. shake": "rum 50 + lime juice 25 + honey syrup 15",
		"one-sixth gill rum, one-eighth gill lime juice":                            "rum 19.72 + lime juice 14.79",
		"honey 1 kg, water 1 l":                                                     "honey 700.31 + water 1000",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}

// Two letters that change places in a short word are a slip, unless that is a word too: common practice, no source.
func TestShortWordsSlip(t *testing.T) {
	for text, want := range map[string]string{
		"50 ml ign, 25 ml lemon juice, 20 ml honey syrup": "ign 50 + lemon juice 25 + honey syrup 20",
		"50 ml gin, 25 ml liem, 20 ml honey syrup":        "gin 50 + liem 25 + honey syrup 20",
		"2 oz yre, 1 oz sweet vermouth":                   "yre 59.15 + sweet vermouth 29.57",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for _, text := range []string{"50 ml gin, 25 ml coal, 20 ml honey syrup", "50 ml gan, 25 ml lemon juice"} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", text, s.Pours)
	}
}
