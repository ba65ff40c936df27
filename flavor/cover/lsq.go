package cover

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/lapack/lapack64"
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

// boxed is a bounded problem on the way: every variable is free or at a bound.
type boxed struct {
	columns   [][]float64 // of A
	b         []float64
	low, high []float64
	x         []float64
	free      []bool
	norms     []float64 // of the columns
	scale     float64   // of the gradient
	held      int       // variable that was just pushed to its bound, or −1

	// Room for the systems on the way.
	some           []int
	rest           []float64
	matrix, target []float64
	work           []float64
}

func newBoxed(a *mat.Dense, b, low, high []float64) *boxed {
	columns, b := folded(a, b)
	n, rows := len(columns), len(b)
	s := &boxed{columns: columns, b: b, low: low, high: high, x: make([]float64, n), free: make([]bool, n),
		norms: make([]float64, n), held: -1, some: make([]int, 0, n), rest: make([]float64, rows),
		matrix: make([]float64, (rows+n)*n), target: make([]float64, rows+n), work: make([]float64, workspace*(rows+n))}
	copy(s.x, low)
	for j, c := range columns {
		s.norms[j] = floats.Norm(c, 2)
	}
	s.scale = floats.Norm(s.norms, 2) * (floats.Norm(b, 2) + 1)
	return s
}

// workspace is how much room the factorisations want, for each row.
const workspace = 4

// folded returns the columns of A and b in a space of no more dimensions than
// there are columns, with the same distances: a QR factorisation of both
// together turns what they span that way.
func folded(a *mat.Dense, b []float64) (columns [][]float64, right []float64) {
	rows, n := a.Dims()
	both := mat.NewDense(rows, n+1, nil)
	for i := range rows {
		row := both.RawRowView(i)
		copy(row, a.RawRowView(i))
		row[n] = b[i]
	}
	triangle := rows > n+1
	if triangle {
		work := make([]float64, workspace*rows)
		lapack64.Geqrf(both.RawMatrix(), make([]float64, n+1), work, len(work))
		rows = n + 1
	}
	columns = make([][]float64, n+1)
	for j := range columns {
		columns[j] = make([]float64, rows)
		for i := range columns[j] {
			if !triangle || i <= j { // the factor is what stands above the diagonal
				columns[j][i] = both.At(i, j)
			}
		}
	}
	return columns[:n], columns[n]
}

// residual returns b − Ax, where every variable that is left out counts as
// nothing.
func (s *boxed) residual(leftOut []int) []float64 {
	copy(s.rest, s.b)
	for j, c := range s.columns {
		if !slices.Contains(leftOut, j) {
			floats.AddScaled(s.rest, -s.x[j], c)
		}
	}
	return s.rest
}

func (s *boxed) distance() float64 {
	r := s.residual(nil)
	return floats.Dot(r, r)
}

// worst returns the variable at a bound that most wants to leave it, or −1 if
// none does: then x is the minimum.
func (s *boxed) worst() int {
	r := s.residual(nil)
	best, most := -1, optimality*s.scale
	for j := range s.x {
		if s.free[j] || j == s.held || s.low[j] == s.high[j] {
			continue
		}
		g := floats.Dot(s.columns[j], r)
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
		s.some = s.some[:0]
		for j, f := range s.free {
			if f {
				s.some = append(s.some, j)
			}
		}
		if len(s.some) == 0 {
			return nil
		}
		want, err := s.solve(s.some)
		if err != nil {
			return err
		}
		step, hit := s.room(s.some, want)
		for k, j := range s.some {
			s.x[j] += step * (want[k] - s.x[j])
		}
		if hit < 0 {
			return nil
		}
		j := s.some[hit]
		if want[hit] < s.low[j] {
			s.x[j] = s.low[j]
		} else {
			s.x[j] = s.high[j]
		}
		s.free[j] = false
		s.held = j
	}
}

// room returns what share of the way to what the columns want there is room
// for, and which of them is first at its bound, or −1 for none.
func (s *boxed) room(columns []int, want []float64) (step float64, hit int) {
	step, hit = 1, -1
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
	return step, hit
}

// solve returns the least squares of some columns, given the others; it is
// overwritten by the next. A trace of ridge keeps columns of one direction from
// dividing by nothing.
func (s *boxed) solve(columns []int) ([]float64, error) {
	const ridge = 1e-9
	rows, k := len(s.b), len(columns)
	a := blas64.General{Rows: rows + k, Cols: k, Stride: k, Data: s.matrix[:(rows+k)*k]}
	clear(a.Data)
	for c, j := range columns {
		for i, v := range s.columns[j] {
			a.Data[i*k+c] = v
		}
		a.Data[(rows+c)*k+c] = ridge * s.norms[j]
	}
	b := blas64.General{Rows: rows + k, Cols: 1, Stride: 1, Data: s.target[:rows+k]}
	clear(b.Data[copy(b.Data, s.residual(columns)):])
	if !lapack64.Gels(blas.NoTrans, a, b, s.work, len(s.work)) {
		return nil, fmt.Errorf("cover: least squares of %d columns, one of which is nothing", k)
	}
	return b.Data[:k], nil
}
