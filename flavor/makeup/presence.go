package makeup

import "math"

// Presence turns an amount into how surely it is there, near 1 from a tenth of
// the drink and falling smoothly to 0 with the amount.
func Presence(amount, total, half float64) float64 {
	if amount <= 0 || total <= 0 {
		return 0
	}
	return amount / (amount + half*total)
}

// The share of a drink at which something counts half. A splash of what lengthens
// makes no long drink.
const (
	HalfLiquid    = 0.01
	halfSeasoning = 0.0005 // dashes and leaves
	HalfLength    = 0.05   // what lengthens
	HalfWater     = 0.12
	HalfWine      = 0.02
)

// Certainty is presence, falling off faster: below half of it little is sure.
func Certainty(amount, total, half float64) float64 {
	x := Presence(amount, total, half)
	return x * x / (x*x + (1-x)*(1-x))
}

// Ramp rises from 0 at from to 1 at to.
func Ramp(x, from, to float64) float64 { return math.Min(1, math.Max(0, (x-from)/(to-from))) }
