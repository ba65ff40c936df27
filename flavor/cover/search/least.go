package search

import "math"

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
		p.self[k] = t.self[i]
	}
	if p.n > 1 {
		p.ij = dot(t.per(parts[0]), t.per(parts[1]))
	}
	if p.n > 2 {
		p.ik = dot(t.per(parts[0]), t.per(parts[2]))
		p.jk = dot(t.per(parts[1]), t.per(parts[2]))
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
// determinant has too few digits left to divide by. Such parts are nearly one
// direction, and any amounts of them may stand against each other, so they count
// as explaining everything: a bound that says nothing rules out nothing.
const nearCollinear = 1e-9

func explainedByTwo(hi, hj, ii, jj, ij float64) float64 {
	det := ii*jj - ij*ij
	if det <= nearCollinear*ii*jj {
		return math.Inf(1)
	}
	x := hi*jj - hj*ij
	y := hj*ii - hi*ij
	if x > 0 && y > 0 {
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
	if det <= nearCollinear*ii*jj*kk {
		return math.Inf(1)
	}
	if x > 0 && y > 0 && z > 0 {
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
		h[k] = t.towardOne(i, set)
	}
	return h
}

func (t *task) towardOne(i int, set *moveSet) float64 {
	h := t.gap[i]
	for _, m := range set.moves {
		h -= t.withMove[i*len(t.Moves)+m]
	}
	return h
}

// slack covers what rounding may add to a bound.
const slack = 1e-9

// leastLength returns the least distance that is left of a squared gap once so
// much of it is explained, less what rounding may add to the difference.
func leastLength(square, explained float64) float64 {
	const digits = 1e-6 // the inverse of a determinant just above nearCollinear
	return math.Sqrt(max(0, square-explained-digits*square))
}

// lowerBound returns what the distance of any amounts of the parts is no less
// than, and what distance and moves together cost at least.
func (t *task) lowerBound(parts []int, p *products) (distance, cost float64) {
	distance, cost = math.Inf(1), math.Inf(1)
	for s := range t.sets {
		set := &t.sets[s]
		h := t.toward(parts, set)
		least := leastLength(set.square, p.explained(&h))
		distance, cost = min(distance, least), min(cost, least+set.cost)
	}
	return distance - slack, cost - slack
}

// lowerBoundAlone is the second of lowerBound for one part.
func (t *task) lowerBoundAlone(i int) float64 {
	cost := math.Inf(1)
	for s := range t.sets {
		set := &t.sets[s]
		cost = min(cost, leastLength(set.square, explainedBy(t.towardOne(i, set), t.self[i]))+set.cost)
	}
	return cost - slack
}
