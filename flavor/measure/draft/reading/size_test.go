package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// What no glass holds is asked for, unless the draft speaks of more than one drink; common
// practice, no source.
func TestMoreThanAGlassHolds(t *testing.T) {
	x := wholeCatalogue(t)
	for _, text := range []string{
		"60cl gin 30cl lemon 20cl syrup, one drink, shake, coupe", "75cl vodka 40cl lemon 30cl simple, shake, single coupe",
		"500 gin, 250 lemon, 250 simple, shake and strain in a coupe", "600 ml rum\n300 ml lime juice\n200 ml simple syrup\nshake, rocks glass",
	} {
		_, err := reading.Read(text, x)
		assert.ErrorContains(t, err, "holds", text)
	}
	for _, text := range []string{
		"batch: 600 ml gin, 300 ml lemon, 200 ml simple, shake, coupe", "600 ml gin, 300 ml lemon, 200 ml simple, serves 10, shake, coupe",
		"600 ml gin\n300 ml lemon\n200 ml simple\nshake", "60 gin, 30 lemon, 20 simple, shake, coupe", "60 rum, 200 pineapple juice, 120 soda, highball glass",
	} {
		_, err := reading.Read(text, x)
		assert.NoError(t, err, text)
	}
}

// A point or a unit that was lost is asked for: a pour that dwarfs all else of a drink that is served in a glass,
// and more syrup than spirit without a unit. Common practice, no source.
func TestAmountsOutOfScale(t *testing.T) {
	x := wholeCatalogue(t)
	for _, text := range []string{
		"14 oz aged rum, .75 lime, .5 orgeat, egg white, shake, rocks", "450 ml gin, 25 ml lemon, 40 ml honey syrup, up",
		"House punch: aged rum 2, lime 1, grenadine 5, orange juice 2, soda", "rye 1.5, lemon 1, honey syrup 5, shake",
	} {
		_, err := reading.Read(text, x)
		assert.ErrorContains(t, err, "of all else", text)
	}
	for _, text := range []string{
		"cider 2 l, apple juice 250 ml, honey syrup 60 ml, mugs", "450 ml gin\n90 ml dry vermouth\nstir", "rye 1.5, lemon 1, honey syrup .5, shake", "5 oz honey syrup\n2 oz gin\n1 oz lemon",
		"2 oz rum, 3 oz cream of coconut, 4 oz pineapple juice, blend",
	} {
		_, err := reading.Read(text, x)
		assert.NoError(t, err, text)
	}
}

// "sec" behind a step is how long it takes, and behind a pour it is dry vermouth.
func TestSecondsAreNotPoured(t *testing.T) {
	for text, want := range map[string]string{
		"60 gin, 30 lemon, 20 honey syrup. Shake. 12 sec. Coupe":      "gin 60 + lemon 30 + honey syrup 20",
		"60 gin, 30 lemon, 20 honey syrup, one scoop ice. 20 sec. up": "gin 60 + lemon 30 + honey syrup 20",
		"60 gin, 30 lemon, 20 honey syrup. 15 secs. Coupe":            "gin 60 + lemon 30 + honey syrup 20",
		"60 gin, 10 sec, stir, coupe":                                 "gin 60 + sec 10",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}

// The orange of a sour that nothing sweetens may be its liqueur; common practice, no source.
func TestAFruitThatMayBeItsLiqueur(t *testing.T) {
	x := wholeCatalogue(t)
	for _, text := range []string{"45 tequila, 25 orange, 20 lime, shake up", "1.5 oz gin, .75 oz orange, .75 oz lemon, shake, up"} {
		_, err := reading.Read(text, x)
		assert.ErrorContains(t, err, "triple sec", text)
	}
	for _, text := range []string{
		"45 tequila, 25 orange juice, 20 lime, shake up", "45 tequila, 25 orange, 20 lime, 10 agave syrup, shake up", "60 vodka, 90 orange, 10 lime, tall",
		"45 tequila, 25 orange, shake up", "45 tequila, 25 orange, 20 lime, top soda, tall",
	} {
		_, err := reading.Read(text, x)
		assert.NoError(t, err, text)
	}
}
