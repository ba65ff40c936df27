package pace

import (
	"math"
	"time"

	"counterpour/flavor"
)

// Repeat says when a skill is due again, by the algorithm published in 1990 (Wozniak,
// Optimization of learning, 1990; from memory): the intervals are 1 day, 6 days,
// and then the last one times the easiness, rounded up; the easiness begins at
// 2.5, moves by 0.1 − (5 − q)(0.08 + 0.02 (5 − q)) with the quality q of each
// answer, 0 to 5, and never falls below 1.3; a quality below 3 starts the
// intervals anew and leaves the easiness. That a poor answer is asked again
// within the day is left to whoever teaches. The schedule is of answers given when they are
// due: a good one given long before, as in one sitting of ten, says nothing of how long the
// skill keeps and changes nothing, a poor one is a poor one whenever it is given.
type Repeat struct {
	Easiness     float64   `json:"easiness"` // 0 before the first answer
	Repetitions  int       `json:"repetitions"`
	IntervalDays int       `json:"interval_days"`
	Due          time.Time `json:"due"` // the zero time before the first answer
}

// BestQuality is that of a full answer.
const BestQuality = 5

const (
	firstEasiness = 2.5
	leastEasiness = 1.3
	passQuality   = 3
	firstInterval = 1
	nextInterval  = 6
	// mostInterval bounds what is asked so rarely that it is not trained.
	mostInterval = 365
	// earlyShare is the share of an interval before its end from which an answer counts as
	// given when it is due: whoever trains at eight in place of nine is not early. Common
	// practice, no source.
	earlyShare = 0.25
)

// early reports whether an answer comes long before the skill is due.
func (r Repeat) early(at time.Time) bool {
	const day = 24 * time.Hour
	grace := time.Duration(earlyShare * float64(r.IntervalDays) * float64(day))
	return r.Repetitions > 0 && at.Before(r.Due.Add(-grace))
}

// After returns the schedule once an answer of a quality, 0 to 5, was given. It
// fails with a fault for any other quality.
func (r Repeat) After(quality int, at time.Time) (Repeat, error) {
	if quality < 0 || quality > BestQuality {
		return r, flavor.Invalid("quality", quality, "%d is no quality of an answer; use 0 to %d", quality, BestQuality)
	}
	if r.Easiness == 0 {
		r.Easiness = firstEasiness
	}
	if quality >= passQuality && r.early(at) {
		return r, nil
	}
	if quality < passQuality {
		r.Repetitions, r.IntervalDays = 0, firstInterval
	} else {
		miss := float64(BestQuality - quality)
		r.Easiness = max(leastEasiness, r.Easiness+0.1-miss*(0.08+0.02*miss))
		r.Repetitions++
		switch r.Repetitions {
		case 1:
			r.IntervalDays = firstInterval
		case 2:
			r.IntervalDays = nextInterval
		default:
			// The digits of 0.1 must not lift a whole number to the next.
			r.IntervalDays = min(mostInterval, int(math.Ceil(float64(r.IntervalDays)*r.Easiness-1e-9)))
		}
	}
	r.Due = at.AddDate(0, 0, r.IntervalDays)
	return r, nil
}
