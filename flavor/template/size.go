package template

import "math"

// A ratio alone cannot tell too much of one part from too little of all the
// others. What can is how big such drinks are. All common practice, but for the spread,
// which a test holds against the proven drinks.
const (
	usualSizeML     = 100.0 // mL of a drink before ice
	usualSizeDrinks = 4.0   // how many drinks that counts for
	sizeSpread      = 0.25  // log standard deviation within a family
	// anySize is the share of drafts that are not for one glass, such as a
	// batch: for them size says nothing, over a range of anySizeRange logs.
	anySize      = 0.1
	anySizeRange = 8.0
)

// UsualSize returns the logarithm of how many mL a family's drinks are.
func UsualSize(relatives []Relative) float64 {
	sum := usualSizeDrinks * math.Log(usualSizeML)
	for i := range relatives {
		sum += relatives[i].Size
	}
	return sum / (usualSizeDrinks + float64(len(relatives)))
}

// SizeDensity returns the logarithm of how usual a size is, given its
// logarithm and that of the usual one.
func SizeDensity(size, usual float64) float64 {
	x := (size - usual) / sizeSpread
	return math.Log((1-anySize)*math.Exp(-x*x/2)/(sizeSpread*math.Sqrt(2*math.Pi)) + anySize/anySizeRange)
}

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

// OverSize returns the squared distance that a drink's size adds, given the
// logarithms of its mL and of the usual mL of its kind.
func OverSize(size, usual float64) float64 {
	over := size - usual - sizeFree
	if over <= 0 {
		return 0
	}
	glass := (logBatch - (size - usual)) / (logBatch - logBatchFrom) // 1 and more for a glass, 0 and less for a batch
	over *= min(1, max(0, glass)) / sizeSpread
	return sizeWeight * over * over
}

// OverSizes returns between what squared distances a size lies, given its
// logarithm, with any of the usual sizes of the hull.
func (h *Hull) OverSizes(size float64) (least, most float64) {
	least, most = OverSize(size, h.Largest), OverSize(size, h.Smallest)
	if size-h.Smallest > logBatchFrom && h.Smallest < h.Largest { // perhaps a batch
		return 0, mostOverSize
	}
	return least, most
}
