package cover

import (
	"cmp"
	"context"
	"errors"
	"slices"
)

// search returns the best combinations, in order: every one of up to
// req.Parts candidates is rounded, or ruled out by a bound that shows that no
// amounts of it can be among the best.
func (t *task) search(ctx context.Context) ([]found, error) {
	list := newShortlist(t)
	s := &search{task: t, list: list, reach: t.newReach()}
	for parts := 1; parts <= t.req.Parts; parts++ {
		if err := s.stage(ctx, parts); err != nil {
			return nil, err
		}
	}
	return list.sorted(), nil
}

// search goes through the combinations of one number of parts after another.
type search struct {
	task    *task
	list    *shortlist
	reach   *reach
	metric  *metric
	scouted map[int]bool // candidates whose combinations were looked at already
	parts   int
	pending []hope
	count   int
}

// hope is a combination that its bound does not rule out.
type hope struct {
	parts [MaxParts]int
	bound float64 // least rank
}

func (h hope) compare(o hope) int {
	return cmp.Or(cmp.Compare(h.bound, o.bound), slices.Compare(h.parts[:], o.parts[:]))
}

const (
	// checkEvery is how many combinations pass between looks at the context.
	checkEvery = 1 << 14
	// batch is how many combinations are gathered before the best of them
	// are rounded, so that the edge comes down early and rules out the rest.
	batch = 256
	// scouts is how many of the likeliest candidates are combined first, to
	// bring the edge down before the whole shelf is looked at.
	scouts = 40
)

// stage goes through every combination of a number of parts: first those of
// the scouts, then all that are still within reach.
func (s *search) stage(ctx context.Context, parts int) error {
	s.parts = parts
	s.scouted = nil
	// What was tasted is tried in any case: its rank is not its distance.
	for _, combination := range s.task.tastedOf(parts) {
		if err := s.list.try(combination); err != nil {
			return err
		}
	}
	s.narrow()
	if len(s.reach.alive) > scouts {
		first := s.likeliest(scouts)
		s.reach.alive = first
		if err := s.pass(ctx); err != nil {
			return err
		}
		s.scouted = make(map[int]bool, len(first))
		for _, i := range first {
			s.scouted[i] = true
		}
		s.narrow()
	}
	return s.pass(ctx)
}

// narrow brings the reach down to what the worst cover kept leaves.
func (s *search) narrow() {
	s.reach.within(s.list.edge-s.task.partCost(s.parts), s.parts)
}

// likeliest returns the n candidates in reach that alone come nearest, by id.
func (s *search) likeliest(n int) []int {
	type likely struct {
		i    int
		gain float64
	}
	// The nearest first; a shelf is long and n short, so each is put in its
	// place among the n.
	best := make([]likely, 0, n+1)
	for _, i := range s.reach.alive {
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

// pass goes through the combinations of the candidates in reach.
func (s *search) pass(ctx context.Context) error {
	var err error
	if s.parts > 1 {
		if s.metric, err = s.task.newMetric(s.reach.alive); err != nil {
			return err
		}
	}
	switch s.parts {
	case 1:
		err = s.singles(ctx)
	case 2:
		err = s.pairs(ctx)
	default:
		err = s.triples(ctx)
	}
	if err != nil {
		return err
	}
	return s.settle()
}

func (s *search) singles(ctx context.Context) error {
	for _, i := range s.reach.alive {
		if err := s.weigh(ctx, i); err != nil {
			return err
		}
	}
	return nil
}

func (s *search) pairs(ctx context.Context) error {
	r, m, far := s.reach, s.metric, 0.0
	best := r.bestOf(r.alive)
	for a, i := range r.alive {
		brought := r.brought(i)
		if !r.fills(brought, &best, 1) {
			continue
		}
		far = m.limit(s.far())
		for b := a + 1; b < len(r.alive); b++ {
			j := r.alive[b]
			if m.pair(a, b) > far || !r.fillsWith(brought, j) {
				continue
			}
			if err := s.weigh(ctx, i, j); err != nil {
				return err
			}
		}
	}
	return nil
}

func (s *search) triples(ctx context.Context) error {
	r, m := s.reach, s.metric
	best := r.bestOf(r.alive)
	for a, i := range r.alive {
		if err := ctx.Err(); err != nil {
			return err
		}
		brought := r.brought(i)
		if !r.fills(brought, &best, 2) {
			continue
		}
		for b := a + 1; b < len(r.alive); b++ {
			j := r.alive[b]
			both := *brought
			both.add(r.brought(j), 1)
			if !r.fills(&both, &best, 1) {
				continue
			}
			far := m.limit(s.far())
			for c := b + 1; c < len(r.alive); c++ {
				if m.triple(a, b, c) > far || !r.fillsWith(&both, r.alive[c]) {
					continue
				}
				if err := s.weigh(ctx, i, j, r.alive[c]); err != nil {
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
	h := hope{bound: s.task.leastRank(parts, &p)}
	if h.bound > s.list.edge {
		return nil
	}
	copy(h.parts[:], parts)
	if s.pending = append(s.pending, h); len(s.pending) < batch {
		return nil
	}
	return s.settle()
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

// settle rounds what was gathered, the best first.
func (s *search) settle() error {
	slices.SortFunc(s.pending, hope.compare)
	for _, h := range s.pending {
		if h.bound > s.list.edge {
			break
		}
		if err := s.list.try(slices.Clone(h.parts[:s.parts])); err != nil {
			return err
		}
	}
	s.pending = s.pending[:0]
	return nil
}

var errNotDefinite = errors.New("cover: the moves of the other pours do not form a positive definite system")
