package cover

import (
	"errors"
	"math"
	"slices"
)

var errNotDefinite = errors.New("cover: the moves of the other pours do not form a positive definite system")

// round returns the best roundings of a combination whose rank is at most edge,
// the best first, at most roundings of them. For every set of moves and every
// amount of all parts but the last, the distance is a parabola in the last, so
// that its best amounts are the two beside the vertex.
func (t *task) round(parts []int, edge float64) []found {
	r := rounder{task: t, parts: parts, edge: edge, amounts: make([]int, len(parts))}
	gapSquare := dot(&t.gap, &t.gap)
	for _, set := range t.moveSets {
		r.set = set
		r.cost = t.finder.weights.PartCost*float64(len(parts)-1) + t.finder.weights.MoveCost*float64(len(set))
		if r.cost > r.edge {
			continue
		}
		// With moves δ the gap left for the parts is g − Mδ.
		square := gapSquare
		for a, m := range set {
			by := &t.moves[m].by
			square += dot(by, by) - 2*dot(by, &t.gap)
			for _, o := range set[:a] {
				square += 2 * dot(by, &t.moves[o].by)
			}
		}
		r.descend(0, square)
	}
	slices.SortFunc(r.found, t.compare)
	return r.found[:min(len(r.found), roundings)]
}

type rounder struct {
	task    *task
	parts   []int
	set     []int
	cost    float64
	edge    float64
	amounts []int
	found   []found
}

// toward returns the product of part k with what is still to be filled.
func (r *rounder) toward(k int) float64 {
	c := &r.task.cands[r.parts[k]]
	g := c.gap
	for _, m := range r.set {
		g -= c.moves[m]
	}
	for o := range k {
		other := &r.task.cands[r.parts[o]]
		g -= other.amounts[r.amounts[o]].ml * dot(&c.per, &other.per)
	}
	return g
}

func (r *rounder) descend(k int, square float64) {
	c := &r.task.cands[r.parts[k]]
	g := r.toward(k)
	last := k == len(r.parts)-1
	vertex := g / c.self
	for i, a := range c.amounts {
		if last && !beside(c.amounts, i, vertex) {
			continue
		}
		r.amounts[k] = i
		s := square - 2*a.ml*g + a.ml*a.ml*c.self
		if !last {
			r.descend(k+1, s)
			continue
		}
		if rank := math.Sqrt(math.Max(0, s)) + r.cost; rank <= r.edge {
			r.found = append(r.found, found{parts: slices.Clone(r.parts), amounts: slices.Clone(r.amounts),
				moves: slices.Clone(r.set), square: math.Max(0, s), rank: rank})
		}
	}
}

// beside reports whether amount i is the last at or below x or the first above.
func beside(amounts []amount, i int, x float64) bool {
	if amounts[i].ml <= x {
		return i+1 == len(amounts) || amounts[i+1].ml > x
	}
	return i == 0 || amounts[i-1].ml <= x
}
