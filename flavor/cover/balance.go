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
