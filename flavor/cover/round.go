package cover

import (
	"math"
	"slices"
)

// products is what the least-squares amounts of up to three parts follow from:
// the products of the parts with each other.
type products struct {
	n    int
	self [MaxParts]float64
	ij   float64 // parts 0 and 1
	ik   float64 // parts 0 and 2
	jk   float64 // parts 1 and 2
}

func (t *task) productsOf(parts []int) products {
	p := products{n: len(parts)}
	for k, i := range parts {
		p.self[k] = t.cands[i].self
	}
	if p.n > 1 {
		p.ij = dot(&t.cands[parts[0]].per, &t.cands[parts[1]].per)
	}
	if p.n > 2 {
		p.ik = dot(&t.cands[parts[0]].per, &t.cands[parts[2]].per)
		p.jk = dot(&t.cands[parts[1]].per, &t.cands[parts[2]].per)
	}
	return p
}

// explained returns how much of a squared gap the parts can take away in
// amounts that are not negative, given the products of the gap with them.
func (p *products) explained(h *[MaxParts]float64) float64 {
	switch p.n {
	case 1:
		return explainedBy(h[0], p.self[0])
	case 2:
		return explainedByTwo(h[0], h[1], p.self[0], p.self[1], p.ij)
	}
	return p.explainedByThree(h)
}

func explainedBy(h, self float64) float64 {
	if h <= 0 {
		return 0
	}
	return h * h / self
}

// nearCollinear is the share of the product of squared lengths below which a
// determinant says that candidates are one direction.
const nearCollinear = 1e-12

func explainedByTwo(hi, hj, ii, jj, ij float64) float64 {
	det := ii*jj - ij*ij
	x := hi*jj - hj*ij
	y := hj*ii - hi*ij
	if det > nearCollinear*ii*jj && x > 0 && y > 0 {
		return (x*hi + y*hj) / det
	}
	return max(explainedBy(hi, ii), explainedBy(hj, jj))
}

// explainedByThree uses all three if that needs no negative amount, else the
// best two.
func (p *products) explainedByThree(h *[MaxParts]float64) float64 {
	ii, jj, kk := p.self[0], p.self[1], p.self[2]
	// Cofactors of the symmetric matrix of products.
	cii, cij, cik := jj*kk-p.jk*p.jk, p.jk*p.ik-p.ij*kk, p.ij*p.jk-jj*p.ik
	cjj, cjk, ckk := ii*kk-p.ik*p.ik, p.ij*p.ik-ii*p.jk, ii*jj-p.ij*p.ij
	det := ii*cii + p.ij*cij + p.ik*cik
	x := cii*h[0] + cij*h[1] + cik*h[2]
	y := cij*h[0] + cjj*h[1] + cjk*h[2]
	z := cik*h[0] + cjk*h[1] + ckk*h[2]
	if det > nearCollinear*ii*jj*kk && x > 0 && y > 0 && z > 0 {
		return (x*h[0] + y*h[1] + z*h[2]) / det
	}
	return max(explainedByTwo(h[0], h[1], ii, jj, p.ij),
		explainedByTwo(h[0], h[2], ii, kk, p.ik),
		explainedByTwo(h[1], h[2], jj, kk, p.jk))
}

// toward returns the products of the parts with the gap that a set of moves
// leaves.
func (t *task) toward(parts []int, set *moveSet) (h [MaxParts]float64) {
	for k, i := range parts {
		c := &t.cands[i]
		h[k] = c.gap
		for _, m := range set.moves {
			h[k] -= c.moves[m]
		}
	}
	return h
}

// boundSlack covers what rounding may add to a bound.
const boundSlack = 1e-9

// leastLength returns the least distance that is left of a squared gap once so
// much of it is explained, less what rounding may add to the difference.
func leastLength(square, explained float64) float64 {
	const digits = 1e-12
	return math.Sqrt(max(0, square-explained-digits*square))
}

// leastRank returns what the rank of any amounts of the parts, pourable or not,
// is no less than, over every set of moves.
func (t *task) leastRank(parts []int, p *products) float64 {
	least := math.Inf(1)
	for s := range t.sets {
		set := &t.sets[s]
		h := t.toward(parts, set)
		least = min(least, leastLength(set.square, p.explained(&h))+set.cost)
	}
	return least + t.partCost(p.n) + t.rareCost(parts) - boundSlack
}

// leastAlone is leastRank of one candidate.
func (t *task) leastAlone(c *candidate) float64 {
	least := math.Inf(1)
	for s := range t.sets {
		set := &t.sets[s]
		h := c.gap
		for _, m := range set.moves {
			h -= c.moves[m]
		}
		least = min(least, leastLength(set.square, explainedBy(h, c.self))+set.cost)
	}
	return least + c.rare - boundSlack
}

func (t *task) rareCost(parts []int) float64 {
	var sum float64
	for _, i := range parts {
		sum += t.cands[i].rare
	}
	return sum
}

func (t *task) partCost(parts int) float64 { return t.finder.weights.PartCost * float64(parts-1) }

// round returns the best roundings of a combination whose rank is at most
// edge, the best first, at most roundings of them. For every set of moves and
// every amount of all parts but the last, the distance is a parabola in the
// last, so that its best amounts are the two beside the vertex.
func (t *task) round(parts []int, edge float64) []found {
	r := rounder{task: t}
	return r.round(parts, edge)
}

// rounder rounds one combination after another.
type rounder struct {
	task     *task
	parts    []int
	products products
	edge     float64
	set      *moveSet
	cost     float64
	toward   [MaxParts]float64
	amounts  [MaxParts]int
	found    []found // the best so far, in order
}

// round is [task.round]; the next call overwrites what it returns.
func (r *rounder) round(parts []int, edge float64) []found {
	t := r.task
	r.parts, r.products, r.edge, r.found = parts, t.productsOf(parts), edge, r.found[:0]
	fixed := t.partCost(len(parts)) + t.rareCost(parts) + t.tasted[combinationOf(parts)]
	for s := range t.sets {
		r.set = &t.sets[s]
		r.cost = r.set.cost + fixed
		r.toward = t.toward(parts, r.set)
		if r.near(r.set.square, r.products.explained(&r.toward)) {
			r.descend(0, r.set.square, r.toward)
		}
	}
	return r.found
}

// near reports whether what is left of a squared gap may be within the edge.
func (r *rounder) near(square, explained float64) bool {
	return leastLength(square, explained)+r.cost <= r.edge+boundSlack
}

// descend settles part k; square is the squared gap left and h the products of
// the parts with it.
func (r *rounder) descend(k int, square float64, h [MaxParts]float64) {
	c := &r.task.cands[r.parts[k]]
	from, to := 0, len(c.amounts)
	last := k == len(r.parts)-1
	if last {
		from, to = beside(c.amounts, h[k]/c.self)
	}
	for i := from; i < to; i++ {
		ml := c.amounts[i].ml
		r.amounts[k] = i
		s := max(0, square-2*ml*h[k]+ml*ml*c.self)
		if !last {
			if left := r.without(k, ml, h); r.near(s, r.explainedAfter(k, &left)) {
				r.descend(k+1, s, left)
			}
			continue
		}
		if rank := math.Sqrt(s) + r.cost; rank <= r.edge {
			r.keep(found{parts: r.parts, amounts: r.amounts, moves: r.set.moves, square: s, rank: rank})
		}
	}
}

// explainedAfter is what the parts after k can take away.
func (r *rounder) explainedAfter(k int, h *[MaxParts]float64) float64 {
	p := &r.products
	if k == p.n-2 {
		return explainedBy(h[k+1], p.self[k+1])
	}
	return explainedByTwo(h[1], h[2], p.self[1], p.self[2], p.jk)
}

// keep puts a rounding in its place. Once there are enough of them, the worst
// sets the edge.
func (r *rounder) keep(x found) {
	at, _ := slices.BinarySearchFunc(r.found, x, r.task.compare)
	if at == roundings {
		return
	}
	r.found = slices.Insert(r.found[:min(len(r.found), roundings-1)], at, x)
	if len(r.found) == roundings {
		r.edge = r.found[roundings-1].rank
	}
}

// without returns the products of the later parts with the gap once ml of part
// k is poured.
func (r *rounder) without(k int, ml float64, h [MaxParts]float64) [MaxParts]float64 {
	p := &r.products
	switch k {
	case 0:
		h[1] -= ml * p.ij
		h[2] -= ml * p.ik
	case 1:
		h[2] -= ml * p.jk
	}
	return h
}

// beside returns the last of the amounts at or below x and the first above, as
// far as there are, as from and to.
func beside(amounts []amount, x float64) (from, to int) {
	above := 0
	for above < len(amounts) && amounts[above].ml <= x {
		above++
	}
	return max(0, above-1), min(len(amounts), above+1)
}
