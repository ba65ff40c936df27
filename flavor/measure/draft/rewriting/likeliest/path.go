package likeliest

import (
	"cmp"
	"slices"
)

// state is what of a text that stands before a token bears on what may follow.
type state struct {
	begun  bool // something is poured
	titled bool
	served bool // it is said how it is made or served
	open   bool // a remark runs on into what follows
	turned int8 // where the amounts stand: −1 behind the names, 1 before them, 0 none does yet
}

// way is one way to part the text up to a token.
type way struct {
	cost   float64
	last   *stretch
	before *way
	pours  string // what is poured so far: ways that pour the same are one
}

// front holds the cheapest ways to a token, by state.
type front map[state][]*way

// add keeps a way if it is among the cheapest that pour different things.
func (f front) add(s state, w *way) {
	list := f[s]
	if i := slices.IndexFunc(list, func(o *way) bool { return o.pours == w.pours }); i >= 0 {
		if list[i].cost <= w.cost {
			return
		}
		list = slices.Delete(list, i, i+1)
	}
	at, _ := slices.BinarySearchFunc(list, w, func(a, b *way) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.pours, b.pours)) })
	if list = slices.Insert(list, at, w); len(list) > mostKept {
		list = list[:mostKept]
	}
	f[s] = list
}

// states are those of a front in order.
func (f front) states() []state {
	out := make([]state, 0, len(f))
	for s := range f {
		out = append(out, s)
	}
	slices.SortFunc(out, func(a, b state) int {
		return cmp.Or(order(a.begun, b.begun), order(a.titled, b.titled), order(a.served, b.served), order(a.open, b.open), cmp.Compare(a.turned, b.turned))
	})
	return out
}

func order(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// cheapest are the ways to part the whole text, the cheapest of each that pour the same, in order.
func (s *script) cheapest() []*way {
	fronts := make([]front, len(s.toks)+1)
	fronts[0] = front{{}: {{}}}
	for i := range s.toks {
		if len(fronts[i]) == 0 {
			continue
		}
		next := s.stretches(i)
		for _, st := range fronts[i].states() {
			for k := range next {
				after, cost, ok := st.then(&next[k])
				if !ok {
					continue
				}
				to := next[k].to
				if fronts[to] == nil {
					fronts[to] = front{}
				}
				for _, w := range fronts[i][st] {
					fronts[to].add(after, &way{cost: w.cost + cost, last: &next[k], before: w, pours: w.pours + next[k].key()})
				}
			}
		}
		fronts[i] = nil
	}
	all := front{}
	last := fronts[len(s.toks)]
	for _, st := range last.states() {
		for _, w := range last[st] {
			all.add(state{}, w)
		}
	}
	return all[state{}]
}

// then is the state behind a stretch and what the stretch costs there; false if it cannot stand
// there.
func (st state) then(t *stretch) (state, float64, bool) {
	cost := t.cost
	runsOn := st.open
	st.open = t.open
	switch t.kind {
	case aPour:
		if runsOn && t.unsaid { // "the guest wants egg white"
			return st, 0, false
		}
		st.begun = true
		turn := int8(1)
		if t.behind {
			turn = -1
		}
		if t.bare || t.behind {
			if st.turned != 0 && st.turned != turn {
				cost += costTurn
			}
			st.turned = turn
		}
	case aTitle:
		if st.begun || st.titled {
			return st, 0, false
		}
		st.titled = true
	case aHeading:
		if st.begun {
			return st, 0, false
		}
	case aSign:
		st.open = runsOn && t.cost == costJoin // "the guests love it with egg white"
	case aMaking:
		st.served = true
	case aLaid, aNone:
		if !st.begun && !t.told {
			return st, 0, false
		}
		if !st.served && t.kind == aLaid {
			cost += costUnlaid
		}
	case aReplaced:
		if !st.begun {
			return st, 0, false
		}
	}
	return st, cost, true
}

// stretches are what a way is made of, in order.
func (w *way) stretches() []*stretch {
	var out []*stretch
	for ; w.last != nil; w = w.before {
		out = append(out, w.last)
	}
	slices.Reverse(out)
	return out
}
