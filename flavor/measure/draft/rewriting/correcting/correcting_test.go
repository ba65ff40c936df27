package correcting_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/drafttest"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/correcting"
)

// shelf holds what the texts name.
func shelf() *naming.Resolver {
	s := drafttest.Shelf{}
	for name, class := range map[string]flavor.Class{
		"gin": flavor.ClassGin, "vodka": flavor.ClassVodka, "lemon": flavor.ClassSourJuice, "lime": flavor.ClassSourJuice, "syrup": flavor.ClassSyrup, "gum": flavor.ClassSyrup, "mint": flavor.ClassFreshHerb,
	} {
		s[name] = &flavor.Profile{ID: name, Name: name, Class: class}
	}
	return naming.NewResolver(s)
}

// Common practice, no source.
func TestOf(t *testing.T) {
	for text, want := range map[string]string{
		// an amount
		"gin 50, lemon 25 (hmm 20), syrup 10":                             "gin 50, lemon 20, syrup 10",
		"gin 50, syrup .5 (ok .25 is better. go .25)":                     "gin 50, syrup .25",
		"gin 50, syrup 20... no wait, 20 was cloying, go 15. shake twice": "gin 50, syrup 15. shake twice",
		"45 gin, 45 lemon — hmm, 30 lemon, 45 was all lemon — 5 syrup":    "45 gin, 30 lemon,  5 syrup",
		"gin 50\nlemon 25 ml — 20 is plenty\nshake":                       "gin 50\nlemon 20 ml\nshake",
		"2 dashes syrup hmm 4, 2 oz gin":                                  "4 dashes syrup, 2 oz gin",
		"gin 40, syrup 20. the syrup was too much, 15 now":                "gin 40, syrup 15",
		"gin 40, syrup 20... 25? no 20":                                   "gin 40, syrup 20",
		"gin 40, syrup 15 - double that\nshake":                           "gin 40, syrup 30\nshake",
		"gin 40 lemon 20 syrup 20, half the lemon. shake":                 "gin 40 lemon 10 syrup 20. shake",
		// a name
		"two ounces gin, three quarters syrup — no wait, gum, sorry, same amount — and mint": "two ounces gin, three quarters gum,  and mint",
		"gin 50, lime 25. Sorry not lime, lemon.":                                            "gin 50, lemon 25.",
		"gin 50, lemon 25, no, lime 25":                                                      "gin 50, lime 25",
		"gin 50, lime 25. no wait, lemon not lime":                                           "gin 50, lemon 25",
		"gin 50, lemon 20 ml. Rocks? no: up":                                                 "gin 50, lemon 20 ml. up",
		// a whole pour
		"gin 40. I first had syrup 5 in it, took it out. shake": "gin 40. . shake",
		"gin 40, lemon 20 - took the lemon out - syrup 15":      "gin 40, ,  syrup 15",
		// a whole list, told anew
		"gin 50 lemon 25 syrup 15... no. 50 gin, 25 lemon, 20 syrup":                    " 50 gin, 25 lemon, 20 syrup",
		"half gin no... use 60 gin & 20 syrup":                                          " use 60 gin & 20 syrup",
		"Uh gin, two, no wait it's 45 gin. 20 lemon":                                    " it's 45 gin. 20 lemon",
		"two fingers... no, 50 ml gin, neat":                                            " 50 ml gin, neat",
		"1 oz gin, 1 oz rum... no wait wrong card. CARD 4: 60 lemon, 20 syrup":          " CARD 4: 60 lemon, 20 syrup",
		"we tried an ounce of lemon, way too sharp. go 20 lemon, 60 gin":                " go 20 lemon, 60 gin",
		"v1: 45 gin, 20 lemon, flat. v2: 50 gin, 25 lemon, good. go with v2. shake, up": "50 gin, 25 lemon, good. .  shake, up",
		"A) 45 gin, 20 lemon - perfect\nB) 50 gin, 25 lemon - too sour\nshake, up":      "45 gin, 20 lemon - . \n\nshake, up",
		// what a pour is after all
		"gin 50, lemon 25, syrup 15. shake. lemon is 20 not 25": "gin 50, lemon 20, syrup 15. shake",
		"gin 50, lemon 25, syrup 15. edit: lemon is 20":         "gin 50, lemon 20, syrup 15",
		// what has run out
		"can we 86 the mint? gin 40, lime 20": "can we no mint? gin 40, lime 20",
		"gin 40, lime 20. we're 86 on mint":   "gin 40, lime 20. no mint",
		"86'd the mint, so gin 40, lime 20":   "no mint, so gin 40, lime 20",
		"86: mint\ngin 40\nlime 20":           "no mint\ngin 40\nlime 20",
		// a method, a service
		"gin 40. shake. no, stir. up":          "gin 40. stir. up",
		"gin 40\nshake? NO build":              "gin 40\nbuild",
		"gin 40, stir, up... actually, rocks":  "gin 40, stir, rocks",
		"gin 40, lemon? no: lime 20":           "gin 40, lime 20",
		"gin 40. shaken up, no sorry, stirred": "gin 40.  up, stirred",
	} {
		got, ok := correcting.Of(text, shelf())
		assert.True(t, ok, text)
		assert.Equal(t, want, got.Text, text)
		assert.NotEmpty(t, got.Notes, text)
	}
}

// What may mean two things, or corrects nothing, stays as it stands: common practice, no source.
func TestOfLeavesAlone(t *testing.T) {
	for _, text := range []string{
		"gin 50, lemon 25, no lime", "gin 50, lemon 25, no wait, no mint, syrup 20", "gin 50, lemon 25 (20 if very sour)", "gin 50, lemon 25 (20 next time)", "gin 50, syrup 20 (try 15)", "gin 50, syrup 20, maybe 15",
		"gin 50, syrup 20, wait 10 seconds, shake", "gin 50, syrup 20, shake. actually 2 drinks", "gin 50, syrup 20, sorry, mint", "gin 50, lemon 25, no, syrup 25",
		"gin 50, syrup 5, took it out, put it back in", "gin 50, syrup 20, go 2", "double the gin for big glasses: gin 50", "gin 50, syrup 20 was cloying", "gin 50, syrup 20, no wait, 30 was cloying, go 15",
		"gin 50. shake. no shaking tin", "gin 50, stir, no ice",
		"gin 50, lemon 25, no. syrup 20, shake", "1 oz gin, 1 oz rum... no. 60 gin, 20 syrup", // one of them is not told anew
		"v1: 45 gin, 20 lemon. v2: 50 gin, 25 lemon. shake", "v1: 45 gin, 20 lemon - perfect. v2: 50 gin, 25 lemon - perfect. shake", "two fingers gin... no, 50 ml rum", "syrup lemon is 20, gin 50",
		"we tried an ounce of lemon, way too sharp. 60 gin, 20 syrup", "gin 50, lemon 25, wrong card",
	} {
		got, ok := correcting.Of(text, shelf())
		assert.False(t, ok, "%s became %s", text, got.Text)
	}
}
