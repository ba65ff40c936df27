package cover

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// optimality is how small, against the size of the problem, the gradient of a
// variable must be to count as zero.
const optimality = 1e-10

// BoundedLeastSquares minimises |Ax − b|² over low ≤ x ≤ high by the active-set
// method of Stark and Parker (Computational Statistics 10:129, 1995), on QR
// factorisations, so that near-collinear columns cost no more digits than they
// must. A is rows × n with n ≥ 1; b has one number for each row, low and high
// one for each column, low ≤ high and finite. It returns x and the squared
// distance. It fails on shapes, bounds or numbers that are not so, and if the
// method does not end within its limit of steps, which a problem of full rank
// cannot cause.
func BoundedLeastSquares(a *mat.Dense, b, low, high []float64) (x []float64, square float64, err error) {
	rows, n := a.Dims()
	if len(b) != rows || len(low) != n || len(high) != n {
		return nil, 0, fmt.Errorf("cover: least squares of %d × %d with %d numbers and %d and %d bounds", rows, n, len(b), len(low), len(high))
	}
	for j := range low {
		if !(low[j] <= high[j]) || math.IsInf(low[j], 0) || math.IsInf(high[j], 0) {
			return nil, 0, fmt.Errorf("cover: bounds %v to %v of variable %d; they must be finite, the low one first", low[j], high[j], j)
		}
	}
	a, b = folded(a, b)
	s := newBoxed(a, b, low, high)
	for range 10 * (n + 1) * (n + 1) {
		j := s.worst()
		if j < 0 {
			return s.x, s.distance(), nil
		}
		s.free[j] = true
		if err := s.relax(); err != nil {
			return nil, 0, err
		}
	}
	return nil, 0, fmt.Errorf("cover: least squares did not settle; its columns may be one direction")
}

// folded returns a problem with the same distances and no more rows than the
// columns of A and b: a rotation of the space, which a QR factorisation of both
// together gives.
func folded(a *mat.Dense, b []float64) (*mat.Dense, []float64) {
	rows, n := a.Dims()
	if rows <= n+1 {
		return a, b
	}
	both := mat.NewDense(rows, n+1, nil)
	both.Slice(0, rows, 0, n).(*mat.Dense).Copy(a)
	both.SetCol(n, b)
	var qr mat.QR
	qr.Factorize(both)
	var r mat.Dense
	qr.RTo(&r)
	return r.Slice(0, n+1, 0, n).(*mat.Dense), mat.Col(nil, n, r.Slice(0, n+1, 0, n+1))
}

// boxed is a bounded problem on the way: every variable is free or at a bound.
type boxed struct {
	a         *mat.Dense
	b         []float64
	low, high []float64
	x         []float64
	free      []bool
	scale     float64 // of the gradient
	held      int     // variable that was just pushed to its bound, or −1
}

func newBoxed(a *mat.Dense, b, low, high []float64) *boxed {
	s := &boxed{a: a, b: b, low: low, high: high, x: make([]float64, len(low)), free: make([]bool, len(low)), held: -1}
	copy(s.x, low)
	s.scale = mat.Norm(a, 2) * (mat.Norm(mat.NewVecDense(len(b), b), 2) + 1)
	return s
}

// residual returns b − Ax.
func (s *boxed) residual() *mat.VecDense {
	r := mat.NewVecDense(len(s.b), append([]float64(nil), s.b...))
	var ax mat.VecDense
	ax.MulVec(s.a, mat.NewVecDense(len(s.x), s.x))
	r.SubVec(r, &ax)
	return r
}

func (s *boxed) distance() float64 {
	r := s.residual()
	return mat.Dot(r, r)
}

// worst returns the variable at a bound that most wants to leave it, or −1 if
// none does: then x is the minimum.
func (s *boxed) worst() int {
	r := s.residual()
	best, most := -1, optimality*s.scale
	for j := range s.x {
		if s.free[j] || j == s.held || s.low[j] == s.high[j] {
			continue
		}
		g := mat.Dot(s.a.ColView(j), r)
		if s.x[j] == s.high[j] {
			g = -g
		}
		if g > most {
			best, most = j, g
		}
	}
	s.held = -1
	return best
}

// relax moves the free variables to their least squares; one that would leave
// its bounds stops there and is free no more, and the rest go on.
func (s *boxed) relax() error {
	for {
		var columns []int
		for j, f := range s.free {
			if f {
				columns = append(columns, j)
			}
		}
		if len(columns) == 0 {
			return nil
		}
		want, err := s.solve(columns)
		if err != nil {
			return err
		}
		step, hit := 1.0, -1
		for k, j := range columns {
			for _, bound := range []float64{s.low[j], s.high[j]} {
				outside := want[k] < s.low[j] && bound == s.low[j] || want[k] > s.high[j] && bound == s.high[j]
				if !outside {
					continue
				}
				if t := (bound - s.x[j]) / (want[k] - s.x[j]); hit < 0 || t < step {
					step, hit = t, k
				}
			}
		}
		for k, j := range columns {
			s.x[j] += step * (want[k] - s.x[j])
		}
		if hit < 0 {
			return nil
		}
		j := columns[hit]
		if want[hit] < s.low[j] {
			s.x[j] = s.low[j]
		} else {
			s.x[j] = s.high[j]
		}
		s.free[j] = false
		s.held = j
	}
}

// solve returns the least squares of the free columns, given the others. A
// trace of ridge keeps columns of one direction from dividing by nothing.
func (s *boxed) solve(columns []int) ([]float64, error) {
	const ridge = 1e-9
	rows, k := len(s.b), len(columns)
	sub := mat.NewDense(rows+k, k, nil)
	rest := append([]float64(nil), s.x...)
	for c, j := range columns {
		for i := range rows {
			sub.Set(i, c, s.a.At(i, j))
		}
		sub.Set(rows+c, c, ridge*mat.Norm(s.a.ColView(j), 2))
		rest[j] = 0
	}
	var fixed mat.VecDense
	fixed.MulVec(s.a, mat.NewVecDense(len(rest), rest))
	target := mat.NewVecDense(rows+k, nil)
	for i := range rows {
		target.SetVec(i, s.b[i]-fixed.AtVec(i))
	}
	var qr mat.QR
	qr.Factorize(sub)
	var out mat.VecDense
	if err := qr.SolveVecTo(&out, false, target); err != nil {
		return nil, fmt.Errorf("cover: least squares of %d columns: %w", k, err)
	}
	return out.RawVector().Data[:k], nil
}
