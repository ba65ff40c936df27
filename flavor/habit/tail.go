package habit

import (
	"cmp"
	"math"
	"slices"
)

// sample is one amount that a proven drink carries.
type sample struct {
	at    float64 // logarithm of the amount
	lift  float64 // e^(at ÷ reach)
	drink int     // of the book; common for what common practice says of the class
	pour  int     // of the shelf's pours
}

// common marks a sample that no drink stands behind.
const common = -1

// reach is by what factor, as a logarithm, good drinks go beyond one that is
// known: of those that pour more than it, a share of 1/e pours e^reach times as
// much. Chosen by leaving out each proven drink in turn, see the trial.
const reach = 0.20

func sampleOf(amount float64, drink, pour int) sample {
	at := math.Log(amount)
	return sample{at: at, lift: math.Exp(at / reach), drink: drink, pour: pour}
}

// mostOf returns the logarithm y of the amount that all but a share rare of good
// drinks stay below,
//
//	Σ wᵢ min(1, e^((yᵢ − y) ÷ reach)) = rare · Σ wᵢ,
//
// for samples in ascending order and their weights. Each known drink stands for
// others that pour as much or somewhat more, so one drink alone allows e^(reach ·
// ln(1/rare)) times its own amount, and many alike allow hardly more than the
// largest of them; one that is far from all the others counts for no more than its
// own weight. It is −Inf without weights.
func mostOf(samples []sample, weights []float64, rare float64) float64 {
	var total, sum float64
	below := make([]float64, len(samples)) // of the samples up to each, weights times lifts
	for i, w := range weights {
		total += w
		sum += w * samples[i].lift
		below[i] = sum
	}
	above := 0.0 // weight of samples over y
	for k := len(samples) - 1; k >= 0 && total > 0; k-- {
		if above+below[k]/samples[k].lift >= rare*total {
			return reach * math.Log(below[k]/(rare*total-above))
		}
		above += weights[k]
	}
	return math.Inf(-1)
}

// sortSamples brings samples into ascending order; equals keep theirs.
func sortSamples(s []sample) {
	slices.SortStableFunc(s, func(x, y sample) int { return cmp.Compare(x.at, y.at) })
}
