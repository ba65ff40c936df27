package stock_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/webui/stock"
	"counterpour/webui/webuitest"
)

func TestPlaces(t *testing.T) {
	kept, err := webuitest.NewHouse().Stock(t.Context())
	require.NoError(t, err)
	at, ok := stock.PlacesOf(kept)
	require.True(t, ok)
	place := func(p *flavor.Profile) (float64, float64) {
		for i := range kept {
			if kept[i] == p {
				return at.X[i], at.Y[i]
			}
		}
		panic(p.Name)
	}
	far := func(a, b *flavor.Profile) float64 {
		ax, ay := place(a)
		bx, by := place(b)
		return math.Hypot(ax-bx, ay-by)
	}
	assert.Less(t, far(webuitest.Orgeat, webuitest.Almond), far(webuitest.Orgeat, webuitest.Gin), "what is alike lies near")
	gx, _ := place(webuitest.Gin)
	sx, _ := place(webuitest.Syrup)
	assert.Greater(t, gx, sx, "right is stronger")
	assert.GreaterOrEqual(t, at.Axes[0].Share, at.Axes[1].Share)
	assert.LessOrEqual(t, at.Axes[0].Share+at.Axes[1].Share, 1+1e-9)
	assert.Contains(t, at.Axes[0].More, "strong")
	var mean float64
	for i := range at.X {
		mean += at.X[i] + at.Y[i]
	}
	assert.InDelta(t, 0, mean, 1e-9, "the middle of the stock is the middle of the map")

	again, _ := stock.PlacesOf(kept)
	assert.Equal(t, at, again)
	_, ok = stock.PlacesOf(kept[:3])
	assert.False(t, ok, "too few")
	_, ok = stock.PlacesOf([]*flavor.Profile{webuitest.Clove, webuitest.Clove, webuitest.Clove, webuitest.Clove, webuitest.Clove})
	assert.False(t, ok, "all alike")
}
