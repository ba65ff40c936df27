package lookahead

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
)

// house is a finder, and the menu and the stock of the demo house.
func house(t *testing.T) (*cover.Finder, []*flavor.Spec, []*flavor.Profile) {
	t.Helper()
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	c := d.Catalogue
	customs, err := c.Customs()
	require.NoError(t, err)
	demo, err := c.Demo()
	require.NoError(t, err)
	specs := make([]*flavor.Spec, len(demo.Specs))
	for i := range demo.Specs {
		specs[i] = &demo.Specs[i].Spec
	}
	judge := balance.NewJudge(d.Mixer, d.Set, balance.Pantry{})
	return cover.NewFinder(d.Mixer, judge, c.Space(), customs, cover.DefaultWeights()), specs, demo.Stock
}

func TestOf(t *testing.T) {
	f, specs, stock := house(t)
	ahead, err := Of(context.Background(), f, specs[:6], stock, nil, 0)
	require.NoError(t, err)
	for i, w := range ahead.Weak {
		assert.NotEmpty(t, w.Drinks)
		if i > 0 {
			assert.GreaterOrEqual(t, len(ahead.Weak[i-1].Drinks), len(w.Drinks))
		}
	}
	assert.Empty(t, ahead.Left)
	assert.Empty(t, ahead.Buy, "no market was named")
	// With nothing else in stock every bottle is weak.
	ahead, err = Of(context.Background(), f, specs[:2], nil, nil, 0)
	require.NoError(t, err)
	assert.Len(t, ahead.Weak, len(bottlesOf(specs[:2])))
}

// What is bought closes the gaps that it says it does, and nothing in stock is bought.
func TestWhatToBuy(t *testing.T) {
	f, specs, stock := house(t)
	const kept = 12 // of the shelf: enough gaps, and enough to buy
	ahead, err := Of(context.Background(), f, specs[:4], stock[:kept], stock, 0)
	require.NoError(t, err)
	require.NotEmpty(t, ahead.Buy)
	weak := map[string][]string{}
	for _, w := range ahead.Weak {
		weak[w.Profile.ID] = w.Drinks
	}
	for i, b := range ahead.Buy {
		assert.NotContains(t, stock[:kept], b.Profile)
		if i > 0 {
			assert.GreaterOrEqual(t, len(ahead.Buy[i-1].Closes), len(b.Closes))
		}
		for _, gap := range b.Closes {
			assert.Contains(t, weak[gap.Without.ID], gap.Drink)
		}
	}
	first := ahead.Buy[0]
	with, err := Of(context.Background(), f, specs[:4], append(stock[:kept:kept], first.Profile), nil, 0)
	require.NoError(t, err)
	for _, w := range with.Weak {
		for _, gap := range first.Closes {
			if gap.Without.ID == w.Profile.ID {
				assert.NotContains(t, w.Drinks, gap.Drink, "%s covers %s", first.Profile.Name, gap.Without.Name)
			}
		}
	}
}

// Once the time is over, nothing is said of what was not looked at.
func TestOfOutOfTime(t *testing.T) {
	f, specs, stock := house(t)
	over, cancel := context.WithDeadline(context.Background(), time.Now())
	defer cancel()
	ahead, err := Of(over, f, specs[:2], stock, stock, 0)
	require.NoError(t, err)
	assert.Empty(t, ahead.Weak)
	assert.Empty(t, ahead.Buy)
	assert.Equal(t, bottlesOf(specs[:2]), ahead.Left)
}
