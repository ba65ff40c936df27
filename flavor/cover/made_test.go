package cover

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/weigh"
)

// What a bar makes where the bottle is out: common practice, no source. The wine of a spritz is
// white wine and more of the soda that is in it; a lemonade is lemon, sugar and soda, but only
// where nothing of two does, and only where nobody asked for fewer.
func TestWhatIsMadeBehindTheBar(t *testing.T) {
	const spritz, shandy = "90 ml prosecco\n60 ml orange bitter aperitif\n30 ml soda water\nbuild, long", "90 ml red wine\n90 ml sparkling lemonade\nbuild, long"
	b := newBench(t)
	for _, c := range []struct {
		name, drink, out string
		shelf            []string
		parts            int
		first            []string // of the first cover, in any order; none if it is no such cover
	}{
		{"still wine and more soda", spritz, "prosecco", []string{"dry-white-wine", "tonic-water", "red-wine", "fino-sherry"}, 2, []string{"dry-white-wine"}},
		{"another that sparkles comes first", spritz, "prosecco", []string{"dry-white-wine", "cava", "tonic-water"}, 2, []string{"cava"}},
		{"three of every bar", shandy, "sparkling-lemonade", []string{"lemon-juice", "simple-syrup", "soda-water", "tonic-water"}, 2, []string{"lemon-juice", "simple-syrup", "soda-water"}},
		{"two before three", shandy, "sparkling-lemonade", []string{"lemon-juice", "simple-syrup", "soda-water", "lemon-cordial"}, 2, []string{"lemon-cordial", "soda-water"}},
		{"one before two", shandy, "sparkling-lemonade", []string{"lemon-juice", "simple-syrup", "soda-water", "lemon-lime-soda"}, 2, []string{"lemon-lime-soda"}},
		{"one was asked for", shandy, "sparkling-lemonade", []string{"lemon-juice", "simple-syrup", "soda-water"}, 1, nil},
	} {
		r := b.request(t, c.drink, c.out, c.parts, 5)
		r.Candidates = b.profiles(t, c.shelf...)
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err, c.name)
		if c.first == nil {
			for i := range got.Covers {
				assert.LessOrEqual(t, len(got.Covers[i].Parts), c.parts, c.name)
			}
			continue
		}
		require.NotEmpty(t, got.Covers, c.name)
		x := &got.Covers[0]
		var ids []string
		for _, p := range x.Parts {
			ids = append(ids, p.Profile.ID)
		}
		assert.ElementsMatch(t, c.first, ids, "%s: %s", c.name, x.Text)
		assert.True(t, x.Keeps && got.Near && x.Custom, "%s: %s", c.name, x.Text)
		assert.Equal(t, weigh.Balanced, weigh.VerdictOf(x.Score), x.Text)
	}
}

// What takes the place of a wine that sparkled fills its glass: as much wine and soda together
// as there was before, within a quarter ounce. It keeps to a guest's limit of strength and cost.
func TestStillWineFillsTheGlassWithSoda(t *testing.T) {
	const quarterOunce = 7.5
	b := newBench(t)
	r := b.request(t, "90 ml prosecco\n60 ml orange bitter aperitif\n30 ml soda water\nbuild, long", "prosecco", 2, 5)
	r.Candidates = b.profiles(t, "dry-white-wine", "tonic-water")
	got, err := b.finder.Find(context.Background(), r)
	require.NoError(t, err)
	require.NotEmpty(t, got.Covers)
	x := &got.Covers[0]
	assert.InDelta(t, r.Spec.VolumeML(), x.Spec.VolumeML(), quarterOunce, x.Text)
	require.Len(t, x.Changes, 1, x.Text)
	assert.Equal(t, "soda-water", x.Changes[0].Profile.ID)
	assert.Greater(t, x.Changes[0].ToML, x.Changes[0].FromML)

	r.Guest = guest.Guest{Avoid: []flavor.Allergen{flavor.Sulphites}}
	got, err = b.finder.Find(context.Background(), r)
	require.NoError(t, err)
	for i := range got.Covers {
		assert.True(t, r.Guest.MayHaveAll(&got.Covers[i].Spec), got.Covers[i].Text)
	}
}

// A glass of wine with a liqueur in it, less the liqueur, is covered by another fruit before sugar,
// and by sugar never. Common practice, no source.
func TestFruitStandsForFruitInWine(t *testing.T) {
	const kir = "150 ml dry white wine\n15 ml crème de cassis\nbuild, up"
	b := newBench(t)
	sugars := []string{"simple-syrup", "honey-syrup", "demerara-syrup", "red-corsican-quinquina"}
	for _, c := range []struct {
		more  []string
		first string
	}{
		{[]string{"peach-liqueur", "elderflower-liqueur"}, "peach-liqueur"},
		{[]string{"peach-liqueur", "blackcurrant-syrup"}, "blackcurrant-syrup"},
		{[]string{"creme-de-mure", "peach-liqueur", "raspberry-syrup"}, "creme-de-mure"},
		{nil, ""},
	} {
		got := b.found(t, kir, "creme-de-cassis", guest.Guest{}, append(c.more, sugars...)...)
		for i := range got.Covers {
			assert.NotContains(t, sugars[:3], got.Covers[i].Parts[0].Profile.ID, got.Covers[i].Text)
		}
		if c.first != "" {
			require.NotEmpty(t, got.Covers, c.first)
			assert.Equal(t, c.first, got.Covers[0].Parts[0].Profile.ID, got.Covers[0].Text)
		}
	}
}
