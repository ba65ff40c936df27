package makeup

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// falloffTolerance is the relative error that rounding a number of up to 40 leaves in its
// exponential, and a little of the series.
const falloffTolerance = 2e-14

func TestFalloffIsTheExponential(t *testing.T) {
	for _, x := range []float64{0, 1e-300, 0.25, 1, mostFalloff - 1e-9, mostFalloff, 800, -1, math.Inf(1)} {
		assert.InEpsilon(t, 1+math.Exp(-x), 1+Falloff(x), falloffTolerance, "%g", x)
	}
	assert.True(t, math.IsNaN(Falloff(math.NaN())))
	assert.True(t, math.IsInf(Falloff(math.Inf(-1)), 1))
	assert.Equal(t, 1.0, Falloff(0), "what is alike is alike to the last bit")
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(0, mostFalloff).Draw(t, "x")
		assert.InEpsilon(t, math.Exp(-x), Falloff(x), falloffTolerance)
	})
}
