package cover

import (
	"cmp"
	"context"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/mat"
)

// search returns the best combinations, in order: every one of up to
// req.Parts candidates is rounded, or ruled out by a bound that shows that no
// amounts of it can be among the best.
func (t *task) search(ctx context.Context) ([]found, error) {
	b, err := t.newBounds()
	if err != nil {
		return nil, err
	}
	list := newShortlist(t)
	for i := range t.cands {
		if err := list.try([]int{i}); err != nil {
			return nil, err
		}
	}
	for parts := 2; parts <= t.req.Parts; parts++ {
		s := combinations{task: t, bounds: b, list: list, parts: parts}
		if err := s.run(ctx); err != nil {
			return nil, err
		}
	}
	return list.sorted(), nil
}

// bounds is the problem with the moves of the other pours let loose: in this
// space the least-squares distance of a combination is never more than that of
// any pourable amounts of it.
type bounds struct {
	per   []vector // candidates
	self  []float64
	gap   []float64
	total float64 // squared length of the gap
	slack float64 // what the moves are allowed in return for their freedom
	// gain is the most that a candidate alone can take off the squared
	// distance, whatever the moves.
	gain []float64
}

// newBounds folds the moves into the metric. A move is at most one step, so for
// any price μ ≥ 0 on its square, distance² + Σ μ(δ² − 1) is no more than
// distance² for every move that is allowed; its minimum over free δ is a
// quadratic form in what is left, with matrix Q = I − M(MᵀM + μI)⁻¹Mᵀ.
func (t *task) newBounds() (*bounds, error) {
	b := &bounds{per: make([]vector, len(t.cands)), self: make([]float64, len(t.cands)), gap: make([]float64, len(t.cands))}
	gap := t.gap
	transform := func(v *vector) vector { return *v }
	if columns := t.moveColumns(); len(columns) > 0 {
		root, slack, err := looseMetric(columns, &t.gap)
		if err != nil {
			return nil, err
		}
		b.slack = slack
		transform = func(v *vector) vector { return times(root, v) }
		gap = transform(&t.gap)
	}
	b.total = dot(&gap, &gap)
	for i := range t.cands {
		b.per[i] = transform(&t.cands[i].per)
		b.self[i] = dot(&b.per[i], &b.per[i])
		b.gap[i] = dot(&b.per[i], &gap)
	}
	b.gain = t.gains()
	return b, nil
}

// gains bounds what each candidate can take off the squared distance. What a
// pour brings is never negative, so neither are the products of candidates, and
// the least-squares amounts x of several solve Gx = h with h ≥ diag(G)x; so what
// they take off together, hᵀx, is at most the sum of hᵢ²/Gᵢᵢ. With moves, h is
// taken where they help the candidate most.
func (t *task) gains() []float64 {
	out := make([]float64, len(t.cands))
	for i := range t.cands {
		c := &t.cands[i]
		h := c.gap
		for m := 0; m < len(t.moves); m++ {
			best := math.Max(0, -c.moves[m])
			for m+1 < len(t.moves) && t.moves[m+1].pour == t.moves[m].pour {
				m++
				best = math.Max(best, -c.moves[m])
			}
			h += best
		}
		if h > 0 && c.self > 0 {
			out[i] = h * h / c.self
		}
	}
	return out
}

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

// looseMetric returns the square root of Q and the constant that the bound
// gives away, for the price that suits a gap of half the size of g.
func looseMetric(columns []vector, g *vector) (root *mat.SymDense, slack float64, err error) {
	n := len(columns)
	gram := mat.NewSymDense(n, nil)
	for i := range columns {
		for j := i; j < n; j++ {
			gram.SetSym(i, j, dot(&columns[i], &columns[j]))
		}
	}
	price := make([]float64, n)
	for i := range columns {
		// At this price the move of a lone column that meets what is usually
		// left of the gap is about one step.
		price[i] = math.Max(1e-3, 0.25*math.Abs(dot(&columns[i], g))/4)
		slack += price[i]
		gram.SetSym(i, i, gram.At(i, i)+price[i])
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
	var solved mat.Dense
	if err := chol.SolveTo(&solved, m.T()); err != nil {
		return nil, 0, err
	}
	var outer mat.Dense
	outer.Mul(m, &solved)
	q := mat.NewSymDense(numRows, nil)
	for i := range numRows {
		for j := i; j < numRows; j++ {
			v := -(outer.At(i, j) + outer.At(j, i)) / 2
			if i == j {
				v++
			}
			q.SetSym(i, j, v)
		}
	}
	root, err = squareRoot(q)
	return root, slack, err
}

// squareRoot returns the symmetric square root of a positive semidefinite
// matrix; eigenvalues that rounding made negative count as zero.
func squareRoot(q *mat.SymDense) (*mat.SymDense, error) {
	var eig mat.EigenSym
	if !eig.Factorize(q, true) {
		return nil, errNotDefinite
	}
	n := q.SymmetricDim()
	var v mat.Dense
	eig.VectorsTo(&v)
	values := eig.Values(nil)
	root := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			var s float64
			for k, w := range values {
				s += v.At(i, k) * math.Sqrt(math.Max(0, w)) * v.At(j, k)
			}
			root.SetSym(i, j, s)
		}
	}
	return root, nil
}

func times(m *mat.SymDense, v *vector) vector {
	var out vector
	for i := range out {
		for j := range v {
			out[i] += m.At(i, j) * v[j]
		}
	}
	return out
}

// single returns the least squared distance of one candidate, in any amount.
func (b *bounds) single(i int) float64 {
	if b.gap[i] <= 0 || b.self[i] <= 0 {
		return b.total
	}
	return b.total - b.gap[i]*b.gap[i]/b.self[i]
}

// pair returns the least squared distance of two candidates in any amounts
// that are not negative.
func (b *bounds) pair(i, j int) float64 {
	return b.pairOf(i, j, dot(&b.per[i], &b.per[j]))
}

// pairOf is pair, given the product of the two.
func (b *bounds) pairOf(i, j int, cross float64) float64 {
	det := b.self[i]*b.self[j] - cross*cross
	x := b.gap[i]*b.self[j] - b.gap[j]*cross
	y := b.gap[j]*b.self[i] - b.gap[i]*cross
	if det > 1e-12*b.self[i]*b.self[j] && x > 0 && y > 0 {
		return b.total - (x*b.gap[i]+y*b.gap[j])/det
	}
	return math.Min(b.single(i), b.single(j))
}

// distance turns a squared distance in the loose metric into a bound.
func (b *bounds) distance(square float64) float64 {
	return math.Sqrt(math.Max(0, square-b.slack))
}

// shortlist keeps the best covers, at most perLead for each leading part.
type shortlist struct {
	task *task
	best map[int][]found // by leading candidate, each in order
	edge float64         // rank beyond which a cover is not kept
}

func newShortlist(t *task) *shortlist {
	return &shortlist{task: t, best: map[int][]found{}, edge: math.Inf(1)}
}

// hopeful reports whether a combination of parts whose distance is at least
// bound may still be kept.
func (l *shortlist) hopeful(bound float64, parts int) bool {
	return bound+l.task.finder.weights.PartCost*float64(parts-1) <= l.edge
}

// try rounds a combination and keeps its best rounding that is good enough.
func (l *shortlist) try(parts []int) error {
	roundings := l.task.round(parts, l.edge)
	if len(roundings) == 0 {
		return nil
	}
	if !l.task.strict {
		l.keep(roundings[0])
		return nil
	}
	score, err := l.task.scorer(&roundings[0])
	if err != nil {
		return err
	}
	for i := range roundings {
		if score(&roundings[i]) >= l.task.leastScore() {
			l.keep(roundings[i])
			return nil
		}
	}
	return nil
}

func (l *shortlist) keep(x found) {
	lead := l.task.lead(&x)
	list := append(l.best[lead], x)
	slices.SortFunc(list, l.task.compare)
	l.best[lead] = list[:min(len(list), perLead)]
	all := l.sorted()
	if len(all) < l.task.req.Limit {
		return
	}
	l.edge = all[l.task.req.Limit-1].rank
	for lead, list := range l.best {
		if list[0].rank > l.edge {
			delete(l.best, lead)
		}
	}
}

// sorted returns the covers kept, the best first, at most the limit.
func (l *shortlist) sorted() []found {
	var all []found
	for _, list := range l.best {
		all = append(all, list...)
	}
	slices.SortFunc(all, l.task.compare)
	return all[:min(len(all), l.task.req.Limit)]
}

// compare orders covers: rank, then fewer parts, fewer moved pours, then name.
func (t *task) compare(a, b found) int {
	if c := cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(len(a.parts), len(b.parts)), cmp.Compare(len(a.moves), len(b.moves))); c != 0 {
		return c
	}
	for k := range a.parts {
		if c := strings.Compare(t.cands[a.parts[k]].profile.Name, t.cands[b.parts[k]].profile.Name); c != 0 {
			return c
		}
	}
	return cmp.Or(slices.Compare(a.amounts, b.amounts), slices.Compare(a.moves, b.moves))
}

// lead returns the candidate that is poured most.
func (t *task) lead(x *found) int {
	best := 0
	for k := range x.parts {
		if t.cands[x.parts[k]].amounts[x.amounts[k]].ml > t.cands[x.parts[best]].amounts[x.amounts[best]].ml {
			best = k
		}
	}
	return x.parts[best]
}
