package search

import (
	"cmp"
	"container/heap"
	"context"
	"errors"
	"maps"
	"math"
	"slices"
)

// Find returns the best fillings of a problem, in order. If the deadline of ctx
// passes it returns the best so far and says that they are not proven; if ctx is
// cancelled it fails. The fillings of one part are found first of all, in a time
// that grows with their number alone.
func Find(ctx context.Context, p *Problem) (*Result, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	room := rooms.Get().(*room)
	defer room.giveBack()
	t := newTask(p, room)
	s := &search{task: t, list: newList(p), rounder: rounder{task: t, room: room}, seeded: make([]bool, len(p.Parts)), room: room}
	for n := 1; n <= p.Most; n++ {
		err := s.stage(ctx, n)
		if errors.Is(err, context.DeadlineExceeded) || errors.Is(err, errSpent) {
			return &Result{Fillings: s.list.sorted(), Effort: s.effort}, nil
		}
		if err != nil {
			return nil, err
		}
	}
	return &Result{Fillings: s.list.sorted(), Proven: true, Effort: s.effort}, nil
}

// errSpent ends a search that took all the effort it may.
var errSpent = errors.New("search: no effort left")

// What rounding a combination and weighing its roundings cost, in combinations
// looked at: some ten and some hundred microseconds against a tenth of one.
const (
	effortOfRounding = 100
	effortOfWeighing = 1000
)

// spend takes effort, and reports whether the search must end. One part alone is
// always looked at.
func (s *search) spend(effort int) error {
	s.effort += effort
	if s.parts > 1 && s.task.Effort > 0 && s.effort > s.task.Effort {
		return errSpent
	}
	return nil
}

// search goes through the combinations of one number of parts after another.
type search struct {
	task     *task
	list     *list
	reach    *reach // from the second part on
	seeded   []bool // parts whose combinations were looked at already
	parts    int
	rounder  rounder
	room     *room // what waits is pending there
	count    int   // combinations looked at
	gathered int   // since the likeliest were settled
	effort   int
}

const (
	// checkEvery is how many combinations pass between looks at the context.
	checkEvery = 1 << 12
	// checkSteps is the same in steps of settling, which take longer.
	checkSteps = 1 << 5
	// batch is how many combinations of several parts are gathered before the
	// likeliest of them are settled for batchSteps steps, so that the cutoff comes down
	// early and rules out the rest. Parts alone are few enough to gather them all: each
	// that is settled too early costs as much as to gather hundreds.
	batch      = 256
	batchSteps = 64
	// crowd is how many combinations may wait at once.
	crowd = 1 << 19
	// seeds is how many of the likeliest parts are combined first, to bring the
	// cutoff down before all are looked at.
	seeds = 40
)

// stage goes through every combination of a number of parts: first those that
// are known, then those of the seeds, then all that are still within reach.
func (s *search) stage(ctx context.Context, parts int) error {
	s.parts = parts
	if parts > 1 {
		s.task.workAlone()
	}
	for _, known := range s.task.known(parts) { // tried in any case: their standing is not that of their parts
		s.hope(known, math.Inf(-1))
	}
	if err := s.settle(ctx, math.MaxInt); err != nil {
		return err
	}
	some := s.reachable()
	if parts > 1 && len(some) > seeds { // parts alone are gathered all, and come in order anyway
		first := s.seedsOf(some)
		if err := s.pass(ctx, first); err != nil {
			return err
		}
		for _, i := range first {
			s.seeded[i] = true
		}
		some = s.reachable()
	}
	err := s.pass(ctx, some)
	clear(s.seeded)
	return err
}

// known returns the combinations of a number of parts whose standing is known,
// in order.
func (t *task) known(n int) [][]int {
	var out [][]int
	for c := range maps.Keys(t.Known) {
		if parts := c.Parts(); len(parts) == n && !slices.ContainsFunc(parts, func(i int) bool { return t.self[i] == 0 }) {
			out = append(out, parts)
		}
	}
	slices.SortFunc(out, slices.Compare[[]int])
	return out
}

// reachable returns the parts that may be in a filling that is nearer than the
// worst one kept. One alone is looked at as quickly as its reach.
func (s *search) reachable() []int {
	if s.parts == 1 {
		return s.task.all()
	}
	if s.reach == nil {
		s.reach = s.task.newReach()
	}
	far := s.list.cutoff - s.task.several(s.parts)
	s.reach.within(far, s.parts)
	return slices.DeleteFunc(slices.Clone(s.reach.alive), func(i int) bool {
		return far < s.task.Parts[i].Price || s.task.alone[i] < s.task.Costs.Earn
	})
}

// seedsOf returns those of some parts that alone come nearest, by place.
func (s *search) seedsOf(some []int) []int {
	type likely struct {
		i     int
		least float64
	}
	// Parts are many and seeds few, so each is put in its place among them.
	best := make([]likely, 0, seeds+1)
	for _, i := range some {
		x := likely{i, s.task.Parts[i].Price + s.task.lowerBoundAlone(i)}
		if len(best) == seeds && x.least >= best[seeds-1].least {
			continue
		}
		at, _ := slices.BinarySearchFunc(best, x, func(a, b likely) int { return cmp.Or(cmp.Compare(a.least, b.least), cmp.Compare(a.i, b.i)) })
		best = slices.Insert(best, at, x)
		best = best[:min(len(best), seeds)]
	}
	out := make([]int, len(best))
	for k, x := range best {
		out[k] = x.i
	}
	slices.Sort(out)
	return out
}

// pass goes through the combinations of some parts.
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
		if s.task.Standing([]int{i})+s.task.lowerBoundAlone(i) > s.list.cutoff {
			continue
		}
		if err := s.weigh(ctx, i); err != nil {
			return err
		}
	}
	return nil
}

// begun is a combination with parts still to come: what it stands at by itself,
// how near the nearest of its parts comes alone, and for each thing out how strange
// the least strange of them is.
type begun struct {
	price, alone float64
	strange      []float64
}

// begin starts a combination of the number of parts that is looked at.
func (s *search) begin() begun {
	b := begun{price: s.task.several(s.parts), alone: math.Inf(1)}
	if len(s.task.Parts) > 0 {
		b.strange = s.room.take(len(s.task.Parts[0].Strange))
	}
	for m := range b.strange {
		b.strange[m] = math.Inf(1)
	}
	return b
}

// with adds part i; strange has room for as many numbers as its own.
func (b *begun) with(t *task, i int, strange []float64) begun {
	out := begun{price: b.price + t.Parts[i].Price, alone: min(b.alone, t.alone[i]), strange: strange}
	for m := range b.strange {
		out.strange[m] = min(b.strange[m], t.Parts[i].Strange[m])
	}
	return out
}

// far is the distance beyond which the combination, and however many parts more,
// cannot be kept.
func (s *search) far(b *begun) float64 {
	return min(s.list.cutoff-b.price, b.alone-s.task.Costs.Earn)
}

// farWith is the distance beyond which the combination with part i as its last
// cannot be kept.
func (s *search) farWith(b *begun, i int) float64 {
	part := &s.task.Parts[i]
	far := s.list.cutoff - b.price - part.Price
	for m, x := range b.strange {
		far -= min(x, part.Strange[m])
	}
	return min(far, min(b.alone, s.task.alone[i])-s.task.Costs.Earn)
}

func (s *search) pairs(ctx context.Context, some []int) error {
	m, err := s.task.newMetric(some)
	if err != nil {
		return err
	}
	r, best, none := s.reach, s.reach.bestOf(some), s.begin()
	strange, brought := s.room.take(len(none.strange)), s.room.take(len(r.needs))
	for a, i := range some {
		if err := ctx.Err(); err != nil {
			return err
		}
		first := none.with(s.task, i, strange)
		r.brought(i, brought)
		if s.far(&first) < 0 || !r.fills(brought, best, 1) {
			continue
		}
		if err := s.spend(len(some) - a); err != nil {
			return err
		}
		row := m.row(a)
		for b := a + 1; b < len(some); b++ {
			j := some[b]
			far := s.farWith(&first, j)
			if far < 0 || !r.fillsWith(brought, j) || m.pair(&row, a, b) > m.limit(far) {
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
	r, table, best, none := s.reach, m.table(tableOf), s.reach.bestOf(some), s.begin()
	ofOne, ofTwo := s.room.take(len(none.strange)), s.room.take(len(none.strange)) // how strange
	brought, both := s.room.take(len(r.needs)), s.room.take(len(r.needs))
	for a, i := range some {
		first := none.with(s.task, i, ofOne)
		r.brought(i, brought)
		if s.far(&first) < 0 || !r.fills(brought, best, 2) {
			continue
		}
		withA := table.with(a, 0)
		for b := a + 1; b < len(some); b++ {
			if err := ctx.Err(); err != nil {
				return err
			}
			j := some[b]
			second := first.with(s.task, j, ofTwo)
			if s.far(&second) < 0 {
				continue
			}
			r.brought(j, both)
			for k := range both {
				both[k] += brought[k]
			}
			if !r.fills(both, best, 1) {
				continue
			}
			if err := s.thirds(ctx, table, withA, both, &second, a, b, some); err != nil {
				return err
			}
		}
	}
	return nil
}

// thirds adds every third part to two.
func (s *search) thirds(ctx context.Context, t *table, withA, both []float64, two *begun, a, b int, some []int) error {
	if err := s.spend(len(some) - b); err != nil {
		return err
	}
	withB := t.with(b, 1)
	for c := b + 1; c < len(some); c++ {
		far := s.farWith(two, some[c])
		if far < 0 || !s.reach.fillsWith(both, some[c]) || t.triple(withA, withB, a, b, c) > t.limit(far) {
			continue
		}
		if err := s.weigh(ctx, some[a], some[b], some[c]); err != nil {
			return err
		}
	}
	return nil
}

// weigh gathers a combination if its bounds do not rule it out.
func (s *search) weigh(ctx context.Context, parts ...int) error {
	if s.count++; s.count%checkEvery == 0 && ctx.Err() != nil {
		return ctx.Err()
	}
	if !s.task.plain(parts) || s.seen(parts) {
		return nil
	}
	standing := s.task.Standing(parts)
	if standing > s.list.cutoff || math.IsInf(standing, 1) {
		return nil
	}
	p := s.task.productsOf(parts)
	distance, cost := s.task.lowerBound(parts, &p)
	if standing+cost <= s.list.cutoff && (len(parts) == 1 || distance <= s.task.earning(parts)) {
		s.hope(parts, standing+cost)
	}
	if len(s.room.pending) >= crowd {
		return s.settle(ctx, crowd)
	}
	if s.gathered >= batch && s.parts > 1 {
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
	q := &s.room.pending
	*q = append(*q, h)
	heap.Fix(q, len(*q)-1)
	s.gathered++
}

// seen reports whether a combination was looked at before: known, or of seeds
// alone.
func (s *search) seen(parts []int) bool {
	if s.task.knows(parts) {
		return true
	}
	for _, i := range parts {
		if !s.seeded[i] {
			return false
		}
	}
	return true
}
