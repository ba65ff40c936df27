package cover

import (
	"cmp"
	"container/heap"
	"context"
	"math"
	"slices"
)

// search returns the best combinations, in order: every one of up to
// req.Parts candidates is rounded, or ruled out by a bound that shows that no
// amounts of it can be among the best.
func (t *task) search(ctx context.Context) ([]found, error) {
	list := newShortlist(t)
	s := &search{task: t, list: list, rounder: rounder{task: t}, scouted: make([]bool, len(t.cands))}
	for parts := 1; parts <= t.req.Parts; parts++ {
		if err := s.stage(ctx, parts); err != nil {
			return nil, err
		}
	}
	return list.sorted(), nil
}

// search goes through the combinations of one number of parts after another.
type search struct {
	task     *task
	list     *shortlist
	reach    *reach // from the second part on
	scouted  []bool // candidates whose combinations were looked at already
	parts    int
	rounder  rounder
	pending  queue
	count    int // combinations looked at
	gathered int // since the likeliest were settled
}

const (
	// checkEvery is how many combinations pass between looks at the context.
	checkEvery = 1 << 14
	// checkSteps is the same in steps of settling, which take longer.
	checkSteps = 1 << 8
	// batch is how many combinations are gathered before the likeliest of
	// them are settled for batchSteps steps, so that the edge comes down early
	// and rules out the rest.
	batch      = 256
	batchSteps = 64
	// crowd is how many combinations may wait at once.
	crowd = 1 << 19
	// scouts is how many of the likeliest candidates are combined first, to
	// bring the edge down before the whole shelf is looked at.
	scouts = 40
)

// stage goes through every combination of a number of parts: first those of
// the scouts, then all that are still within reach.
func (s *search) stage(ctx context.Context, parts int) error {
	s.parts = parts
	// What was tasted is tried in any case: its rank is not its distance.
	for _, combination := range s.task.tastedOf(parts) {
		s.hope(combination, 0)
	}
	if err := s.settle(ctx, math.MaxInt); err != nil {
		return err
	}
	some := s.reachable()
	if len(some) > scouts {
		first := s.likeliest(some, scouts)
		if err := s.pass(ctx, first); err != nil {
			return err
		}
		for _, i := range first {
			s.scouted[i] = true
		}
		some = s.reachable()
	}
	err := s.pass(ctx, some)
	clear(s.scouted)
	return err
}

// reachable returns the candidates that may be part of a cover that is nearer
// than the worst one kept. One alone is looked at as quickly as its reach.
func (s *search) reachable() []int {
	if s.parts == 1 {
		return s.task.all()
	}
	if s.reach == nil {
		s.reach = s.task.newReach()
	}
	s.reach.within(s.far(), s.parts)
	return s.reach.alive
}

// all returns the places of all candidates.
func (t *task) all() []int {
	out := make([]int, len(t.cands))
	for i := range out {
		out[i] = i
	}
	return out
}

// likeliest returns the n of some candidates that alone come nearest, by id.
func (s *search) likeliest(some []int, n int) []int {
	type likely struct {
		i    int
		gain float64
	}
	// The nearest first; a shelf is long and n short, so each is put in its
	// place among the n.
	best := make([]likely, 0, n+1)
	for _, i := range some {
		x := likely{i, explainedBy(s.task.cands[i].gap, s.task.cands[i].self)}
		if len(best) == n && x.gain <= best[n-1].gain {
			continue
		}
		at, _ := slices.BinarySearchFunc(best, x, func(a, b likely) int { return cmp.Or(cmp.Compare(b.gain, a.gain), cmp.Compare(a.i, b.i)) })
		best = slices.Insert(best, at, x)
		best = best[:min(len(best), n)]
	}
	out := make([]int, len(best))
	for k, x := range best {
		out[k] = x.i
	}
	slices.Sort(out)
	return out
}

// pass goes through the combinations of some candidates.
func (s *search) pass(ctx context.Context, some []int) error {
	var err error
	switch s.parts {
	case 1:
		err = s.singles(ctx, some)
	case 2:
		err = s.pairs(ctx, some)
	default:
		err = s.triples(ctx, some)
	}
	if err != nil {
		return err
	}
	return s.settle(ctx, math.MaxInt)
}

func (s *search) singles(ctx context.Context, some []int) error {
	for _, i := range some {
		if s.task.leastAlone(&s.task.cands[i]) > s.list.edge {
			continue
		}
		if err := s.weigh(ctx, i); err != nil {
			return err
		}
	}
	return nil
}

func (s *search) pairs(ctx context.Context, some []int) error {
	m, err := s.task.newMetric(some)
	if err != nil {
		return err
	}
	r, best := s.reach, s.reach.bestOf(some)
	for a, i := range some {
		brought := r.brought(i)
		if !r.fills(brought, &best, 1) {
			continue
		}
		row, far := m.row(a), m.limit(s.far())
		for b := a + 1; b < len(some); b++ {
			j := some[b]
			if !r.fillsWith(brought, j) || m.pair(&row, a, b) > far {
				continue
			}
			if err := s.weigh(ctx, i, j); err != nil {
				return err
			}
		}
	}
	return nil
}

func (s *search) triples(ctx context.Context, some []int) error {
	m, err := s.task.newMetric(some)
	if err != nil {
		return err
	}
	r, table, best := s.reach, m.table(), s.reach.bestOf(some)
	for a, i := range some {
		if err := ctx.Err(); err != nil {
			return err
		}
		brought := r.brought(i)
		if !r.fills(brought, &best, 2) {
			continue
		}
		for b := a + 1; b < len(some); b++ {
			j := some[b]
			both := *brought
			both.add(r.brought(j), 1)
			if !r.fills(&both, &best, 1) {
				continue
			}
			far := m.limit(s.far())
			for c := b + 1; c < len(some); c++ {
				if !r.fillsWith(&both, some[c]) || table.triple(a, b, c) > far {
					continue
				}
				if err := s.weigh(ctx, i, j, some[c]); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// far is the distance beyond which a combination cannot be kept.
func (s *search) far() float64 { return s.list.edge - s.task.partCost(s.parts) }

// weigh gathers a combination if its bound does not rule it out.
func (s *search) weigh(ctx context.Context, parts ...int) error {
	if s.count++; s.count%checkEvery == 0 && ctx.Err() != nil {
		return ctx.Err()
	}
	if !s.task.plain(parts) || s.seen(parts) {
		return nil
	}
	p := s.task.productsOf(parts)
	if least := s.task.leastRank(parts, &p); least <= s.list.edge {
		s.hope(parts, least)
	}
	if len(s.pending) >= crowd {
		return s.settle(ctx, crowd)
	}
	if s.gathered >= batch {
		s.gathered = 0
		return s.settle(ctx, batchSteps)
	}
	return nil
}

// hope gathers a combination whose rank is no less than least.
func (s *search) hope(parts []int, least float64) {
	h := hope{least: least}
	for k, i := range parts {
		h.parts[k] = int32(i)
	}
	heap.Push(&s.pending, &h)
	s.gathered++
}

// seen reports whether a combination was looked at before: tasted, or of
// scouts alone.
func (s *search) seen(parts []int) bool {
	if _, tasted := s.task.tasted[combinationOf(parts)]; tasted {
		return true
	}
	for _, i := range parts {
		if !s.scouted[i] {
			return false
		}
	}
	return true
}

// plain keeps out a second odd ingredient.
func (t *task) plain(parts []int) bool {
	n := 0
	for _, i := range parts {
		if t.cands[i].odd {
			n++
		}
	}
	return n <= 1
}
