package walk

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wording"
)

// path chooses n drinks between the ends, with hops that are plain to tell if there are
// such, else with smaller ones.
func (k *walker) path(n int) ([]Stop, error) {
	first, last := &k.states[0], &k.states[len(k.states)-1]
	apart := station.Apart(first.at, last.at)
	if most := int(apart/leastHop) - 1; most < n {
		return nil, tooNear(n, max(0, most), apart)
	}
	for i := range k.states {
		k.states[i].progress = between(apart, station.Apart(first.at, k.states[i].at), station.Apart(k.states[i].at, last.at))
	}
	stops, _ := k.pathOf(n, plainHop)
	if stops == nil {
		var most int
		if stops, most = k.pathOf(n, leastHop); stops == nil {
			return nil, k.tooFew(n, most)
		}
	}
	return stops, nil
}

// tooFew says that fewer drinks lie between the two than are asked for, and which do.
func (k *walker) tooFew(n, most int) *flavor.DataFault {
	var between strings.Builder
	if most > 0 {
		stops, _ := k.pathOf(most, leastHop)
		for i := 1; i+1 < len(stops); i++ {
			fmt.Fprintf(&between, " %d. %s.", i, stops[i].Text)
		}
		return flavor.Invalid("between", n, "there are not %d balanced drinks in a row between these two, %d at most, each from the one before:%s Ask for %d", n, most, between.String(), most)
	}
	return flavor.Invalid("between", n, "there are not %d balanced drinks in a row between these two, %d at most; choose ends that are less alike or both balanced", n, most)
}

// tooNear says that two drinks are too near to each other for n drinks between.
func tooNear(n, most int, apart float64) *flavor.DataFault {
	const said = "these two are only %.1f noticeable steps apart, so nobody tells %d drinks between them; "
	if most == 0 {
		return flavor.Invalid("between", n, said+"serve one or the other", apart, n)
	}
	return flavor.Invalid("between", n, said+"ask for %d at most", apart, n, most)
}

// pathOf chooses n drinks between the ends by dynamic programming over states that only
// ever turn onward, no hop smaller than the least; nil if there are not so many, and how
// many of them lie in a row at most.
func (k *walker) pathOf(n int, least float64) (stops []Stop, most int) {
	last := len(k.states) - 1
	cost := make([]float64, len(k.states))
	for i := range cost {
		cost[i] = math.Inf(1)
	}
	cost[0] = 0
	var came [][]int
	for step := 1; step <= n+1; step++ {
		costNow, from := k.step(cost, least, step == n+1)
		cost = costNow
		came = append(came, from)
		if end, _ := k.step(cost, least, true); step < n && !math.IsInf(end[last], 1) {
			most = step
		}
	}
	if math.IsInf(cost[last], 1) {
		return nil, most
	}
	order := []int{last}
	for step := n; step >= 0; step-- {
		order = append(order, came[step][order[len(order)-1]])
	}
	slices.Reverse(order)
	return k.stops(order), n
}

// step extends every path by one drink; only the final step may reach the end.
func (k *walker) step(cost []float64, least float64, final bool) (now []float64, from []int) {
	last := len(k.states) - 1
	now, from = make([]float64, len(cost)), make([]int, len(cost))
	for j := range k.states {
		now[j] = math.Inf(1)
		if final != (j == last) {
			continue
		}
		for i := range k.states {
			if math.IsInf(cost[i], 1) || i == j || !k.onward(i, j) {
				continue
			}
			d := k.apart(i, j)
			if d < least {
				continue
			}
			c := cost[i] + d*d*d + k.states[j].toll
			if c < now[j] && len(wording.Changes(&k.states[i].spec, &k.states[j].spec)) > 0 { // not the method alone
				now[j], from[j] = c, i
			}
		}
	}
	return now, from
}

// The least that two drinks of a walk differ by, in just-noticeable differences: a step
// that nobody tells is none, and one that is plain to tell is better.
const (
	leastHop = 1.0
	plainHop = 2.0
)

// onward reports whether a walk may lead from one state to another: nothing turns back,
// and to a proven drink and on from it the way gets shorter.
func (k *walker) onward(i, j int) bool {
	a, b := &k.states[i], &k.states[j]
	if a.turned == nil || b.turned == nil {
		return b.progress >= a.progress+leastProgress
	}
	for p := range a.turned {
		if b.turned[p] < a.turned[p] {
			return false
		}
	}
	return true
}

// apart is how far apart two states are, worked out once.
func (k *walker) apart(i, j int) float64 {
	n := len(k.states)
	if len(k.hops) != n*n {
		k.hops = make([]float64, n*n)
	}
	d := &k.hops[i*n+j]
	if *d == 0 {
		*d = station.Apart(k.states[i].at, k.states[j].at)
	}
	return *d
}

func (k *walker) stops(order []int) []Stop {
	var out []Stop
	for n, i := range order {
		s := &k.states[i]
		stop := Stop{Spec: s.spec, Score: s.score, Drink: s.drink}
		if n == 0 {
			stop.Text = wording.FirstStop
		} else {
			before := &k.states[order[n-1]]
			stop.Hop = station.Apart(before.at, s.at)
			stop.Changes = wording.Changes(&before.spec, &s.spec)
			stop.Text = wording.Capital(stepText(&before.spec, &s.spec, stop.Changes))
		}
		out = append(out, stop)
	}
	return out
}

func stepText(before, after *flavor.Spec, changes []balance.Change) string {
	words := wording.Recipe(changes)
	if before.Method != after.Method || before.Service != after.Service {
		words = append(words, wording.WayOf(after))
	}
	if top := wording.Topped(after); top != "" && (before.Method != after.Method || wording.Topped(before) != top) {
		words = append(words, top)
	}
	if len(words) == 0 {
		return wording.SamePours
	}
	return strings.Join(words, ", ")
}
