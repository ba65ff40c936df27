package pace

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

// taster is a simulated learner: the probability of a right answer is a Weibull
// function of the size.
type taster struct{ scale, slope, guess float64 }

func (w taster) right(size float64) float64 {
	return w.guess + (1-w.guess)*(1-math.Exp(-math.Pow(size/w.scale, w.slope)))
}

// threshold is the size at which the taster is right with probability p.
func (w taster) threshold(p float64) float64 {
	return w.scale * math.Pow(-math.Log((1-p)/(1-w.guess)), 1/w.slope)
}

// Kaernbach 1991: a weighted staircase settles on the probability that its steps are made
// for. Over many simulated learners the mean threshold must lie within 8 % of the true one:
// the sizes move by 19 % up and 7 % down, so that is less than half a step up.
func TestStaircaseFindsTheThreshold(t *testing.T) {
	const runs, trials, tolerance = 400, 150, 0.08
	for _, w := range []taster{{3, 2.5, 0.1}, {2, 3.5, 0}, {4, 3, 0.25}, {1.5, 2, 0.1}} {
		rng := rand.New(rand.NewPCG(41, uint64(100*w.scale)))
		want := w.threshold(StaircaseTarget)
		var mean, square float64
		for range runs {
			var s Staircase
			for range trials {
				s = s.After(rng.Float64() < w.right(s.Next()))
			}
			got, spread, ok := s.Threshold()
			require.True(t, ok)
			assert.Less(t, spread, 0.3)
			l := math.Log(got / want)
			mean += l / runs
			square += l * l / runs
		}
		assert.InDelta(t, 0, mean, tolerance, "taster %+v", w)
		assert.Less(t, math.Sqrt(square-mean*mean), 0.25, "one learner's estimate is within a quarter or so")
	}
}

// Worked by hand from the rule: up by √2, down by √2 to the 0.4142, until the fourth turn;
// every wrong answer makes the next round easier and every right one harder, than was dealt
// and than was asked for, but for the ends.
func TestStaircaseMoves(t *testing.T) {
	var s Staircase
	assert.InDelta(t, StartSize, s.Next(), 1e-12)
	sizes := []float64{}
	for _, right := range []bool{true, true, false, true} {
		s = s.After(right)
		sizes = append(sizes, s.Size)
	}
	r, down := math.Sqrt2, math.Pow(math.Sqrt2, -(math.Sqrt2-1))
	assert.InDeltaSlice(t, []float64{6 * down, 6 * down * down, 6 * down * down * r, 6 * math.Pow(down, 3) * r}, sizes, 1e-9)
	assert.Equal(t, 2, s.Turned)
	_, _, ok := s.Threshold()
	assert.False(t, ok, "too early to say")
	for range 200 {
		s = s.After(true)
	}
	assert.InDelta(t, MinSize, s.Size, 1e-12)
	for range 200 {
		s = s.After(false)
	}
	assert.InDelta(t, MaxSize, s.Size, 1e-12)
	rapid.Check(t, func(r *rapid.T) {
		s := Staircase{Size: 6, Turned: rapid.IntRange(0, 9).Draw(r, "turned"), Direction: rapid.IntRange(-1, 1).Draw(r, "direction")}
		dealt := rapid.Float64Range(MinSize*1.01, MaxSize*0.99).Draw(r, "dealt")
		for _, size := range []float64{dealt, s.Next()} {
			assert.Greater(r, s.AfterDealt(dealt, false).Next(), size)
			assert.Less(r, s.AfterDealt(dealt, true).Next(), size)
		}
	})
}

// As published (Wozniak 1990, from memory): at quality 4 the easiness stays
// 2.5 and the intervals are 1, 6, 15, 38, 95 days; quality 5 adds 0.1, quality 3
// takes 0.14; below 3 the intervals start anew and the easiness stays.
func TestRepeatFollowsThePublishedSchedule(t *testing.T) {
	day := time.Date(2024, 3, 1, 9, 0, 0, 0, time.UTC)
	var r Repeat
	var err error
	for _, want := range []int{1, 6, 15, 38, 95} {
		r, err = r.After(4, day)
		require.NoError(t, err)
		assert.Equal(t, want, r.IntervalDays)
		assert.InDelta(t, 2.5, r.Easiness, 1e-9)
		assert.Equal(t, day.AddDate(0, 0, want), r.Due)
		day = r.Due
	}
	for _, c := range []struct {
		quality  int
		easiness float64
	}{{5, 2.6}, {4, 2.5}, {3, 2.36}, {2, 2.5}, {1, 2.5}, {0, 2.5}} {
		got, err := Repeat{Easiness: 2.5, Repetitions: 3, IntervalDays: 15}.After(c.quality, day)
		require.NoError(t, err)
		assert.InDelta(t, c.easiness, got.Easiness, 1e-9, "quality %d", c.quality)
		if c.quality < passQuality {
			assert.Equal(t, 1, got.IntervalDays)
			assert.Zero(t, got.Repetitions)
		}
	}
	low := Repeat{Easiness: 1.3, Repetitions: 2, IntervalDays: 6}
	low, err = low.After(3, day)
	require.NoError(t, err)
	assert.InDelta(t, 1.3, low.Easiness, 1e-9, "never below")
	assert.Equal(t, 8, low.IntervalDays)
	_, err = low.After(6, day)
	assert.ErrorIs(t, err, flavor.ErrInvalid)
}

// A sitting is one answer: whoever is right ten times within the hour is asked again the next
// day, as after the first, and whoever then is wrong begins anew. A little early is not early.
func TestASittingIsOneAnswer(t *testing.T) {
	at := time.Date(2024, 3, 1, 9, 0, 0, 0, time.UTC)
	var r Repeat
	var err error
	for i := range 10 {
		r, err = r.After(BestQuality, at.Add(time.Duration(i)*5*time.Minute))
		require.NoError(t, err)
		assert.Equal(t, at.AddDate(0, 0, 1), r.Due)
		assert.Equal(t, 1, r.Repetitions)
	}
	wrong, err := r.After(1, at.Add(time.Hour))
	require.NoError(t, err)
	assert.Zero(t, wrong.Repetitions)
	again, err := wrong.After(BestQuality, at.Add(61*time.Minute))
	require.NoError(t, err)
	assert.Equal(t, 1, again.IntervalDays, "a sitting that went wrong and then right ends with a day")
	next, err := r.After(BestQuality, at.Add(23*time.Hour))
	require.NoError(t, err)
	assert.Equal(t, 6, next.IntervalDays)
	soon, err := next.After(BestQuality, at.AddDate(0, 0, 3))
	require.NoError(t, err)
	assert.Equal(t, next, soon, "three days of six are too few")
}

// Whoever is always right is never dealt an easier wish, whatever hands make of it; whoever
// is always wrong never a harder one.
func TestStaircaseKeepsWhatWasReached(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := Staircase{Size: rapid.Float64Range(MinSize, MaxSize).Draw(r, "size")}
		right := rapid.Bool().Draw(r, "right")
		for range 12 {
			asked := s.Next()
			s = s.AfterDealt(rapid.Float64Range(MinSize, MaxSize).Draw(r, "dealt"), right)
			if right {
				assert.LessOrEqual(r, s.Next(), asked)
			} else {
				assert.GreaterOrEqual(r, s.Next(), asked)
			}
		}
	})
}
