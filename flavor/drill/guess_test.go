package drill

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor/sense"
)

// The rule worked by hand: at the easiest size 10 % of either, at half of it √1.1.
func TestToleranceOfAGuess(t *testing.T) {
	for _, c := range []struct{ size, share float64 }{{guessesPerStep, 0.10}, {guessesPerStep / 2, math.Sqrt(1.1) - 1}, {0, 0}} {
		assert.InDelta(t, c.share, tolerance(c.size, sense.Ethanol.Weber()), 1e-12, "size %v", c.size)
	}
	assert.InDelta(t, 2, 20*tolerance(guessesPerStep, sense.Ethanol.Weber()), 1e-9, "% vol of 20")
	assert.InDelta(t, 15, 150*tolerance(guessesPerStep, sense.Volume.Weber()), 1e-9, "mL of 150")
	assert.InDelta(t, 1, Steps(KindGuess, guessesPerStep), 1e-12)
	assert.InDelta(t, guessesPerStep, Steps(KindFault, guessesPerStep), 1e-12)
	assert.True(t, math.IsInf(sizeOf(0, 0, sense.Ethanol.Weber()), 1), "no strength to guess")
	rapid.Check(t, func(r *rapid.T) {
		size := rapid.Float64Range(MinSize, MaxSize).Draw(r, "size")
		whole := rapid.Float64Range(0.1, 500).Draw(r, "whole")
		assert.InDelta(r, size, sizeOf(whole*tolerance(size, sense.Volume.Weber()), whole, sense.Volume.Weber()), 1e-6)
		assert.Less(r, tolerance(size*0.9, sense.Volume.Weber()), tolerance(size, sense.Volume.Weber()), "a smaller size is tighter")
	})
}

// Whatever the drink: a guess just within is right, one just beyond is not, it may
// always be out by the reckoning's own spread, and a round says how hard it is.
func TestGuessRounds(t *testing.T) {
	s := newSchool(t)
	for seed := range uint64(40) {
		for _, size := range []float64{MinSize, StartSize, MaxSize} {
			r, err := s.trainer.Round(RoundRequest{Kind: KindGuess, Size: size, Seed: seed})
			require.NoError(t, err)
			d, k := r.key.classic.drink, r.key.values
			assert.GreaterOrEqual(t, k[1], d.PlusMinus.ABV)
			assert.GreaterOrEqual(t, k[3], d.PlusMinus.VolumeML)
			assert.GreaterOrEqual(t, r.Size, size-1e-9)
			assert.GreaterOrEqual(t, k[1], finestABV)
			assert.GreaterOrEqual(t, k[3], finestVolume)
			assert.LessOrEqual(t, r.Size, MaxSize)
			for i, asked := range []float64{d.ABV * tolerance(size, sense.Ethanol.Weber()), d.VolumeML * tolerance(size, sense.Volume.Weber())} {
				grain, finest := []float64{grainABV, grainVolume}[i], max([]float64{finestABV, finestVolume}[i], []float64{d.PlusMinus.ABV, d.PlusMinus.VolumeML}[i])
				assert.Less(t, k[2*i+1], max(asked, finest)+grain, "as tight as it was asked for, but for the grain")
				assert.InDelta(t, math.Round(k[2*i+1]/grain), k[2*i+1]/grain, 1e-9, "told in what a hand can tell")
			}
			for _, out := range []float64{-1, 1} {
				g, err := s.trainer.Grade(r, Answer{ABV: max(0, k[0]+out*0.99*k[1]), Volume: k[2] + out*0.99*k[3]})
				require.NoError(t, err)
				assert.True(t, g.Right, "%+v: %s", r.Request, r.Question)
			}
			g, err := s.trainer.Grade(r, Answer{ABV: k[0], Volume: k[2] + 1.01*k[3]})
			require.NoError(t, err)
			assert.False(t, g.Right)
			assert.InDelta(t, 0.5, g.Points, 1e-9)
		}
	}
}
