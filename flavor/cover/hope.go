package cover

import (
	"container/heap"
	"context"
	"slices"
)

// hope is a combination that its bound does not rule out. There may be very
// many of them, of which few are ever rounded.
type hope struct {
	// least is the bound, and once the combination was rounded, the rank of
	// its next rounding.
	least float64
	parts [MaxParts]int32 // places among the candidates, ascending
	*rounded
}

// rounded is what is known of a combination once it was rounded: its roundings
// are weighed one after another until one is good enough.
type rounded struct {
	roundings []found // the best first
	tried     int     // how many were not good enough
	scorer    *scorer // once one was asked for
}

// queue is a heap of combinations, the likeliest first.
type queue []hope

func (q queue) Len() int      { return len(q) }
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }

func (q queue) Less(i, j int) bool {
	if q[i].least != q[j].least {
		return q[i].least < q[j].least
	}
	return slices.Compare(q[i].parts[:], q[j].parts[:]) < 0
}

// Push is for package heap.
func (q *queue) Push(x any) { *q = append(*q, *x.(*hope)) }

// Pop is for package heap. Its result is not used.
func (q *queue) Pop() any {
	last := len(*q) - 1
	(*q)[last] = hope{}
	*q = (*q)[:last]
	return nil
}

// settle goes on with the likeliest of what was gathered for a number of steps,
// or until none of it can be kept. Because the likeliest comes first, hardly a
// rounding is weighed that the list would not keep.
func (s *search) settle(ctx context.Context, steps int) error {
	for ; steps > 0 && len(s.pending) > 0; steps-- {
		if steps%checkSteps == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		first := &s.pending[0]
		if first.least > s.list.edge {
			clear(s.pending)
			s.pending = s.pending[:0]
			return nil
		}
		more, err := s.goOn(first)
		if err != nil {
			return err
		}
		if more {
			heap.Fix(&s.pending, 0)
		} else {
			heap.Pop(&s.pending)
		}
	}
	return nil
}

// goOn rounds a combination, or weighs its next rounding. It reports whether
// there is more to it.
func (s *search) goOn(h *hope) (more bool, err error) {
	if h.rounded == nil {
		parts := make([]int, s.parts)
		for k := range parts {
			parts[k] = int(h.parts[k])
		}
		h.rounded = &rounded{roundings: s.task.round(parts, s.list.edge)}
	} else {
		good, err := s.task.good(h.rounded)
		if err != nil {
			return false, err
		}
		if good {
			s.list.keep(h.roundings[h.tried])
			return false, nil
		}
		h.tried++
	}
	if h.tried == len(h.roundings) {
		return false, nil
	}
	h.least = h.roundings[h.tried].rank
	return true, nil
}

// good reports whether the next rounding of a combination is within the guest's
// limits and, if that is asked, keeps the balance.
func (t *task) good(h *rounded) (bool, error) {
	x := &h.roundings[h.tried]
	if ok, err := t.within(x); !ok || err != nil {
		return false, err
	}
	if !t.strict {
		return true, nil
	}
	if h.scorer == nil {
		var err error
		if h.scorer, err = t.newScorer(&h.roundings[0]); err != nil {
			return false, err
		}
	}
	score, ok := h.scorer.balanced(x)
	if ok && h.tried == 0 { // the one the scorer was made for, to the last digit
		x.score = score
	}
	return ok, nil
}
