package api

import (
	"math"
)

// Decimals that served numbers keep. They are fewer than the arithmetic has,
// and no more than the plus-or-minus leaves room for.
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

// round returns x with so many decimals, and never a negative zero.
func round(x float64, digits int) float64 {
	p := math.Pow10(digits)
	return math.Round(x*p)/p + 0
}

// roundScore rounds a score of 0 to 100 down, so that no draft that is short of
// balanced is shown with the score of one that is.
func roundScore(x float64) float64 {
	p := math.Pow10(digitsScore)
	return math.Floor(x*p)/p + 0
}

// list returns the slice that f makes of each element; it is never nil, since
// lists are served as [] and not as null.
func list[A, B any](in []A, f func(A) B) []B {
	out := make([]B, len(in))
	for i := range in {
		out[i] = f(in[i])
	}
	return out
}
