package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// What is said of method and service, in whatever words: common practice, no source.
func TestMannerTold(t *testing.T) {
	const sour, stirred = "gin 50, lemon 25, syrup 20. ", "gin 60, dry vermouth 10. "
	for _, c := range []struct {
		text    string
		method  flavor.Method
		service flavor.Service
	}{
		// how long is no glass
		{stirred + "stir long. up", flavor.Stir, flavor.Up}, {stirred + "long stir, coupe", flavor.Stir, flavor.Up},
		// ice that a drink is mixed with stays behind
		{sour + "shake with crushed ice, strain over cubes", flavor.Shake, flavor.Rocks}, {sour + "shake with one big cube, coupe", flavor.Shake, flavor.Up}, {sour + "shake with crushed ice, strain up", flavor.Shake, flavor.Up},
		{stirred + "stir on ice and pour into a cold glass", flavor.Stir, flavor.Up}, {sour + "shake with crushed ice and dump in the glass", flavor.Shake, flavor.Crushed}, {stirred + "stir on the block", flavor.Stir, flavor.Rocks}, {stirred + "stirred over a big rock", flavor.Stir, flavor.Rocks},
		// words of making within what is laid on the drink
		{sour + "shake, up. frozen grape", flavor.Shake, flavor.Up}, {"gin 45, tonic 120, ice. frozen berries", flavor.Build, flavor.Long},
		// another time
		{stirred + "stir, up\n(shaken last time, never again)", flavor.Stir, flavor.Up}, {stirred + "stir, up. we used to shake it", flavor.Stir, flavor.Up},
		// behind the name
		{"Amaretto sour | rocks | cubed\namaretto 50\nlemon 25\nsyrup 10\nshake", flavor.Shake, flavor.Rocks}, {"Red house - rocks\nbourbon 50\nred bitter 20\nsweet vermouth 20", flavor.Stir, flavor.Rocks},
		// in the glass
		{"rye 2 oz, sugar cube, 3 dashes bitters; muddle, ice, stir in glass", flavor.Build, flavor.Rocks},
		{"cognac 50 in a snifter", flavor.Build, flavor.Neat},
	} {
		s, err := reading.Read(c.text, wholeCatalogue(t))
		require.NoError(t, err, c.text)
		assert.Equal(t, c.method, s.Method, c.text)
		assert.Equal(t, c.service, s.Service, c.text)
	}
}

// What lies on a drink is not poured, and what fills the glass is not laid on it: common practice, no
// source.
func TestLaidOrPoured(t *testing.T) {
	const sour = "gin 50, lemon 25, syrup 20. shake, rocks. "
	for text, want := range map[string]string{
		sour + "A sprig of rosemary on top.": "gin 50 + lemon 25 + syrup 20", sour + "and an orange peel over the top": "gin 50 + lemon 25 + syrup 20",
		sour + "Drop a cherry in.": "gin 50 + lemon 25 + syrup 20", sour + "Sink 1 olive in": "gin 50 + lemon 25 + syrup 20",
		"rum 50, tall, ice, fill cola lime": "rum 50 + cola 90", "gin 45, lemon 20, syrup 15, shake, fill soda chry": "gin 45 + lemon 20 + syrup 15 + soda 90",
		"gin60 lem30 ss20 shk strain tall fill soda cherry": "gin 60 + lem 30 + ss 20 + soda 90",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for _, text := range []string{
		"vodka 45, espresso 30, coffee liqueur 15, shaken, up, 30 ml cream on the side", // a second glass
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}
