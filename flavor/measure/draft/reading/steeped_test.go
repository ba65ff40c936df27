package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// A bottle with a plant in it that no ingredient tells of is the bottle; it may carry anything.
func TestWhatABarSteepsMayCarryAnything(t *testing.T) {
	x := wholeCatalogue(t)
	for text, want := range map[string][2]string{
		"45 ml rowan leaf-infused vodka\n15 ml dry vermouth\nstir": {"vodka", "rowan leaf infused"},
		"60 ml gin\n20 ml lemon\n20 ml wild nettle syrup\nshake":   {"simple syrup (1:1)", "wild nettle"},
		"60 ml gin\n20 ml lemon\n20 ml medlar syrup\nshake":        {"simple syrup (1:1)", "medlar"},
		"60 ml hawthorn-infused gin\n20 ml vermouth dry\nstir":     {"London dry gin", "hawthorn infused"},
	} {
		s := readBy(t, x, text)
		at := -1
		for i := range s.Pours {
			if s.Pours[i].Match.Steeped != "" {
				at = i
			}
		}
		require.GreaterOrEqual(t, at, 0, text)
		p := &s.Pours[at]
		assert.Equal(t, want, [2]string{p.Profile.Name, p.Match.Steeped}, text)
		unread := 0
		for _, h := range s.Held() {
			if h.Unread {
				unread++
				sure, may := h.Allergen(flavor.TreeNuts)
				assert.True(t, may, text)
				assert.Equal(t, flavor.Unstated, sure, text)
			}
		}
		assert.Equal(t, 1, unread, text)
	}
	for text, why := range map[string]string{
		"60 ml monkshood gin\n20 ml lemon\n20 ml simple\nshake":      "unknown ingredient",
		"60 ml rum\n20 ml lime\n20 ml salted walnut syrup\nshake":    "may bring tree nuts",
		"60 ml gin\n20 ml lemon\n20 ml zzxq syrup\nshake":            "unknown ingredient",
		"60 ml bourbon\n10 ml maple syrup\n10 ml miso syrup\nstir":   "may bring",
		"60 ml vodka\n20 ml lemon\n20 ml upholstery syrup\nshake":    "unknown ingredient",
		"60 ml deadly nightshade vodka\n20 ml lemon\n20 ml simple\n": "unknown ingredient",
	} {
		_, err := reading.Read(text, x)
		assert.ErrorContains(t, err, why, text)
	}
}
