package data

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/riff/wish"
)

// What carries a wish has what is wished for: a table that named sugar for bitterness
// would be caught.
func TestCarriersHaveWhatIsWished(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	carriers, err := c.Carriers()
	require.NoError(t, err)
	space := c.Space()
	for _, word := range []string{"bitter", "sour", "salty", "umami", "nut", "coffee", "chocolate", "smoke", "herb", "mint", "ginger", "floral", "fruity", "creamy", "coconutty", "citrus", "orange", "tropical", "funky", "orchard", "berry", "vanilla", "anise", "winey"} {
		read, err := wish.Parse([]string{"more " + word}, nil)
		require.NoError(t, err, word)
		row := carriers.Of(&read[0], "")
		require.NotNil(t, row, word)
		for _, p := range c.Profiles() {
			if !row.Carries(p) {
				continue
			}
			has := 0.0
			v := space.PerML(p)
			if read[0].Kind == wish.Sense {
				has = v[read[0].Sense]
			}
			for _, s := range read[0].Or {
				has += v[s]
			}
			for _, f := range read[0].Families {
				has += p.Aroma[f]
			}
			assert.Positive(t, has, "%s carries %q", p.ID, word)
		}
	}
}

// A word for less has no carriers, nor has a word that is not in the table.
func TestCarriersAreForMore(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	carriers, err := c.Carriers()
	require.NoError(t, err)
	for _, word := range []string{"less bitter", "drier", "oakier", "rounder"} {
		read, err := wish.Parse([]string{word}, nil)
		require.NoError(t, err, word)
		assert.Nil(t, carriers.Of(&read[0], ""), word)
	}
	coffee, err := wish.Parse([]string{"coffee"}, nil)
	require.NoError(t, err)
	roast, err := wish.Parse([]string{"roastier"}, nil)
	require.NoError(t, err)
	cacao := &flavor.Profile{ID: "creme-de-cacao"}
	assert.False(t, carriers.Of(&coffee[0], "").Carries(cacao), "cacao is no coffee")
	assert.True(t, carriers.Of(&roast[0], "").Carries(cacao), "but is roasted")
}

// A row for a class of spirit comes before the row for any: chilli goes with agave, and
// cinnamon with whiskey. Common practice, no source.
func TestCarriersByBase(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	carriers, err := c.Carriers()
	require.NoError(t, err)
	spicy, err := wish.Parse([]string{"spicier"}, nil)
	require.NoError(t, err)
	for _, r := range []struct {
		base  flavor.Class
		first string
		later string
	}{{"agave spirit", "chilli-tincture", "cinnamon-syrup"}, {"whiskey", "cinnamon-syrup", "fresh-chilli"}} {
		row := carriers.Of(&spicy[0], r.base)
		assert.True(t, row.First[r.first], r.base)
		assert.False(t, row.First[r.later], r.base)
		assert.True(t, row.Also[r.later], r.base)
	}
	any := carriers.Of(&spicy[0], "")
	assert.Same(t, any, carriers.Of(&spicy[0], "gin"), "what has no row of its own has the row for any")
}
