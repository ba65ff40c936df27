package cover

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/balance"
)

// The base moves only where nothing else keeps the balance, and balance is given
// up only where moving the base does not keep it either.
func TestBaseMovesBeforeBalanceIsGivenUp(t *testing.T) {
	b := newBench(t)
	r := b.request(t, "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", "lemon juice", 1, 3)
	require.NoError(t, r.Check())
	counts := map[string]int{}
	for _, p := range b.catalogue.Profiles() {
		r.Candidates = []*flavor.Profile{p}
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		if len(got.Covers) == 0 {
			continue
		}
		keeps := func(base bool) bool {
			task := b.task(t, &r)
			task.Strict = true
			task.AddMoves(base)
			ideas, proven, err := task.Ideas(context.Background())
			require.NoError(t, err)
			require.True(t, proven)
			return len(ideas) > 0
		}
		moved := slices.ContainsFunc(got.Covers[0].Changes, func(c balance.Change) bool { return c.Profile.Class.Part() == flavor.PartBase })
		switch {
		case got.Unbalanced:
			counts["unbalanced"]++
			assert.False(t, keeps(true), p.Name)
			assert.False(t, moved, p.Name)
		case moved:
			counts["base moved"]++
			assert.False(t, keeps(false), p.Name)
		default:
			counts["base kept"]++
			assert.True(t, keeps(false), p.Name)
		}
	}
	assert.Positive(t, counts["unbalanced"])
	assert.Positive(t, counts["base moved"])
	assert.Positive(t, counts["base kept"])
}
