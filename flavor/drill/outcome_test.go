package drill

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor/drill/pace"
)

// anyOutcome draws an outcome of something that is trained.
func anyOutcome(r *rapid.T, at time.Time) Outcome {
	skill := rapid.SampledFrom(Skills()).Draw(r, "skill")
	return Outcome{Kind: skill.Kind, Axis: skill.Axis, Size: rapid.Float64Range(0.1, 20).Draw(r, "size"), Right: rapid.Bool().Draw(r, "right"),
		Quality: rapid.IntRange(0, pace.BestQuality).Draw(r, "quality"), At: at}
}

// A learner made again of all outcomes, in whatever order they are found, is the
// one who was followed round by round.
func TestReplayIsTheSameLearner(t *testing.T) {
	start := time.Date(2026, 3, 1, 18, 0, 0, 0, time.UTC)
	rapid.Check(t, func(r *rapid.T) {
		l := Learner{Name: "Ada"}
		at := start
		var outcomes []Outcome
		for range rapid.IntRange(0, 60).Draw(r, "rounds") {
			at = at.Add(time.Duration(rapid.IntRange(1, 200000).Draw(r, "seconds")) * time.Second)
			x := anyOutcome(r, at)
			outcomes = append(outcomes, x)
			var err error
			l, err = l.After(x)
			require.NoError(r, err)
		}
		assert.Equal(r, l, Replay("Ada", outcomes))
		shuffled := rapid.Permutation(outcomes).Draw(r, "found")
		assert.Equal(r, l, Replay("Ada", shuffled))
	})
}

// What is of one moment stays in the order given, and what is not trained here is
// passed over.
func TestReplayPassesOverWhatIsNotTrained(t *testing.T) {
	at := time.Date(2026, 3, 1, 18, 0, 0, 0, time.UTC)
	good := []Outcome{{Kind: KindFamily, Size: 6, Right: true, Quality: 5, At: at}, {Kind: KindFamily, Size: 6, Quality: 1, At: at}}
	want := Replay("Ada", good)
	assert.Equal(t, 2, want.Skills[0].Rounds)
	assert.Equal(t, 1, want.Skills[0].Stairs.Direction, "the wrong one came last")
	odd := append(good, Outcome{Kind: "darts", At: at}, Outcome{Kind: KindFault, Axis: "loud", At: at}, Outcome{Kind: KindGuess, Quality: 9, At: at})
	assert.Equal(t, want, Replay("Ada", odd))
	for _, r := range odd[2:] {
		_, err := want.After(r)
		assert.Error(t, err)
	}
}

// What is kept of a round is what its grade said.
func TestOutcomeOf(t *testing.T) {
	at := time.Date(2026, 3, 1, 18, 0, 0, 0, time.UTC)
	r := &Round{Request: RoundRequest{Kind: KindGuess, Axis: 2, Size: 3}, Size: 4.2}
	assert.Equal(t, Outcome{Kind: KindGuess, Size: 4.2, Right: true, Quality: 4, At: at}, OutcomeOf(r, &Grade{Right: true, Points: 0.8}, at))
	r.Request.Kind = KindMend
	assert.Equal(t, Outcome{Kind: KindMend, Axis: "sour", Size: 4.2, Quality: 2, At: at}, OutcomeOf(r, &Grade{Points: 0.5}, at))
}
