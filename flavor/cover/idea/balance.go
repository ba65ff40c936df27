package idea

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// LeastScore is what a cover must score to keep the drink in balance: balanced
// if it was, and hardly worse if it was not.
func (t *Task) LeastScore() float64 {
	const slack = 5
	return math.Min(weigh.BalancedFrom, t.ScoreBefore-slack)
}

// scorer scores the roundings of one combination.
type scorer struct {
	task  *Task
	build *weigh.Build
	of    search.Key // the rounding that it was made ready for
	ml    []float64  // of each pour
}

// newScorer makes the combination of x ready to be scored.
func (t *Task) newScorer(x *search.Filling) (*scorer, error) {
	s := t.SpecOf(x)
	build, err := t.Judge.Prepare(&s)
	if err != nil {
		return nil, err
	}
	return &scorer{task: t, build: build, of: x.Key(), ml: make([]float64, 0, len(s.Pours))}, nil
}

// spiritSlack is how far a drink may fall below the least score where a spirit stands
// for a spirit, or where the trade pours it so. The drink must be as strong, sweet,
// sour, bitter and long as it was.
const spiritSlack = 15.0

// blendSlack is how much of the score a blend may lose: it is poured to come nearer than
// one bottle does, and a blend that upsets the drink is none.
const blendSlack = 10.0

// balanced reports whether a rounding keeps the drink in balance: it scores well, or
// nearly so where one spirit stands for another and hardly moves what the balance is
// made of. What is a seasoning, and not the base, can upset a drink in an amount that
// is little of it.
func (s *scorer) balanced(x *search.Filling) bool {
	s.ml = s.ml[:0]
	for p := range s.task.Pours(x) {
		s.ml = append(s.ml, p.ML)
	}
	least := s.task.LeastScore()
	switch single := len(x.Parts) <= len(s.task.Gap.Gone); {
	case s.task.Gap.ML >= gap.BaseML && (single && s.task.SpiritsAlone(x) || s.task.Practice.Pours(x.Parts)) && s.task.sameMix(x):
		least -= spiritSlack
	case single && (s.task.SugarForSugar(x) || s.task.MilkForMilk(x)):
		return true
	case !single && !s.task.Practice.Knows(x.Parts):
		least = math.Max(least, s.task.ScoreBefore-blendSlack)
	}
	score, ok := s.build.Reaches(s.ml, least)
	if key := x.Key(); ok && key == s.of {
		s.task.scored[key] = score // the very score that this filling gets in the glass
	}
	return ok
}

// SugarForSugar reports whether one sweetener is poured for another, with as much sugar: then the
// drink is balanced as far as it was, though no proven drink may be made with the other flavour.
func (t *Task) SugarForSugar(x *search.Filling) bool {
	sweetens := func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinSweetener }
	return len(x.Parts) == 1 && len(t.Gap.Gone) == 1 && sweetens(t.Gap.Gone[0].Profile) && sweetens(t.Cands[x.Parts[0]].Profile) && t.sameMix(x)
}

// MilkForMilk reports whether one milk or cream is poured for as much of another: however much
// leaner it is, a guest who avoids milk knows that, and the rest of the drink stays as it was.
func (t *Task) MilkForMilk(x *search.Filling) bool {
	if len(x.Parts) != 1 || len(x.Moves) > 0 || len(t.Gap.Gone) != 1 || t.Gap.Gone[0].Profile.Class.Kin() != flavor.KinMilk {
		return false
	}
	c := &t.Cands[x.Parts[0]]
	return c.Profile.Class.Kin() == flavor.KinMilk && math.Abs(c.Amounts[x.Amounts[0]].ML-t.Gap.ML) < sameML
}

// sameML is the difference, in mL, up to which two amounts are one.
const sameML = 0.1

// sameShare is by how much of the drink the measures that a balance is made of may
// move, in all, for it to be the same: a spirit of 47 % for one of 40 % moves less,
// one of 57 % more.
const sameShare = 0.1

// sameMix reports whether a cover leaves the drink as strong, sweet, sour, bitter
// and long as it was, so that it is balanced as far as that was.
func (t *Task) sameMix(x *search.Filling) bool {
	var now ratio.Equivalents
	for p := range t.Pours(x) {
		per := ratio.PerML(p.Profile)
		for i := range now {
			now[i] += p.ML * per[i]
		}
	}
	now[ratio.Long] = max(0, now[ratio.Long])
	var moved float64
	for i := range now {
		moved += math.Abs(now[i] - t.mix[i])
	}
	return moved <= sameShare*t.mix.Total()
}
