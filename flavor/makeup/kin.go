package makeup

import (
	"slices"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"

	"counterpour/flavor"
)

// Kinships is many drinks' places in ingredient space, laid out so that one drink is held
// against all of them at once, which a score does for every family.
type Kinships struct {
	drinks  int
	byClass [][]drinkWeight // of each class, the drinks that have it
	aroma   []float64       // a row of flavor.NumFamilies for each drink
}

// drinkWeight is how much of a drink is of a class.
type drinkWeight struct {
	drink  int
	weight float64
}

// Grow makes room for so many more drinks, so that as many can be added in one place.
func (k *Kinships) Grow(drinks int) {
	k.aroma = slices.Grow(k.aroma, drinks*flavor.NumAromaFamilies)
}

// Add lays a drink beside those that are there.
func (k *Kinships) Add(drink Kinship) {
	for _, c := range drink.classes {
		for len(k.byClass) <= c.class {
			k.byClass = append(k.byClass, nil)
		}
		k.byClass[c.class] = append(k.byClass[c.class], drinkWeight{k.drinks, c.weight})
	}
	k.aroma = append(k.aroma, drink.aroma[:]...)
	k.drinks++
}

// Drinks is how many drinks are laid out.
func (k *Kinships) Drinks() int { return k.drinks }

// Cosines returns the cosine of the angle between a drink and each of the kin, in a
// list of so many zeros.
func (k *Kinships) Cosines(of *Kinship, out []float64) []float64 {
	if len(out) == 0 {
		return out
	}
	for _, c := range of.classes {
		if c.class >= len(k.byClass) {
			continue
		}
		for _, x := range k.byClass[c.class] {
			out[x.drink] += c.weight * x.weight
		}
	}
	aromas := blas64.General{Rows: len(out), Cols: flavor.NumAromaFamilies, Stride: flavor.NumAromaFamilies, Data: k.aroma}
	blas64.Gemv(blas.NoTrans, 1, aromas, vector(of.aroma[:]), 1, vector(out))
	return out
}

func vector(x []float64) blas64.Vector { return blas64.Vector{N: len(x), Inc: 1, Data: x} }
