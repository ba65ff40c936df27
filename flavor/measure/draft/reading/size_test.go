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
