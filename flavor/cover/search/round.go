package search

import (
	"cmp"
	"math"
	"slices"
)

// How many roundings of one combination are tried, the best first: roundingsAlone of one part
// alone, in any amount, and of parts that are known together; roundingsKnown of the latter where
// nothing else moves, since all of them may be poured in any amount then; roundings of any other
// combination, whose last part is poured in an amount beside the best.
const (
	roundingsAlone = 48
	roundingsKnown = 144
	roundings      = 6
)

// rounder finds the pourable amounts of one combination.
type rounder struct {
	task     *task
	room     *room // what was kept and found is there
	parts    []int
	products products
	set      *moveSet
	at       int // of the set
	cost     float64
	toward   [MaxParts]float64
	cutoff   float64 // rank beyond which a rounding is not kept
	far      float64 // distance beyond which it is not
	amounts  [MaxParts]int32
	most     int  // roundings to keep
	any      bool // the last part may be poured in any amount
}

// rounding is a filling of the combination at hand. Very many are put in their place
// and pushed out again, so it holds no more than it must.
type rounding struct {
	square, rank float64
	amounts      [MaxParts]int32
	set          int32 // of moves
}

// compare orders roundings of one combination as [compare] does fillings: sets of
// fewer moves come first, and those of as many in order.
func (r *rounder) compare(a, b rounding) int {
	if c := cmp.Compare(a.rank, b.rank); c != 0 {
		return c
	}
	moves := func(x *rounding) int { return len(r.task.sets[x.set].moves) }
	return cmp.Or(cmp.Compare(moves(&a), moves(&b)), slices.Compare(a.amounts[:], b.amounts[:]), cmp.Compare(a.set, b.set))
}

// round returns the roundings of a combination that rank within the cutoff and
// are no further than far, the best first; the next call overwrites them.
func (r *rounder) round(parts []int, cutoff, far float64) []Filling {
	t := r.task
	r.parts, r.products, r.cutoff, r.far = parts, t.productsOf(parts), cutoff, far
	r.room.kept = r.room.kept[:0]
	r.most, r.any = roundings, len(parts) == 1
	switch known := t.knows(parts); {
	case known && len(t.sets) == 1:
		r.most, r.any = roundingsKnown, true
	case known, len(parts) == 1:
		r.most = roundingsAlone
	}
	standing := t.standing(parts)
	for s := range t.sets {
		r.set, r.at = &t.sets[s], s
		r.cost = r.set.cost + standing
		r.toward = t.toward(parts, r.set)
		if r.near(r.set.square, r.products.explained(&r.toward)) {
			r.descend(0, r.set.square, r.toward)
		}
	}
	return r.fillings()
}

// fillings returns the roundings that were kept.
func (r *rounder) fillings() []Filling {
	found := r.room.found[:0]
	for i := range r.room.kept {
		x := &r.room.kept[i]
		f := Filling{Parts: r.parts, Moves: r.task.sets[x.set].moves, Square: x.square, Rank: x.rank}
		for k, a := range x.amounts {
			f.Amounts[k] = int(a)
		}
		found = append(found, f)
	}
	r.room.found = found
	return found
}

// near reports whether what is left of a squared gap may be within the cutoff.
func (r *rounder) near(square, explained float64) bool {
	least := leastLength(square, explained)
	return least+r.cost <= r.cutoff+slack && least <= r.far+slack
}

// descend settles part k; square is the squared gap left and h the products of
// the parts with it.
func (r *rounder) descend(k int, square float64, h [MaxParts]float64) {
	part, self := &r.task.Parts[r.parts[k]], r.products.self[k]
	if k == len(r.parts)-1 {
		from, to := 0, len(part.Amounts)
		if !r.any {
			from, to = beside(part.Amounts, h[k]/self)
		}
		for i := from; i < to; i++ {
			r.finish(k, i, square, h[k])
		}
		return
	}
	for i, ml := range part.Amounts {
		r.amounts[k] = int32(i)
		s := max(0, square-2*ml*h[k]+ml*ml*self)
		if left := r.without(k, ml, h); r.near(s, r.explainedAfter(k, &left)) {
			r.descend(k+1, s, left)
		}
	}
}

// finish settles the last part and keeps the rounding if it is near enough.
func (r *rounder) finish(k, amount int, square, h float64) {
	part := &r.task.Parts[r.parts[k]]
	ml := part.Amounts[amount]
	r.amounts[k] = int32(amount)
	s := max(0, square-2*ml*h+ml*ml*r.products.self[k])
	distance, cost := math.Sqrt(s), r.cost
	if k == 0 {
		cost += part.unlike(ml, r.task.Costs.Unlike)
	}
	if rank := distance + cost; rank <= r.cutoff && distance <= r.far {
		r.keep(rounding{square: s, rank: rank, amounts: r.amounts, set: int32(r.at)})
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
// sets the cutoff.
func (r *rounder) keep(x rounding) {
	kept := r.room.kept
	at, _ := slices.BinarySearchFunc(kept, x, r.compare)
	if at == r.most {
		return
	}
	kept = slices.Insert(kept[:min(len(kept), r.most-1)], at, x)
	if len(kept) == r.most {
		r.cutoff = kept[r.most-1].rank
	}
	r.room.kept = kept
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
func beside(amounts []float64, x float64) (from, to int) {
	above := 0
	for above < len(amounts) && amounts[above] <= x {
		above++
	}
	return max(0, above-1), min(len(amounts), above+1)
}
