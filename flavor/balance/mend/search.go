package mend

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
	"counterpour/flavor/weigh"
)

// fixing is the search for what mends a draft.
type fixing struct {
	bench  *Bench
	spec   *flavor.Spec
	base   float64 // score of the draft
	faults []fault.Fault
	build  *weigh.Build
	ml     []float64 // of the draft, changed and put back in the search
	free   bool      // the draft is without alcohol, and stays so
	found  []candidate

	usualML     float64 // see usual; 0 until it is asked for
	accompanied bool    // what proven drinks pour beside it was tried
}

// comfortable is the score at which a pour has gone far enough: balanced, with
// room for what a hand and a fruit stray.
const comfortable = 90.0

// plain is the same for what is too much in itself: it goes back to where it no
// longer shows.
const plain = 92.0

// mended reports whether something was found that balances the draft.
func (f *fixing) mended() bool {
	return slices.ContainsFunc(f.found, func(c candidate) bool { return c.balanced() && !c.small })
}

// usual returns how many mL of pours a drink of the draft's kind has that is served long, 0 for what
// stands for several glasses: what is left of another is known by the draft.
func (f *fixing) usual() float64 {
	if f.usualML == 0 && f.spec.Service == flavor.Long && f.spec.VolumeML() < batchFromML {
		f.usualML = f.build.UsualML(f.ml)
	}
	return f.usualML
}

// smallShare is the share of a draft, or of what is usual, below which what a fix leaves of it is hardly a
// drink.
const smallShare = 0.5

// keep takes a candidate into what was found, if it is worth telling.
func (f *fixing) keep(c candidate) {
	after := f.spec.VolumeML()
	for i := range c.changes {
		after += c.changes[i].ToML - c.changes[i].FromML
	}
	c.puts = c.puts || f.rids(&c)
	if !c.sure && c.balanced() && c.making.Stays() && slices.ContainsFunc(c.changes, func(x change.Change) bool { return x.ToML == 0 }) {
		c.score, c.sure = f.scoreWith(c.changes, f.base), true // without what is left out it may be of another kind
	}
	c.leaves = f.leavesWorse(&c)
	c.small = !c.scales() && after < smallShare*max(f.spec.VolumeML(), f.usual())
	if c.score > f.base && !f.heady(c.changes) && !f.spikes(c.changes) && !f.bursts(c) && !f.robs(c.changes) {
		f.found = append(f.found, c)
	}
}

// robs reports whether changes leave out the last base of the draft, which no fault names: what is
// left may be in balance, and is not the drink that was meant.
func (f *fixing) robs(changes []change.Change) bool {
	if !slices.ContainsFunc(changes, func(x change.Change) bool {
		return x.ToML == 0 && x.Profile.Base() && !slices.ContainsFunc(f.faults, func(y fault.Fault) bool { return y.Profile == x.Profile })
	}) {
		return false
	}
	for i := range f.spec.Pours {
		if f.spec.Pours[i].Profile.Base() && !slices.ContainsFunc(changes, func(x change.Change) bool { return x.Pour == i && x.ToML == 0 }) {
			return false
		}
	}
	return !slices.ContainsFunc(changes, func(x change.Change) bool { return x.ToML > 0 && x.FromML == 0 && x.Profile.Base() })
}

// reaches returns the score of the draft with one pour at another amount and whether it is
// least or more; if it is not, the score is no more than a bound.
func (f *fixing) reaches(pour int, ml, least float64) (score float64, ok bool) {
	was := f.ml[pour]
	f.ml[pour] = ml
	score, ok = f.build.Reaches(f.ml, least)
	f.ml[pour] = was
	return score, ok
}

// rungs are the scores of the draft with a pour at the amounts of a ladder, as far as they
// are known. Most are asked for only to be compared, and that a score is lower than
// another is known long before the score is.
type rungs struct {
	f      *fixing
	pour   int
	ladder []change.Change
	scores []float64 // below 0 if not known
	below  []float64 // more than the score, if that is not known
}

func (f *fixing) rungs(pour int, ladder []change.Change) rungs {
	n := len(ladder)
	room := make([]float64, 2*n)
	r := rungs{f: f, pour: pour, ladder: ladder, scores: room[:n], below: room[n:]}
	for i := range ladder {
		r.scores[i], r.below[i] = -1, math.Inf(1)
	}
	return r
}

// reach reports whether rung i scores least or more; then its score is known.
func (r *rungs) reach(i int, least float64) bool {
	if r.scores[i] >= 0 {
		return r.scores[i] >= least
	}
	if r.below[i] <= least {
		return false
	}
	score, ok := r.f.reaches(r.pour, r.ladder[i].ToML, least)
	if ok {
		r.scores[i] = score
	} else {
		r.below[i] = least
	}
	return ok
}

// score returns that of rung i.
func (r *rungs) score(i int) float64 {
	r.reach(i, 0)
	return r.scores[i]
}

// along looks for the amount on a ladder that mends the draft: the first that
// scores enough or, if none does, the best. The score rises and falls along a
// ladder, so strides grow until it does either, and the rest is halved.
func (f *fixing) along(pour int, ladder []change.Change, enough float64) (at int, score float64) {
	if len(ladder) == 0 {
		return -1, 0
	}
	r := f.rungs(pour, ladder)
	best, last := 0, len(ladder)-1
	top := r.score(best)
	for i, before := 0, -1; i <= last; {
		least, falls := top, top > f.base+leastLift
		if falls {
			least -= leastLift
		}
		if up := r.reach(i, least); up && r.score(i) >= enough {
			at = r.first(before, i, enough)
			return at, r.score(at)
		} else if up && r.score(i) > top {
			best, top = i, r.score(i)
		} else if !up && falls {
			break // past the top
		}
		before = i
		if i == last {
			break
		}
		i = min(last, i+max(1, (i+1)/2))
	}
	// Around the best there may be a better one between the strides.
	for step := max(1, (best+1)/2); step >= 1; step /= 2 {
		for _, i := range []int{best - step, best + step} {
			if i >= 0 && i <= last && r.reach(i, top) && r.score(i) > top {
				best, top = i, r.score(i)
			}
		}
	}
	at = r.first(-1, best, min(enough, top))
	return at, r.score(at)
}

// first returns the first rung after low that scores enough; high does.
func (r *rungs) first(low, high int, enough float64) int {
	for high-low > 1 {
		if mid := (low + high) / 2; r.reach(mid, enough) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

const slack = 1e-9
