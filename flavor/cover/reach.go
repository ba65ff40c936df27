package cover

import (
	"math"
	"slices"
)

// reach says, for a distance that a cover must not exceed, which candidates can
// be part of one and in which amounts. No row of the space may be overshot or
// left wanting by more than that distance, so a candidate that brings too much
// of something in its smallest amount is out, and a row that is far from empty
// must be filled by one part or another.
type reach struct {
	task   *task
	far    float64   // the distance
	room   vector    // most that the parts may bring of each row, moves helping
	floor  vector    // least that they must, moves helping
	needs  []int     // rows whose floor is above zero, the emptiest first
	near   []int     // candidates that do not overshoot
	alive  []int     // those of them that fill what is wanting
	most   []float64 // millilitres of each at most, by candidate
	usable []int     // amounts of each that are within reach, by candidate
}

func (t *task) newReach() *reach {
	n := len(t.cands)
	r := &reach{task: t, near: t.all(), alive: make([]int, 0, n), most: make([]float64, n), usable: make([]int, n)}
	for i := range t.cands {
		r.usable[i] = len(t.cands[i].amounts)
	}
	for row := range numRows {
		var up, down float64
		for s := range t.sets {
			var by float64
			for _, m := range t.sets[s].moves {
				by += t.moves[m].by[row]
			}
			up, down = max(up, by), max(down, -by)
		}
		r.room[row], r.floor[row] = t.gap[row]+down, t.gap[row]-up
	}
	return r
}

// within narrows the candidates to those that can be one of parts parts of a
// cover no further away than far, which must not grow from call to call.
func (r *reach) within(far float64, parts int) {
	r.far = far
	near := r.near[:0]
	for _, i := range r.near {
		if r.usable[i] = r.usableOf(i); r.usable[i] > 0 {
			near = append(near, i)
			r.most[i] = r.task.cands[i].amounts[r.usable[i]-1].ml
		}
	}
	r.near = near
	r.findNeeds()
	r.dropIdle(parts)
}

// usableOf counts the amounts of a candidate that do not overshoot by more
// than the distance, out of those that did not before; a larger amount
// overshoots more.
func (r *reach) usableOf(i int) int {
	if math.IsInf(r.far, 1) {
		return r.usable[i]
	}
	c := &r.task.cands[i]
	n, _ := slices.BinarySearchFunc(c.amounts[:r.usable[i]], r.far, func(a amount, far float64) int {
		if far >= 0 && r.overshoot(c, a.ml) <= far*far {
			return -1
		}
		return 1
	})
	return n
}

// overshoot returns by how much, squared, an amount of a candidate brings more
// than there is room for.
func (r *reach) overshoot(c *candidate, ml float64) float64 {
	var over float64
	for row := range c.per {
		if d := ml*c.per[row] - r.room[row]; d > 0 {
			over += d * d
		}
	}
	return over
}

func (r *reach) findNeeds() {
	r.needs = r.needs[:0]
	for row := range r.floor {
		if r.floor[row] > r.far {
			r.needs = append(r.needs, row)
		}
	}
	for a := 1; a < len(r.needs); a++ {
		for b := a; b > 0 && r.floor[r.needs[b]] > r.floor[r.needs[b-1]]; b-- {
			r.needs[b], r.needs[b-1] = r.needs[b-1], r.needs[b]
		}
	}
}

// dropIdle leaves out candidates that, even with the best partners, leave a
// row wanting.
func (r *reach) dropIdle(parts int) {
	best := r.bestOf(r.near)
	r.alive = r.alive[:0]
	for _, i := range r.near {
		if r.fills(r.brought(i), &best, float64(parts-1)) {
			r.alive = append(r.alive, i)
		}
	}
}

// bestOf returns the most that any of some candidates brings of each row.
func (r *reach) bestOf(some []int) vector {
	var best vector
	for _, i := range some {
		for _, row := range r.needs {
			best[row] = math.Max(best[row], r.most[i]*r.task.cands[i].per[row])
		}
	}
	return best
}

// brought returns the most that a candidate brings of the rows that are needed.
func (r *reach) brought(i int) *vector {
	var v vector
	for _, row := range r.needs {
		v[row] = r.most[i] * r.task.cands[i].per[row]
	}
	return &v
}

// fills reports whether what is brought, with times × more, leaves no row
// wanting.
func (r *reach) fills(brought, more *vector, times float64) bool {
	for _, row := range r.needs {
		if brought[row]+times*more[row] < r.floor[row]-r.far {
			return false
		}
	}
	return true
}

// fillsWith is fills with one more candidate.
func (r *reach) fillsWith(brought *vector, i int) bool {
	ml, per := r.most[i], &r.task.cands[i].per
	for _, row := range r.needs {
		if brought[row]+ml*per[row] < r.floor[row]-r.far {
			return false
		}
	}
	return true
}
