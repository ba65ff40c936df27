package figure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRound(t *testing.T) {
	for _, c := range []struct {
		in     float64
		digits int
		want   float64
	}{{1.005, 1, 1}, {-0.001, 2, 0}, {59.1470591, 2, 59.15}, {14.25, 0, 14}} {
		got := Round(c.in, c.digits)
		assert.Equal(t, c.want, got)
		assert.False(t, math.Signbit(got) && got == 0)
	}
	assert.Equal(t, 69.9, RoundDown(69.96), "what is not balanced does not look balanced")
	assert.Equal(t, 100.0, RoundDown(100))
}
