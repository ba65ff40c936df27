package search

import (
	"math"
	"slices"
)

// reach says, for a distance that a filling must not exceed, which parts can be
// in one and in which amounts. Along a rising direction no part takes away, so one
// that brings too much in its smallest amount is out, and a direction that is
// far from filled must be filled by one part or another.
type reach struct {
	task   *task
	far    float64   // the distance
	room   []float64 // most that the parts may bring along each direction, moves helping
	floor  []float64 // least that they must, moves helping
	needs  []int     // directions whose floor is above the distance, the emptiest first
	near   []int     // parts that do not overshoot
	alive  []int     // those of them that fill what is wanting
	most   []float64 // millilitres of each at most, by part
	usable []int     // amounts of each that are within reach, by part
}

// addRising works out what every part brings along each rising direction.
func (t *task) addRising() {
	t.rising = make([][]float64, len(t.Rising))
	for d := range t.Rising {
		t.rising[d] = t.room.take(len(t.Parts))
		w := t.direction(d)
		places := nonzero(&w)
		for i := range t.Parts {
			t.rising[d][i] = max(0, dotAt(&w, t.per(i), places))
		}
	}
}

// nonzero returns where a row is not zero: directions have few such places, so that
// products with them are quick.
func nonzero(v *Row) []int {
	var out []int
	for i, x := range v {
		if x != 0 {
			out = append(out, i)
		}
	}
	return out
}

func dotAt(a, b *Row, places []int) float64 {
	var s float64
	for _, i := range places {
		s += a[i] * b[i]
	}
	return s
}

// direction returns rising direction d, of unit length.
func (t *task) direction(d int) Row {
	var w Row
	if length := math.Sqrt(dot(&t.Rising[d], &t.Rising[d])); length > 0 {
		add(&w, &t.Rising[d], 1/length)
	}
	return w
}

func (t *task) newReach() *reach {
	n := len(t.Parts)
	r := &reach{task: t, near: t.all(), alive: make([]int, 0, n), most: t.room.take(n), usable: make([]int, n),
		room: make([]float64, len(t.Rising)), floor: make([]float64, len(t.Rising))}
	for i := range t.Parts {
		r.usable[i] = len(t.Parts[i].Amounts)
	}
	for d := range t.Rising {
		w := t.direction(d)
		var up, down float64
		for s := range t.sets {
			var by float64
			for _, m := range t.sets[s].moves {
				by += dot(&w, &t.Moves[m].By)
			}
			up, down = max(up, by), max(down, -by)
		}
		gap := dot(&w, &t.Gap)
		r.room[d], r.floor[d] = gap+down+slack, gap-up-slack
	}
	return r
}

// within narrows the parts to those that can be one of n parts of a filling no
// further away than far, which must not grow from call to call.
func (r *reach) within(far float64, n int) {
	r.far = far
	near := r.near[:0]
	for _, i := range r.near {
		if r.usable[i] = r.usableOf(i); r.usable[i] > 0 {
			near = append(near, i)
			r.most[i] = r.task.Parts[i].Amounts[r.usable[i]-1]
		}
	}
	r.near = near
	r.findNeeds()
	r.dropIdle(n)
}

// usableOf counts the amounts of a part that do not overshoot by more than the
// distance, out of those that did not before; a larger amount overshoots more.
func (r *reach) usableOf(i int) int {
	if math.IsInf(r.far, 1) {
		return r.usable[i]
	}
	n, _ := slices.BinarySearchFunc(r.task.Parts[i].Amounts[:r.usable[i]], r.far, func(ml, far float64) int {
		if far >= 0 && r.overshoot(i, ml) <= far {
			return -1
		}
		return 1
	})
	return n
}

// overshoot returns by how much, along one direction or another, an amount of a
// part brings more than there is room for.
func (r *reach) overshoot(i int, ml float64) float64 {
	var over float64
	for d := range r.room {
		over = max(over, ml*r.task.rising[d][i]-r.room[d])
	}
	return over
}

func (r *reach) findNeeds() {
	r.needs = r.needs[:0]
	for d := range r.floor {
		if r.floor[d] > r.far {
			r.needs = append(r.needs, d)
		}
	}
	slices.SortStableFunc(r.needs, func(a, b int) int {
		switch {
		case r.floor[a] > r.floor[b]:
			return -1
		case r.floor[a] < r.floor[b]:
			return 1
		}
		return 0
	})
}

// dropIdle leaves out parts that, even with the best partners, leave a direction
// wanting.
func (r *reach) dropIdle(n int) {
	best, brought := r.bestOf(r.near), r.task.room.take(len(r.needs))
	r.alive = r.alive[:0]
	for _, i := range r.near {
		if r.brought(i, brought); r.fills(brought, best, float64(n-1)) {
			r.alive = append(r.alive, i)
		}
	}
}

// bestOf returns the most that any of some parts brings along each needed
// direction.
func (r *reach) bestOf(some []int) []float64 {
	best := r.task.room.take(len(r.needs))
	for k, d := range r.needs {
		for _, i := range some {
			best[k] = max(best[k], r.most[i]*r.task.rising[d][i])
		}
	}
	return best
}

// brought fills in the most that a part brings along each needed direction.
func (r *reach) brought(i int, into []float64) {
	for k, d := range r.needs {
		into[k] = r.most[i] * r.task.rising[d][i]
	}
}

// fills reports whether what is brought, with times × more, leaves no direction
// wanting.
func (r *reach) fills(brought, more []float64, times float64) bool {
	for k, d := range r.needs {
		if brought[k]+times*more[k] < r.floor[d]-r.far {
			return false
		}
	}
	return true
}

// fillsWith is fills with one more part.
func (r *reach) fillsWith(brought []float64, i int) bool {
	ml := r.most[i]
	for k, d := range r.needs {
		if brought[k]+ml*r.task.rising[d][i] < r.floor[d]-r.far {
			return false
		}
	}
	return true
}
