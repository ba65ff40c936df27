package draft

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor/measure"
)

// What FormatAmount writes is read back within its own rounding.
func TestAmountsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(measure.Units()).Draw(t, "unit")
		amount := rapid.Float64Range(0.01, min(99, measure.MostOf(u))).Draw(t, "amount")
		written := measure.FormatAmount(amount, u)
		got, unit, ok := ParseAmount(written)
		if !ok || unit != u || math.Abs(got-amount) > 0.0051 {
			t.Fatalf("%v %s is written %q and read as %v %s", amount, u, written, got, unit)
		}
	})
}

func TestParseAmount(t *testing.T) {
	for written, want := range map[string]float64{"2 oz": 2, "22,5 ml": 22.5, "1 1/2": 1.5, "¾": 0.75, "2": 2, "3 dashes": 3, "top": 1} {
		got, _, ok := ParseAmount(written)
		assert.True(t, ok && got == want, written)
	}
	for _, written := range []string{"", "gin", "2 oz gin", "2 oz\n1 oz", "# 2", "half a lime squeezed", "2 oz, 1 oz"} {
		_, _, ok := ParseAmount(written)
		assert.False(t, ok, written)
	}
}
