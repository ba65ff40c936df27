package shelf

import (
	"sync"

	"counterpour/flavor/cover/search"
)

// desk is where a task lists what may be poured. It outlives the task, so that the next hardly
// makes any memory anew.
type desk struct {
	cands   []Candidate
	entries []search.Part
	numbers []float64 // the amounts of the parts and how strange they are, one after another
}

// mostListed is the most candidates that a desk keeps room for, some two megabytes of it: a
// longer shelf makes it anew for each task.
const mostListed = 1 << 12

// Desks are where tasks list what may be poured. They are safe for concurrent use; their zero value
// is ready.
type Desks struct{ idle sync.Pool }

// borrow returns a desk with room for n candidates.
func (f *Desks) borrow(n int) *desk {
	d, _ := f.idle.Get().(*desk)
	if d == nil {
		d = &desk{}
	}
	if cap(d.cands) < n {
		d.cands, d.entries = make([]Candidate, 0, n), make([]search.Part, 0, n)
	}
	return d
}

// list returns room for n numbers, whatever they are, until the task is done.
func (d *desk) list(n int) []float64 {
	if len(d.numbers)+n > cap(d.numbers) {
		d.numbers = make([]float64, 0, max(n, 2*cap(d.numbers), usualNumbers)) // who has the old ones keeps them
	}
	from := len(d.numbers)
	d.numbers = d.numbers[:from+n]
	return d.numbers[from : from+n : from+n]
}

// usualNumbers is how many numbers the candidates of a drink seldom need more of.
const usualNumbers = 1 << 12

// Done gives back what the task borrowed; nothing that it listed may be used afterwards.
// Whoever only drops a task loses nothing but that.
func (s *Shelf) Done() {
	d := s.desk
	if d == nil || cap(d.cands) > mostListed {
		return
	}
	d.cands, d.entries, d.numbers = s.Cands[:0], s.Entries[:0], d.numbers[:0]
	clear(d.cands[:cap(d.cands)])
	clear(d.entries[:cap(d.entries)])
	s.Cands, s.Entries, s.desk = nil, nil, nil
	s.desks.idle.Put(d)
}
