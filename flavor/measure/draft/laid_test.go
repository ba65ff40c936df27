package draft

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

// What is laid on a drink is kept where it follows the service; a step stays one.
func TestGarnishAfterTheService(t *testing.T) {
	for _, c := range []struct {
		line    string
		garnish string
		method  flavor.Method
		service flavor.Service
		steps   []string
	}{
		{"stir up cherry", "cherry", flavor.Stir, flavor.Up, nil},
		{"shake up 3 beans", "3 beans", flavor.Shake, flavor.Up, nil},
		{"stir, up, lemon", "lemon", flavor.Stir, flavor.Up, nil},
		{"stirred, rocks, orange", "orange", flavor.Stir, flavor.Rocks, nil},
		{"shake coupe lime wheel", "lime wheel", flavor.Shake, flavor.Up, nil},
		{"shake, coupe, half passionfruit", "half passionfruit", flavor.Shake, flavor.Up, nil},
		{"muddle, crushed", "", "", flavor.Crushed, []string{"muddle"}},
		{"muddle / crushed", "", "", flavor.Crushed, []string{"muddle"}},
	} {
		d := Parse("X\n2 oz gin\n1 oz lime\n" + c.line)
		assert.Empty(t, d.Faults, c.line)
		assert.Len(t, d.Lines, 2, c.line)
		assert.Equal(t, c.garnish, d.Garnish, c.line)
		assert.Equal(t, c.method, d.Method, c.line)
		assert.Equal(t, c.service, d.Service, c.line)
		assert.Equal(t, c.steps, d.Steps, c.line)
		assert.Equal(t, c.garnish != "", len(d.Notes) > 0, c.line)
	}
	for _, line := range []string{"stir in mint", "shake with mint", "swizzle with 3 cherries"} {
		assert.Empty(t, Parse("X\n2 oz gin\n"+line).Garnish, line)
	}
}

// Half a fruit at the end of all is laid on what is topped; with a unit it is poured.
func TestHalfAFruitOnTop(t *testing.T) {
	d := Parse("X\n45 vodka, 30 lime, shake, tall, top soda, half passionfruit")
	assert.Equal(t, "half passionfruit", d.Garnish)
	assert.Len(t, d.Notes, 1)
	assert.Len(t, d.Lines, 3)
	assert.Len(t, Parse("X\n2 oz vodka, 1 oz lime, shake, up, 0.5 oz passionfruit").Lines, 3)
	assert.Len(t, Parse("X\n45 vodka, 30 lime, half passionfruit, shake, up").Lines, 3)
}

// What is said of counted fruit or leaves is not said of ice.
func TestCrushedFruitIsNoIce(t *testing.T) {
	for _, line := range []string{"5 blackberries crushed", "5 blackberries, lightly crushed", "6 basil leaves gently crushed", "6 sage leaves, crushed"} {
		d := Parse("X\n2 oz rum\n1 oz lime\n" + line + "\nshake")
		assert.Empty(t, d.Service, line)
		if assert.Len(t, d.Lines, 3, line) {
			assert.True(t, d.Lines[2].Muddled, line)
		}
	}
	for _, line := range []string{"6 mint, crushed", "6 mint leaves, crushed ice", "rum 50, lime 25, 6 mint leaves, crushed", "blackberries, crushed"} {
		assert.Equal(t, flavor.Crushed, Parse("X\n2 oz gin\n1 oz lemon\n"+line).Service, line)
	}
}

// Half a nut or half a fruit on top decorates the drink, where it stands in a list too.
func TestHalvesOnTop(t *testing.T) {
	for _, half := range []string{"pecan half on top", "cashew half over the top", "plum half on top", "half an apricot on top", "half a passion fruit floated on top"} {
		d := Parse("2 oz rum, 1 oz cream, ¾ oz honey syrup, " + half)
		assert.Equal(t, half, d.Garnish, half)
		assert.Len(t, d.Lines, 3, half)
	}
	for _, half := range []string{"amaro half on top", "half oz amaro on top", "lime juice half on top"} {
		assert.Len(t, Parse("2 oz rum, 1 oz cream, ¾ oz honey syrup, "+half).Lines, 4, half)
	}
}

// Ice in a tall glass makes a long drink, whichever is said first.
func TestIceInATallGlass(t *testing.T) {
	for _, line := range []string{"shake, strain over fresh ice, highball", "highball, shake, strain over fresh ice"} {
		assert.Equal(t, flavor.Long, Parse("X\n2 oz gin\n1 oz lime\n"+line).Service, line)
	}
}

// A bare number may be millilitres of something long.
func TestBareNumbersMayBeLong(t *testing.T) {
	for text, faults := range map[string]int{"60 gin\n150 tonic": 0, "60 gin\n1500 tonic": 1} {
		assert.Len(t, ParsePours(text).Faults, faults, text)
	}
}

// What a name says of how the thing was made is no step, nor the name of the drink.
func TestMadeSoIsNoStep(t *testing.T) {
	for _, text := range []string{"blended scotch 60 ml\nlemon 20 ml", "blended scotch 60\nlemon 20", "X\nblended scotch 2 oz\nlemon 1 oz"} {
		d := Parse(text)
		assert.Empty(t, d.Faults, text)
		if assert.Len(t, d.Lines, 2, text) {
			assert.Equal(t, "blended scotch", d.Lines[0].Name, text)
		}
		assert.Empty(t, d.Steps, text)
	}
	assert.Len(t, Parse("X\n2 oz gin\nstirred with a spoon 30 seconds").Lines, 1)
}
