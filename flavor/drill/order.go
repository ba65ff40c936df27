package drill

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/ratio"
)

// leastGap is how far apart two drinks that are put in order lie at least, in
// just-noticeable differences: who is right must be able to tell.
const leastGap = 1.0

// orderRound finds three drinks that lie at least the size apart on an axis of
// the finished drink, or as far as proven drinks do, but never closer than leastGap.
func (t *Trainer) orderRound(r RoundRequest, rng *rand.Rand) (*Round, error) {
	value, least, unit := finished(r.Axis)
	if value == nil {
		return nil, flavor.Invalid("axis", r.Axis.String(), "drinks are put in order of sweetness or strength, not of %v", r.Axis)
	}
	var all []int
	for i := range t.classics {
		if value(&t.classics[i]) >= least {
			all = append(all, i)
		}
	}
	at := func(i int) float64 { return math.Log(value(&t.classics[i])) / math.Log1p(balance.Weber(r.Axis)) }
	slices.SortStableFunc(all, func(a, b int) int { return cmp.Compare(at(a), at(b)) })
	var three []int
	for size := max(r.Size, leastGap); len(three) < 3 && size >= leastGap; size = lowered(size) {
		for _, start := range rng.Perm(len(all)) {
			if three = spaced(all[start:], at, size, rng); len(three) == 3 {
				break
			}
		}
	}
	if len(three) < 3 {
		return nil, flavor.Invalid("axis", r.Axis.String(), "no three proven drinks differ enough in %v; ask for another axis", r.Axis)
	}
	round := &Round{Request: r, Size: min(at(three[1])-at(three[0]), at(three[2])-at(three[1])),
		Question: fmt.Sprintf("Put these three in order of how %v they finish, the least first.", r.Axis)}
	shown := rng.Perm(3)
	round.key.order = make([]int, 3)
	for place, which := range shown {
		c := &t.classics[three[which]]
		round.Specs = append(round.Specs, c.spec)
		round.key.order[which] = place
		round.key.values = append(round.key.values, value(c))
	}
	round.key.axis, round.key.text = r.Axis, unit
	return round, nil
}

// lowered is the next size to try, leastGap before anything below it.
func lowered(size float64) float64 {
	if size > leastGap {
		return max(size*easier, leastGap)
	}
	return size * easier
}

// easier is the factor by which a size is lowered that no drinks have.
const easier = 0.8

// spaced takes the first drink, and twice one of those that are a size further and hardly
// more.
func spaced(all []int, at func(int) float64, size float64, rng *rand.Rand) []int {
	out := all[:1:1]
	for len(out) < 3 {
		next := slices.IndexFunc(all, func(i int) bool { return at(i) >= at(out[len(out)-1])+size })
		if next < 0 {
			return out
		}
		near := all[next:]
		if far := slices.IndexFunc(near, func(i int) bool { return at(i) > at(near[0])+hardlyMore }); far > 0 {
			near = near[:far]
		}
		out = append(out, near[rng.IntN(len(near))])
	}
	return out
}

// hardlyMore is how much further, in just-noticeable differences, a drink may lie that is
// drawn in place of the first one that lies far enough.
const hardlyMore = 1.0

// What a finished drink has at least that is put in order: in one with less sugar than a
// tongue finds in water, about 1 g in 100 mL, nobody tells how sweet it is. From memory.
const (
	leastOrderedSweet = 1.0 // g of sugar per 100 mL
	leastOrderedABV   = 1.0 // % vol
)

// finished returns what shows an axis in the finished drink, nil for an axis that
// drinks are not put in order of, the least of it that counts, and its unit.
func finished(a ratio.Axis) (value func(*classic) float64, least float64, unit string) {
	switch a {
	case ratio.Strong:
		return func(c *classic) float64 { return c.drink.ABV }, leastOrderedABV, "% vol"
	case ratio.Sweet:
		return func(c *classic) float64 { return c.drink.SweetPer100 }, leastOrderedSweet, "g of sugar per 100 mL"
	}
	return nil, 0, ""
}

func gradeOrder(r *Round, a *Answer) (*Grade, error) {
	if len(a.Order) != 3 || !permutation(a.Order) {
		return nil, flavor.Invalid("order", a.Order, "the order must name drinks 0, 1 and 2 once each, the least first")
	}
	k := &r.key
	rank := func(order []int) (out [3]int) {
		for place, i := range order {
			out[i] = place
		}
		return out
	}
	want, got := rank(k.order), rank(a.Order)
	pairs := 0
	for i := range 3 {
		for j := i + 1; j < 3; j++ {
			if (want[i] < want[j]) == (got[i] < got[j]) {
				pairs++
			}
		}
	}
	low, high := k.order[0], k.order[2]
	g := &Grade{Right: pairs == 3, Points: float64(pairs) / 3,
		Before: ratio.EquivalentsOf(&r.Specs[low]), After: ratio.EquivalentsOf(&r.Specs[high])}
	name := func(place int) string { return r.Specs[k.order[place]].Name }
	v := func(place int) float64 { return k.values[k.order[place]] }
	g.Solution = fmt.Sprintf("%s, %s, %s", name(0), name(1), name(2))
	g.Text = fmt.Sprintf("They finish at %.1f, %.1f and %.1f %s: %s. The gaps are %.1f and %.1f noticeable steps of %.0f %%.",
		v(0), v(1), v(2), k.text, g.Solution, jndOf(k.axis, v(0), v(1)), jndOf(k.axis, v(1), v(2)), 100*balance.Weber(k.axis))
	return g, nil
}

func permutation(order []int) bool {
	seen := make([]bool, len(order))
	for _, i := range order {
		if i < 0 || i >= len(order) || seen[i] {
			return false
		}
		seen[i] = true
	}
	return true
}
