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

// Detail is the arithmetic of one score, from the pours to the mean.
type Detail struct {
	Pours       []ratio.Equivalents // what each pour of the spec counts as, in mL
	Sum         ratio.Equivalents   // of the pours
	Equivalents ratio.Equivalents   // the same, length below nothing taken as none
	TotalML     float64             // of the equivalents
	Share       ratio.Equivalents   // of the total, 0 to 1
	Families    []FamilyDetail
	Mean        float64 // Σ probability × score over the families
	Excused     float64 // how surely no proportion is near the edge of its precedents, 0 to 1
	Ratio       float64 // of Mean, as far as Excused leaves it, see Excuse
	Beyond      []Beyond
	Uneven      Uneven
	Bounds      []OutOfBounds
	Method      []technique.Misstep
	Score       float64 // of Ratio, the worst of Beyond and Uneven together, or what the other two leave if that is less
}

// FamilyDetail is the arithmetic of one family; families come the most
// probable first.
type FamilyDetail struct {
	ID, Name string
	Axes     []ratio.Axis
	Drinks   int // how many proven drinks the family rests on
	// Part is the drink's share of each of the family's axes; Floor is added to
	// it before logarithms are taken, so that none at all counts as very
	// little. Centre is the ratio that good drinks of this make-up have,
	// summing to 1, with Floor in it.
	Part, Centre []float64
	Floor        ratio.Equivalents // of each axis
	Coordinates  []template.Coordinate
	Excess       []Excess
	// Size is the squared distance that a large drink has on top; Unknown is what
	// all of it is divided by, since what few proven drinks are like may stray
	// further: 1 where many are.
	Size, Unknown float64
	SquaredEdge   float64 // squared distance that almost no good drink of it lies beyond
	SquaredAway   float64 // squared distance of this drink
	// Slip is the axis that would explain most of the distance if it alone went
	// wrong; SlipAway is how much of it that is, with the size and over Unknown, and
	// SlipEdge the edge of that.
	Slip               ratio.Axis
	SlipAway, SlipEdge float64
	Edges              float64 // the larger of SquaredAway ÷ SquaredEdge and SlipEdges
	Score              float64 // 100 · 0.7^Edges
	MakeUp             float64 // log-odds by what is in it and how it is served
	Ratio              float64 // log-odds by its ratio
	Probability        float64 // e^(MakeUp + Ratio), over the sum of that for all families
}

// Excess is an axis that the family lacks and the drink has more of than the
// family's good drinks.
type Excess struct {
	Axis      ratio.Axis
	Share     float64
	Allowance float64 // what nine in ten of the family's drinks stay below
	Unit      float64 // how much more counts as one edge
	Edges     float64 // (Share − Allowance) ÷ Unit; SquaredEdge times its square adds to the distance
}

// SlipEdges returns what a slip of one axis explains, and the excess, over the edge.
func (f *FamilyDetail) SlipEdges() float64 {
	edges := f.SlipAway / f.SlipEdge
	for _, x := range f.Excess {
		edges += x.Edges * x.Edges / f.Unknown
	}
	return edges
}

// Detail works out the score of the drink with other amounts, step by step.
// Its score is that of Score, to the last bit.
func (b *Build) Detail(ml []float64) Detail {
	d := Detail{Pours: make([]ratio.Equivalents, len(ml)), Sum: b.unfloored(ml), Equivalents: b.Equivalents(ml)}
	for i := range b.parts {
		for _, p := range b.parts[i].Pours {
			d.Pours[p].Add(&b.parts[i].Per, ml[p])
		}
	}
	signals := makeup.SignalsOf(b.spec, b.parts, ml)
	b.place(&d.Equivalents, floats.Sum(ml), &signals)
	d.Mean = b.mean()
	d.Uneven = b.uneven(ml)
	_, d.Excused = b.unevenEdges(ml)
	d.Ratio = Excuse(d.Mean, d.Excused)
	d.Score = together(d.Ratio, b.habitEdges(ml), d.Uneven.Edges, b.boundEdges(ml, &d.Equivalents))
	b.beyond(ml, func(x *Beyond) { d.Beyond = append(d.Beyond, *x) })
	b.bounds(ml, &d.Equivalents, func(x OutOfBounds) { d.Bounds = append(d.Bounds, x) })
	technique.MisstepsOf(b.spec, b.parts, ml, b.Forgotten().Stirred, func(x technique.Misstep) { d.Method = append(d.Method, x) })
	shares := ratio.SharesOf(&d.Equivalents)
	d.TotalML, d.Share = d.Equivalents.Total(), shares.Part
	for i := range b.active {
		f := b.detailOf(i, &shares)
		f.MakeUp = b.voices[i].logit(&signals)
		f.Ratio = b.set.tuning.FitWeight * b.model(i).Compat(f.SquaredAway)
		d.Families = append(d.Families, f)
	}
	slices.SortStableFunc(d.Families, func(x, y FamilyDetail) int {
		return cmp.Or(cmp.Compare(y.Probability, x.Probability), strings.Compare(x.ID, y.ID))
	})
	return d
}

// detailOf tells how the drink as it was last placed sits in one family.
func (b *Build) detailOf(i int, s *ratio.Shares) FamilyDetail {
	m, fit := b.model(i), &b.fits[i]
	f := FamilyDetail{ID: m.ID, Name: m.Name, Axes: slices.Clone(m.Axes), Drinks: m.Fitted.Drinks, Floor: ratio.Floors,
		Size: fit.Size, Unknown: fit.Unknown, SquaredEdge: m.Edge, SquaredAway: fit.Squared, Slip: fit.Axis, SlipAway: fit.Slip, SlipEdge: m.Alone, Edges: m.Edges(fit), Score: scoreOf(m.Edges(fit)), Probability: b.logits[i]}
	logs := make([]float64, len(m.Axes))
	for k, a := range m.Axes {
		f.Part = append(f.Part, s.Part[a])
		logs[k] = s.Log[a]
	}
	f.Centre = m.Basis.FromCoordinates(b.centre(i).Coords[:len(m.Axes)-1])
	for j, z := range m.Basis.FromLogs(logs) {
		f.Coordinates = append(f.Coordinates, m.Coordinate(j, z, b.centre(i).Coords[j], fit))
	}
	for a, x := range fit.Excess {
		if x > 0 {
			f.Excess = append(f.Excess, Excess{Axis: ratio.Axis(a), Share: s.Part[a], Allowance: m.Fitted.Allowance[a],
				Unit: b.set.tuning.ExcessWidth, Edges: x})
		}
	}
	return f
}
