package coaching

import (
	"math/rand/v2"
	"testing"
	"time"

	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is due or new comes before the rest.
func TestSkillsToTry(t *testing.T) {
	now := time.Date(2026, 1, 2, 0, 0, 0, 0, time.UTC)
	l := drill.Learner{Skills: []drill.Skill{{Kind: drill.KindOrder, Axis: "sweet", Rounds: 1, Repeat: drill.Repeat{Due: now.Add(time.Hour)}}}}
	rng := rand.New(rand.NewPCG(1, 2))
	for range 10 {
		got := skillsToTry(l, drill.KindOrder, now, rng)
		require.Len(t, got, 2)
		assert.Equal(t, "strong", got[0].Axis)
		assert.Equal(t, 1, got[1].Rounds)
	}
	assert.Len(t, skillsToTry(l, drill.KindFault, now, rng), ratio.NumAxes)
}
