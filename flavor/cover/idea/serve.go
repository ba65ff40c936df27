package idea

import (
	"math"

	"counterpour/flavor/cover/asked"
	"counterpour/flavor/cover/fill"
	"counterpour/flavor/cover/search"
)

// Choose returns which of the roundings of one combination is served: the first
// that is within the guest's limits and, if that is asked, keeps the balance. Of what the
// trade pours it is the one of the first whose glass ranks first: a custom may stand above
// what comes nearer, so its amounts must be good ones.
func (t *Task) Choose(roundings []search.Filling) (int, error) {
	if t.bare && !weighs(t.SpecOf(&roundings[0])) {
		return -1, nil // foam on its own is no drink, in whatever amount
	}
	s := server{task: t}
	defer s.done()
	custom := t.Practice.Pours(roundings[0].Parts)
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
		poured, err := t.Mixed(x)
		if err != nil {
			return -1, err
		}
		if x.Rank-x.Distance()+felt(poured.Distance)-t.Habit(x) >= least {
			continue // whatever it scores
		}
		if err := t.Rate(poured); err != nil {
			return -1, err
		}
		if poured.Rank < least {
			chosen, least = i, poured.Rank
		}
	}
	return chosen, nil
}

// mostTried is how many roundings of a custom are measured in the glass.
const mostTried = 6

// server tells which roundings of one combination may be served.
type server struct {
	task   *Task
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
	if !t.Allows(x) {
		return false, nil
	}
	if ok, err := t.within(x); err != nil || !ok {
		return false, err
	}
	if !t.Strict {
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

// strength returns the strength in % vol of what a cover pours, before ice: its
// alcohol over the sum of its pours.
func (t *Task) strength(x *search.Filling) float64 {
	var alcohol, ml float64
	for p := range t.Pours(x) {
		alcohol += p.ML * p.Profile.ABV.Value
		ml += p.ML
	}
	return alcohol / ml
}

// Allows reports whether a cover may be within the guest's cost and strength,
// without mixing it, and is what a bartender would pour.
func (t *Task) Allows(x *search.Filling) bool {
	g := &t.Req.Guest
	f := fill.Fill{Gap: t.Gap, Drink: t.Req.Spec, Parts: t.PartsOf(x, make([]fill.Portion, 0, asked.MaxParts))}
	return f.Enough() && !t.tooSharp(x) && (g.MaxCost <= 0 || t.Cost(x) <= g.MaxCost) && (g.MaxABV <= 0 || t.strength(x) <= t.tooStrong)
}

// within reports whether a cover that is allowed is within the guest's strength.
func (t *Task) within(x *search.Filling) (bool, error) {
	if t.Req.Guest.MaxABV <= 0 {
		return true, nil
	}
	s := t.SpecOf(x)
	drink, err := t.Mixer.Mix(&s)
	if err != nil {
		return false, err
	}
	return drink.ABV <= t.Req.Guest.MaxABV, nil
}
