package cover

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// move is one step of one of the other pours.
type move struct {
	pour   int
	amount amount
	by     vector
}

// moveSet is a choice of moves, at most one for each pour.
type moveSet struct {
	moves  []int
	square float64 // squared length of the gap that is left for the parts
	cost   float64
}

// addMoves lists one step up and one down of every other pour, the base among
// them if it may move, and what every candidate has in common with each.
func (t *task) addMoves(base bool) {
	t.moves, t.sets = nil, nil
	for _, i := range t.keep {
		p := &t.req.Spec.Pours[i]
		if isBase(p) && !base {
			continue
		}
		v := t.space.perML(p.Profile)
		for _, a := range steps(p) {
			m := move{pour: i, amount: a}
			m.by.add(&v, a.ml-p.ML)
			t.moves = append(t.moves, m)
		}
	}
	t.addSets()
	t.columns = t.moveColumns()
	products := slices.Grow(t.products[:0], len(t.moves)*len(t.cands))[:len(t.moves)*len(t.cands)]
	t.products = products
	for i := range t.cands {
		c := &t.cands[i]
		c.moves, products = products[:len(t.moves):len(t.moves)], products[len(t.moves):]
		for m := range t.moves {
			c.moves[m] = dot(&c.per, &t.moves[m].by)
		}
	}
}

func isBase(p *flavor.Pour) bool { return p.Profile.Class.Part() == flavor.PartBase }

// steps returns a step down and a step up of a pour, as far as there are any.
func steps(p *flavor.Pour) []amount {
	per, ok := measure.MLPerUnit(p.Unit, p.Profile)
	if !ok || p.Profile.Class.Solid() {
		return nil
	}
	var out []amount
	for _, a := range measure.Neighbours(p.Amount, p.Unit, 1) {
		out = append(out, amount{a, p.Unit, a * per})
	}
	return out
}

// baseMoves reports whether the drink keeps a base that could move.
func (t *task) baseMoves() bool {
	return slices.ContainsFunc(t.keep, func(i int) bool {
		p := &t.req.Spec.Pours[i]
		return isBase(p) && len(steps(p)) > 0
	})
}

// addSets lists the choices of at most maxMoved moves of different pours.
func (t *task) addSets() {
	t.addSet()
	for a := range t.moves {
		t.addSet(a)
	}
	for a := range t.moves {
		for b := a + 1; b < len(t.moves); b++ {
			if t.moves[a].pour != t.moves[b].pour {
				t.addSet(a, b)
			}
		}
	}
}

func (t *task) addSet(moves ...int) {
	left := t.gap
	for _, m := range moves {
		left.add(&t.moves[m].by, -1)
	}
	t.sets = append(t.sets, moveSet{moves: moves, square: dot(&left, &left),
		cost: t.finder.weights.MoveCost * float64(len(moves))})
}

// moveColumns returns one direction for each pour that may move, scaled to its
// larger step.
func (t *task) moveColumns() []vector {
	var out []vector
	last := -1
	for _, m := range t.moves {
		if m.pour == last {
			if dot(&m.by, &m.by) > dot(&out[len(out)-1], &out[len(out)-1]) {
				out[len(out)-1] = m.by
			}
			continue
		}
		last = m.pour
		out = append(out, m.by)
	}
	return out
}
