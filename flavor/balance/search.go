package balance

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/weigh"
)

// fixing is the search for what mends a draft.
type fixing struct {
	judge  *Judge
	spec   *flavor.Spec
	base   float64 // score of the draft
	faults []Fault
	build  *weigh.Build
	ml     []float64 // of the draft, changed and put back in the search
	free   bool      // the draft is without alcohol, and stays so
	found  []candidate

	accompanied bool // what proven drinks pour beside it was tried
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

// smallShare is the share of a draft below which what a fix leaves of it is hardly a
// drink.
const smallShare = 0.5

// keep takes a candidate into what was found, if it is worth telling.
func (f *fixing) keep(c candidate) {
	after := f.spec.VolumeML()
	for i := range c.changes {
		after += c.changes[i].ToML - c.changes[i].FromML
	}
	c.puts = c.puts || f.rids(&c)
	c.small = !c.scales() && after < smallShare*f.spec.VolumeML()
	if c.score > f.base && !f.heady(c.changes) && !f.spikes(c.changes) && !f.bursts(c) {
		f.found = append(f.found, c)
	}
}

// score is that of the draft with one pour at another amount.
func (f *fixing) score(pour int, ml float64) float64 {
	was := f.ml[pour]
	f.ml[pour] = ml
	score := f.build.Score(f.ml)
	f.ml[pour] = was
	return score
}

// along looks for the amount on a ladder that mends the draft: the first that
// scores enough or, if none does, the best. The score rises and falls along a
// ladder, so strides grow until it does either, and the rest is halved.
func (f *fixing) along(pour int, ladder []Change, enough float64) (at int, score float64) {
	if len(ladder) == 0 {
		return -1, 0
	}
	scores := make([]float64, len(ladder))
	for i := range scores {
		scores[i] = -1
	}
	of := func(i int) float64 {
		if scores[i] < 0 {
			scores[i] = f.score(pour, ladder[i].ToML)
		}
		return scores[i]
	}
	best, last := 0, len(ladder)-1
	for i, before := 0, -1; i <= last; {
		x := of(i)
		if x >= enough {
			at = first(of, before, i, enough)
			return at, of(at)
		}
		if x > of(best) {
			best = i
		} else if of(best) > f.base+leastLift && x < of(best)-leastLift {
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
			if i >= 0 && i <= last && of(i) > of(best) {
				best = i
			}
		}
	}
	at = first(of, -1, best, min(enough, of(best)))
	return at, of(at)
}

// first returns the first place after low that scores enough; high does.
func first(of func(int) float64, low, high int, enough float64) int {
	for high-low > 1 {
		if mid := (low + high) / 2; of(mid) >= enough {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// baseOf returns the mL of all bases of a spec.
func baseOf(s *flavor.Spec) (ml float64) {
	for i := range s.Pours {
		if s.Pours[i].Profile.Base() {
			ml += s.Pours[i].ML
		}
	}
	return ml
}

const slack = 1e-9
