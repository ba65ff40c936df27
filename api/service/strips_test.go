package service

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// No strip shows a drink out of a family in which its ratio scores as balanced: the
// edges that are drawn are those of the score. Every proven drink is tried as it is
// and with each pour changed.
func TestStripsHaveTheEdgesOfTheScore(t *testing.T) {
	k := kitchen(t)
	outside := 0
	for i := range k.Proven {
		for at := range k.Proven[i].Spec.Pours {
			for _, times := range []float64{1, 0.5, 2} {
				s := k.Proven[i].Spec.Clone()
				s.Pours[at].ML *= times
				s.Pours[at].Amount *= times
				judged, err := k.Judge.Score(&s)
				if err != nil {
					continue // too much to be weighed, or nothing left
				}
				best := &judged.Judgement.Fits[0]
				ranges, ok := k.Ranges(&s, best.ID)
				require.True(t, ok, s.Name)
				for _, a := range ratio.Axes() {
					ml := judged.Judgement.Equivalents[a]
					if ml > ranges[a].High || ranges[a].Has && ml < ranges[a].Low {
						outside++
						assert.Less(t, best.Score, weigh.BalancedFrom, "%s, pour %d times %v: %v is out of its range", s.Name, at, times, a)
					}
				}
			}
		}
	}
	assert.Greater(t, outside, 100, "some of them are spoilt")
}

// What an answer to "name the fault" earns is what the strips of that drink show:
// every axis out of its range is right, and no other is.
func TestStripsShowWhatTheKeySays(t *testing.T) {
	k := kitchen(t)
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
