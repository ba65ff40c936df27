package shape

import (
	"math"
)

// Decimals of the numbers in answers: fewer than the arithmetic has, and no more than the
// stated plus-or-minus justifies.
const (
	digitsML          = 2 // millilitres, equivalents and the ratios of families
	digitsPct         = 2 // strength and dilution, in per cent
	digitsPer100      = 2 // grams of sugar per 100 mL
	digitsAcidPer100  = 3 // grams of acid per 100 mL
	digitsGPerL       = 2
	digitsBitter      = 1 // mg/L
	digitsGrams       = 2
	digitsKcal        = 1
	digitsCelsius     = 1
	digitsAroma       = 2
	digitsScore       = 1 // rounded down, so that 70.0 is balanced
	digitsFit         = 1
	digitsDeviation   = 1 // just-noticeable differences of a fault
	digitsJND         = 2 // just-noticeable differences of a drink
	digitsProbability = 3
	digitsSearch      = 4
	digitsLikeness    = 4
	digitsCloudy      = 2
	digitsSense       = 3
	digitsDensity     = 4
	digitsServings    = 2
	digitsStep        = 4 // of the arithmetic of a score
)

// round rounds x to a number of decimals. It never returns negative zero.
func round(x float64, digits int) float64 {
	p := math.Pow10(digits)
	return math.Round(x*p)/p + 0
}

// roundScore rounds a score of 0 to 100 down, so that a draft just short of balanced
// never shows the score of a balanced one.
func roundScore(x float64) float64 {
	p := math.Pow10(digitsScore)
	return math.Floor(x*p)/p + 0
}

// list applies f to each element. It never returns nil, because lists are served as []
// and not as null.
func list[A, B any](in []A, f func(A) B) []B {
	out := make([]B, len(in))
	for i := range in {
		out[i] = f(in[i])
	}
	return out
}
