package service

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
)

// The graded answers to "name the fault" match the ranges: every axis outside its range
// is right, and no other.
func TestRangesMatchTheGradedAnswers(t *testing.T) {
	k := testKitchen(t)
	trainer, err := (&Snapshot{Kitchen: k, Stock: k.Catalogue.Profiles()}).newCoach()()
	require.NoError(t, err)
	rounds, double := 0, 0
	for seed := range uint64(6) {
		for _, a := range ratio.Axes() {
			for _, size := range []float64{1.5, 6} {
				r, err := trainer.Round(drill.RoundRequest{Kind: drill.KindFault, Axis: a, Size: size, Seed: seed})
				require.NoError(t, err)
				judged, err := k.Judge.Score(&r.Specs[0])
				require.NoError(t, err)
				ranges, ok := k.Ranges(&r.Specs[0], judged.Judgement.Fits[0].ID)
				require.True(t, ok)
				right := 0
				for _, b := range ratio.Axes() {
					ml := judged.Judgement.Equivalents[b]
					for _, high := range []bool{false, true} {
						shown := high && ml > ranges[b].High || !high && ranges[b].Has && ml < ranges[b].Low
						g, err := trainer.Grade(r, drill.Answer{Axis: b, High: high})
						require.NoError(t, err)
						assert.Equal(t, shown, g.Right, "%s: seed %d, %v asked: %v high %v; key %s", r.Question, seed, a, b, high, g.Solution)
						if g.Right {
							right++
						}
					}
				}
				assert.Positive(t, right)
				rounds++
				if right > 1 {
					double++
				}
			}
		}
	}
	t.Logf("%d of %d rounds have two right answers or more", double, rounds)
}
