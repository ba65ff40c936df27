package cover

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/cover/listing"
	"counterpour/flavor/weigh"
)

// What is left without something is a drink in balance with its spirit in full measure; where the
// base itself went, nothing is left to build on. Common practice, no source.
func TestWhatIsLeftIsBuiltAnew(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		drink, out string
		avoid      flavor.Allergen
		built      bool
	}{
		{"45 ml amaretto\n22.5 ml bourbon\n30 ml lemon juice\n5 ml simple syrup\n15 ml egg white\ndry shake, rocks", "amaretto", flavor.TreeNuts, true},
		{"45 ml amaretto\n22.5 ml bourbon\n30 ml lemon juice\n5 ml simple syrup\n15 ml egg white\ndry shake, rocks", "amaretto", "", false},
		{"60 ml bourbon\n22.5 ml lemon juice\n22.5 ml simple syrup\nshake, rocks", "bourbon", flavor.TreeNuts, false},
	} {
		r := b.request(t, c.drink, c.out, 2, 5)
		if c.avoid != "" {
			r.Guest.Avoid = []flavor.Allergen{c.avoid}
		}
		r.Candidates = b.profiles(t, "creme-de-noyaux", "olive-brine")
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		if !c.built {
			assert.True(t, got.LeftOut == nil || len(got.LeftOut.Changes) == 0, c.drink)
			continue
		}
		require.NotNil(t, got.LeftOut, c.drink)
		x := got.LeftOut
		assert.True(t, got.LeftOutBest)
		assert.Equal(t, weigh.Balanced, weigh.VerdictOf(x.Score), x.Text)
		assert.True(t, r.Guest.MayHaveAll(&x.Spec), x.Text)
		base := slices.IndexFunc(x.Spec.Pours, func(p flavor.Pour) bool { return p.Profile.Base() })
		assert.InDelta(t, fullBaseML, x.Spec.Pours[base].ML, 8, "a measure within a quarter ounce: %s", x.Text)
		for _, ch := range x.Changes {
			assert.Equal(t, ch.Profile, r.Spec.Pours[ch.Pour].Profile, x.Text)
			assert.Contains(t, x.Text, ch.Profile.Name)
		}
	}
}

// Of what is out of balance and what is in balance and lies hardly further, the latter stands
// first, though the draft is one that no family holds as balanced.
func TestBalanceStandsAboveWhatIsOff(t *testing.T) {
	b := newBench(t)
	for _, drink := range []string{
		"45 ml amaretto\n22.5 ml bourbon\n30 ml lemon juice\n5 ml simple syrup\n15 ml egg white\ndry shake, rocks",
		"60 ml white rum\n25 ml lime juice\n20 ml simple syrup\nshake, up",
		"30 ml London dry gin\n30 ml red bitter aperitif\n30 ml sweet vermouth\nstir, rocks",
	} {
		spec, err := b.catalogue.ReadSpec("", drink)
		require.NoError(t, err)
		for i := range spec.Pours {
			r := b.request(t, drink, spec.Pours[i].Profile.ID, 2, 5)
			got, err := b.finder.Find(context.Background(), r)
			require.NoError(t, err)
			for k := range got.Covers[:max(0, len(got.Covers)-1)] {
				x, y := &got.Covers[k], &got.Covers[k+1]
				if weigh.VerdictOf(x.Score) == weigh.Off && !x.Custom {
					assert.False(t, weigh.VerdictOf(y.Score) == weigh.Balanced && y.Distance <= x.Distance+listing.Moderate, "%s above %s", x.Text, y.Text)
				}
			}
		}
	}
}
