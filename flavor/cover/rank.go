package cover

import (
	"math"

	"counterpour/flavor/cover/search"
)

// rate scores an idea that is mixed, and ranks it.
func (t *task) rate(out *idea) error {
	x := &out.filling
	var known bool
	if out.score, known = t.scored[x.Key()]; !known {
		var err error
		if out.score, err = t.finder.judge.ScoreOnly(&out.spec); err != nil {
			return err
		}
		t.scored[x.Key()] = out.score
	}
	t.rank(out)
	return nil
}

// rank ranks an idea that is mixed and scored.
func (t *task) rank(out *idea) {
	x := &out.filling
	out.rank = x.Rank - x.Distance() + felt(out.distance) + t.finder.weights.Score*math.Max(0, t.scoreBefore-out.score-hardlyWorse)
	out.rank += t.finder.weights.Part*float64(t.idle(x)) + t.finder.weights.Lead*float64(t.unserved(x)) + t.req.Guest.Unsettles(&out.spec, t.req.Spec)
	out.gone = t.leadsGone(x, out.glass)
	out.rank += t.finder.weights.Lead*t.missed(out) - t.habit(x)
}

// blends reports whether a filling pours more things than went.
func (t *task) blends(x *search.Filling) bool { return len(x.Parts) > len(t.gap.Gone) }

// unserved counts the things out that nothing is poured for: fewer bottles come near by
// leaving something out.
func (t *task) unserved(x *search.Filling) int { return max(0, len(t.gap.Gone)-len(x.Parts)) }

// felt is what a distance counts for in a rank: each step up to [NearJND], and half of
// each beyond. Of two glasses that are both another drink, people hardly tell which is
// the nearer.
func felt(distance float64) float64 {
	return distance - max(0, distance-NearJND)/2
}

// idle counts the parts of a filling that stand for nothing that went: each thing is
// covered by the part that is least strange in its place, and what is left only helps.
// Of one thing the search itself asks what a further part must earn.
func (t *task) idle(x *search.Filling) int {
	if len(t.gap.Gone) < 2 || len(x.Parts) == 0 {
		return 0
	}
	var stands [search.MaxParts]bool
	for m := range t.gap.Gone {
		stands[t.standsFor(x, m)] = true
	}
	n := 0
	for k := range x.Parts {
		if !stands[k] {
			n++
		}
	}
	return n - max(0, len(x.Parts)-len(t.gap.Gone)) // these the search has counted
}

// standsFor returns the place among the parts of the one that is least strange in place
// of removed m.
func (t *task) standsFor(x *search.Filling, m int) int {
	least := 0
	for k, i := range x.Parts {
		if t.entries[i].Strange[m] < t.entries[x.Parts[least]].Strange[m] {
			least = k
		}
	}
	return least
}

// hardlyWorse is how many points of the score a cover may lose at no cost.
const hardlyWorse = 8.0
