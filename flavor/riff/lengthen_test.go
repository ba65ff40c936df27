package riff

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/riff/station"
)

// What nobody serves as a riff that was not wished for: water on top of what is cold, a sweet
// soda beside the syrup, foam on crushed ice, a syrup for one liqueur of two. And a list is no
// list of bases. Common practice, no source.
func TestRiffsThatNobodyPours(t *testing.T) {
	const mostOfAKind = 6 // of ten
	b := bartest.New(t)
	for _, text := range []string{
		bartest.GinSour, bartest.AgaveDaisy, "45 ml bourbon\n22 ml lemon juice\n18 ml honey syrup\nshake, rocks",
		"1 1/2 oz aged rum\n3/4 oz lime juice\n1/2 oz orgeat\n1/2 oz orange curaçao\nshake, crushed",
		"3/4 oz gin\n3/4 oz green herbal liqueur\n3/4 oz maraschino liqueur\n3/4 oz lime juice\nshake, up",
		"2 oz gin\n3/4 oz lemon juice\n1/2 oz maraschino liqueur\n1/4 oz crème de violette\nshake, up",
	} {
		from := b.Spec(t, text)
		stock := slices.Concat(b.Usual, b.Bottles(t, "green herbal liqueur", "maraschino liqueur", "crème de violette", "orgeat", "orange curaçao", "water", "egg white", "raspberry syrup"))
		res, err := Vary(context.Background(), b.Station, Request{Spec: from, Stock: stock, Limit: 10})
		require.NoError(t, err)
		require.NotEmpty(t, res.Riffs)
		kinds := map[station.Kind]int{}
		liqueurs := func(s *flavor.Spec) (n int) {
			for i := range s.Pours {
				if s.Pours[i].Profile.Class.Kin() == flavor.KinLiqueur {
					n++
				}
			}
			return n
		}
		for i := range res.Riffs {
			r := &res.Riffs[i]
			kinds[r.Kind]++
			syrup := slices.ContainsFunc(r.Spec.Pours, func(p flavor.Pour) bool { return p.Profile.Class.Part() == flavor.PartSweetener && p.ML >= sweetensML })
			for _, p := range r.Spec.Pours {
				assert.NotEqual(t, "water", p.Profile.ID, r.Text)
				assert.False(t, syrup && p.Profile.Carbonated && p.Profile.Sugar.Value >= sweetSoda, r.Text)
				assert.False(t, p.Profile.Whitens() && r.Spec.Service == flavor.Crushed, r.Text)
			}
			if liqueurs(from) > 1 {
				assert.Greater(t, liqueurs(&r.Spec), 1, r.Text)
			}
		}
		for kind, n := range kinds {
			assert.LessOrEqual(t, n, mostOfAKind, "%s of %s", kind, text)
		}
	}
}
