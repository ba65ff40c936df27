package cover

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/template"
)

// leastScore is what a cover must score to keep the drink in balance: balanced
// if it was, and hardly worse if it was not.
func (t *task) leastScore() float64 {
	const slack = 5
	return math.Min(template.BalancedFrom, t.scoreBefore-slack)
}

// scorer scores the roundings of one combination.
type scorer struct {
	task  *task
	build *template.Build
	ml    []float64 // of each pour
}

// newScorer makes the combination of x ready to be scored.
func (t *task) newScorer(x *search.Filling) (*scorer, error) {
	s := t.specOf(x)
	build, err := t.finder.judge.Prepare(&s)
	if err != nil {
		return nil, err
	}
	return &scorer{task: t, build: build, ml: make([]float64, 0, len(s.Pours))}, nil
}

// balanced reports whether a rounding keeps the drink in balance: it scores well,
// or hardly moves what the balance is made of, as one spirit does for another.
func (s *scorer) balanced(x *search.Filling) bool {
	s.ml = s.ml[:0]
	for p := range s.task.pours(x) {
		s.ml = append(s.ml, p.ML)
	}
	if s.task.sameMix(x) {
		return true
	}
	_, ok := s.build.Reaches(s.ml, s.task.leastScore())
	return ok
}

// sameShare is by how much of the drink the measures that a balance is made of may
// move, in all, for it to be the same: a spirit of 47 % for one of 40 % moves less,
// one of 57 % more.
const sameShare = 0.1

// sameMix reports whether a cover leaves the drink as strong, sweet, sour, bitter
// and long as it was, so that it is balanced as far as that was.
func (t *task) sameMix(x *search.Filling) bool {
	var now template.Equivalents
	for p := range t.pours(x) {
		per := template.PerML(p.Profile)
		for i := range now {
			now[i] += p.ML * per[i]
		}
	}
	now[template.Long] = max(0, now[template.Long])
	var moved float64
	for i := range now {
		moved += math.Abs(now[i] - t.mix[i])
	}
	return moved <= sameShare*t.mix.Total()
}

// weighs reports whether there is anything in a drink that a family is told by.
func weighs(s flavor.Spec) bool {
	e := template.EquivalentsOf(&s)
	return e.Total() > 0
}

// choose returns which of the roundings of one combination is served: the first
// that is within the guest's limits and, if that is asked, keeps the balance.
func (t *task) choose(roundings []search.Filling) (int, error) {
	if t.bare && !weighs(t.specOf(&roundings[0])) {
		return -1, nil // foam on its own is no drink, in whatever amount
	}
	var scorer *scorer
	for i := range roundings {
		x := &roundings[i]
		if !t.allows(x) {
			continue
		}
		if ok, err := t.within(x); err != nil {
			return -1, err
		} else if !ok {
			continue
		}
		if t.strict && scorer == nil {
			var err error
			if scorer, err = t.newScorer(&roundings[0]); err != nil {
				return -1, err
			}
		}
		if !t.strict || scorer.balanced(x) {
			return i, nil
		}
	}
	return -1, nil
}
