package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// What is said to somebody before the pours is neither a name nor a pour: common practice, no
// source.
func TestTalkBeforeThePours(t *testing.T) {
	const sour = "gin 50 + lemon 25 + honey syrup 15"
	for _, text := range []string{
		"hello! ok so for friday we do 50 gin 25 lemon 15 honey syrup, shaken, up", "jo it's 50 gin 25 lemon 15 honey syrup. shake, up",
		"sorry wrong one before. right is 50 gin 25 lemon 15 honey syrup. shake, up", "for the class (12 people): each one gets 50 gin, 25 lemon, 15 honey syrup. shake, up",
		"From: Jo (cellar)\nHi! You asked for the sour. It's 50 ml gin, 25 ml lemon, 15 ml honey syrup. We shake it", "honey sour w/ 50 gin 25 lemon 15 honey syrup, shake, up",
		"Spec: gin 50 ml\nSpec: lemon 25 ml\nSpec: honey syrup 15 ml\nshake", "chat 14:02\n\"the new one for sat, ditch the old one!!\ngin 50\nlemon 25\nhoney syrup 15\nshake\"",
	} {
		assert.Equal(t, sour, poured(t, text), text)
	}
	assert.Equal(t, "aquavit 44.36 + lime 14.79 + honey syrup 14.79", poured(t, "sour variation w/ aquavit 1.5oz, lime .5, honey syrup .5. shake"))
	_, err := reading.Read("jo and me did 50 gin 25 lemon 15 honey syrup and it rocked: 20 soda", wholeCatalogue(t))
	assert.Error(t, err, "a name that holds pours")
}

// A heading may say how much all the pours below it come to: common practice, no source.
func TestHeadingsOfBatches(t *testing.T) {
	const below = "\nrye 450 ml\nsweet vermouth 300 ml\nmaraschino 60 ml\nwater 190 ml"
	for text, name := range map[string]string{
		"BATCH - Night Porter - 1 L" + below: "BATCH", "Long Halyard, 1 L test" + below: "Long Halyard",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Len(t, s.Pours, 4, text)
		assert.Equal(t, name, s.Name, text)
	}
}

// Shorthand that was read amiss or not at all: common practice, no source.
func TestShorthandOfMoreHands(t *testing.T) {
	for text, want := range map[string]string{
		// a pour without a sign before it, or behind words of making
		"3 strawberries\n25 lemon\n20 sugar\nmuddle shake strain highball top lemonade":                                "strawberries 27 + lemon 25 + sugar 20 + lemonade 90",
		"gin 40, vodka 15, lemon 10, shake w/ 4 thyme sprigs, strain flute, prosecco 60":                               "gin 40 + vodka 15 + lemon 10 + thyme 2 + prosecco 60",
		"lime 20 agave 20 tequila 45 cucumber 4 slices muddled, shake, rocks":                                          "lime 20 + agave 20 + tequila 45 + cucumber 16",
		"rum 2 lime .5 gingr beer top copper mug":                                                                      "rum 59.15 + lime 14.79 + gingr beer 90",
		"Rye 2oz. Fernet 1/4. Simple 1/4. 2 dashes. Stir, coupe":                                                       "Rye 59.15 + Fernet 7.39 + Simple 7.39 + aromatic bitters 1.6",
		"calvados 4 cl, citron 2 cl, miel 1.5 cl, cidre brut 4 cl en top":                                              "calvados 40 + citron 20 + miel 15 + cidre brut 40",
		"sugar cube soaked w 3 dashes aromatic\n15 cognac\ntop champagne 100\nflute":                                   "sugar cube 2.52 + aromatic 2.4 + cognac 15 + champagne 100",
		"90 pineapple, 40 coconut cream, 15 lime, 1 scoop ice blend. hurricane":                                        "pineapple 90 + coconut cream 40 + lime 15",
		"40 white rum, 25 lime, 20 simple, handful mint, top soda. build in a tall glass":                              "white rum 40 + lime 25 + simple 20 + mint 4 + soda 90",
		"4 pts vodka : 2 pts pear puree : 1 pt lemon. 1 pt = 15ml. shake, up":                                          "vodka 60 + pear puree 30 + lemon 15",
		"150 hot apple juice, 15 cinnamon syrup, 10 lemon, 1 star anise":                                               "hot apple juice 150 + cinnamon syrup 15 + lemon 10 + star anise 0.3",
		"Gin 5 cl\nlime 2 cl\nsoda q.b.\nhighball":                                                                     "Gin 50 + lime 20 + soda 90",
		"700 ml white rum\n250 ml lemon juice\n400 ml whole milk (curdle, filter through coffee paper)\n250 ml simple": "white rum 700 + lemon juice 250 + whole milk (curdle, filter through coffee paper) 400 + simple 250",
		"40 bourbon, 20 orange-y bitter aperitif, 20 lemon. shake":                                                     "bourbon 40 + orange-y bitter aperitif 20 + lemon 20",
		"60 rhum agricole blanc, 10 cane syrup, lime disc squeezed + dropped in":                                       "rhum agricole blanc 60 + cane syrup 10 + lime 2.5",
		"equal parts gin, sweet vermouth, red bitter, 30 each. stir, big rock":                                         "gin 30 + sweet vermouth 30 + red bitter 30",
		"vodka soda w lime: 50 vodka top soda lime wedge":                                                              "vodka 50 + soda 90",
		"rhubarb sour 50 gin 25 rhubarb cordial 20 lemon 10 sugar ew":                                                  "gin 50 + rhubarb cordial 25 + lemon 20 + sugar 10 + ew 31",
		"milk punch 50 brandy 25 dark rum 150 warm milk 15 sugar nutmeg":                                               "brandy 50 + dark rum 25 + warm milk 150 + sugar 15",
		// seasonings
		"40ml vodka, 120ml tomato juice, 2 dashes hot sauce, celery salt, pepper pinch. roll":     "vodka 40 + tomato juice 120 + hot sauce 1.6 + celery salt 0.2 + pepper 0.25",
		"40ml vodka, 120ml tomato juice, 2 dashes hot sauce, cracked pepper. roll":                "vodka 40 + tomato juice 120 + hot sauce 1.6 + black pepper 0.25",
		"40ml vodka, 120ml tomato juice, 2 dashes hot sauce, roll, highball, black pepper":        "vodka 40 + tomato juice 120 + hot sauce 1.6",
		"2oz chilli tequila nah scrap that just blanco. 1oz pineapple, 3/4 lime, shake, rocks":    "blanco 59.15 + pineapple 29.57 + lime 22.18",
		"1.25 gin 1.25 quinquina .. no sorry 1.25 gin, 1 quinquina, .75 lemon. shake":             "gin 36.97 + quinquina 29.57 + lemon 22.18",
		"so um two ounces of blanco tequila three quarters of lime point four agave and shake it": "blanco tequila 59.15 + lime 22.18 + agave 11.83",
		// what is no pour
		"50 gin, 25 lemon, 20 simple. 30 sec stir, coupe":                                   "gin 50 + lemon 25 + simple 20",
		"40 vodka, 30 passion puree, 20 lime. shake, coupe, half passion on top":            "vodka 40 + passion puree 30 + lime 20",
		"45 brandy, 60 whole milk, 10 vanilla syrup, shake, crushed. some ppl do oat milk":  "brandy 45 + whole milk 60 + vanilla syrup 10",
		"20 gin, 20 apricot liqueur, 20 lemon. Shake. Coupe. (NOT lime, people keep at it)": "gin 20 + apricot liqueur 20 + lemon 20",
		"40 gin, 20 lemon, 20 simple, shake up. we top it with soda":                        "gin 40 + lemon 20 + simple 20 + soda 90",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for _, text := range []string{
		"40 gin, 20 lemon, 20 simple, shake up. somebody adds fernet",
		// what is no name
		"umeboshi cup 50, 150 lemonade, 25 gin",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
	s, err := reading.Read("mint julep: 60 bourbon 10 simple 10 mint leaves, crushed", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Equal(t, "mint julep", s.Name)
	spiced, err := reading.Read("mulled cider: 150 dry cider, 25 calvados, 15 honey, cinnamon stick, 2 cloves, heat", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Contains(t, strings.Join(spiced.Notes, "\n"), "“cinnamon stick” is kept as garnish")
	assert.Empty(t, s.Garnish)
}

// How a drink is served by what is said beside it: common practice, no source.
func TestServedAsIsSaid(t *testing.T) {
	for text, want := range map[string]string{
		"60 rye, 7.5 rich demerara, 3 dashes bitters. stir, neat in chilled rocks":                        "stir up",
		"45 rye 30 sweet vermouth 2 dashes aromatic bitters, STIRRED not shaken. up. he keeps shaking it": "stir up",
		"30 cognac, 60 milk, 15 simple, 1 whole egg. heat or steam, mug":                                  "build hot",
		"cold toddy / black tea 90 / scotch 45 / honey 15 / tall ice":                                     "stir long",
		"40 white rum, 60 pineapple, 15 lime. slushie machine":                                            "blend up",
		"2 gin\n.75 lemon\n.75 simple\nshake, up. no salt rim":                                            "shake up",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, string(s.Method)+" "+string(s.Service), text)
			assert.NotContains(t, strings.ToLower(s.Rim), "no ", text)
		}
	}
	s, err := reading.Read("1 oz cognac\n1 oz rye\nabsinthe rinse\nStir. Strain into rinsed, chilled rocks glass, no ice", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Equal(t, flavor.Up, s.Service)
}
