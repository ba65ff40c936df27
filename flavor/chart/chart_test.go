package chart

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
)

func TestChart(t *testing.T) {
	stock := bartest.New(t).Usual
	at, ok := Of(stock)
	require.True(t, ok)
	require.Len(t, at.X, len(stock))
	index := func(is func(p *flavor.Profile) bool) int {
		for i, p := range stock {
			if is(p) {
				return i
			}
		}
		panic("the bar keeps none")
	}
	gin := index(func(p *flavor.Profile) bool { return p.Class == flavor.ClassGin })
	other := index(func(p *flavor.Profile) bool {
		return p.Class == flavor.ClassGin && p != stock[gin] || p.Class == flavor.ClassVodka
	})
	syrup := index(func(p *flavor.Profile) bool { return p.Class == flavor.ClassSyrup })
	far := func(a, b int) float64 { return math.Hypot(at.X[a]-at.X[b], at.Y[a]-at.Y[b]) }
	assert.Less(t, far(gin, other), far(gin, syrup), "what is alike lies near")
	assert.Greater(t, at.X[gin], at.X[syrup], "right is stronger")
	assert.GreaterOrEqual(t, at.Axes[0].Share, at.Axes[1].Share)
	assert.LessOrEqual(t, at.Axes[0].Share+at.Axes[1].Share, 1+1e-9)
	assert.Contains(t, at.Axes[0].More, "strong")
	var mean float64
	for i := range at.X {
		mean += at.X[i] + at.Y[i]
	}
	assert.InDelta(t, 0, mean, 1e-9, "the middle of the stock is the middle of the map")

	again, _ := Of(stock)
	assert.Equal(t, at, again)
	_, ok = Of(stock[:leastPlaces-1])
	assert.False(t, ok, "too few")
	one := stock[0]
	_, ok = Of([]*flavor.Profile{one, one, one, one, one})
	assert.False(t, ok, "all alike")
}
