package cover

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/guest"
)

// Common practice, no source: what a bar pours, and what it does not pour beside it,
// from one shelf.
func TestNothingUnlikeStandsBesideWhatIsLike(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		text, out  string
		yes, never []string
	}{
		{"3/4 oz bourbon\n3/4 oz mild spiced amaro\n3/4 oz light orange bitter aperitif\n3/4 oz lemon juice\nshake, up", "mild-spiced-amaro",
			[]string{"medium-amaro"}, []string{"orange-curacao", "blue-curacao"}},
		{"1 1/2 oz vodka\n1 oz espresso\n3/4 oz coffee liqueur\nshake, up", "coffee-liqueur",
			[]string{"creme-de-cacao"}, []string{"whisky-honey-liqueur", "sweet-vermouth", "amaretto"}},
		{"1/2 oz creme de cassis\n4 oz dry white wine\nbuild, wine glass", "creme-de-cassis",
			[]string{"creme-de-mure", "raspberry-syrup"}, []string{"falernum", "creme-de-menthe"}},
		{"2 oz bourbon\n1/4 oz demerara syrup\n2 dashes aromatic bitters\nstir, rocks", "aromatic-bitters",
			[]string{"anise-bitters", "orange-bitters"}, []string{"celery-bitters"}},
		{"3 oz brut champagne\n3 oz orange juice\nbuild, flute", "orange-juice",
			[]string{"mandarin-juice"}, []string{"cola", "sloe-gin"}},
		{"2 oz aged rum\n3/4 oz lime juice\n1/2 oz orange curaçao\n1/2 oz simple syrup\nshake, up", "orange-curacao",
			[]string{"triple-sec"}, []string{"melon-liqueur"}},
		{"3 oz kombucha\n2 oz apple juice\n1/2 oz ginger syrup\nbuild, long", "kombucha",
			[]string{"soda-water"}, []string{"energy-drink"}},
		{"2 oz London dry gin\n3/4 oz lime juice\n3/4 oz simple syrup\nshake, up", "london-dry-gin",
			[]string{"old-tom-gin"}, []string{"rosemary", "sloe-gin"}},
	} {
		spec, err := b.catalogue.ReadSpec("", c.text)
		require.NoError(t, err)
		out := b.profiles(t, c.out)
		got, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: out, Candidates: b.profiles(t, append(c.yes, c.never...)...)})
		require.NoError(t, err)
		var listed []string
		for _, x := range got.Covers {
			for _, p := range x.Parts {
				listed = append(listed, p.Profile.ID)
			}
		}
		assert.Subset(t, listed, c.yes, c.text)
		for _, id := range c.never {
			assert.NotContains(t, listed, id, c.text)
		}
	}
}

// Common practice, no source: what is nearly the same bottle comes first, however rare.
func TestARareTwinComesFirst(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct{ text, out string }{
		{"1 oz London dry gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks", "red-bitter-aperitif"},
		{"2 oz vodka\n1 oz lime juice\n3/4 oz simple syrup\nshake, up", "vodka"},
	} {
		r := b.request(t, c.text, c.out, 2, 5)
		r.Common = b.common
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		require.NotEmpty(t, got.Covers)
		assert.Less(t, got.Covers[0].Distance, 1.0, got.Covers[0].Text)
	}
}

// Common practice, no source: what is harmless comes before what many who avoid an
// allergen avoid too, and a dyed bottle after one that is not.
func TestWhatUnsettlesComesLater(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		text, out     string
		first, behind string
		guest         guest.Guest
	}{
		{"1 1/2 oz bourbon\n3/4 oz hazelnut liqueur\n3/4 oz espresso\nshake, up", "hazelnut-liqueur",
			"creme-de-cacao", "peanut-liqueur", guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}},
		{"2 oz aged rum\n3/4 oz lime juice\n1/4 oz orange curaçao\n1/2 oz simple syrup\nshake, up", "orange-curacao",
			"triple-sec", "blue-curacao", guest.Guest{}},
	} {
		spec, err := b.catalogue.ReadSpec("", c.text)
		require.NoError(t, err)
		got, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, c.out), Candidates: b.profiles(t, c.first, c.behind), Guest: c.guest})
		require.NoError(t, err)
		require.NotEmpty(t, got.Covers, c.text)
		assert.Equal(t, c.first, got.Covers[0].Parts[0].Profile.ID, c.text)
	}
}

// Common practice, no source: a new allergen comes behind what is as near without it, whoever the
// guest is.
func TestANewAllergenComesBehindWhatIsAsNear(t *testing.T) {
	const asNear, asGood = 0.5, 5.0 // steps, points of a score
	b := newBench(t)
	demo, err := b.catalogue.Demo()
	require.NoError(t, err)
	for _, spec := range b.demoMenu(t) {
		for _, out := range b.profiles(t, "falernum", "triple-sec", "allspice-dram") {
			if !spec.Has(func(p *flavor.Profile) bool { return p == out }) {
				continue
			}
			got, err := b.finder.Find(context.Background(), Request{Spec: spec, Missing: []*flavor.Profile{out}, Candidates: demo.Stock, Limit: 6})
			require.NoError(t, err)
			if len(got.Covers) == 0 || len(got.Covers[0].NewAllergens) == 0 {
				continue
			}
			first := got.Covers[0]
			for _, c := range got.Covers[1:] {
				asNear := c.Distance <= first.Distance+asNear && c.Score >= first.Score-asGood && len(c.Gone) <= len(first.Gone)
				assert.False(t, asNear && len(c.NewAllergens) == 0, "%s: %s before %s", spec.Name, first.Text, c.Text)
			}
		}
	}
}
