package weigh_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/weigh"
)

func TestVerdicts(t *testing.T) {
	for score, want := range map[float64]weigh.Verdict{0: weigh.Off, 49.9: weigh.Off, 50: weigh.Near,
		69.9: weigh.Near, 70: weigh.Balanced, 100: weigh.Balanced} {
		assert.Equal(t, want, weigh.VerdictOf(score), "%v", score)
	}
}
