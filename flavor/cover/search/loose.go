package search

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// loose folds the moves into the space. A move is at most one step, so for any
// price μ ≥ 0 on its square, distance² + Σ μ(δ² − 1) is no more than distance²
// for every move that is allowed; its minimum over free δ is a quadratic form in
// what is left, with matrix I − M(MᵀM + μI)⁻¹Mᵀ.
type loose struct {
	columns []Row   // of M
	answers []Row   // rows of (MᵀM + μI)⁻¹Mᵀ
	slack   float64 // Σ μ, what the moves are allowed in return for their freedom
}

// The price on the square of a move. Any price gives a bound; these give a
// tight one for gaps that are mostly filled.
const (
	leastPrice = 0.05
	priceShare = 0.02
)

var errNotDefinite = errors.New("search: the moves of the other pours do not form a positive definite system")

func (t *task) newLoose() (*loose, error) {
	l := &loose{columns: t.columns, slack: slack}
	n := len(l.columns)
	if n == 0 {
		return l, nil
	}
	gram := mat.NewSymDense(n, nil)
	for i := range l.columns {
		for j := i; j < n; j++ {
			gram.SetSym(i, j, dot(&l.columns[i], &l.columns[j]))
		}
		price := math.Max(leastPrice, priceShare*math.Abs(dot(&l.columns[i], &t.Gap)))
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
	l.answers = make([]Row, n)
	for i := range l.answers {
		for j := range l.columns {
			add(&l.answers[i], &l.columns[j], inverse.At(i, j))
		}
	}
	return l, nil
}

// times returns the product of the form's matrix with a row.
func (l *loose) times(v *Row) Row {
	out := *v
	for i := range l.columns {
		add(&out, &l.columns[i], -dot(&l.answers[i], v))
	}
	return out
}

// metric is the space with the moves let loose, for some of the parts, which it
// numbers as they were given.
type metric struct {
	loose *loose
	room  *room
	some  []*Row
	total float64   // squared length of the gap
	gap   []float64 // products of the parts with the gap
	self  []float64 // and with themselves
}

// newMetric measures some parts.
func (t *task) newMetric(some []int) (*metric, error) {
	l, err := t.newLoose()
	if err != nil {
		return nil, err
	}
	n := len(some)
	m := &metric{loose: l, room: t.room, some: make([]*Row, n), gap: t.room.take(n), self: t.room.take(n)}
	gap := l.times(&t.Gap)
	m.total = dot(&gap, &t.Gap)
	for a, i := range some {
		row := l.times(t.per(i))
		m.some[a], m.gap[a], m.self[a] = t.per(i), dot(&gap, t.per(i)), dot(&row, t.per(i))
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

// row returns part a with the moves let loose: its product with another part is
// theirs in this space.
func (m *metric) row(a int) Row { return m.loose.times(m.some[a]) }

// pair returns the least squared distance of two parts, given the row of the
// first.
func (m *metric) pair(row *Row, a, b int) float64 {
	return m.total - explainedByTwo(m.gap[a], m.gap[b], m.self[a], m.self[b], dot(row, m.some[b]))
}

// tableOf is how many parts may be held in a table: more would take more memory
// than the time they save is worth.
const tableOf = 1500

// table is a metric with the products of its parts with each other, row by row.
// Of many parts it holds the two rows that are at hand.
type table struct {
	*metric
	product []float64
	whole   bool
	rows    [2]int // of which parts the two rows are
}

// table holds the products of at most so many parts whole.
func (m *metric) table(most int) *table {
	n := len(m.some)
	t := &table{metric: m, whole: n <= most, rows: [2]int{-1, -1}}
	if !t.whole {
		t.product = m.room.take(2 * n)
		return t
	}
	t.product = m.room.take(n * n)
	for a := range n {
		row := m.row(a)
		for b := range a {
			v := dot(&row, m.some[b])
			t.product[a*n+b], t.product[b*n+a] = v, v
		}
	}
	return t
}

// with returns the products of part a with all parts; place is 0 for the first
// part of a triple and 1 for the second.
func (t *table) with(a, place int) []float64 {
	n := len(t.some)
	if t.whole {
		return t.product[a*n : (a+1)*n]
	}
	out := t.product[place*n : (place+1)*n]
	if t.rows[place] != a {
		t.rows[place] = a
		row := t.row(a)
		for b := range out {
			out[b] = dot(&row, t.some[b])
		}
	}
	return out
}

// triple returns the least squared distance of three parts, given the products
// of the first two with all.
func (t *table) triple(withA, withB []float64, a, b, c int) float64 {
	p := products{n: 3, self: [MaxParts]float64{t.self[a], t.self[b], t.self[c]},
		ij: withA[b], ik: withA[c], jk: withB[c]}
	h := [MaxParts]float64{t.gap[a], t.gap[b], t.gap[c]}
	return t.total - p.explained(&h)
}
