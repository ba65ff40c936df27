package cover

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// ideal returns how near any amounts of the parts could come, pourable or not,
// each from nothing to the most that would be poured, with every other pour
// that may move free within a step.
func (t *task) ideal(parts []int) (float64, error) {
	moves := t.columns
	a := mat.NewDense(numRows, len(parts)+len(moves), nil)
	low, high := make([]float64, len(parts)+len(moves)), make([]float64, len(parts)+len(moves))
	column := func(j int, v *vector, scale float64) {
		for i := range v {
			a.Set(i, j, v[i]*scale)
		}
	}
	for k, i := range parts {
		c := &t.cands[i]
		column(k, &c.per, c.amounts[len(c.amounts)-1].ml)
		high[k] = 1
	}
	for k := range moves {
		column(len(parts)+k, &moves[k], 1)
		low[len(parts)+k], high[len(parts)+k] = -1, 1
	}
	_, square, err := BoundedLeastSquares(a, t.gap[:], low, high)
	return math.Sqrt(square), err
}
