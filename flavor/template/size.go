package template

import "math"

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
	over /= sizeSpread
	return sizeWeight * over * over * min(1, max(0, glass))
}

// unknownness returns by how much the squared spread of a kind of drink grows
// where few drinks of its make-up are proven, near of them by likeness: the local
// centre is then a mean of few, and what is odd strays further. Chosen by the
// trial.
func unknownness(near float64) float64 { return 1 + (mostUnknown-1)*0.5/(0.5+near) }

// mostUnknown is what it is where nothing alike is proven.
const mostUnknown = 2.0
