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
	r := b.request(t, bitterThird, "red bitter aperitif", 1, 3)
	require.NoError(t, r.check())
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
			task.strict = true
			task.addMoves(base)
			found, err := task.search(context.Background())
			require.NoError(t, err)
			return len(found) > 0
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

// Drawing the reach in step by step comes to the same as at once, and no amount
// within it overshoots, while the next one would.
func TestReachDrawsIn(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct{ text, missing string }{{tropical, "falernum"}, {artichoke, "artichoke amaro"}} {
		r := b.request(t, c.text, c.missing, 2, 10)
		require.NoError(t, r.check())
		task := b.task(t, &r)
		step := task.newReach()
		for _, far := range []float64{6, 3, 1.5, 0.7, 0.2, -0.1} {
			step.within(far, 2)
			once := task.newReach()
			once.within(far, 2)
			assert.Equal(t, once.alive, step.alive, "%s at %v", c.missing, far)
			for i := range task.cands {
				amounts, n := task.cands[i].amounts, once.usable[i]
				assert.Equal(t, n, step.usable[i])
				if n > 0 {
					assert.LessOrEqual(t, once.overshoot(&task.cands[i], amounts[n-1].ml), far*far)
				}
				if n < len(amounts) && far >= 0 {
					assert.Greater(t, once.overshoot(&task.cands[i], amounts[n].ml), far*far)
				}
			}
		}
		assert.Empty(t, step.alive)
	}
}

// Two covers that differ in anything are never equal in order, though they may
// have one name and one rank.
func TestOrderIsTotal(t *testing.T) {
	twin := &flavor.Profile{ID: "twin", Name: "syrup"}
	task := &task{shelf: &shelf{cands: []candidate{{profile: &flavor.Profile{ID: "one", Name: "syrup"}}, {profile: twin}}}}
	one := found{parts: []int{0}, rank: 1}
	for name, other := range map[string]found{
		"another id": {parts: []int{1}, rank: 1},
		"amount":     {parts: []int{0}, rank: 1, amounts: [MaxParts]int{1}},
		"move":       {parts: []int{0}, rank: 1, moves: []int{2}},
		"part":       {parts: []int{0, 1}, rank: 1},
		"rank":       {parts: []int{0}, rank: 2},
	} {
		assert.Negative(t, task.compare(one, other), name)
		assert.Positive(t, task.compare(other, one), name)
	}
	assert.Zero(t, task.compare(one, one))
}
