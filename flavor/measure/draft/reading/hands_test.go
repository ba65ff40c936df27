package reading_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// poured is what a text pours, in mL: "gin 60 + lemon 25".
func poured(t *testing.T, text string) string {
	t.Helper()
	s, err := reading.Read(text, wholeCatalogue(t))
	require.NoError(t, err, text)
	var out []string
	for _, p := range s.Pours {
		out = append(out, p.Match.Asked+" "+strconv.FormatFloat(math.Round(100*p.ML)/100, 'f', -1, 64))
	}
	return strings.Join(out, " + ")
}

// Letters and numbers of a list are no amounts: common practice, no source.
func TestListsThatAreLettered(t *testing.T) {
	for _, text := range []string{
		"A: gin 50\nB: lemon 25\nC: simple 20\nshake", "A gin 50 ml\nB lemon 25 ml\nC simple 20 ml\nshake up", "1.0 gin 50 ml\n2.0 lemon 25 ml\n3.0 simple 20 ml\nshake",
		"1.0 - 50 ml gin\n2.0 - 25 ml lemon\n3.0 - 20 ml simple\nshake", "i. 50 ml gin\nii. 25 ml lemon\niii. 20 ml simple\niv. shake", "#1 gin 50ml\n#2 lemon 25ml\n#3 simple 20ml",
	} {
		assert.Equal(t, "gin 50 + lemon 25 + simple 20", poured(t, text), text)
	}
	assert.Equal(t, "gin 29.57 + lime 59.15 + simple 88.72", poured(t, "1 oz gin\n2 oz lime\n3 oz simple"), "amounts that happen to count up")
}

// What is taken back is not poured: common practice, no source.
func TestAmountsTakenBack(t *testing.T) {
	for text, want := range map[string]string{
		"2 oz gin no wait make it one and a half\n3/4 lemon\n3/4 simple\nshake": "gin 44.36 + lemon 22.18 + simple 22.18",
		"60 gin\n30 lemon - no, 25\n20 simple\nshake":                           "gin 60 + lemon 25 + simple 20",
		"50ml gin oh wait 45ml\n25ml lemon\n15ml simple":                        "gin 45 + lemon 25 + simple 15",
		"2 oz gin\n1 oz lime, hmm, call it 3/4\n3/4 oz simple":                  "gin 59.15 + lime 22.18 + simple 22.18",
		// the other pours between the two stay
		"20 lemon, 20 simple, no wait, 25 lemon, 50 gin. shake": "lemon 25 + simple 20 + gin 50",
		"50 gin, 20 lemon, 20 simple, wait, 25 lemon. shake":    "gin 50 + lemon 25 + simple 20",
		// names before amounts
		"cucumber gin 60 no wait plain gin 60, lime 20, agave 15. shake":    "plain gin 60 + lime 20 + agave 15",
		"lemon 20, simple 20, no wait, lemon 25, gin 50. shake":             "lemon 25 + simple 20 + gin 50",
		"gin 50 ml, lemon 20 ml, no sorry, lime 25 ml, simple 20 ml. shake": "gin 50 + lime 25 + simple 20",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	assert.Equal(t, "vodka 50 + lemon 20 + simple 20", poured(t, "gin 50 no wait vodka, lemon 20, simple 20, shake"), "the amount stays")
	_, err := reading.Read("gin 50 no wait lemon, simple 20, shake", wholeCatalogue(t))
	assert.Error(t, err, "no spirit stands in place of a gin")
}

// Percentages that come to a hundred are of the total that the text states.
func TestPercentagesOfATotal(t *testing.T) {
	for _, text := range []string{
		"50% gin 25% lemon 25% simple, total 100 ml, shake", "Sour\n50% gin\n25% lemon\n25% simple\ntotal 100 ml\nshake",
		"100 ml total: 50% gin, 25% lemon, 25% simple. shake", "gin 50%, lemon 25%, simple 25%. 100ml batch",
	} {
		assert.Equal(t, "gin 50 + lemon 25 + simple 25", poured(t, text), text)
	}
}

// Shorthand of many hands: common practice, no source.
func TestShorthandOfManyHands(t *testing.T) {
	for text, want := range map[string]string{
		"prosecco 90, orange aperitif 60, soda splash. wine glass, ice":   "prosecco 90 + orange aperitif 60 + soda 5",
		"2 oz gin\n.75 lemon\n.75 simple\n8 basil leaves muddled lightly": "gin 59.15 + lemon 22.18 + simple 22.18 + basil 4",
		"gin 1, lime .5, 1 dash ango. shake. top soda":                    "gin 29.57 + lime 14.79 + ango 0.8 + soda 90",
		"rhum blanc 5 cl\ncitron vert 2 cl\nsirop de canne 2 c. à café":   "rhum blanc 50 + citron vert 20 + sirop de canne 9.86",
		"lime .75 / simple .75 / cachaca 2 / 5 blackberries muddled":      "lime 22.18 + simple 22.18 + cachaca 59.15 + blackberries 20",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for text, want := range map[string]string{
		// one of each, where the unit stands alone
		"oz each cognac, dark creme de cacao, cream. shake. coupe": "cognac 29.57 + dark creme de cacao 29.57 + cream 29.57",
		"gin, dry vermouth - oz each, 2 dashes bitters":            "gin 29.57 + dry vermouth 29.57 + bitters 1.6",
		"60 rye, dash each of aromatic & orange bitters, stir":     "rye 60 + aromatic 0.8 + orange bitters 0.8",
		// bitters of a kind that is not known
		"tequila anejo 45 / oloroso 15 / mole-type choc bitters 2 / stir": "tequila anejo 45 + oloroso 15 + mole-type choc bitters 1.6",
		"Wodka 4cl, Zitrone 2cl, Zuckersirup 2cl, Soda auf":               "Wodka 40 + Zitrone 20 + Zuckersirup 20 + Soda 90",
		"gin 50 tonic 150 big wine glass, lime wedge":                     "gin 50 + tonic 150",
		"rye 60, sweet vermouth 30. stir w 1 cube. lowball":               "rye 60 + sweet vermouth 30",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for _, text := range []string{"rye 60, muddle with 1 cube, 2 dashes bitters", "60 rye, dashes each aromatic and orange bitters, stir"} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
	assert.Contains(t, poured(t, "45 vodka, 100 tomato juice, pinch celery salt + black pepper"), "+ black pepper")
	s, err := reading.Read("barley shochu 45, grapefruit juice 45, 10 ml simple, soda up. highball", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Equal(t, flavor.Long, s.Service, "soda up is no service")
}

// One ingredient takes the place of another that is listed: common practice, no source.
func TestWhatTakesThePlaceOfAnother(t *testing.T) {
	for text, want := range map[string]string{
		"60 gin\n25 lemon\n20 simple\nswap gin for genever\nshake":              "genever 60 + lemon 25 + simple 20",
		"60 gin\n25 lemon\n20 simple\nshake\n(swap lemon with lime)":            "gin 60 + lime 25 + simple 20",
		"60 gin, 25 lemon, 20 simple, use honey syrup instead of simple, shake": "gin 60 + lemon 25 + honey syrup 20",
		"60 gin\n25 lemon\n20 honey syrup instead of simple\nshake":             "gin 60 + lemon 25 + honey syrup 20",
		"60 gin\n25 lemon\n20 simple\nsub genever for the gin\nshake":           "genever 60 + lemon 25 + simple 20",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	_, err := reading.Read("60 gin\n30 genever\n20 simple\nswap gin for genever", wholeCatalogue(t))
	assert.Error(t, err, "both are poured")
}

// Bitters among the garnish are poured: common practice, no source.
func TestBittersAmongTheGarnish(t *testing.T) {
	const sour = "60 pisco\n30 lime\n20 simple\nshake, up\ngarnish: "
	for text, want := range map[string]string{
		"3 drops aromatic bitters": "aromatic bitters 0.15", "cherry, 2 dashes aromatic bitters": "aromatic bitters 1.6", "mint, aromatic bitters float": "aromatic bitters 1.6",
	} {
		assert.Equal(t, "pisco 60 + lime 30 + simple 20 + "+want, poured(t, sour+text), text)
	}
	assert.Equal(t, "pisco 60 + lime 30 + simple 20", poured(t, sour+"orange slice + cherry"))
}

// An amount that a later line corrects stands in place of the one above: common practice, no
// source.
func TestALaterLineCorrectsAnAmount(t *testing.T) {
	for text, want := range map[string]string{
		"40 mezcal, 20 lime, 15 agave\nno wait, 25 lime":                       "mezcal 40 + lime 25 + agave 15",
		"40 mezcal, 20 lime, 15 agave\n25 lime not 20":                         "mezcal 40 + lime 25 + agave 15",
		"Dan: 40 mezcal 20 lime 15 agave\nDan: no wait, 25 lime not 20. shake": "mezcal 40 + lime 25 + agave 15",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}

// A drink that is served down has no ice, but where some is told: common practice, no source.
func TestServedDown(t *testing.T) {
	for text, want := range map[string]flavor.Service{
		"2 oz rye\n1 oz sweet vermouth\nstir, down":              flavor.Up,
		"2 oz rye\n1 oz sweet vermouth\nstir, down on a rock":    flavor.Rocks,
		"2 oz rye\n1 oz sweet vermouth\nstir down over big rock": flavor.Rocks,
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, s.Service, text)
			assert.Equal(t, want == flavor.Up, strings.Contains(strings.Join(s.Notes, "\n"), "without ice"), text)
		}
	}
}
