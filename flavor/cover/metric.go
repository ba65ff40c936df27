package cover

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// metric is the space with the moves of the other pours let loose: a quick
// bound, in it the least-squares distance of a combination is never more than
// that of any pourable amounts of it. Its candidates are numbered as they were
// given.
type metric struct {
	loose *loose
	some  []*candidate
	total float64   // squared length of the gap
	gap   []float64 // products of the candidates with the gap
	self  []float64 // and with themselves
}

// newMetric measures some candidates.
func (t *task) newMetric(some []int) (*metric, error) {
	l, err := t.newLoose()
	if err != nil {
		return nil, err
	}
	n := len(some)
	m := &metric{loose: l, some: make([]*candidate, n), gap: make([]float64, n), self: make([]float64, n)}
	gap := l.times(&t.gap)
	m.total = dot(&gap, &t.gap)
	for a, i := range some {
		c := &t.cands[i]
		per := l.times(&c.per)
		m.some[a], m.gap[a], m.self[a] = c, dot(&gap, &c.per), dot(&per, &c.per)
	}
	return m, nil
}

// limit turns a distance into the squared distance in this space beyond which
// no amounts come within it.
func (m *metric) limit(far float64) float64 {
	if far < 0 {
		return -1
	}
	return far*far + m.loose.slack
}

// row returns candidate a with the moves let loose: its product with another
// candidate is theirs in this space.
func (m *metric) row(a int) vector { return m.loose.times(&m.some[a].per) }

// pair returns the least squared distance of two candidates, given the row of
// the first.
func (m *metric) pair(row *vector, a, b int) float64 {
	return m.total - explainedByTwo(m.gap[a], m.gap[b], m.self[a], m.self[b], dot(row, &m.some[b].per))
}

// table is a metric with the products of its candidates with each other, row
// by row, for when each is used many times.
type table struct {
	*metric
	product []float64
}

func (m *metric) table() *table {
	n := len(m.some)
	t := &table{m, make([]float64, n*n)}
	for a := range n {
		row := m.row(a)
		for b := range a {
			v := dot(&row, &m.some[b].per)
			t.product[a*n+b], t.product[b*n+a] = v, v
		}
	}
	return t
}

// triple returns the least squared distance of three candidates.
func (t *table) triple(a, b, c int) float64 {
	n := len(t.some)
	p := products{n: 3, self: [MaxParts]float64{t.self[a], t.self[b], t.self[c]},
		ij: t.product[a*n+b], ik: t.product[a*n+c], jk: t.product[b*n+c]}
	h := [MaxParts]float64{t.gap[a], t.gap[b], t.gap[c]}
	return t.total - p.explained(&h)
}

// loose folds the moves into the space. A move is at most one step, so for any
// price μ ≥ 0 on its square, distance² + Σ μ(δ² − 1) is no more than distance²
// for every move that is allowed; its minimum over free δ is a quadratic form in
// what is left, with matrix I − M(MᵀM + μI)⁻¹Mᵀ.
type loose struct {
	columns []vector // of M
	answers []vector // rows of (MᵀM + μI)⁻¹Mᵀ
	slack   float64  // Σ μ, what the moves are allowed in return for their freedom
}

// The price on the square of a move. Any price gives a bound; these give a
// tight one for gaps that are mostly filled.
const (
	leastPrice = 0.05
	priceShare = 0.02
)

var errNotDefinite = errors.New("cover: the moves of the other pours do not form a positive definite system")

func (t *task) newLoose() (*loose, error) {
	l := &loose{columns: t.columns, slack: boundSlack}
	n := len(l.columns)
	if n == 0 {
		return l, nil
	}
	gram := mat.NewSymDense(n, nil)
	for i := range l.columns {
		for j := i; j < n; j++ {
			gram.SetSym(i, j, dot(&l.columns[i], &l.columns[j]))
		}
		price := math.Max(leastPrice, priceShare*math.Abs(dot(&l.columns[i], &t.gap)))
		l.slack += price
		gram.SetSym(i, i, gram.At(i, i)+price)
	}
	var chol mat.Cholesky
	if !chol.Factorize(gram) {
		return nil, errNotDefinite
	}
	var inverse mat.SymDense
	if err := chol.InverseTo(&inverse); err != nil {
		return nil, err
	}
	l.answers = make([]vector, n)
	for i := range l.answers {
		for j := range l.columns {
			l.answers[i].add(&l.columns[j], inverse.At(i, j))
		}
	}
	return l, nil
}

// times returns the product of the form's matrix with a vector.
func (l *loose) times(v *vector) vector {
	out := *v
	for i := range l.columns {
		out.add(&l.columns[i], -dot(&l.answers[i], v))
	}
	return out
}
