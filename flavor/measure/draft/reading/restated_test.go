package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// An amount that is set anew by the name of what it is of stands in place of the one before:
// common practice, no source.
func TestAmountsSetAnew(t *testing.T) {
	for text, want := range map[string]string{
		// on the line of the pours
		"1 oz cachaca 1 oz coconut water... make the coconut water 2. half oz lime. shake": "cachaca 29.57 + coconut water 59.15 + lime 14.79",
		"40 vodka 20 lemon 10 simple. make the simple 15. shake":                           "vodka 40 + lemon 20 + simple 15",
		"vodka 40, lemon 20, simple 10. bump the simple to 15. shake":                      "vodka 40 + lemon 20 + simple 15",
		"2 oz gin, 1 oz lemon, .75 oz simple, make the lemon .75 oz instead, shake":        "gin 59.15 + lemon 22.18 + simple 22.18",
		// on a line below
		"2 oz gin, 1 oz lemon, .75 oz simple, shake\nmake the simple 1 oz":         "gin 59.15 + lemon 29.57 + simple 29.57",
		"2 oz gin, 1 oz lemon, .75 oz simple, shake\ndrop the lemon to .75":        "gin 59.15 + lemon 22.18 + simple 22.18",
		"2 oz gin\n1 oz lemon\n.75 oz simple\nmake the simple half an oz pls":      "gin 59.15 + lemon 29.57 + simple 14.79",
		"40 vodka, 20 lemon, 10 simple\nlemon to 25":                               "vodka 40 + lemon 25 + simple 10",
		"40 vodka, 20 lemon, 10 simple\ncan we make the lemon 25?":                 "vodka 40 + lemon 25 + simple 10",
		"2 oz gin, 1 oz lime juice, 1 oz simple. take the lime down to .75. shake": "gin 59.15 + lime juice 22.18 + simple 29.57",
		// of what was spoken of
		"40 vodka 20 lemon 10 simple\nsimple seems low\nok make it 15":           "vodka 40 + lemon 20 + simple 15",
		"40 vodka, 20 lemon, 10 simple\nlemon is a bit high\nmake it 15 then":    "vodka 40 + lemon 15 + simple 10",
		"60 ml rum, 25 ml lime, 20 ml rich simple? no, scratch that, 1:1 simple": "rum 60 + lime 25 + 1:1 simple 20",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for _, text := range []string{
		"40 vodka, 20 lemon, 10 simple\nmake it 15", // of what?
		"gin 60, lemon 30, simple 20, drop lime 10, shake",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}

// What a card or colleagues say beside the pours pours nothing: common practice, no source.
func TestSaidBesideThePours(t *testing.T) {
	const sour = "gin 50 + lemon 25 + honey syrup 15"
	const list = "gin 50 ml\nlemon 25 ml\nhoney syrup 15 ml\n"
	for _, text := range []string{
		list + "ABV ~18%", list + "approx 180 kcal", list + "18% abv / 1.4 units", list + "bowl note: x12 goes in the big one",
		list + "!! honey only, the other is too thin !!", "lol the bitter one. 50 gin, 25 lemon, 15 honey syrup. shake. big cube. don't let jo put tonic in it",
		"Ana: did you write down the honey thing\nBo: gin 50, lemon 25, honey syrup 15\nAna: cold?\nBo: shake, up",
	} {
		assert.Equal(t, sour, poured(t, text), text)
	}
	for _, text := range []string{
		list + "bar note: add 10 ml umeboshi", list + "prep note: 2 dashes umeboshi",
		"lol the bitter one. 50 gin, 25 lemon, 15 honey syrup. shake. big cube. don't forget the absinthe",
		"lol the bitter one. 50 gin, 25 lemon, 15 honey syrup, 60 tonic. big cube. don't let jo put tonic in it",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}
