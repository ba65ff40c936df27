package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// A line with a star corrects a pour above it, as messages are corrected; stars before most lines are bullets.
func TestStarsCorrect(t *testing.T) {
	for text, want := range map[string]string{
		"50 gin\n20 lemon\n20 sugar syrup\n*lemon 25":                         "gin 50 + lemon 25 + sugar syrup 20",
		"50 gin, 20 lemon, 20 syrup\nlemon 25*":                               "gin 50 + lemon 25 + syrup 20",
		"50 gin 20 lemon 20 syrup\n*25 lemon":                                 "gin 50 + lemon 25 + syrup 20",
		"50 gin, 20 lemon, 20 simple\n*syrup 15":                              "gin 50 + lemon 20 + simple 15",
		"gin 50\nlime 25\nsugar syrup 15\n* lime 20 *":                        "gin 50 + lime 20 + sugar syrup 15",
		"2 oz rye\n1 oz sweet vermouth\n2 dashes aromatic bitters\n*3 dashes": "rye 59.15 + sweet vermouth 29.57 + aromatic bitters 2.4",
		"2 oz rum, 1 oz lime, .75 simple\n*1.25 oz lime":                      "rum 59.15 + lime 36.97 + simple 22.18",
		"A: 2 gin .5 lemon .75 honey syrup\nB: *.75 lemon":                    "gin 59.15 + lemon 22.18 + honey syrup 22.18",
		"50 gin, 20 lemon, 20 syrup\n*lemon 20":                               "gin 50 + lemon 20 + syrup 20",
		"*2 oz gin\n*1 oz lemon\n*.75 oz simple":                              "gin 59.15 + lemon 29.57 + simple 22.18",
		"* 2 oz gin\n* 1 oz lime juice\n* 1 oz lime cordial":                  "gin 59.15 + lime juice 29.57 + lime cordial 29.57",
	} {
		assert.Equal(t, want, poured(t, text), text)
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.NoError(t, err, text)
		assert.NotEmpty(t, s.Notes, text)
	}
}

// What is regretted behind a pour on its line counts in place of the one above.
func TestRegretsCorrect(t *testing.T) {
	for text, want := range map[string]string{
		"50 tequila, 25 lime, 20 agave\nlime 20 i mean": "tequila 50 + lime 20 + agave 20",
		"50 tequila, 25 lime, 20 agave\nlime 20 sorry":  "tequila 50 + lime 20 + agave 20",
		"50 gin, 20 lemon, 20 syrup\n25 lemon, oops":    "gin 50 + lemon 25 + syrup 20",
		"50 gin 20 lemon 20 syrup\n25 lemon i mean":     "gin 50 + lemon 25 + syrup 20",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}

// An amount of several pours at once is asked about, and never set for one of them alone.
func TestAmountsOfEachAreAskedAbout(t *testing.T) {
	for _, text := range []string{
		"gin 50, lemon 22, syrup 22 - make that 25 of each", "50 gin, 25 lemon, 20 syrup\nmake that 22 of each", "50 gin 22 lemon 22 sugar syrup. make that 25 each",
		"gin 22\nlemon 22\ntriple sec 22\nall 25 not 22", "22 gin 22 lemon 22 triple sec - all 25 not 22", "22 gin, 22 lemon, 22 triple sec. no wait make that 25 of each",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", text, s.Pours)
	}
}

// What a star stands before may be in the place of something like it, or be poured beside it.
func TestStarsOfNothingAreAskedAbout(t *testing.T) {
	for _, text := range []string{"50 gin, 20 lemon, 20 syrup\n*honey syrup 20", "50 gin 20 lemon 20 syrup\n*25"} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", text, s.Pours)
	}
}
