package riff

import (
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/template"
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
		if !moves(p) {
			continue
		}
		per, ok := measure.MLPerUnit(p.Unit, p.Profile)
		if !ok {
			continue
		}
		for _, a := range measure.Neighbours(s.amount[i], p.Unit, 1) {
			if ml := a * per; ml <= mostOf(p) && (ml >= s.least[i] || a > s.amount[i]) {
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

// moves reports whether the amount of a pour is anyone's to change: what gives
// texture is poured as it is.
func moves(p *flavor.Pour) bool {
	return p.Profile.Class.Part() != flavor.PartTexture && p.Unit != flavor.Top
}

// leastBaseML is the smallest pour of a base that reads as one, a half ounce:
// common practice, no source.
const leastBaseML = 14.5

// leastOf is the smallest amount that a pour may come down to, in mL: a base is
// no dash, and a bottle that must move is moved.
func (w *work) leastOf(p *flavor.Pour) float64 {
	least := 0.0
	if p.Profile.Class.Part() == flavor.PartBase {
		least = leastBaseML
	}
	if w.must[p.Profile.ID] {
		least = max(least, leastUse(p.Profile))
	}
	return min(least, p.ML)
}

// mostOf is the largest pour that reads as a bartender's, in mL; what is poured
// already may stay.
func mostOf(p *flavor.Pour) float64 {
	if p.Profile.Class.Part() == flavor.PartSeasoning {
		return max(mostUsual(p.Profile), 2*p.ML)
	}
	return max(mostUsual(p.Profile), p.ML)
}

// mostUsual is the largest pour of an ingredient in one drink, in mL: common
// practice, no source.
func mostUsual(p *flavor.Profile) float64 {
	switch p.Class.Part() {
	case flavor.PartBase:
		return 75
	case flavor.PartModifier:
		if p.Class.Kin() == flavor.KinWine {
			return 90
		}
		return 60
	case flavor.PartSweetener, flavor.PartSour:
		return 45
	case flavor.PartSeasoning:
		return 5
	}
	return 180
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
	return s.build.Score(s.ml) < template.BalancedFrom+1 || s.lacks() > 0
}
