package slip

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// The slips of one sour, worked by hand: twice or half of each, other marks of the jigger
// down to a third and up to twice, a dash too many or too few, four times as many, any of them
// forgotten, and amounts within three times of each other swapped.
func TestSlipsOfASour(t *testing.T) {
	bar := bartest.New(t)
	pour := func(name string, amount float64, u flavor.Unit) flavor.Pour {
		p := bar.Bottle(t, name)
		ml, err := measure.ToML(amount, u, p)
		require.NoError(t, err)
		return flavor.Pour{Profile: p, Amount: amount, Unit: u, ML: ml}
	}
	for _, c := range []struct {
		pour flavor.Pour
		want []float64
	}{
		{pour("lemon juice", 0.75, flavor.Ounce), []float64{0.25, 0.5, 1, 1.5}},
		{pour("lemon juice", 22.5, flavor.Millilitre), []float64{7.5, 10, 15, 20, 25, 30, 35, 40, 45}},
		{pour("London dry gin", 2, flavor.Ounce), []float64{0.75, 1, 1.5, 4}},
		{pour("aromatic bitters", 2, flavor.Dash), []float64{1, 3, 4, 8}},
		{pour("soda water", 4, flavor.Ounce), []float64{2, 2.75, 6, 8}},
		{pour("soda water", 1, flavor.Top), nil},
	} {
		var got []float64
		for _, x := range amountsBySlip(&c.pour) {
			got = append(got, x.amount)
		}
		slices.Sort(got)
		assert.InDeltaSlice(t, c.want, got, 1e-9, "%s", c.pour.Profile.Name)
	}
	lemon, syrup, gin := pour("lemon juice", 0.75, flavor.Ounce), pour("simple syrup", 0.5, flavor.Ounce), pour("London dry gin", 2, flavor.Ounce)
	assert.True(t, swappable(&lemon, &syrup))
	assert.True(t, swappable(&gin, &lemon))
	assert.False(t, swappable(&gin, &syrup), "nobody takes four times as much for the other")
}
