package weigh

import (
	"cmp"
	"slices"
	"strings"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/template"
)

// Judgement is how a drink sits among the families.
type Judgement struct {
	Score       float64
	Ratio       float64 // the score by the ratio alone, as far as Excused leaves it, see Excuse
	Excused     float64 // how surely no proportion is near the edge of its precedents, 0 to 1
	Fits        []Fit   // the most probable first
	Equivalents ratio.Equivalents
	// Pulls is what may be wrong with it if one thing is, the likeliest first;
	// Then is what may still be, once the first is mended, as long as that
	// alone does not balance the drink. Nothing is wrong with a balanced one.
	Pulls, Then []Pull
	// Beyond is what it carries more of than good drinks do, Bounds what no drink
	// has, Method what is wrong with how it is made; nothing if it is balanced.
	Beyond []Beyond
	Bounds []OutOfBounds
	Method []technique.Misstep
	// Uneven is what is too much or too little to the rest; nothing if it is balanced.
	Uneven Uneven
	// Together is true if neither its ratio nor what it carries nor its proportions take
	// the drink out of balance by themselves, but together they do.
	Together bool
}

// TellingTogether is how far out something is, in edges, from where it is worth telling
// of a drink that is out of balance by both together.
const TellingTogether = 0.3

// RatioEdges returns how far out the drink is by its ratio, 1 at the edge.
func (j *Judgement) RatioEdges() float64 { return edgesAt(j.Ratio) }

// Fit is how a drink sits in one family.
type Fit struct {
	ID, Name string
	// Probability that the drink belongs to the family, 0 to 1.
	Probability float64
	// Score is 100 at the family's centre and 70 at the edge of its
	// good drinks.
	Score float64
	// Stray is how far from the centre it lies, as the family's good drinks stray.
	Stray Stray
}

// Tail returns the share of the family's good drinks that sit further out, 0 to 1.
func (f *Fit) Tail() float64 { return f.Stray.Tail() }

// Stray is a squared distance from the centre of a family whose good drinks are
// spread as a Student t of so many coordinates and degrees of freedom.
type Stray struct {
	Squared     float64
	Coordinates int
	Freedom     float64
}

// Tail returns the share of good drinks that stray further, 0 to 1. To work it out
// takes as long as to place a drink in a dozen families, so nobody does who is not
// asked.
func (s Stray) Tail() float64 { return template.TailOf(s.Squared, s.Coordinates, s.Freedom) }

// Judge judges the drink with other amounts in full.
func (b *Build) Judge(ml []float64) Judgement {
	j := Judgement{Equivalents: b.Equivalents(ml)}
	signals := makeup.SignalsOf(b.spec, b.parts, ml)
	b.place(&j.Equivalents, floats.Sum(ml), &signals)
	mean := b.mean()
	uneven, excused := b.unevenEdges(ml)
	j.Ratio, j.Excused = Excuse(mean, excused), excused
	habit, bound := b.habitEdges(ml), b.boundEdges(ml, &j.Equivalents)
	j.Score = together(j.Ratio, habit, uneven, bound)
	j.Together = VerdictOf(j.Score) != Balanced && VerdictOf(j.Ratio) == Balanced && max(habit, uneven, bound) < 1 // else one of them does
	j.Fits = make([]Fit, 0, len(b.active))
	for _, i := range b.byProbability() {
		m := b.model(i)
		j.Fits = append(j.Fits, Fit{ID: m.ID, Name: m.Name, Probability: b.logits[i], Score: scoreOf(m.Edges(&b.fits[i])),
			Stray: Stray{Squared: b.fits[i].Squared, Coordinates: len(m.Fitted.Centre), Freedom: m.Fitted.Freedom}})
	}
	if VerdictOf(j.Score) != Balanced {
		j.Uneven = b.uneven(ml)
		b.beyond(ml, func(x *Beyond) { j.Beyond = append(j.Beyond, *x) })
		b.bounds(ml, &j.Equivalents, func(x OutOfBounds) { j.Bounds = append(j.Bounds, x) })
		technique.MisstepsOf(b.spec, b.parts, ml, b.Forgotten().Stirred, func(x technique.Misstep) { j.Method = append(j.Method, x) })
	}
	if VerdictOf(j.Ratio) != Balanced {
		b.oversized(ml, &j)
	}
	if VerdictOf(j.Ratio) != Balanced || j.Together && edgesAt(j.Ratio) >= TellingTogether || j.Uneven.Edges > max(1, j.Uneven.Told) {
		j.Pulls, j.Then = b.whatIsWrong(floats.Sum(ml), &j.Equivalents, &signals)
	}
	return j
}

// byProbability returns the places of the active families, the most probable first, as the
// drink was last placed.
func (b *Build) byProbability() []int {
	order := sized(&b.desk.order, len(b.active))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(x, y int) int {
		return cmp.Or(cmp.Compare(b.logits[y], b.logits[x]), strings.Compare(b.model(x).ID, b.model(y).ID))
	})
	return order
}
