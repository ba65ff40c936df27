package search

import (
	"math"
	"slices"
)

// moveSet is a choice of moves, at most mostMoves, of different pours.
type moveSet struct {
	moves  []int
	square float64 // squared length of the gap that is left for the parts
	cost   float64
}

// task is a problem with what follows from it.
type task struct {
	*Problem
	room     *room
	sets     []moveSet
	columns  []Row     // see moveColumns
	self     []float64 // products of the parts with themselves
	gap      []float64 // with the gap
	withMove []float64 // with each move, row by row
	rising   [][]float64
	alone    []float64            // distance of each part alone, once earning is asked
	pairs    map[[2]int32]float64 // distances of two parts, a few of them
}

func newTask(p *Problem, room *room) *task {
	n := len(p.Parts)
	t := &task{Problem: p, room: room, self: room.take(n), gap: room.take(n), withMove: room.take(n * len(p.Moves))}
	for i := range p.Parts {
		per := t.per(i)
		t.self[i], t.gap[i] = dot(per, per), dot(per, &p.Gap)
		for m := range p.Moves {
			t.withMove[i*len(p.Moves)+m] = dot(per, &p.Moves[m].By)
		}
	}
	t.addSets()
	t.columns = t.moveColumns()
	t.addRising()
	return t
}

func (t *task) per(i int) *Row { return &t.Parts[i].Per }

// all returns the places of all parts that something can be poured of.
func (t *task) all() []int {
	out := make([]int, 0, len(t.Parts))
	for i := range t.Parts {
		if t.self[i] > 0 {
			out = append(out, i)
		}
	}
	return out
}

// addSets lists the choices of at most two moves of different pours.
func (t *task) addSets() {
	t.addSet()
	for a := range t.Moves {
		t.addSet(a)
	}
	for a := range t.Moves {
		for b := a + 1; b < len(t.Moves); b++ {
			if t.Moves[a].Pour != t.Moves[b].Pour {
				t.addSet(a, b)
			}
		}
	}
}

func (t *task) addSet(moves ...int) {
	left := t.Gap
	for _, m := range moves {
		add(&left, &t.Moves[m].By, -1)
	}
	t.sets = append(t.sets, moveSet{moves: moves, square: dot(&left, &left), cost: t.Costs.Move * float64(len(moves))})
}

// moveColumns returns one direction for each pour that may move, scaled to its
// larger step.
func (t *task) moveColumns() []Row {
	var out []Row
	last := -1
	for i := range t.Moves {
		m := &t.Moves[i]
		if m.Pour == last {
			if dot(&m.By, &m.By) > dot(&out[len(out)-1], &out[len(out)-1]) {
				out[len(out)-1] = m.By
			}
			continue
		}
		last = m.Pour
		out = append(out, m.By)
	}
	return out
}

// knows reports whether the standing of a combination is known, so that its parts
// need not earn their place.
func (t *task) knows(parts []int) bool {
	if len(t.Known) == 0 {
		return false
	}
	_, known := t.Known[Combine(parts...)]
	return known
}

// earning returns the distance that a combination must not exceed for every part
// to earn its place, as far as that follows from each part alone.
func (t *task) earning(parts []int) float64 {
	if len(parts) == 1 || t.knows(parts) {
		return math.Inf(1)
	}
	least := math.Inf(1)
	for _, i := range parts {
		least = min(least, t.alone[i])
	}
	return least - t.Costs.Earn
}

// earningInPairs is earning as far as it follows from each two of three parts.
func (t *task) earningInPairs(parts []int) float64 {
	if len(parts) < 3 || t.knows(parts) {
		return math.Inf(1)
	}
	least := min(t.pairDistance(parts[0], parts[1]), t.pairDistance(parts[0], parts[2]), t.pairDistance(parts[1], parts[2]))
	return least - t.Costs.Earn
}

// workAlone works out how near each part comes alone.
func (t *task) workAlone() {
	if t.alone != nil {
		return
	}
	t.alone = t.room.take(len(t.Parts))
	for i := range t.Parts {
		t.alone[i] = t.distanceAlone(i)
	}
}

// distanceAlone returns the least distance of any amount of a part with any set
// of moves.
func (t *task) distanceAlone(i int) float64 {
	least := math.Inf(1)
	for s := range t.sets {
		set := &t.sets[s]
		h := t.towardOne(i, set)
		from, to := beside(t.Parts[i].Amounts, h/t.self[i])
		for _, ml := range t.Parts[i].Amounts[from:to] {
			least = min(least, set.square-2*ml*h+ml*ml*t.self[i])
		}
	}
	return math.Sqrt(max(0, least))
}

// mostPairs is how many distances of two parts are remembered at once.
const mostPairs = 1 << 16

// pairDistance returns the least distance of any amounts of two parts with any
// set of moves.
func (t *task) pairDistance(i, j int) float64 {
	key := [2]int32{int32(i), int32(j)}
	if d, ok := t.pairs[key]; ok {
		return d
	}
	if t.pairs == nil || len(t.pairs) >= mostPairs {
		t.pairs = map[[2]int32]float64{}
	}
	p := t.productsOf([]int{i, j})
	least := math.Inf(1)
	for s := range t.sets {
		set := &t.sets[s]
		h := t.toward([]int{i, j}, set)
		if set.square-p.explained(&h) >= least {
			continue
		}
		for _, ml := range t.Parts[i].Amounts {
			square := set.square - 2*ml*h[0] + ml*ml*p.self[0]
			rest := h[1] - ml*p.ij
			if square-explainedBy(rest, p.self[1]) >= least {
				continue
			}
			from, to := beside(t.Parts[j].Amounts, rest/p.self[1])
			for _, other := range t.Parts[j].Amounts[from:to] {
				least = min(least, square-2*other*rest+other*other*p.self[1])
			}
		}
	}
	d := math.Sqrt(max(0, least))
	t.pairs[key] = d
	return d
}

// compare orders fillings: rank, then fewer parts, fewer moved pours, then their
// places, which tell any two apart.
func compare(a, b Filling) int {
	switch {
	case a.Rank != b.Rank:
		if a.Rank < b.Rank {
			return -1
		}
		return 1
	case len(a.Parts) != len(b.Parts):
		return len(a.Parts) - len(b.Parts)
	case len(a.Moves) != len(b.Moves):
		return len(a.Moves) - len(b.Moves)
	}
	if c := slices.Compare(a.Parts, b.Parts); c != 0 {
		return c
	}
	if c := slices.Compare(a.Amounts[:], b.Amounts[:]); c != 0 {
		return c
	}
	return slices.Compare(a.Moves, b.Moves)
}
