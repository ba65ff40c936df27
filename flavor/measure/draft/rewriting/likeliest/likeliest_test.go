package likeliest_test

import (
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/likeliest"
	"counterpour/index"
)

// catalogue is a finder over all ingredients.
func catalogue(t testing.TB) naming.Finder {
	t.Helper()
	x, err := wholeIndex()
	require.NoError(t, err)
	return x
}

var wholeIndex = sync.OnceValues(func() (*index.Index, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	return index.New(c.Profiles())
})

// Texts in many hands, and the list that stands in them: common practice, no source.
func TestLists(t *testing.T) {
	f := catalogue(t)
	for _, c := range []struct{ text, list string }{
		// what runs into one another
		{"1.5vodka 2grapefruit .5lime hiball", "1.5 vodka / 2 grapefruit / .5 lime / hiball"},
		{"genever2 lem.75 honey.5 shk up", "2 genever / .75 lem / .5 honey / shake up"},
		{"2 aged rum 1 limecordial eggwhite shake", "2 aged rum / 1 limecordial / 1 eggwhite / shake"},
		{"1½ cognac 1 dkcacao 1 cream shk", "1½ cognac / 1 dk cacao / 1 cream / shake"},
		{"60 pisco 30 lime 20 gomme e/w dry shk", "60 pisco / 30 lime / 20 gomme / 1 egg white / dry shk"},
		// words of making that are shortened or have a slip
		{"cachaca 60 lime 25 sugar syrup 15 mudl crushd", "60 cachaca / 25 lime / 15 sugar syrup / mudl crushd"},
		{"gin 60 dry vermouth 10 stir nick & nora", "60 gin / 10 dry vermouth / stir nick & nora"},
		// amounts behind the names
		{"amareto 1.5 bourb .75 lem 1 rich simp .25 ew shk rocks", "1.5 amareto / .75 bourb / 1 lem / .25 rich simp / 1 ew / shake rocks"},
		{"aged rum .... 45 ml\nlime .... 20 ml\nfalernum .... 15 ml\nshake", "45 ml aged rum / 20 ml lime / 15 ml falernum / shake"},
		{"Mezcal | 1 1/2 oz | 45 ml\nLime | 3/4 oz | 22 ml\nAgave syrup | 1/2 oz | 15 ml\n>> shake <<", "1 1/2 oz Mezcal / 3/4 oz Lime / 1/2 oz Agave syrup / shake"},
		// one amount for several
		{"ea 1oz gin/sweet vermouth/red bitter - stir", "1 oz gin / 1 oz sweet vermouth / 1 oz red bitter / stir"},
		// what goes without saying
		{"teq 2 lime .5 pinch salt top soda build", "2 teq / .5 lime / 1 pinch salt / top soda / build"},
		{"gin 2 lem .75 ss .75 shk up orng bit", "2 gin / .75 lem / .75 ss / top orng bit / shake up"},
		{"scotch 2 lem .75 hny .75 shk rock float islay .25", "2 scotch / .75 lem / .75 hny / float .25 islay / shake rock"},
		{"blanco 2 lime 1 agv .5 shake rox 1/2 salt rim", "2 blanco / 1 lime / .5 agv / shake rox / half salt rim"},
		{"2 dark rum .5 lime gingerbeer top build", "2 dark rum / .5 lime / top ginger beer / build"},
		{"60 rum 25 lime cola splsh", "60 rum / 25 lime / 1 splash cola"},
		{"3 cl genever 2 cl citroensap aanvullen met tonic", "3 cl genever / 2 cl citroensap / top tonic"},
		// what is said around the pours in plain words, and steps
		{"Into a shaker go 40 ml of vodka, 20 ml of lemon juice and a teaspoon of sugar syrup. Shake until your hands complain, strain into a flute and fill up with champagne, about 60 ml.", "40 ml vodka / 20 ml lemon juice / 1 teaspoon sugar syrup / top 60 ml. champagne / shaker, shake, strain into a flute and"},
		{"1. Pour in 60 ml gin.\n2. Add 1 dash orange bitters.\n3. Stir 30 turns.\n4. Strain into chilled coupe.", "60 ml gin / 1 dash orange bitters / stir 30 turns, strain into chilled coupe"},
		{"Mia: 50 spiced rum, 75 pineapple, 15 lime, top ginger ale\nMia: *10 lime sorry", "50 spiced rum / 75 pineapple / 10 lime / top ginger ale"},
		{"half a jigger (1 oz) lemon, 2 oz rye, 1/2 oz grenadine shake", "1 oz lemon / 2 oz rye / 1/2 oz grenadine / shake"},
		{"almond 1: 1.5 amaretto .75 bourbon 1 lem shk rx", "name: almond / 1.5 amaretto / .75 bourbon / 1 lem / shake rx"},
		// names and headings
		{"BAR CARD rev 7\nHARBOUR LIGHT\n45 ml aged rum\n15 ml falernum\nshake", "name: HARBOUR LIGHT / 45 ml aged rum / 15 ml falernum / shake"},
		{"Sheet 4 / sours\nHARBOUR LIGHT\nAged rum\t45\nLime\t20\nFalernum\t15\nshake", "name: HARBOUR LIGHT / 45 Aged rum / 20 Lime / 15 Falernum / shake"},
		{"Zomer '24: Groene Brug\n3 cl genever\n2 cl citroensap\nshake", "name: Groene Brug / 3 cl genever / 2 cl citroensap / shake"},
		{"Bartender: Wim   Date: 03.06.\nDrink: Groene Brug\nGenever 4 cl\nLemon 2 cl\nshake", "name: Groene Brug / 4 cl Genever / 2 cl Lemon / shake"},
		// what is said around the pours
		{"Wim: ok so its 2 genever 1 lemon .5 honey\nWim: and an egg white\nWim: shake it", "2 genever / 1 lemon / .5 honey / 1 egg white / shake it"},
		{"[21:03] Wim: try 2 oz genever 1 oz lemon .5 oz honey\n[21:04] Bo: 1/4 honey is too little", "2 oz genever / 1 oz lemon / .5 oz honey"},
		{"1½ genever ¾ lemon ¾ honey shake rocks no salt", "1½ genever / ¾ lemon / ¾ honey / shake rocks"},
		// what is taken back
		{"made it w 2oz vodka 1oz lime .75 simple but too sour so make it .75 lime instead, shake", "2oz vodka / .75 lime / .75 simple / shake"},
		{"genever 1.5oz\nlemon .75oz\nrose tincture 2 dashes -- CUT for now\nhoney .5oz\nshake", "1.5 oz genever / .75 oz lemon / .5 oz honey / shake"},
	} {
		l, ok := likeliest.AsList(c.text, naming.NewResolver(f))
		if assert.True(t, ok, c.text) {
			assert.Equal(t, strings.ReplaceAll(c.list, "2oz vodka", "2 oz vodka"), strings.ReplaceAll(l.Text, "\n", " / "), c.text)
		}
	}
}

// What may mean more than one thing, or leaves something open, is not parted: common practice,
// no source.
func TestWhatIsLeftOpen(t *testing.T) {
	f := catalogue(t)
	for _, text := range []string{
		// choices, denials, second thoughts
		"50 gin 25 lemon wait 20 lemon 15 simple", "gin 1 lemon 1 both 1.5 shake",
		"2 gin 1 lemon .5 honey instead", "make it .75 lime instead, 2 gin 1 lemon .5 honey", "2 gin 1 lemon 1 lemon .5 honey",
		// an amount without a name, a name without an amount
		"2 gin 1 lemon umeboshi .5 simple", "umeboshi wash / .75 lemon / .75 simple", "Halyard\numeboshi wash\n20 lemon\n20 lavender syrup",
		"CARD 22\nfernet\n45 ml rum\n20 ml lime", "gin 2 lemon 1 simple", "2 gin 1 lemon 3 umeboshi", "2 oz gin\nscant oz lemon\n.5 oz simple", "?? oz lime 2 oz gin 1 oz simple",
		"50 gin 25 lemon 15 shake", "vodka 50 ginger 20 lime 20, collins top soda",
		// figures typed as letters, letters that are no unit
		"6O gin 25 lemon", "5Oml gin 25ml lemon", "2 oz milk washed tea punch",
		// what is said to be poured, or not
		"the boss wants a splash of umeboshi. 45 gin 20 lemon 15 simple", "45 gin 20 lemon 15 simple, no gin",
		"2 vodka, 1 dry shake", "gin 50\nlemon 25\nsyrup 15\nmint, muddled", "red wine 100 cola 100 ice lemon", "Peel of 1 orange\n2 oz rye\n1/4 oz maple",
		// a kind that has to be named in full is poured, in whatever measure
		"a thimbleful of sherry, 1 tbsp sugar, 2 slices orange, shake", "some of the whisky, 1 lump of sugar, two dashes bitters, stir",
		"", "gin", strings.Repeat("2 gin 1 lemon ", 80),
	} {
		l, ok := likeliest.AsList(text, naming.NewResolver(f))
		assert.False(t, ok, "%q is read as %q", text, l.Text)
	}
}

// What is passed over, mended or replaced is told, with where it stands.
func TestWhatIsTold(t *testing.T) {
	f := catalogue(t)
	const text = "Wim: ok so its 2 cognac 1 cream .5 dkcacao\nshk up no salt"
	l, ok := likeliest.AsList(text, naming.NewResolver(f))
	require.True(t, ok)
	var passed []string
	for _, at := range l.Passed {
		passed = append(passed, text[at.Start:at.End])
	}
	assert.Equal(t, []string{"Wim:", "ok so its", "no salt"}, passed)
	assert.Equal(t, []string{"“dkcacao” is read as dk cacao"}, l.Notes)
	assert.Equal(t, 3, l.Pours)

	l, ok = likeliest.AsList("2 oz vodka 1 oz lime .75 oz simple make it .75 oz lime instead", naming.NewResolver(f))
	require.True(t, ok)
	assert.Equal(t, []string{"“make it .75 oz lime instead” replaces “1 oz lime”"}, l.Notes)
}

func BenchmarkAsList(b *testing.B) {
	f := catalogue(b)
	for b.Loop() {
		_, _ = likeliest.AsList("Wim: ok so its 2 genever 1 lemon .5 limecordial\nshk up no salt", naming.NewResolver(f))
	}
}
