package drill

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/drill/handling"
)

// Whatever the size, no way of making a drink wrong is the answer to more than half of the
// rounds: who always says the same is wrong more often than right.
func TestNoWayIsAlwaysTheAnswer(t *testing.T) {
	s := newSchool(t)
	const rounds = 30
	for _, size := range []float64{1.5, 3, StartSize, 12} {
		ways := map[handling.Way]int{}
		for seed := range uint64(rounds) {
			r, err := s.trainer.Round(RoundRequest{Kind: KindHand, Size: size, Seed: seed, Menu: seed%2 == 0})
			require.NoError(t, err)
			ways[r.key.made[r.key.option].Way]++
		}
		assert.GreaterOrEqual(t, len(ways), 3, size)
		for way, n := range ways {
			assert.LessOrEqual(t, n, rounds/2, "%v: way %v", size, way)
		}
	}
}
