package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// What is said around pours changes none of them: common practice, no source.
func TestSpokenAround(t *testing.T) {
	for text, want := range map[string]string{
		"take two ounces of white rum and then three quarters of an ounce lime juice, and a half ounce of, what was it, demerara syrup, and then just shake it and serve it up in a coupe": "white rum 59.15 + lime juice 22.18 + demerara syrup 14.79",
		"is 22 ml of lime too much against 15 ml ginger syrup and 50 ml vodka? shaken up. there is also 10 ml of lychee liqueur in there. tastes thin to me":                               "lime 22 + ginger syrup 15 + vodka 50 + lychee liqueur 10",
		"Kim: what was the passion one from friday\nJo: 45 spiced rum, 30 passion fruit puree, 20 lime\nKim: and ginger beer?\nJo: yea top w ginger beer. shake the rest, tall":            "spiced rum 45 + passion fruit puree 30 + lime 20 + ginger beer 90",
		"bourbon two ounces, half an ounce of lime, and then ginger beer, just fill it, copper mug":                                                                                        "bourbon 59.15 + lime 14.79 + ginger beer 90",
		"One and a half ounces aromatic bitters. Ounce of orgeat. Three quarters lemon. Half ounce rye. Shake, coupe. Yes that's ounces of bitters, not dashes.":                           "aromatic bitters 44.36 + orgeat 29.57 + lemon 22.18 + rye 14.79",
		"30 ml absinthe, champagne slow to the top. flute":                                             "absinthe 30 + champagne 90",
		"30ml absinthe in flute, champagne slow to the top (about 120ml). No more than two per guest.": "absinthe 30 + champagne 120",
		"vodka 40, white curaçao 20, lime 10. shake up":                                                "vodka 40 + white curaçao 20 + lime 10",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	s, err := reading.Read("1.5 oz orgeat, 1 oz aromatic bitters, 1 oz lemon, .5 oz rye. shake. nick & nora. yes that's 1 oz of bitters, not a typo", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Len(t, s.Pours, 4, "what is said again is poured once")
	_, err = reading.Read("Kim: 45 gin, 20 lemon, 15 syrup\nJo: and an egg white?\nKim: no\nJo: 20 umeboshi water", wholeCatalogue(t))
	assert.Error(t, err)
	s, err = reading.Read("Marg rocks\ntequila blanco 50\ntriple sec 20\nlime 20\nshake", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Equal(t, flavor.Rocks, s.Service, "the name says it")
}

// A unit may stand before the fraction of its amount, and where a name may follow the fraction two pours are meant:
// common practice, no source.
func TestUnitsBeforeTheirFractions(t *testing.T) {
	for text, want := range map[string]string{
		"one ounce and a half of rum and one ounce of lime, shake":                                    "44 white-rum, 30 lime-juice",
		"Two ounces and three quarters of rye, an ounce of port. Stir":                                "81 rye-whiskey, 30 ruby-port",
		"3 ounces and a quarter cognac, 1 ounce lemon, shake":                                         "96 cognac, 30 lemon-juice",
		"vodka two ounces and a half, lime one ounce, shake":                                          "74 vodka, 30 lime-juice",
		"stir two ounces and a half of gin with half an ounce of dry vermouth":                        "74 london-dry-gin, 15 dry-vermouth",
		"Jo: and the rum one? / Me: ounce and a half rum, half ounce lime, half ounce simple. shaken": "44 white-rum, 15 lime-juice, 15 simple-syrup",
		"gin 2 oz and half oz lemon, shake":                                                           "59 london-dry-gin, 15 lemon-juice",
		"gin 2 oz and a half lemon, shake":                                                            "59 london-dry-gin, 15 lemon-juice",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
}
