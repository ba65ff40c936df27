package cover

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

// Nothing is listed that is another drink: what lies beyond the last step, or has lost
// half of the score, unless the trade pours it. A spirit without alcohol is poured for
// no guest who drinks.
func TestNothingFarIsListed(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(rt *rapid.T) {
		r := b.drawRequest(rt)
		r.Parts = 1
		r.Guest = Guest{}
		result, err := b.finder.Find(context.Background(), r)
		require.NoError(rt, err)
		for _, c := range result.Covers {
			one := len(c.Parts) == 1 && c.Parts[0].Profile.Class.Kin() == flavor.KinSpirit
			most := LastJND
			if c.Custom || one {
				most = LastKnownJND
			}
			assert.LessOrEqual(rt, c.Distance, most, c.Text)
			if !c.Custom {
				assert.GreaterOrEqual(rt, c.Score, leastWorth*result.ScoreBefore, c.Text)
			}
		}
	})
}

// Common practice, no source: what comes first when several things are out, or the base.
func TestSeveralMissingAreSolvedOneByOne(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		text    string
		missing []string
		stock   []string
		want    []string // of one of the first three covers
	}{
		{"2 oz bourbon\n1/4 oz demerara syrup\n2 dashes aromatic bitters\nstir, rocks",
			[]string{"bourbon", "demerara-syrup", "aromatic-bitters"},
			[]string{"rye-whiskey", "simple-syrup", "anise-bitters", "medium-amaro", "aged-rum"},
			[]string{"rye-whiskey", "simple-syrup", "anise-bitters"}},
		{"2 oz London dry gin\n3/4 oz lemon juice\n1/2 oz honey syrup\nshake, up",
			[]string{"london-dry-gin"},
			[]string{"vodka", "honey-herb-liqueur", "alcohol-free-juniper", "green-herbal-liqueur"},
			[]string{"vodka"}},
	} {
		r := Request{Spec: b.menu(t, c.text)[0], Missing: b.profiles(t, c.missing...), Candidates: b.profiles(t, c.stock...), Limit: 3}
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		var lists [][]string
		for _, x := range got.Covers {
			var ids []string
			for _, p := range x.Parts {
				assert.NotEqual(t, flavor.ClassAlcoholFree, p.Profile.Class, x.Text)
				ids = append(ids, p.Profile.ID)
			}
			lists = append(lists, ids)
		}
		assert.Contains(t, lists, c.want)
	}
}
