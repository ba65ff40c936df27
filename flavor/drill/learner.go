package drill

import (
	"cmp"
	"math"
	"slices"
	"time"

	"counterpour/flavor/drill/pace"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/ratio"
)

// Learner is what is known of one person's training: plain values, to be stored
// as JSON by the caller, or made again of all outcomes by [Replay]. Nothing
// changes one; After returns another.
type Learner struct {
	Name   string  `json:"name"`
	Skills []Skill `json:"skills"` // those tried, in the order of Skills
}

// Skill is one thing trained: a kind of round, and the axis for those that have
// one.
type Skill struct {
	Kind   Kind           `json:"kind"`
	Axis   string         `json:"axis"` // empty for kinds without one
	Right  int            `json:"right"`
	Rounds int            `json:"rounds"`
	Last   time.Time      `json:"last"`
	Stairs pace.Staircase `json:"staircase"`
	Repeat pace.Repeat    `json:"repeat"`
	Played []Trial        `json:"played,omitempty"` // the last keptTrials, in order
}

// Trial is a round as it was played: its size in just-noticeable differences, see
// [Steps], and whether the answer was right.
type Trial struct {
	Size  float64 `json:"size_jnd"`
	Right bool    `json:"right"`
}

// keptTrials is how many rounds of a skill are kept one by one, for a drawing of how
// it went.
const keptTrials = 60

// Skills lists everything that can be trained, in the order in which it is
// taught, none of it tried.
func Skills() []Skill {
	out := []Skill{{Kind: KindFamily}}
	for _, k := range []Kind{KindFault, KindMend} {
		for _, a := range []ratio.Axis{ratio.Sweet, ratio.Sour, ratio.Strong, ratio.Bitter, ratio.Long} {
			out = append(out, Skill{Kind: k, Axis: a.String()})
		}
	}
	for _, a := range []ratio.Axis{ratio.Strong, ratio.Sweet} {
		out = append(out, Skill{Kind: KindOrder, Axis: a.String()})
	}
	return append(out, Skill{Kind: KindGuess}, Skill{Kind: KindCover}, Skill{Kind: KindHand})
}

// skillOf is what a round trains.
func skillOf(r *RoundRequest) Skill {
	s := Skill{Kind: r.Kind}
	switch r.Kind {
	case KindFault, KindMend, KindOrder:
		s.Axis = r.Axis.String()
	}
	return s
}

func (s *Skill) same(o *Skill) bool { return s.Kind == o.Kind && s.Axis == o.Axis }

// order is the place of a skill in what is taught.
func (s *Skill) order() int {
	return slices.IndexFunc(Skills(), func(o Skill) bool { return s.same(&o) })
}

// Next returns the request for the round that does most good now: the skill that
// is most overdue, else the first one not tried yet, else the one due soonest,
// at the size that its staircase asks for.
func (l Learner) Next(at time.Time, seed uint64) RoundRequest { return l.NextBut("", at, seed) }

// NextBut is [Learner.Next] without the rounds of one kind, so that no kind comes
// twice in a row; an empty kind leaves nothing out.
func (l Learner) NextBut(not Kind, at time.Time, seed uint64) RoundRequest {
	var best *Skill
	for i := range l.Skills {
		if s := &l.Skills[i]; s.Kind != not && (best == nil || s.Repeat.Due.Before(best.Repeat.Due)) {
			best = s
		}
	}
	if best == nil || best.Repeat.Due.After(at) {
		for _, s := range Skills() {
			if s.Kind != not && !slices.ContainsFunc(l.Skills, func(o Skill) bool { return o.same(&s) }) {
				best = &s
				break
			}
		}
	}
	axis, _ := ratio.ParseAxis(best.Axis)
	return RoundRequest{Kind: best.Kind, Axis: axis, Size: best.Stairs.Next(), Seed: seed}
}

// Need is one drill that one person needs.
type Need struct {
	Learner   string
	Kind      Kind
	Axis      string
	Threshold float64 // size of rounds at which they are right 70.7 % of the time; 0 if not known yet
	Share     float64 // of rounds right, 0 to 1
	Rounds    int
	Overdue   int // days; below 0 if not due
	Urgency   float64
	Text      string
}

// What a lead is told of.
const (
	fineSize     = 3.0 // of rounds that a trained palate tells; common practice
	leastUrgency = 0.5
)

// Needs is a lead's summary: who needs which drill, the most urgent first. A
// need grows with the threshold, doubling by doubling, and with the days that it
// is overdue. While the threshold is not known, the size last asked for counts by how
// often it was missed: a size that is always told is no need. A skill never tried
// counts as one at the starting size.
func Needs(team []Learner, at time.Time) []Need {
	var out []Need
	for i := range team {
		for _, s := range Skills() {
			for _, tried := range team[i].Skills {
				if tried.same(&s) {
					s = tried
				}
			}
			if n := needOf(team[i].Name, &s, at); n.Urgency >= leastUrgency {
				out = append(out, n)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Need) int { return cmp.Compare(b.Urgency, a.Urgency) })
	return out
}

// missed is the share of a skill's rounds that went wrong, by the rule of
// succession (Laplace, Essai philosophique sur les probabilités, 1814), so that
// few rounds say little.
func missed(s *Skill) float64 {
	return float64(s.Rounds-s.Right+1) / float64(s.Rounds+2)
}

func needOf(name string, s *Skill, at time.Time) Need {
	n := Need{Learner: name, Kind: s.Kind, Axis: s.Axis, Rounds: s.Rounds}
	skill := wording.Skill(string(s.Kind), s.Axis)
	if s.Rounds == 0 {
		n.Urgency = math.Log2(StartSize / fineSize)
		n.Text = wording.Untried(name, skill)
		return n
	}
	n.Share = float64(s.Right) / float64(s.Rounds)
	n.Overdue = int(at.Sub(s.Repeat.Due).Hours() / 24)
	size, _, known := s.Stairs.Threshold()
	if known {
		n.Threshold = size
	} else {
		size = s.Stairs.Next()
	}
	n.Urgency = max(0, math.Log2(size/fineSize))
	if !known {
		n.Urgency *= missed(s)
	}
	n.Urgency += max(0, float64(n.Overdue)) / 7
	n.Text = wording.Notices(name, skill, size, s.Right, s.Rounds)
	if s.Kind == KindGuess {
		n.Text = wording.Guesses(name, Steps(s.Kind, size), s.Right, s.Rounds)
	}
	if !known {
		n.Text += wording.Unsure
	}
	if n.Overdue > 0 {
		n.Text += wording.Overdue(n.Overdue)
	}
	return n
}
