package habit

import (
	"math"
	"slices"
)

// sample is one amount that a proven drink carries, as it is read.
type sample struct {
	at      float64 // logarithm of the amount
	lift    float64 // e^(at ÷ reach)
	drink   int     // of the book
	profile int     // of the shelf
	lead    float64 // how surely the drink is made of it first
	sure    float64 // how surely the drink has it; of a range alone
}

// Reaches: by what factor, as a logarithm, good drinks go beyond one that is known:
// of those that pour more than it, a share of 1/e pours e^reach times as much. Chosen
// by leaving out each proven drink in turn, see the trial.
const (
	closeReach = 0.20 // of what seasons, thickens or flavours, and of senses
	wideReach  = 0.30 // of what the ratio tells too
)

func sampleOf(amount float64, drink int, reach float64) sample {
	at := math.Log(amount)
	return sample{at: at, lift: math.Exp(at / reach), drink: drink}
}

// tail weighs samples, to tell how much all but a few good drinks stay below.
type tail struct {
	weights []float64 // of each sample; 0 for those that have no say
	total   float64
	middle  float64 // Σ weight × at
}

// tailOf weighs samples, given the weight of each and its logarithm.
func tailOf(weights, at []float64) tail {
	total, middle := 0.0, 0.0
	for i, w := range weights {
		total += w
		middle += w * at[i]
	}
	return tail{weights: weights, total: total, middle: middle}
}

func (t *tail) add(i int, at, weight float64) {
	t.weights[i] = weight
	t.total += weight
	t.middle += weight * at
}

// most returns the logarithm y of the amount that all but a share rare of good
// drinks stay below,
//
//	Σ wᵢ min(1, e^((yᵢ − y) ÷ reach)) = rare · Σ wᵢ.
//
// Each known drink stands for others that pour as much or somewhat more, so one
// drink alone allows e^(reach · ln(1/rare)) times its own amount, and many alike
// allow hardly more than the largest of them; one that is far from all the others
// counts for no more than its own weight. It is −Inf without weights.
//
// The lifts are those of the samples that the weights are of, in ascending order; below is
// room for as many numbers.
func (t *tail) most(lifts []float64, rare, reach float64, below []float64) float64 {
	var sum float64 // of each sample and those under it, weights times lifts
	for i, w := range t.weights {
		sum += w * lifts[i]
		below[i] = sum
	}
	above := 0.0 // weight of samples over y
	for i := len(lifts) - 1; i >= 0; i-- {
		w := t.weights[i]
		if w <= 0 {
			continue
		}
		if above+below[i]/lifts[i] >= rare*t.total {
			return reach * math.Log(below[i]/(rare*t.total-above))
		}
		above += w
	}
	return math.Inf(-1)
}

// columns are samples in ascending order, a list for each of what is known of them: a judged
// drink goes through many of them, and reads little of each.
type columns struct {
	at, lift []float64
	drink    []int32
}

func columnsOf(sorted []sample) columns {
	c := columns{at: make([]float64, len(sorted)), lift: make([]float64, len(sorted)), drink: make([]int32, len(sorted))}
	for i := range sorted {
		x := &sorted[i]
		c.at[i], c.lift[i], c.drink[i] = x.at, x.lift, int32(x.drink)
	}
	return c
}

// sortSamples brings samples into ascending order; equals keep theirs.
func sortSamples(s []sample) {
	type place struct {
		at    float64
		order int
	}
	places := make([]place, len(s))
	for i := range s {
		places[i] = place{s[i].at, i}
	}
	slices.SortFunc(places, func(x, y place) int {
		switch {
		case x.at < y.at:
			return -1
		case x.at > y.at:
			return 1
		}
		return x.order - y.order
	})
	unsorted := slices.Clone(s)
	for i, p := range places {
		s[i] = unsorted[p.order]
	}
}
