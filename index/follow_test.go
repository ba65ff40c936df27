package index

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// What follows an index finds what a new one would.
func TestFollowEqualsANewIndex(t *testing.T) {
	ctx := context.Background()
	rapid.Check(t, func(t *rapid.T) {
		x, err := New(shelf())
		require.NoError(t, err)
		defer x.Close()
		opened := rapid.IntRange(0, 3).Draw(t, "opened") // before which step
		now := shelf()
		for i := range now {
			now[i] = x.profiles[slices.IndexFunc(x.profiles, func(p *flavor.Profile) bool { return p.ID == now[i].ID })]
		}
		for step := range rapid.IntRange(1, 6).Draw(t, "steps") {
			if step == opened {
				require.NoError(t, x.Open(ctx, nil))
			}
			now = slices.Clone(now)
			switch at := rapid.IntRange(0, len(now)-1).Draw(t, "at"); rapid.IntRange(0, 2).Draw(t, "what") {
			case 0:
				now = append(now, known(fmt.Sprintf("house-syrup-%d", step), fmt.Sprintf("house syrup %d", step), flavor.ClassSyrup))
			case 1:
				if len(now) > 1 {
					now = slices.Delete(now, at, at+1)
				}
			default:
				p := *now[at]
				p.Aliases = append(slices.Clone(p.Aliases), fmt.Sprintf("dock bottle %d", step))
				p.AllergensKnown = !p.AllergensKnown
				p.ABV.Value /= 2
				now[at] = &p
			}
			if x, err = x.Follow(ctx, now, nil); err != nil {
				t.Fatal(err)
			}
		}
		fresh, err := Build(ctx, now, nil)
		require.NoError(t, err)
		defer fresh.Close()
		most := 30.0
		for _, q := range []lookup.Query{{}, {ABVMax: &most}, {Avoid: []flavor.Allergen{flavor.Milk}}, {Text: "dock"}, {Text: "house syrup"}, {Class: flavor.ClassSyrup}} {
			q.Limit = 100
			got, err := x.Search(ctx, q)
			require.NoError(t, err)
			want, err := fresh.Search(ctx, q)
			require.NoError(t, err)
			assert.ElementsMatch(t, want.Hits, withScores(got.Hits, want.Hits), "%+v", q)
			assert.Equal(t, want.Total, got.Total)
			assert.Equal(t, want.Classes, got.Classes)
		}
		got, _, err := x.Candidates(ctx, lookup.Need{Avoid: []flavor.Allergen{flavor.Milk}})
		require.NoError(t, err)
		want, _, err := fresh.Candidates(ctx, lookup.Need{Avoid: []flavor.Allergen{flavor.Milk}})
		require.NoError(t, err)
		assert.Equal(t, want, got)
	})
}

// withScores gives hits the scores of others of the same id: those of a text
// depend on how many documents were ever written.
func withScores(hits, others []lookup.Hit) []lookup.Hit {
	out := slices.Clone(hits)
	for i := range out {
		if at := slices.IndexFunc(others, func(o lookup.Hit) bool { return o.Profile == out[i].Profile }); at >= 0 {
			out[i].Score = others[at].Score
		}
	}
	return out
}

// The former index goes on answering for its own profiles.
func TestPreviousIndexStillAnswers(t *testing.T) {
	ctx := t.Context()
	profiles := shelf()
	x := build(t, profiles)
	more := append(slices.Clone(profiles), known("dock-gin", "Dock gin", flavor.ClassGin))
	next, err := x.Follow(ctx, more[1:], nil) // one gone, one new
	require.NoError(t, err)
	_, there := x.Profile("dock-gin")
	assert.False(t, there)
	_, there = next.Profile("dock-gin")
	assert.True(t, there)
	r, err := x.Search(ctx, lookup.Query{Text: "dock gin", Limit: 10})
	require.NoError(t, err)
	for _, h := range r.Hits {
		assert.NotEqual(t, "dock-gin", h.Profile.ID)
	}
	all, _, err := x.Candidates(ctx, lookup.Need{})
	require.NoError(t, err)
	assert.Subset(t, profiles, all)
	require.NoError(t, next.Close())
	_, err = x.Search(ctx, lookup.Query{Text: "gin"})
	assert.ErrorIs(t, err, lookup.ErrClosed)
	_, err = next.Follow(ctx, profiles, nil)
	assert.ErrorIs(t, err, lookup.ErrClosed)
}
