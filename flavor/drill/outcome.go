package drill

import (
	"cmp"
	"slices"
	"time"

	"counterpour/flavor"
)

// Outcome is what is kept of one graded round: plain values, to be stored by the
// caller. All of a person's outcomes make their [Learner] again.
type Outcome struct {
	Kind    Kind
	Axis    string  // empty for kinds without one
	Size    float64 // as the round came out, in just-noticeable differences, see [Steps]
	Right   bool
	Quality int // of the answer, 0 to 5, see [Repeat]
	At      time.Time
}

// OutcomeOf returns what is to be kept of a graded round.
func OutcomeOf(r *Round, g *Grade, at time.Time) Outcome {
	s := skillOf(&r.Request)
	return Outcome{Kind: s.Kind, Axis: s.Axis, Size: r.Size, Right: g.Right, Quality: qualityOf(g), At: at}
}

// After returns the learner once a round was graded. It fails with a fault if
// the outcome is of nothing that is trained here.
func (l Learner) After(r Outcome) (Learner, error) {
	skill := Skill{Kind: r.Kind, Axis: r.Axis}
	if skill.order() < 0 {
		return l, flavor.Invalid("kind", string(r.Kind), "%q of %q is not trained here", r.Kind, r.Axis)
	}
	l.Skills = slices.Clone(l.Skills)
	at := func() int { return slices.IndexFunc(l.Skills, func(s Skill) bool { return s.same(&skill) }) }
	i := at()
	if i < 0 {
		l.Skills = append(l.Skills, skill)
		slices.SortStableFunc(l.Skills, func(a, b Skill) int { return cmp.Compare(a.order(), b.order()) })
		i = at()
	}
	s := &l.Skills[i]
	repeat, err := s.Repeat.After(r.Quality, r.At)
	if err != nil {
		return l, err
	}
	dealt := s.Stairs.Dealt(r.Size)
	s.Repeat, s.Stairs, s.Last = repeat, s.Stairs.AfterDealt(dealt, r.Right), r.At
	s.Played = append(slices.Clone(s.Played), Trial{Size: dealt, Right: r.Right})
	s.Played = s.Played[max(0, len(s.Played)-keptTrials):]
	s.Rounds++
	if r.Right {
		s.Right++
	}
	return l, nil
}

// Replay makes a learner of all their outcomes, in order of time; those of one
// moment stay in the order given. A outcome that After refuses is passed over, so
// that what another version of this program trained does no harm.
func Replay(name string, outcomes []Outcome) Learner {
	l := Learner{Name: name}
	byTime := slices.Clone(outcomes)
	slices.SortStableFunc(byTime, func(a, b Outcome) int { return a.At.Compare(b.At) })
	for _, r := range byTime {
		if next, err := l.After(r); err == nil {
			l = next
		}
	}
	return l
}

// qualityOf turns a grade into the quality of an answer: 5 for a full one, 4 and
// 3 for right ones with less, 2 for a wrong one that was half right, else 1.
func qualityOf(g *Grade) int {
	switch {
	case g.Right && g.Points > 0.99:
		return 5
	case g.Right && g.Points >= 0.75:
		return 4
	case g.Right:
		return 3
	case g.Points >= 0.5:
		return 2
	}
	return 1
}
