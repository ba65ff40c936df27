package cover

import "counterpour/flavor/cover/search"

// desk is where a task lists what may be poured. It outlives the task, so that the next hardly
// makes any memory anew.
type desk struct {
	cands   []candidate
	entries []search.Part
	numbers []float64 // the amounts of the parts and how strange they are, one after another
}

// mostListed is the most candidates that a desk keeps room for, some two megabytes of it: a
// longer shelf makes it anew for each task.
const mostListed = 1 << 12

// borrow returns a desk with room for n candidates.
func (f *Finder) borrow(n int) *desk {
	d, _ := f.desks.Get().(*desk)
	if d == nil {
		d = &desk{}
	}
	if cap(d.cands) < n {
		d.cands, d.entries = make([]candidate, 0, n), make([]search.Part, 0, n)
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

// done gives back what the task borrowed; nothing that it listed may be used afterwards.
// Whoever only drops a task loses nothing but that.
func (t *task) done() {
	d := t.desk
	if d == nil || cap(d.cands) > mostListed {
		return
	}
	d.cands, d.entries, d.numbers = t.cands[:0], t.entries[:0], d.numbers[:0]
	clear(d.cands[:cap(d.cands)])
	clear(d.entries[:cap(d.entries)])
	t.cands, t.entries, t.desk = nil, nil, nil
	t.finder.desks.Put(d)
}
