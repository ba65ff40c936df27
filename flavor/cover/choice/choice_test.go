package choice_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor/cover/choice"
)

// price is what a choice costs: its ways, and all that it needs at hand.
func price(ways [][]choice.Way, of []int) float64 {
	var sum float64
	open := map[string]bool{}
	for i, k := range of {
		if k < 0 {
			continue
		}
		sum += ways[i][k].Cost
		for _, id := range ways[i][k].Needs {
			open[id] = true
		}
	}
	return sum + choice.OpenCost*float64(len(open))
}

// No drink alone can be served cheaper given the rest, nothing costs more than the first
// way of each drink does, and what is spared pays for what is given.
func TestTogether(t *testing.T) {
	const rounding = 1e-9
	drawWay := rapid.Custom(func(rt *rapid.T) choice.Way {
		return choice.Way{Needs: rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"a", "b", "c", "d"}), 1, 2, rapid.ID[string]).Draw(rt, "needs"),
			Cost: float64(rapid.IntRange(0, 40).Draw(rt, "cost")) / 8}
	})
	rapid.Check(t, func(rt *rapid.T) {
		ways := rapid.SliceOfN(rapid.SliceOfN(drawWay, 0, 3), 0, 5).Draw(rt, "ways")
		got := choice.Together(ways)
		first := make([]int, len(ways))
		for i := range ways {
			first[i] = min(0, len(ways[i])-1)
		}
		total := price(ways, got.Of)
		assert.LessOrEqual(rt, total, price(ways, first)+rounding)
		assert.LessOrEqual(rt, got.Given, choice.OpenCost*float64(got.Spared)+rounding)
		for i := range ways {
			was := got.Of[i]
			assert.Equal(rt, len(ways[i]) == 0, was < 0)
			for k := range ways[i] {
				got.Of[i] = k
				assert.GreaterOrEqual(rt, price(ways, got.Of), total-rounding)
			}
			got.Of[i] = was
		}
	})
}

// Two drinks share a bottle that is neither's first where it is worth it.
func TestTogetherShares(t *testing.T) {
	way := func(cost float64, needs ...string) choice.Way { return choice.Way{Needs: needs, Cost: cost} }
	got := choice.Together([][]choice.Way{{way(1, "rye"), way(1.2, "cognac")}, {way(1, "rum"), way(1.2, "cognac")}, nil})
	assert.Equal(t, []int{1, 1, -1}, got.Of)
	assert.Equal(t, 1, got.Spared)
	const rounding = 1e-9
	assert.InDelta(t, 0.4, got.Given, rounding)
}
