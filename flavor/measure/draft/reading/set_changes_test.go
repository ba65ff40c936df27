package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// ids are the ingredients of a text, which must read.
func ids(t *testing.T, text string) (flavor.Spec, string) {
	t.Helper()
	s, err := reading.Read(text, wholeCatalogue(t))
	require.NoError(t, err, text)
	var out []string
	for _, p := range s.Pours {
		out = append(out, p.Profile.ID)
	}
	return s, strings.Join(out, " ")
}

// Amounts that are no longer, or never were, are not poured: common practice, no source.
func TestAmountsOfBefore(t *testing.T) {
	for text, want := range map[string]string{
		"rum 45 (was 50), lime 20, orgeat 15 now, was 12":                 "rum 45 + lime 20 + orgeat 15",
		"rye 60 not 75, sweet verm 30, 2 dash bitters":                    "rye 60 + sweet verm 30 + bitters 1.6",
		"60 gin, 22.5 lime, 15 simple, shake. (dropped the lime from 25)": "gin 60 + lime 22.5 + simple 15",
		"45 gin, lemon v1 was 20, v2 is 25, 15 simple":                    "gin 45 + lemon 25 + simple 15",
		"lime: v1 20, v2 25\ngin: 45\nsimple: 20":                         "lime 25 + gin 45 + simple 20",
		"5 cl gin? no, 4 cl pear spirit, 2 cl lemon, 1 cl simple":         "pear spirit 40 + lemon 20 + simple 10",
		"45 vodka, 20 lime cordial... no: 15 lime cordial, 10 lime":       "vodka 45 + lime cordial 15 + lime 10",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	_, err := reading.Read("gin 45, lemon 20 (up from 15 to 25), simple 15", wholeCatalogue(t))
	assert.Error(t, err, "which of three amounts is poured is asked for")
}

// What counts guests, glasses or turns pours nothing: common practice, no source.
func TestWhatCountsWhoDrinks(t *testing.T) {
	for _, said := range []string{
		"one each max", "max 2 per guest", "limit 1", "two per person!", "40 coupes by 6pm", "180 flutes by 11:15", "one ladle over ice", "yes that's 60 of gin, not a typo", "gin first", "dry shake 1st", "25 covers tonight",
	} {
		_, got := ids(t, "60 gin, 20 lemon, 15 simple. "+said)
		assert.Equal(t, "london-dry-gin lemon-juice simple-syrup", got, said)
	}
	for _, poured := range []string{"OJ first", "egg white first"} {
		_, err := reading.Read("60 gin, 20 lemon, 15 simple. "+poured, wholeCatalogue(t))
		assert.Error(t, err, poured)
	}
}

// How a pour goes in may stand before its name and behind its amount.
func TestPoursThatGoInLast(t *testing.T) {
	for _, last := range []string{"drizzle creme de mure 15ml over", "then spoon creme de mure 15 on top", "lace with creme de mure 15", "float the creme de mure 15 ml over the back of a spoon", "trickle creme de mure 1.5cl through"} {
		s, got := ids(t, "gin 50 ml, lemon 25 ml, simple 10 ml, crushed ice, "+last)
		assert.Equal(t, "london-dry-gin lemon-juice simple-syrup creme-de-mure", got, last)
		assert.InDelta(t, 15, s.Pours[3].ML, 0.01, last)
		assert.True(t, s.Pours[3].After, last)
	}
}

// What the steps float, without an amount, is what a line above pours: common practice, no source.
func TestFloatsOfWhatIsPoured(t *testing.T) {
	const bramble = "50 ml gin\n25 ml lemon\n12.5 ml simple\n15 ml creme de mure\n"
	for _, step := range []string{"shake, crushed ice, drizzle mure", "drizzle the creme de mure over", "shake all but the mure, drizzle the mure over", "float mure", "lace with the mure", "top with the mure"} {
		s, got := ids(t, bramble+step)
		assert.Equal(t, "london-dry-gin lemon-juice simple-syrup creme-de-mure", got, step)
		assert.True(t, s.Pours[3].After, step)
	}
	_, got := ids(t, "60 ml dark rum\n25 ml lime\n15 ml orgeat\nshake, crushed ice, float dark rum")
	assert.Equal(t, "dark-rum lime-juice orgeat dark-rum", got, "a base is not floated whole")
	_, got = ids(t, "60 ml dark rum\n25 ml lime\n15 ml orgeat\nshake, crushed ice, float rum")
	assert.Equal(t, "dark-rum lime-juice orgeat dark-rum", got, "of the rum above")
	s, got := ids(t, "50 ml dark rum\n15 ml lime\ntop ginger beer\nbuild, highball, float the rum last")
	assert.Equal(t, "dark-rum lime-juice ginger-beer", got)
	assert.True(t, s.Pours[0].After, "all of it is floated")
}

// Lists that are ticked off, and pours that are told with what they do.
func TestListsWithMoreThanPours(t *testing.T) {
	for text, want := range map[string]string{
		"Spec\tml\tCheck\nMezcal\t30\t✓\nSweet vermouth\t30\t✓\nStir / rocks":                    "mezcal sweet-vermouth",
		"✓ 60 gin\n☐ 20 lemon\n✔ 15 simple\nshake":                                               "london-dry-gin lemon-juice simple-syrup",
		"[x] 20 coffee liqueur\n[ ] 20 irish cream\n[x] 20 orange liqueur\nlayer":                "coffee-liqueur irish-cream-liqueur triple-sec",
		"sour ¾ lime, sweet ½ orgeat, strong 2 gold rum, weak 1 water":                           "lime-juice orgeat gold-rum water",
		"KT-7 RED TIDE | 3 cl dark rum | 2 cl coconut rum | 6 cl pineapple juice | shake":        "dark-rum coconut-rum pineapple-juice",
		"Autumn card #9, second try. gin 45, rhubarb cordial 25. lemon 15. shake":                "london-dry-gin rhubarb-cordial lemon-juice",
		"Harbour light 30/30/30 melon liqueur, triple sec, lemon. shake, coupe":                  "melon-liqueur triple-sec lemon-juice",
		"frozen daq: 2 white rum, 1 lime, .75 simple, ice up to the line, blend 25 s, hurricane": "white-rum lime-juice simple-syrup",
	} {
		_, got := ids(t, text)
		assert.Equal(t, want, got, text)
	}
}

// What everybody writes of a bottle in French, Spanish or Italian, whose origin stands behind it.
func TestOriginsBehindTheBottle(t *testing.T) {
	for name, want := range map[string]string{"whisky canadien": "canadian-whisky", "ron cubano": "white-rum", "whisky irlandais": "irish-whiskey", "ron jamaicano": "aged-jamaican-rum", "vermut español": "spanish-red-vermouth"} {
		_, got := ids(t, "40 ml "+name+"\n20 ml lemon\n20 ml simple")
		assert.Equal(t, want+" lemon-juice simple-syrup", got, name)
	}
}

// Words of serving that are written as one, and what those do who write.
func TestServingToldInOtherWords(t *testing.T) {
	for text, want := range map[string]flavor.Service{"45 rye, 20 sweet vermouth - stir, bigrock": flavor.Rocks, "45 rye, 20 sweet vermouth - stir, crushedice": flavor.Crushed} {
		s, _ := ids(t, text)
		assert.Equal(t, want, s.Service, text)
	}
	for text, want := range map[string]flavor.Method{
		"45 gin, 20 lime cordial. We SHAKE it here. coupe.": flavor.Shake, "45 gin, 20 lime cordial. We used to shake it. coupe.": flavor.Stir,
	} {
		s, _ := ids(t, text)
		assert.Equal(t, want, s.Method, text)
	}
	_, got := ids(t, "60 cachaca, 1 lime cut up, 15 sugar syrup, crushed ice")
	assert.Equal(t, "cachaca lime simple-syrup", got)
	for _, squeezed := range []string{"squeeze a lime wedge in", "lime coin squeezed in", "squeezed lime half"} {
		_, got := ids(t, "60 rhum agricole blanc, 10 cane syrup, "+squeezed)
		assert.Equal(t, "rhum-agricole-blanc cane-syrup lime-juice", got, squeezed)
	}
}
