package mix

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// A batch with its water holds what the iced drinks hold.
func TestBatchIsTheDrinkWithoutIce(t *testing.T) {
	m := mixer(t)
	s := specOf(t, "negroni", flavor.Stir, flavor.Up, bookDrinks[2].parts...)
	plan, err := m.Batch(s, 8)
	require.NoError(t, err)
	one, err := m.Mix(s)
	require.NoError(t, err)

	bare, err := m.WithIce(Ice{Kind: NoIce})
	require.NoError(t, err)
	bottle := plan.Bottle.Clone()
	bottle.Pours = append(bottle.Pours, pour(made(t, 0, 0, 0), plan.WaterML))
	all, err := bare.Mix(&bottle)
	require.NoError(t, err)
	assert.InDelta(t, 8*one.VolumeML, all.VolumeML, 0.05)
	assert.InDelta(t, plan.BottleML, all.VolumeML, 0.05)
	assert.InDelta(t, one.ABV, all.ABV, 0.01)
	assert.InDelta(t, plan.ABV, all.ABV, 0.01)
	assert.InDelta(t, 20.7, all.ABV, 1, "the book's negroni")
	assert.Zero(t, all.IceWaterG)
	assert.InDelta(t, plan.ServingML*8, plan.BottleML, 1e-9)
	assert.Less(t, plan.FreezingC, -5.0)
	assert.Len(t, s.Pours, 3, "the spec is not changed")
	assert.InDelta(t, 30, s.Pours[0].ML, 0)
}

func TestBatchKeepsFizzOut(t *testing.T) {
	m := mixer(t)
	soda := made(t, 0, 0, 0)
	soda.Carbonated = true
	s := specOf(t, "collins", flavor.Shake, flavor.Long, part{60, 40, 0, 0}, part{22.5, 0, 17, 49}, part{22.5, 0, 615, 0})
	s.Pours = append(s.Pours, pour(soda, 60))
	plan, err := m.Batch(s, 10)
	require.NoError(t, err)
	require.Len(t, plan.Tops, 1)
	assert.InDelta(t, 60, plan.Tops[0].ML, 0, "for one glass")
	assert.Len(t, plan.Bottle.Pours, 3)
	assert.InDelta(t, 600, plan.Bottle.Pours[0].ML, 1e-9)
	assert.InDelta(t, 600, plan.Bottle.Pours[0].Amount, 1e-9)
}

func TestBatchRefuses(t *testing.T) {
	m := mixer(t)
	soda := made(t, 0, 0, 0)
	soda.Carbonated = true
	for name, err := range map[string]error{
		"empty":       second(m.Batch(&flavor.Spec{}, 2)),
		"nothing":     second(m.Batch(specOf(t, "", flavor.Stir, flavor.Up, part{30, 40, 0, 0}), 0)),
		"all sparkle": second(m.Batch(&flavor.Spec{Pours: []flavor.Pour{pour(soda, 100)}}, 2)),
		"a lake":      second(m.Batch(specOf(t, "", flavor.Stir, flavor.Up, part{30, 40, 0, 0}), 1e9)),
	} {
		assert.ErrorIs(t, err, flavor.ErrInvalid, name)
	}
}
