package drill

import (
	"encoding/json"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A learner is plain data: it goes to JSON and back, is never changed, and after
// a season of rounds the lead is told what is weak.
func TestLearnerOverASeason(t *testing.T) {
	if testing.Short() {
		t.Skip("a season is long")
	}
	s := newSchool(t)
	day := time.Date(2024, 3, 1, 15, 0, 0, 0, time.UTC)
	rng := rand.New(rand.NewPCG(3, 3))
	l := Learner{Name: "Ada"}
	for i := range 120 {
		before, err := json.Marshal(l)
		require.NoError(t, err)
		req := l.Next(day, uint64(i))
		r, err := s.trainer.Round(req)
		require.NoError(t, err, "%+v", req)
		a := rightAnswer(r)
		weak := req.Kind == KindFault && req.Axis == 3 // bitter
		if weak || rng.Float64() < 0.1 {
			a = wrongAnswer(r)
		}
		g, err := s.trainer.Grade(r, a)
		require.NoError(t, err)
		next, err := l.After(OutcomeOf(r, g, day))
		require.NoError(t, err)
		after, err := json.Marshal(l)
		require.NoError(t, err)
		require.JSONEq(t, string(before), string(after), "the old one is as it was")
		l = next
		if i%6 == 5 {
			day = day.AddDate(0, 0, 1)
		}
	}
	assert.Len(t, l.Skills, len(Skills()), "everything has been tried")
	raw, err := json.Marshal(l)
	require.NoError(t, err)
	var back Learner
	require.NoError(t, json.Unmarshal(raw, &back))
	again, err := json.Marshal(back)
	require.NoError(t, err)
	assert.JSONEq(t, string(raw), string(again))

	needs := Needs([]Learner{l, {Name: "Ben"}}, day)
	require.NotEmpty(t, needs)
	var ada []Need
	for i, n := range needs {
		if i > 0 {
			assert.LessOrEqual(t, n.Urgency, needs[i-1].Urgency)
		}
		assert.NotEmpty(t, n.Text)
		if n.Learner == "Ada" {
			ada = append(ada, n)
		}
	}
	require.NotEmpty(t, ada)
	assert.Equal(t, KindFault, ada[0].Kind)
	assert.Equal(t, "bitter", ada[0].Axis)
	assert.Len(t, needs, len(ada)+len(Skills()), "Ben has everything before him")
}

// Whoever misses every round of a kind needs it, whichever kind it is.
func TestWhatIsAlwaysMissedIsNeeded(t *testing.T) {
	at := time.Date(2026, 4, 1, 12, 0, 0, 0, time.UTC)
	for _, s := range Skills() {
		l := Learner{Name: "Ada"}
		for range 8 {
			var err error
			l, err = l.After(Outcome{Kind: s.Kind, Axis: s.Axis, Size: l.sizeOf(&s), Quality: 1, At: at})
			require.NoError(t, err)
		}
		needs := Needs([]Learner{l}, at)
		require.NotEmpty(t, needs)
		assert.True(t, needs[0].Kind == s.Kind && needs[0].Axis == s.Axis, "%s %s: %+v comes first", s.Kind, s.Axis, needs[0])
		assert.Greater(t, needs[0].Urgency, 1.0, "more urgent than what was never tried")
	}
}

// sizeOf is the size of the next round of a skill.
func (l Learner) sizeOf(of *Skill) float64 {
	for _, s := range l.Skills {
		if s.same(of) {
			return s.Stairs.Next()
		}
	}
	return StartSize
}

// Whatever has been learnt, no kind comes twice in a row where one is left out.
func TestNoKindTwiceInARow(t *testing.T) {
	now := time.Date(2026, 4, 1, 12, 0, 0, 0, time.UTC)
	for _, l := range []Learner{{}, {Skills: Skills()}, {Skills: Skills()[:1]}} {
		last := l.Next(now, 1).Kind
		for range 5 {
			next := l.NextBut(last, now, 1).Kind
			assert.NotEqual(t, last, next)
			last = next
		}
	}
}
