package weigh

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// A drink much larger than its kind has something poured twice. A small one is
// another matter: bars pour half measures. From some size on a spec is not for
// one glass but for a batch, and its size says nothing. Common practice; the
// weight was chosen by the trial.
const (
	// mostOverSize is what a size adds at most.
	mostOverSize = 20.0

	sizeFree   = 0.1  // log of the size over the usual that is free
	sizeWeight = 0.75 // of the size against a part of the ratio
	batchFrom  = 3.5  // times the usual; from here a spec may be a batch
	batch      = 5.0  // from here it is one
)

var logBatchFrom, logBatch = math.Log(batchFrom), math.Log(batch)

// overSize returns the squared distance that a drink's size adds, given the
// logarithms of its mL and of the usual mL of its kind.
func overSize(size, usual float64) float64 {
	over := size - usual - sizeFree
	if over <= 0 {
		return 0
	}
	glass := (logBatch - (size - usual)) / (logBatch - logBatchFrom) // 1 and more for a glass, 0 and less for a batch
	over *= min(1, max(0, glass)) / sizeSpread
	return sizeWeight * over * over
}

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
