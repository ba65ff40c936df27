package cover

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// projectedGradient is an independent solver: accelerated projected gradient
// with restarts (Beck and Teboulle, SIAM J Imaging Sci 2:183, 2009), run until
// nothing moves any more.
func projectedGradient(a *mat.Dense, b, low, high []float64) float64 {
	_, n := a.Dims()
	var gram mat.SymDense
	gram.SymOuterK(1, a.T())
	var atb mat.VecDense
	atb.MulVec(a.T(), mat.NewVecDense(len(b), b))
	lipschitz := mat.Norm(&gram, 2)
	clamp := func(v float64, j int) float64 { return math.Min(math.Max(v, low[j]), high[j]) }
	x, y := make([]float64, n), make([]float64, n)
	for j := range x {
		x[j] = clamp(0, j)
	}
	copy(y, x)
	t := 1.0
	for range 200000 {
		var g mat.VecDense
		g.MulVec(&gram, mat.NewVecDense(n, y))
		next := make([]float64, n)
		var moved, forward float64
		for j := range next {
			next[j] = clamp(y[j]-(g.AtVec(j)-atb.AtVec(j))/lipschitz, j)
			moved = math.Max(moved, math.Abs(next[j]-x[j]))
			forward += (y[j] - next[j]) * (next[j] - x[j])
		}
		tn := (1 + math.Sqrt(1+4*t*t)) / 2
		if forward > 0 { // the momentum points uphill: start it again
			tn = 1
		}
		for j := range y {
			y[j] = next[j] + (t-1)/tn*(next[j]-x[j])
			if tn == 1 {
				y[j] = next[j]
			}
		}
		x, t = next, tn
		if moved < 1e-15 {
			break
		}
	}
	var r mat.VecDense
	r.MulVec(a, mat.NewVecDense(n, x))
	var square float64
	for i, v := range b {
		square += (v - r.AtVec(i)) * (v - r.AtVec(i))
	}
	return square
}

func TestBoundedLeastSquaresAgainstAnIndependentSolver(t *testing.T) {
	const tolerance = 1e-6
	rng := rand.New(rand.NewPCG(7, 11))
	for round := range 1000 {
		n := 1 + rng.IntN(7)
		rows := n + rng.IntN(26)
		a := mat.NewDense(rows, n, nil)
		b, low, high := make([]float64, rows), make([]float64, n), make([]float64, n)
		for i := range rows {
			b[i] = rng.NormFloat64() * 3
			for j := range n {
				a.Set(i, j, math.Abs(rng.NormFloat64()))
			}
		}
		if n > 1 && round%5 == 0 { // nearly the same direction twice
			for i := range rows {
				a.Set(i, 1, a.At(i, 0)*(1+1e-4*rng.NormFloat64()))
			}
		}
		for j := range n {
			low[j] = -rng.Float64()
			if rng.IntN(2) == 0 {
				low[j] = 0
			}
			high[j] = low[j] + 2*rng.Float64()
		}
		x, square, err := BoundedLeastSquares(a, b, low, high)
		require.NoError(t, err, "round %d", round)
		for j := range x {
			assert.GreaterOrEqual(t, x[j], low[j])
			assert.LessOrEqual(t, x[j], high[j])
		}
		want := projectedGradient(a, b, low, high)
		assert.LessOrEqual(t, square, want*(1+tolerance)+tolerance, "round %d", round)
		assert.GreaterOrEqual(t, square, want*(1-tolerance)-tolerance, "round %d", round)
	}
}

// Worked by hand: with b = (2, −1) and the unit matrix over 0 to 1, the minimum
// is at the corner (1, 0), at a squared distance of 1 + 1.
func TestBoundedLeastSquaresByHand(t *testing.T) {
	x, square, err := BoundedLeastSquares(mat.NewDense(2, 2, []float64{1, 0, 0, 1}), []float64{2, -1}, []float64{0, 0}, []float64{1, 1})
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{1, 0}, x, 1e-12)
	assert.InDelta(t, 2, square, 1e-12)
}

func TestBoundedLeastSquaresFaults(t *testing.T) {
	one := mat.NewDense(1, 1, []float64{1})
	for name, c := range map[string]struct{ b, low, high []float64 }{
		"too many numbers": {[]float64{1, 2}, []float64{0}, []float64{1}},
		"too few bounds":   {[]float64{1}, nil, []float64{1}},
		"crossed bounds":   {[]float64{1}, []float64{1}, []float64{0}},
		"no bound":         {[]float64{1}, []float64{0}, []float64{math.Inf(1)}},
		"not a number":     {[]float64{1}, []float64{math.NaN()}, []float64{1}},
	} {
		_, _, err := BoundedLeastSquares(one, c.b, c.low, c.high)
		assert.Error(t, err, name)
	}
}
