package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// The name of a drink on the line of its pours is told apart by its sign, by its words or by its
// capitals: common practice, no source.
func TestTitlesOnTheLineOfThePours(t *testing.T) {
	x := wholeCatalogue(t)
	for text, want := range map[string]string{
		"STINGER 2 cognac .75 white creme de menthe 1 d orange bitters STIR":                     "STINGER",
		"tipperary 1.5oz irish whiskey 1oz sweet verm 3 dashes orange bitters, stirred, up":      "tipperary",
		"AB90 vodka 30 - lime 15 - simple 10 - top prosecco":                                     "AB90",
		"bramble; 50 gin; 25 lemon; 10 simple; crushed":                                          "bramble",
		"LONG DAY (white rum 45 / lime 25 / simple 20 / top soda)":                               "LONG DAY",
		"Jungle Bird\tblackstrap rum 45\tred bitter 20\tpineapple 45\tlime 15\tsimple 15\tshake": "Jungle Bird",
		"Gimlet,\"gin, 60 ml\",\"lime cordial, 20 ml\",stir,coupe":                               "Gimlet",
		"Harbour fizz - gin 45ml, lemon 20ml, simple 15ml, soda 60ml - 11.50":                    "Harbour fizz",
		"new! Cellar sour: bourbon 50ml, lemon 25ml, simple 20ml. $14":                           "Cellar sour",
		"mate our new daiquiri spec: 60ml white rum, 25ml lime, 20ml simple. shake":              "mate our new daiquiri spec",
		"verjus spritz, no booze: 60 verjus, 20 honey syrup, 10 lemon, soda up":                  "verjus spritz",
	} {
		s, err := reading.Read(text, x)
		require.NoError(t, err, text)
		assert.Equal(t, want, s.Name, text)
		assert.GreaterOrEqual(t, len(s.Pours), 2, text)
	}
}

// What leads the pours and is poured itself is no title.
func TestPoursAreNoTitles(t *testing.T) {
	x := wholeCatalogue(t)
	for text, want := range map[string]int{"GIN 50 LEMON 25 SIMPLE 20": 3, "gin 50; lemon 25; simple 20": 3, "PX 15, oloroso 45, fino 30": 3} {
		s, err := reading.Read(text, x)
		require.NoError(t, err, text)
		assert.Empty(t, s.Name, text)
		assert.Len(t, s.Pours, want, text)
	}
	for _, text := range []string{"cachaca. 1 lime cut in eight, 15 simple", "mezcal; 20 lime; 20 agave", "tequila - 30 lime, 20 agave"} {
		_, err := reading.Read(text, x)
		assert.Error(t, err, text)
	}
}

// An amount whose name is missing or cannot be read is asked for.
func TestAnAmountWithoutANameIsAskedFor(t *testing.T) {
	for _, text := range []string{"60 gin, 25 lemon, 20", "60 gin / 25 lem / 20 (smudge)", "gin 45, lemon 20, 15", "60 gin, 25 lemon, 20 (illegible), shake", "60 gin 25 lemon 20 ??? shake", "1.5 gin, .75 lemon, .75"} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}

// A bracket in English says what a word of another tongue means, and a word to somebody behind a
// pour is none of its name.
func TestBracketsThatExplain(t *testing.T) {
	for text, want := range map[string]string{
		"60 fino, 120 gaseosa (lemon lime soda)":                           "fino-sherry lemon-lime-soda",
		"60 gin, 20 zitrone (lemon juice), 20 zucker (sugar syrup), shake": "london-dry-gin lemon-juice simple-syrup",
		"60 blanco 30 lime 15 agave mate, shake":                           "blanco-tequila lime-juice agave-syrup",
		"50 gin, 25 lemon, 20 honey syrup mate":                            "london-dry-gin lemon-juice honey-syrup",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		ids := ""
		for _, p := range s.Pours {
			ids += " " + p.Profile.ID
		}
		assert.Equal(t, want, ids[1:], text)
	}
	_, err := reading.Read("60 gin, 150 ginger beer (ginger ale)", wholeCatalogue(t))
	assert.Error(t, err, "two sodas by their own names")
}
