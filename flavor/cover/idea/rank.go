package idea

import (
	"math"

	"counterpour/flavor/cover/asked"
)

// Rate scores an idea that is mixed, and ranks it.
func (t *Task) Rate(out *Idea) error {
	x := &out.Filling
	var known bool
	if out.Score, known = t.scored[x.Key()]; !known {
		var err error
		if out.Score, err = t.Judge.ScoreOnly(&out.Spec); err != nil {
			return err
		}
		t.scored[x.Key()] = out.Score
	}
	t.Rank(out)
	return nil
}

// Rank ranks an idea that is mixed and scored.
func (t *Task) Rank(out *Idea) {
	x := &out.Filling
	out.Rank = x.Rank - x.Distance() + felt(out.Distance) + t.Weights.Score*math.Max(0, t.ScoreBefore-out.Score-hardlyWorse)
	out.Rank += t.Weights.Part*float64(t.Idle(x)) + t.Weights.Lead*float64(t.Unserved(x)) + t.Req.Guest.Unsettles(&out.Spec, t.Req.Spec)
	out.Gone = t.leadsGone(x, out.Glass)
	out.Rank += t.Weights.Lead*t.missed(out) - t.Habit(x)
}

// felt is what a distance counts for in a rank: each step up to [NearJND], and half of
// each beyond. Of two glasses that are both another drink, people hardly tell which is
// the nearer.
func felt(distance float64) float64 {
	return distance - max(0, distance-asked.NearJND)/2
}

// hardlyWorse is how many points of the score a cover may lose at no cost.
const hardlyWorse = 8.0
