package cover

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// metric is the space with the moves of the other pours let loose: a quick
// bound, in it the least-squares distance of a combination is never more than
// that of any pourable amounts of it. Its candidates are numbered as they were
// given.
type metric struct {
	n       int
	total   float64   // squared length of the gap
	slack   float64   // what the moves are allowed in return for their freedom
	gap     []float64 // products of the candidates with the gap
	product []float64 // and with each other, row by row
}

// newMetric folds the moves into the space. A move is at most one step, so for
// any price μ ≥ 0 on its square, distance² + Σ μ(δ² − 1) is no more than
// distance² for every move that is allowed; its minimum over free δ is a
// quadratic form in what is left, with matrix Q = I − M(MᵀM + μI)⁻¹Mᵀ.
func (t *task) newMetric(some []int) (*metric, error) {
	m := &metric{n: len(some), gap: make([]float64, len(some)), product: make([]float64, len(some)*len(some))}
	q, slack, err := t.looseForm()
	if err != nil {
		return nil, err
	}
	m.slack = slack
	gap := q.times(&t.gap)
	m.total = dot(&gap, &t.gap)
	for a, i := range some {
		per := q.times(&t.cands[i].per)
		m.gap[a] = dot(&per, &t.gap)
		for b, j := range some[:a+1] {
			v := dot(&per, &t.cands[j].per)
			m.product[a*m.n+b], m.product[b*m.n+a] = v, v
		}
	}
	return m, nil
}

// limit turns a distance into the squared distance in this space beyond which
// no amounts come within it.
func (m *metric) limit(far float64) float64 {
	if far < 0 {
		return -1
	}
	return far*far + m.slack
}

// pair returns the least squared distance of two candidates.
func (m *metric) pair(a, b int) float64 {
	return m.total - explainedByTwo(m.gap[a], m.gap[b], m.product[a*m.n+a], m.product[b*m.n+b], m.product[a*m.n+b])
}

// triple returns the least squared distance of three candidates.
func (m *metric) triple(a, b, c int) float64 {
	p := products{n: 3, self: [MaxParts]float64{m.product[a*m.n+a], m.product[b*m.n+b], m.product[c*m.n+c]},
		ij: m.product[a*m.n+b], ik: m.product[a*m.n+c], jk: m.product[b*m.n+c]}
	h := [MaxParts]float64{m.gap[a], m.gap[b], m.gap[c]}
	return m.total - p.explained(&h)
}

// form is a symmetric matrix over the rows of the space.
type form [numRows][numRows]float64

func (f *form) times(v *vector) (out vector) {
	for i := range out {
		for j, x := range v {
			out[i] += f[i][j] * x
		}
	}
	return out
}

// looseForm returns Q and the constant that the bound gives away.
func (t *task) looseForm() (q *form, slack float64, err error) {
	q = &form{}
	for i := range q {
		q[i][i] = 1
	}
	columns := t.moveColumns()
	n := len(columns)
	if n == 0 {
		return q, 0, nil
	}
	gram := mat.NewSymDense(n, nil)
	for i := range columns {
		for j := i; j < n; j++ {
			gram.SetSym(i, j, dot(&columns[i], &columns[j]))
		}
	}
	for i := range columns {
		price := math.Max(leastPrice, priceShare*math.Abs(dot(&columns[i], &t.gap)))
		slack += price
		gram.SetSym(i, i, gram.At(i, i)+price)
	}
	var chol mat.Cholesky
	if !chol.Factorize(gram) {
		return nil, 0, errNotDefinite
	}
	m := mat.NewDense(numRows, n, nil)
	for j := range columns {
		for i, v := range columns[j] {
			m.Set(i, j, v)
		}
	}
	var solved, outer mat.Dense
	if err := chol.SolveTo(&solved, m.T()); err != nil {
		return nil, 0, err
	}
	outer.Mul(m, &solved)
	for i := range q {
		for j := range q[i] {
			q[i][j] -= outer.At(i, j)
		}
	}
	return q, slack, nil
}

// The price on the square of a move. Any price gives a bound; these give a
// tight one for gaps that are mostly filled.
const (
	leastPrice = 0.05
	priceShare = 0.02
)

// moveColumns returns one direction for each pour that may move, scaled to its
// larger step.
func (t *task) moveColumns() []vector {
	var out []vector
	last := -1
	for _, m := range t.moves {
		if m.pour == last {
			if dot(&m.by, &m.by) > dot(&out[len(out)-1], &out[len(out)-1]) {
				out[len(out)-1] = m.by
			}
			continue
		}
		last = m.pour
		out = append(out, m.by)
	}
	return out
}
