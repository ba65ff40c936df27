package training_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterpour/api/service/coaching"
	"counterpour/data/house"
	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
)

var evening = time.Date(2026, 3, 1, 18, 0, 0, 0, time.UTC)

// playRound notes a round of a skill, right or wrong.
func playRound(t *testing.T, l *coaching.Learners, who coaching.Trainee, skill drill.Skill, seed uint64, right bool, at time.Time) {
	t.Helper()
	axis, _ := ratio.ParseAxis(skill.Axis)
	r := &drill.Round{Request: drill.RoundRequest{Kind: skill.Kind, Axis: axis, Size: 6, Seed: seed}, Size: 1 + float64(seed%9), Question: "What?"}
	g := &drill.Grade{Right: right, Solution: "that"}
	if right {
		g.Points = 1
	}
	require.NoError(t, l.Note(t.Context(), who, house.By{Actor: "bar", At: at}, r, g, "this"))
}
