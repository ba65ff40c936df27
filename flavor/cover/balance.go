package cover

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/cover/fill"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// leastScore is what a cover must score to keep the drink in balance: balanced
// if it was, and hardly worse if it was not.
func (t *task) leastScore() float64 {
	const slack = 5
	return math.Min(weigh.BalancedFrom, t.scoreBefore-slack)
}

// scorer scores the roundings of one combination.
type scorer struct {
	task  *task
	build *weigh.Build
	of    search.Key // the rounding that it was made ready for
	ml    []float64  // of each pour
}

// newScorer makes the combination of x ready to be scored.
func (t *task) newScorer(x *search.Filling) (*scorer, error) {
	s := t.specOf(x)
	build, err := t.finder.judge.Prepare(&s)
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
	for p := range s.task.pours(x) {
		s.ml = append(s.ml, p.ML)
	}
	least := s.task.leastScore()
	switch single := len(x.Parts) <= len(s.task.gap.Gone); {
	case s.task.gap.ML >= gap.BaseML && (single && s.task.spiritsAlone(x) || s.task.practice.Pours(x.Parts)) && s.task.sameMix(x):
		least -= spiritSlack
	case single && s.task.sugarForSugar(x):
		return true
	case !single && !s.task.practice.Knows(x.Parts):
		least = math.Max(least, s.task.scoreBefore-blendSlack)
	}
	score, ok := s.build.Reaches(s.ml, least)
	if key := x.Key(); ok && key == s.of {
		s.task.scored[key] = score // the very score that this filling gets in the glass
	}
	return ok
}

// sugarForSugar reports whether one sweetener is poured for another, with as much sugar: then the
// drink is balanced as far as it was, though no proven drink may be made with the other flavour.
func (t *task) sugarForSugar(x *search.Filling) bool {
	sweetens := func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinSweetener }
	return len(x.Parts) == 1 && len(t.gap.Gone) == 1 && sweetens(t.gap.Gone[0].Profile) && sweetens(t.cands[x.Parts[0]].Profile) && t.sameMix(x)
}

// spiritsAlone reports whether spirits went, and nothing else is poured for them.
func (t *task) spiritsAlone(x *search.Filling) bool {
	f := fill.Fill{Gap: t.gap, Drink: t.req.Spec, Parts: t.partsOf(x, make([]fill.Portion, 0, MaxParts))}
	return f.SpiritsAlone()
}

// sameShare is by how much of the drink the measures that a balance is made of may
// move, in all, for it to be the same: a spirit of 47 % for one of 40 % moves less,
// one of 57 % more.
const sameShare = 0.1

// sameMix reports whether a cover leaves the drink as strong, sweet, sour, bitter
// and long as it was, so that it is balanced as far as that was.
func (t *task) sameMix(x *search.Filling) bool {
	var now ratio.Equivalents
	for p := range t.pours(x) {
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

// weighs reports whether there is anything in a drink that a family is told by.
func weighs(s flavor.Spec) bool {
	e := ratio.EquivalentsOf(&s)
	return e.Total() > 0
}

// choose returns which of the roundings of one combination is served: the first
// that is within the guest's limits and, if that is asked, keeps the balance. Of what the
// trade pours it is the one of the first whose glass ranks first: a custom may stand above
// what comes nearer, so its amounts must be good ones.
func (t *task) choose(roundings []search.Filling) (int, error) {
	if t.bare && !weighs(t.specOf(&roundings[0])) {
		return -1, nil // foam on its own is no drink, in whatever amount
	}
	s := server{task: t}
	defer s.done()
	custom := t.practice.Pours(roundings[0].Parts)
	chosen, least, tried := -1, math.Inf(1), 0
	for i := range roundings {
		x := &roundings[i]
		if ok, err := s.serves(x); err != nil {
			return -1, err
		} else if !ok {
			continue
		}
		if !custom {
			return i, nil
		}
		if tried++; tried > mostTried {
			break
		}
		poured, err := t.mixed(x)
		if err != nil {
			return -1, err
		}
		if x.Rank-x.Distance()+felt(poured.distance)-t.habit(x) >= least {
			continue // whatever it scores
		}
		if err := t.rate(poured); err != nil {
			return -1, err
		}
		if poured.rank < least {
			chosen, least = i, poured.rank
		}
	}
	return chosen, nil
}

// mostTried is how many roundings of a custom are measured in the glass.
const mostTried = 6

// server tells which roundings of one combination may be served.
type server struct {
	task   *task
	scorer *scorer // made when the first is to be scored
}

// serves reports whether a rounding is within the guest's limits and, if that is asked,
// keeps the balance. A list is often searched for again, further down, so it remembers.
func (s *server) serves(x *search.Filling) (bool, error) {
	key := x.Key()
	if ok, known := s.task.serves[key]; known {
		return ok, nil
	}
	ok, err := s.judges(x)
	if err == nil {
		s.task.serves[key] = ok
	}
	return ok, err
}

func (s *server) judges(x *search.Filling) (bool, error) {
	t := s.task
	if !t.allows(x) {
		return false, nil
	}
	if ok, err := t.within(x); err != nil || !ok {
		return false, err
	}
	if !t.strict {
		return true, nil
	}
	if s.scorer == nil {
		var err error
		if s.scorer, err = t.newScorer(x); err != nil {
			return false, err
		}
	}
	return s.scorer.balanced(x), nil
}

func (s *server) done() {
	if s.scorer != nil {
		s.scorer.build.Done()
	}
}
