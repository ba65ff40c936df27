package data

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// Distillates: Regulation (EU) No 1169/2011, Annex II; which spirit is made from what is
// common practice, no source.
func TestWhatAGuestIsAsked(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	for _, x := range []struct {
		pour  string
		avoid flavor.Allergen
		ask   string // "" for nothing
	}{
		{"rye vodka", flavor.Gluten, "distilled"},
		{"bourbon", flavor.Gluten, "distilled"},
		{"London dry gin", flavor.Gluten, "distilled"},
		{"aquavit", flavor.Gluten, "distilled"},
		{"sloe gin", flavor.Gluten, "distilled"},
		{"cinnamon whisky liqueur", flavor.Gluten, "distilled"},
		{"Irish cream liqueur", flavor.Gluten, "distilled"},
		{"alcohol-free whiskey", flavor.Gluten, ""},
		{"triple sec", flavor.Gluten, ""},
		{"potato vodka", flavor.Gluten, ""},
		{"corn vodka", flavor.Gluten, ""},
		{"white rum", flavor.Gluten, ""},
		{"cognac", flavor.Gluten, ""},
		{"rye vodka", flavor.Milk, ""},
		{"maraschino liqueur", flavor.TreeNuts, "kernels"},
		{"kirsch", flavor.TreeNuts, "kernels"},
		{"coconut cream", flavor.TreeNuts, "coconut"},
		{"crème de cassis", flavor.TreeNuts, ""},
	} {
		spec, err := c.ReadSpec("", "1 oz "+x.pour+"\nstir, up")
		require.NoError(t, err)
		asked := strings.Join(spec.Ask([]flavor.Allergen{x.avoid}), "; ")
		if x.ask == "" {
			assert.Empty(t, asked, x.pour)
		} else {
			assert.Contains(t, asked, x.ask, x.pour)
			assert.Contains(t, asked, spec.Pours[0].Profile.Name)
		}
	}
}
