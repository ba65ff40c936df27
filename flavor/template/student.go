package template

import (
	"gonum.org/v1/gonum/stat/distuv"
)

// centralShare is the share of a family's good drinks inside its edge.
const centralShare = 0.90

// If z is a multivariate Student t of k coordinates and ν degrees of freedom,
// its squared Mahalanobis distance over k has the F distribution with k and ν
// degrees (Kotz and Nadarajah, Multivariate t Distributions, 2004, section 1.2).
func ratioOf(k int, freedom float64) distuv.F {
	return distuv.F{D1: float64(k), D2: freedom}
}

// tailOf returns the probability of a squared distance of d2 or more.
func tailOf(d2 float64, k int, freedom float64) float64 {
	if d2 <= 0 {
		return 1
	}
	return ratioOf(k, freedom).Survival(d2 / float64(k))
}

// edgeOf returns the squared distance that the central share stays within.
func edgeOf(k int, freedom float64) float64 {
	return float64(k) * ratioOf(k, freedom).Quantile(centralShare)
}
