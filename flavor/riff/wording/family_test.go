package wording

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/weigh"
)

// fits are families in the order of how likely they are.
func fits(ids ...string) []weigh.Fit {
	var out []weigh.Fit
	p := 0.6
	for _, id := range ids {
		out = append(out, weigh.Fit{ID: id, Name: id, Probability: p})
		p /= 3
	}
	return out
}

// A drink is called by the likeliest family whose word is true of what is in the
// glass: nameless drafts, common practice, no source.
func TestFamilyWords(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	for _, x := range []struct {
		text string
		fits []weigh.Fit
		want string
	}{
		{"1 oz fino sherry\n3 oz dry cider\nbuild, long", fits("beer", "light-highball"), "light highball"},
		{"1 oz light orange bitter aperitif\n6 oz lager\nbuild, long", fits("beer"), "beer drink"},
		{"4 oz brut champagne\n1/2 oz crème de cassis\nbuild, up", fits("spritz"), "sparkling drink"},
		{"2 oz red bitter aperitif\n3 oz prosecco\n1 oz soda water\nbuild, rocks", fits("spritz"), "spritz"},
		{"1 oz gin\n1 1/2 oz dry vermouth\n1 oz honey-herb liqueur\n2 dashes orange bitters\nstir, up", fits("duo", "aromatic-stirred"), "aromatic stirred"},
		{"2 oz bourbon\n1 oz amaretto\nbuild, rocks", fits("duo"), "duo"},
		{"1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks", fits("equal-parts-bitter"), "equal-parts bitter"},
		{"1/2 oz gin\n1/2 oz red bitter aperitif\n1 3/4 oz sweet vermouth\nstir, rocks", fits("equal-parts-bitter"), "stirred drink"},
		{"1 1/2 oz gin\n1/2 oz cinnamon syrup\n3/4 oz maraschino liqueur\n3/4 oz lime juice\nshake, up", fits("tropical-sour", "daisy"), "daisy"},
		{"2 oz aged rum\n1/2 oz cinnamon syrup\n3/4 oz lime juice\nshake, up", fits("tropical-sour", "sour"), "tropical sour"},
		{"2 oz fino sherry\n1/2 oz simple syrup\n2 slices orange\nshake, crushed", fits("wine-cooler"), "cobbler"},
		{"2 oz bourbon\n4 oz whole milk\n1/2 oz simple syrup\nbuild, hot", fits("milk-punch"), "milk punch"},
		{"2 oz bourbon\n4 oz filter coffee\n1/2 oz simple syrup\nbuild, hot", fits("dessert"), "dessert"},
		{"2 oz gin\n3/4 oz lemon juice\n3 oz soda water\nshake, long", fits("lemonade", "collins"), "collins"},
		{"4 oz orange juice\n1/2 oz lemon juice\n3 oz soda water\nbuild, long", fits("lemonade"), "lemonade"},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, crushed", fits("frozen", "sour"), "sour"},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", fits("no-such-family"), "no such family"},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", nil, "sour"},
	} {
		s, err := c.ReadSpec("", x.text)
		require.NoError(t, err, x.text)
		assert.Equal(t, x.want, FamilyWord(&s, x.fits), x.text)
	}
}

// Every family of the catalogue has its word.
func TestEveryFamilyHasAWord(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	set, _, err := c.Set()
	require.NoError(t, err)
	known, _ := set.Families()
	require.NotEmpty(t, known)
	for i := range known {
		assert.NotEmpty(t, families[known[i].ID].word, known[i].ID)
	}
	assert.Len(t, families, len(known), "and no other has")
}
