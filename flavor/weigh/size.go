package weigh

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// tellingSize is the share of a squared edge from which size is worth telling.
const tellingSize = 0.3

// oversized tells of a drink, as it was last placed, whose size has a part in what
// is wrong with it. What would be usual is the bound.
func (b *Build) oversized(ml []float64, j *Judgement) {
	i := b.likeliest()
	x := b.fits[i].Size / b.fits[i].Unknown / b.model(i).Edge
	told := slices.ContainsFunc(j.Bounds, func(o OutOfBounds) bool { return o.Axis == ratio.Volume && o.Edges >= 1 })
	if x < tellingSize || told {
		return
	}
	g := b.glass(ml, &j.Equivalents)
	j.Bounds = append(j.Bounds, OutOfBounds{Axis: ratio.Volume, High: true, Amount: g.ml, Bound: g.ml * math.Exp(b.centre(i).Size) / floats.Sum(ml), Edges: max(1, x)})
}

// UsualML returns how many mL of pours a drink of the likeliest kind has.
func (b *Build) UsualML(ml []float64) float64 {
	e := b.Equivalents(ml)
	signals := makeup.SignalsOf(b.spec, b.parts, ml)
	b.place(&e, floats.Sum(ml), &signals)
	return math.Exp(b.centre(b.likeliest()).Size)
}
