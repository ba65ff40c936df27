package makeup

import (
	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"

	"counterpour/flavor"
)

// Kinships is many drinks' places in ingredient space, laid out so that one drink is held
// against all of them at once, which a score does for every family.
type Kinships struct {
	classes [][]classWeight // of each drink
	width   int             // one more than the largest class
	aroma   []float64       // a row of flavor.NumFamilies for each drink
}

// Add lays a drink beside those that are there.
func (k *Kinships) Add(drink Kinship) {
	k.classes = append(k.classes, drink.classes)
	for _, c := range drink.classes {
		k.width = max(k.width, c.class+1)
	}
	k.aroma = append(k.aroma, drink.aroma[:]...)
}

// Drinks is how many drinks are laid out.
func (k *Kinships) Drinks() int { return len(k.classes) }

// Cosines returns the cosine of the angle between a drink and each of the kin, in a
// list of so many zeros.
func (k *Kinships) Cosines(of *Kinship, out []float64) []float64 {
	if len(out) == 0 {
		return out
	}
	weight := make([]float64, k.width)
	for _, c := range of.classes {
		if c.class < len(weight) {
			weight[c.class] = c.weight
		}
	}
	for i, classes := range k.classes {
		for _, c := range classes {
			out[i] += weight[c.class] * c.weight
		}
	}
	aromas := blas64.General{Rows: len(out), Cols: flavor.NumFamilies, Stride: flavor.NumFamilies, Data: k.aroma}
	blas64.Gemv(blas.NoTrans, 1, aromas, vector(of.aroma[:]), 1, vector(out))
	return out
}

func vector(x []float64) blas64.Vector { return blas64.Vector{N: len(x), Inc: 1, Data: x} }
