package overlooked_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
)

// A second way to mix or to serve a drink is asked about, and the steps of one way are not: common practice, no
// source.
func TestTwoManners(t *testing.T) {
	const pours = "2 oz gin\n.75 lemon juice\n.75 simple\n"
	c, err := data.Embedded()
	require.NoError(t, err)
	for text, fault := range map[string]string{
		"Stir. Shake.":                                                    "second way to mix",
		"Shake. Stir.":                                                    "second way to mix",
		"Stir 30 sec. Shake 10 sec.":                                      "second way to mix",
		"stir / shake?? ask boss":                                         "second",
		"Method: stir. Shake hard.":                                       "second way to mix",
		"shake. blend.":                                                   "second way to mix",
		"blend or build":                                                  "second way to mix",
		"throw. stir.":                                                    "second way to mix",
		"Stir with ice and strain. Shake with ice.":                       "second way to mix",
		"Serve up. Serve over ice.":                                       "without ice",
		"Shake. Up. Over ice.":                                            "without ice",
		"shake, up or over ice":                                           "without ice",
		"shake, strain over ice, serve up":                                "without ice",
		"shake, no ice in the glass, over a big rock":                     "without ice",
		"Shake and serve straight up in a rocks glass over ice.":          "without ice",
		"stir, strain into a coupe. Serve it in a highball glass":         "two glasses",
		"Glass: coupe\nShake. Serve on the rocks.":                        "a glass for drinks without ice",
		"nick & nora\nshake, strain over ice":                             "a glass for drinks without ice",
		"shake. pour over ice into a flute":                               "ice in it",
		"glass: cocktail glass over ice":                                  "ice in it",
		"glass: coupette\nice: rocks":                                     "a glass for drinks without ice",
		"Shake with ice and strain. Stir with ice and strain, coupe, up.": "second way to mix",
	} {
		_, err := c.ReadSpec("", pours+text)
		assert.ErrorContains(t, err, fault, text)
	}
	for _, text := range []string{
		"dry shake, then shake with ice, strain up", "Dry shake. Shake with ice. Double strain.", "shake with ice, strain over fresh ice",
		"stir in the glass", "build, top with soda, stir gently", "shake, strain, top with soda, stir", "Shake. Strain. Top with soda. Stir.",
		"shake all but the soda, pour over ice, stir gently", "muddle, build, stir", "Build in shaker. Shake hard. Strain.", "shake and strain over ice, stir once",
		"stirred not shaken, up", "Stir, don't shake. Up.", "Build over ice. Stir.", "whip shake, dump over crushed ice, swizzle", "shake hard then swizzle over crushed ice",
		"stir over ice, strain, serve up", "add ice, stir until cold, strain into a coupe, serve up", "Shake, no wait, stir", "Stir to combine, then shake hard with ice and strain.",
		"stir on ice, up", "shake with one big cube, up", "stirred / chilled rocks / no ice", "stir, rocks no ice", "Pour over ice. Stir. Strain, up.",
		"glass: coupe\nshake over ice, strain", "shake, strain into a coupe over crushed ice", "coupe with one big rock", "stir on ice. flute. up", "glass: coupe\nice: none",
	} {
		_, err := c.ReadSpec("", pours+text)
		assert.NoError(t, err, text)
	}
	for _, text := range []string{"name: Shake, up\n2 oz gin\nstir, up", "Name:  dry shake\n2 oz gin\nbuild, rocks", "stir\n2 oz gin\nname: blend"} {
		_, err := c.ReadSpec("", text)
		assert.NoError(t, err, text)
	}
}
