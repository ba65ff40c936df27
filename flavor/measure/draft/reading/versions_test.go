package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// Two versions in one text are not poured together, however they stand; what one drink
// pours twice is read. Common practice, no source.
func TestVersionsAreAskedAbout(t *testing.T) {
	x := wholeCatalogue(t)
	for _, text := range []string{
		"orig: 45 rye/20 lemon/20 fig syrup\nFinal: rye 50, lemon 20, fig syrup 12\nshake up",
		"orig: 45 rye/20 lemon/20 fig syrup. too sweet. Final: rye 50, lemon 20, fig syrup 12, shake up",
		"LEFT: classic   RIGHT: ours\ngin 30   gin 40\nlemon 20   lemon 15\nsimple 10   simple 8\nshake",
		"LEFT: classic   RIGHT: ours / gin 30   gin 40 / lemon 20   lemon 15",
		"gin 50, lemon 25, simple 20\ngin 40, lemon 20, simple 10",
		"2 oz gin\n3/4 lemon\n3/4 simple\n\n1.5 oz gin\n1 oz lemon\n1/2 simple",
	} {
		_, err := reading.Read(text, x)
		require.ErrorContains(t, err, "two versions of one drink", text)
		assert.ErrorContains(t, err, "keep one version", text)
	}
	for _, text := range []string{
		"30 ml aged rum\n30 ml dark rum\n20 lime\n10 lime\n15 simple",
		"60 ml rye\n30 ml lemon\n20 ml maple syrup\n15 ml maple syrup\nshake",
	} {
		read, err := reading.Read(text, x)
		require.NoError(t, err, text)
		assert.Contains(t, strings.Join(read.Notes, "\n"), "in place of the other", text)
	}
	for text, pours := range map[string]int{
		"30 ml aged rum\n30 ml dark rum\n20 lime\n15 simple\n10 lime":                      5,
		"30 ml gin\n20 ml lemon\n20 ml gin\n10 ml lemon\n15 ml simple":                     5,
		"45 ml dark rum, 20 ml lime, 15 ml simple\nfloat 15 ml dark rum\n2 dashes bitters": 5,
		"2 oz gin, 1/2 oz lemon, 1/2 oz simple\n\n1/4 oz lemon on top":                     4,
	} {
		s, err := reading.Read(text, x)
		if assert.NoError(t, err, text) {
			assert.Len(t, s.Pours, pours, text)
		}
	}
}
