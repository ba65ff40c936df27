package station_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/bartest"
	"counterpour/flavor"
)

func TestApartIsADistance(t *testing.T) {
	b := bartest.New(t)
	a, c, d := b.Spec(t, bartest.GinSour), b.Spec(t, bartest.BitterThird), b.Spec(t, bartest.Collins)
	dist := func(x, y *flavor.Spec) float64 { return b.Apart(t, x, y) }
	assert.Zero(t, dist(a, a))
	assert.InDelta(t, dist(a, c), dist(c, a), bartest.Rounding)
	assert.LessOrEqual(t, dist(a, d), dist(a, c)+dist(c, d))
	// One Weber fraction of sugar in a sweet drink is about one difference.
	more := b.Spec(t, "2 oz London dry gin\n3/4 oz lemon juice\n0.8625 oz simple syrup\nshake, up")
	assert.InDelta(t, 1, dist(a, more), 0.35)
}
