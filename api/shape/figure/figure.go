// Package figure says how the figures and lists of an answer stand in its JSON: to how many
// decimals, and never null.
package figure

import "math"

// Decimals of the numbers in answers: fewer than the arithmetic has, and no more than the
// stated plus-or-minus justifies.
const (
	ML          = 2 // millilitres, equivalents and the ratios of families
	Pct         = 2 // strength and dilution, in per cent
	Per100      = 2 // grams of sugar per 100 mL
	AcidPer100  = 3 // grams of acid per 100 mL
	GPerL       = 2
	Bitter      = 1 // mg/L
	Grams       = 2
	Kcal        = 1
	Celsius     = 1
	Aroma       = 2
	Score       = 1 // rounded down, so that 70.0 is balanced
	Fit         = 1
	Deviation   = 1 // just-noticeable differences of a fault
	JND         = 2 // just-noticeable differences of a drink
	Probability = 3
	Search      = 4
	Likeness    = 4
	Cloudy      = 2
	Sense       = 3
	Density     = 4
	Servings    = 2
	Step        = 4 // of the arithmetic of a score
	Share       = 1 // of a whole, in per cent
	Factor      = 3 // by which something is multiplied
	Batch       = 1 // mL and grams of a batch
	Marks       = 2 // of a jug and a scale, to which these are rounded already
	Cost        = 2 // in any currency
)

// Round rounds x to a number of decimals. It never returns negative zero.
func Round(x float64, digits int) float64 {
	p := math.Pow10(digits)
	return math.Round(x*p)/p + 0
}

// RoundDown rounds a score of 0 to 100 down, so that a draft just short of balanced
// never shows the score of a balanced one.
func RoundDown(x float64) float64 {
	p := math.Pow10(Score)
	return math.Floor(x*p)/p + 0
}

// List applies f to each element. It never returns nil, because lists are served as []
// and not as null.
func List[A, B any](in []A, f func(A) B) []B {
	out := make([]B, len(in))
	for i := range in {
		out[i] = f(in[i])
	}
	return out
}
