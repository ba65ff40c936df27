package station

import (
	"counterpour/flavor/measure"
	"counterpour/flavor/weigh"
)

// nudge is one pour moved by one step.
type nudge struct {
	pour   int
	amount float64
	ml     float64
	up     int
}

// nudges lists the steps that each pour may take.
func (s *solver) nudges() []nudge {
	out := make([]nudge, 0, 2*len(s.ml))
	for i := range s.spec.Pours {
		p := &s.spec.Pours[i]
		if !Moves(p) {
			continue
		}
		per, ok := measure.MLPerUnit(p.Unit, p.Profile)
		if !ok {
			continue
		}
		for _, a := range measure.Neighbours(s.amount[i], p.Unit, 1) {
			if ml := a * per; (ml <= s.most[i] || a < s.amount[i]) && (ml >= s.least[i] || a > s.amount[i]) {
				n := nudge{pour: i, amount: a, ml: ml, up: 1}
				if a < s.amount[i] {
					n.up = -1
				}
				out = append(out, n)
			}
		}
	}
	return out
}

// take makes a step; undo is take of what was before.
func (s *solver) take(n nudge) (undo nudge) {
	undo = nudge{n.pour, s.amount[n.pour], s.ml[n.pour], -n.up}
	s.amount[n.pour], s.ml[n.pour] = n.amount, n.ml
	s.steps[n.pour] += n.up
	return undo
}

func (s *solver) climb() float64 {
	merit := s.merit()
	for range maxClimb {
		steps := s.nudges()
		best, with, top := -1, -1, merit
		for i, n := range steps {
			undo := s.take(n)
			if m := s.merit(); m > top+tiny {
				best, with, top = i, -1, m
			}
			s.take(undo)
		}
		if best < 0 && s.wanting() {
			best, with, top = s.pairs(steps, top)
		}
		if best < 0 {
			break
		}
		s.take(steps[best])
		if with >= 0 {
			s.take(steps[with])
		}
		merit = top
	}
	return merit
}

// pairs tries two pours at once.
func (s *solver) pairs(steps []nudge, top float64) (best, with int, merit float64) {
	best, with = -1, -1
	for i, a := range steps {
		undoA := s.take(a)
		for j := i + 1; j < len(steps); j++ {
			if steps[j].pour == a.pour {
				continue
			}
			undoB := s.take(steps[j])
			if m := s.merit(); m > top+tiny {
				best, with, top = i, j, m
			}
			s.take(undoB)
		}
		s.take(undoA)
	}
	return best, with, top
}

// wanting reports whether the drink is not balanced or a wish not met.
func (s *solver) wanting() bool {
	return s.build.Score(s.ml) < weigh.BalancedFrom+1 || s.lacks() > 0
}
