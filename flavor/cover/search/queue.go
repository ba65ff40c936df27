package search

import (
	"container/heap"
	"context"
	"slices"
)

// hope is a combination that its bound does not rule out. Very many may wait at
// once, so it holds no more than its place in the queue.
type hope struct {
	// least is the lower bound of its rank, and once it was rounded, the rank of
	// its best rounding that is allowed.
	least   float64
	parts   [MaxParts]int32 // ascending
	rounded bool
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

// Push is for package heap, which is not asked to: what is added is put in its place with Fix.
func (q *queue) Push(x any) { *q = append(*q, x.(hope)) }

// Pop is for package heap. Its result is not used.
func (q *queue) Pop() any {
	*q = (*q)[:len(*q)-1]
	return nil
}

// settle goes on with the likeliest of what was gathered for a number of steps,
// or until none of it can be kept. A combination is rounded first and weighed
// when its rank is the least of all, so that hardly one is weighed that the list
// would not keep.
func (s *search) settle(ctx context.Context, steps int) error {
	pending := &s.room.pending
	for ; steps > 0 && len(*pending) > 0; steps-- {
		if steps%checkSteps == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		first := &(*pending)[0]
		if first.least > s.list.cutoff {
			*pending = (*pending)[:0]
			return nil
		}
		more, err := s.goOn(first)
		if err != nil {
			return err
		}
		if more {
			heap.Fix(pending, 0)
		} else {
			heap.Pop(pending)
		}
	}
	return nil
}

// goOn rounds a combination, and weighs its roundings if it was rounded before.
// It reports whether there is more to it.
func (s *search) goOn(h *hope) (more bool, err error) {
	parts := make([]int, s.parts)
	for k := range parts {
		parts[k] = int(h.parts[k])
	}
	if err := s.spend(effortOfRounding); err != nil {
		return false, err
	}
	far := min(s.task.earning(parts), s.task.earningInPairs(parts))
	found := s.rounder.round(parts, s.list.cutoff, far)
	if len(found) == 0 {
		return false, nil
	}
	if h.rounded {
		return false, s.choose(found)
	}
	first := slices.IndexFunc(found, func(x Filling) bool { return s.task.Allows == nil || s.task.Allows(&x) })
	if first < 0 {
		return false, nil
	}
	h.rounded, h.least = true, found[first].Rank
	return true, nil
}

// choose keeps the rounding of a combination that is served, if any is.
func (s *search) choose(found []Filling) error {
	at := 0
	if s.task.Choose != nil {
		err := s.spend(effortOfWeighing)
		if err != nil {
			return err
		}
		if at, err = s.task.Choose(found); err != nil {
			return err
		}
	}
	if at >= 0 {
		s.list.keep(found[at])
	}
	return nil
}
