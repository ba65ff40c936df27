package template

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// centralShare is the share of a family's good drinks inside its edge. Some nine in
// ten of drinks that the family has not seen lie inside it, see the trial: they
// stray further than those it was fitted to, and are taken for other kinds.
const centralShare = 0.99

// aloneShare is the same for what a slip of one axis would explain, in each axis:
// chosen by the trial.
const aloneShare = 0.9865

// If z is a multivariate Student t of k coordinates and ν degrees of freedom,
// its squared Mahalanobis distance over k has the F distribution with k and ν
// degrees (Kotz and Nadarajah, Multivariate t Distributions, 2004, section 1.2).
func ratioOf(k int, freedom float64) distuv.F {
	return distuv.F{D1: float64(k), D2: freedom}
}

// SlipEdge returns the squared distance at which a drink of the family that one part
// alone has taken out of balance scores 70, where as many like it are proven as usual.
func (f *Fitted) SlipEdge() float64 { return edgeOf(1, f.Freedom, aloneShare) }

// TailOf returns the probability of a squared distance of d2 or more.
func TailOf(d2 float64, k int, freedom float64) float64 {
	if d2 <= 0 {
		return 1
	}
	return ratioOf(k, freedom).Survival(d2 / float64(k))
}

// edgeOf returns the squared distance that a share stays within.
func edgeOf(k int, freedom, share float64) float64 {
	return float64(k) * ratioOf(k, freedom).Quantile(share)
}

// peakOf returns the logarithm of the density at the centre of a Student t of
// k coordinates whose scale matrix has determinant one.
func peakOf(k int, freedom float64) float64 {
	above, _ := math.Lgamma((freedom + float64(k)) / 2)
	below, _ := math.Lgamma(freedom / 2)
	return above - below - float64(k)/2*math.Log(freedom*math.Pi)
}
