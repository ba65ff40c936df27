package flavor

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A drink costs what its pours do; what comes from the tap is free unless it is priced,
// and what has no price is named once.
func TestCost(t *testing.T) {
	pour := func(id string, c Class, ml float64) Pour {
		return Pour{Profile: &Profile{ID: id, Class: c}, ML: ml}
	}
	s := &Spec{Pours: []Pour{pour("rye", ClassWhiskey, 60), pour("syrup", ClassSyrup, 10), pour("syrup", ClassSyrup, 5), pour("water", ClassWater, 30), {ML: 5}}}
	const cent = 0.005 // half of the smallest coin
	for _, c := range []struct {
		name     string
		prices   map[string]float64
		sum      float64
		unpriced []string
	}{
		{"all priced", map[string]float64{"rye": 0.05, "syrup": 0.01}, 3.15, nil},
		{"water that is bought", map[string]float64{"rye": 0.05, "syrup": 0.01, "water": 0.001}, 3.18, nil},
		{"a syrup without", map[string]float64{"rye": 0.05}, 3, []string{"syrup"}},
		{"nothing priced", nil, 0, []string{"rye", "syrup"}},
	} {
		sum, unpriced := s.Cost(c.prices)
		assert.InDelta(t, c.sum, sum, cent, c.name)
		var ids []string
		for _, p := range unpriced {
			ids = append(ids, p.ID)
		}
		assert.Equal(t, c.unpriced, ids, c.name)
	}
}
