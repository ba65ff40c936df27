package pace

import "math"

// Sizes of rounds, in just-noticeable differences.
const (
	StartSize = 6.0
	MinSize   = 0.5
	MaxSize   = 24.0
)

// Staircase sets the size of the next round: smaller after a right answer, larger after a
// wrong one, and that by more: a weighted up-down staircase, which settles where an answer
// is right with the probability p if the way up is p/(1 − p) times the way down
// (Kaernbach, Percept Psychophys 49:227, 1991; from memory). Sizes move by factors, as
// differences are noticed. The zero Staircase is one that has not begun.
type Staircase struct {
	Size      float64   `json:"size_jnd"`        // of the next round, 0 before the first
	Direction int       `json:"direction"`       // of the last move: −1 smaller, 1 larger, 0 none yet
	Reversals []float64 `json:"reversals_jnd"`   // sizes at which the direction turned, the last ones
	Turned    int       `json:"reversals_count"` // how often it turned in all
	Trials    int       `json:"trials"`
}

// How the staircase moves.
const (
	firstFactor = 1.4142135623730951 // up, until the size is near: √2
	laterFactor = 1.1892071150027211 // then finer: the fourth root of 2
	roughTurns  = 4                  // reversals that only find the neighbourhood
	keptTurns   = 16                 // reversals that are kept, an even number
	leastTurns  = 4                  // reversals that an estimate needs, beyond the rough ones
	// StaircaseTarget is the probability of a right answer where it settles.
	StaircaseTarget = 0.7071067811865476
	// downShare is how far it moves down, as a share of the way up, as a logarithm.
	downShare = (1 - StaircaseTarget) / StaircaseTarget
)

// Next returns the size of the next round.
func (s Staircase) Next() float64 {
	if s.Size == 0 {
		return StartSize
	}
	return s.Size
}

// Dealt is the size of a round that came out at a size, within the sizes there are; one that
// is not above zero came out as it was asked for.
func (s Staircase) Dealt(size float64) float64 {
	if size > 0 {
		return min(MaxSize, max(MinSize, size))
	}
	return s.Next()
}

// After returns the staircase once a round of the size asked for was answered.
func (s Staircase) After(right bool) Staircase { return s.AfterDealt(s.Next(), right) }

// AfterDealt returns the staircase once a round was answered that came out at a size, which
// may be another than was asked for: rounds are made of what hands do. Whoever is right at a
// larger one keeps what they had reached, and whoever is wrong at a smaller one too: no right
// answer makes the next round easier than was asked for, no wrong one harder.
func (s Staircase) AfterDealt(size float64, right bool) Staircase {
	asked, dealt := s.Next(), s.Dealt(size)
	s.Trials++
	s.Reversals = append([]float64(nil), s.Reversals...)
	if right {
		return s.turn(-1, dealt).move(min(asked, dealt), -downShare)
	}
	return s.turn(1, dealt).move(max(asked, dealt), 1)
}

// turn notes the direction of an answer, and the size dealt where it turned.
func (s Staircase) turn(direction int, dealt float64) Staircase {
	if s.Direction == -direction {
		s.Turned++
		if s.Turned > roughTurns {
			s.Reversals = append(s.Reversals, dealt)
			s.Reversals = s.Reversals[max(0, len(s.Reversals)-keptTurns):]
		}
	}
	s.Direction = direction
	return s
}

// move takes a step from a size, of so many factors.
func (s Staircase) move(from, steps float64) Staircase {
	factor := laterFactor
	if s.Turned < roughTurns {
		factor = firstFactor
	}
	s.Size = min(MaxSize, max(MinSize, from*math.Pow(factor, steps)))
	return s
}

// Threshold returns the size at which the learner is right 70.7 % of the time:
// the geometric mean of an even number of the last reversals, and the standard
// error of its logarithm. It is false before there are enough of them.
func (s Staircase) Threshold() (size, spread float64, ok bool) {
	n := len(s.Reversals) &^ 1
	if n < leastTurns {
		return 0, 0, false
	}
	var mean, square float64
	for _, x := range s.Reversals[len(s.Reversals)-n:] {
		l := math.Log(x)
		mean += l / float64(n)
		square += l * l / float64(n)
	}
	return math.Exp(mean), math.Sqrt(max(0, square-mean*mean) / float64(n-1)), true
}
