package makeup

import "math"

// Falloffs puts e^−x in place of each number x, which is 0 or more. It is exact to some 1e-14 of
// the result, and takes a quarter of the time of [math.Exp]: judging a drink asks for it some
// thousand times, once or twice for each proven drink. It takes 2^(−j/64) from a table and the rest, which is
// small, from a series (Tang, ACM Transactions on Mathematical Software 15:144, 1989).
func Falloffs(numbers []float64) {
	for i, x := range numbers {
		if !(x >= 0 && x < mostFalloff) {
			numbers[i] = math.Exp(-x)
			continue
		}
		k := uint(x*(falloffSteps/math.Ln2) + 0.5)
		r := float64(k)*(math.Ln2/falloffSteps) - x // at most half a step
		series := r * (1 + r*(1.0/2+r*(1.0/6+r*(1.0/24+r*(1.0/120)))))
		root := roots[k%falloffSteps]
		numbers[i] = (root + root*series) * math.Float64frombits(uint64(exponentBias-k/falloffSteps)<<mantissaBits)
	}
}

// Falloff is [Falloffs] of one number.
func Falloff(x float64) float64 {
	one := [1]float64{x}
	Falloffs(one[:])
	return one[0]
}

const (
	falloffSteps = 64   // of the table, to a factor of two
	mostFalloff  = 40.0 // where it is left to math.Exp

	// A float64 that is a power of two is the exponent, with this bias, above so many bits.
	exponentBias, mantissaBits = 1023, 52
)

// roots are 2^(−j/falloffSteps).
var roots = func() (out [falloffSteps]float64) {
	for j := range out {
		out[j] = math.Exp2(-float64(j) / falloffSteps)
	}
	return out
}()
