package cover

import (
	"math"

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
func (t *task) newScorer(x *found) (*scorer, error) {
	s := t.specOf(x)
	build, err := t.finder.judge.Prepare(&s)
	if err != nil {
		return nil, err
	}
	return &scorer{task: t, build: build, ml: make([]float64, 0, len(s.Pours))}, nil
}

// balanced returns the score of a rounding and whether it keeps the drink in
// balance; the score is not worked out if it cannot be enough.
func (s *scorer) balanced(x *found) (score float64, ok bool) {
	s.ml = s.ml[:0]
	for p := range s.task.pours(x) {
		s.ml = append(s.ml, p.ML)
	}
	return s.build.Reaches(s.ml, s.task.leastScore())
}

// choose keeps the best of the roundings of a combination that is good enough.
func (s *search) choose(roundings []found) error {
	w := weigher{task: s.task, best: roundings[0]}
	for i := range roundings {
		good, err := w.good(&roundings[i], i == 0)
		if err != nil {
			return err
		}
		if good {
			s.list.keep(roundings[i])
			return nil
		}
	}
	return nil
}

// weigher weighs the roundings of one combination.
type weigher struct {
	task   *task
	best   found
	scorer *scorer // made for the best of them, once one is asked for
}

// good reports whether a rounding is within the guest's limits and, if that is
// asked, keeps the balance.
func (w *weigher) good(x *found, best bool) (bool, error) {
	if !w.task.allows(x) {
		return false, nil
	}
	if ok, err := w.task.within(x); !ok || err != nil {
		return false, err
	}
	if !w.task.strict {
		return true, nil
	}
	if w.scorer == nil {
		var err error
		if w.scorer, err = w.task.newScorer(&w.best); err != nil {
			return false, err
		}
	}
	score, ok := w.scorer.balanced(x)
	if ok && best { // what the scorer was made for, to the last digit
		x.score = score
	}
	return ok, nil
}
