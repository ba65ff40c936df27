package search

import "sync"

// room is the memory that a search works in. It outlives the search, so that the next hardly
// makes any anew.
type room struct {
	numbers []float64
	free    []float64 // the rest of numbers, which nobody has yet
	pending queue
	kept    []rounding
	found   []Filling
}

// rooms lends them: as many are in use as searches are under way, one in another among them.
var rooms = sync.Pool{New: func() any { return new(room) }}

// How much of a room is kept for the next search; what needs more makes it anew each time.
const (
	mostNumbers = 1 << 16 // half a megabyte
	mostPending = 1 << 14 // combinations, less than half a megabyte
)

// take lends n zeros until the search is over.
func (r *room) take(n int) []float64 {
	if n > mostNumbers {
		return make([]float64, n)
	}
	if n > len(r.free) {
		r.numbers = make([]float64, min(mostNumbers, max(n, 2*len(r.numbers))))
		r.free = r.numbers
	}
	out := r.free[:n:n]
	r.free = r.free[n:]
	clear(out)
	return out
}

// giveBack ends the use of a room, and of all that was taken from it.
func (r *room) giveBack() {
	r.clean()
	rooms.Put(r)
}

// clean leaves what the next search may have.
func (r *room) clean() {
	r.free = r.numbers
	if cap(r.pending) > mostPending {
		r.pending = nil
	}
	clear(r.found[:cap(r.found)]) // they hold on to the moves of the problem
	r.pending, r.kept, r.found = r.pending[:0], r.kept[:0], r.found[:0]
}
