package drill

import (
	"math"
	"math/rand/v2"

	"counterpour/flavor"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/ratio"
)

// leastGap is how far apart two drinks that are put in order lie at least, in
// just-noticeable differences: who is right must be able to tell.
const leastGap = 1.0

// orderRound finds three drinks that lie about the size apart on an axis of the finished
// drink, or as far as proven drinks do, but never closer than leastGap.
func (t *Trainer) orderRound(r RoundRequest, rng *rand.Rand) (*Round, error) {
	value, least := finished(r.Axis)
	if value == nil {
		return nil, flavor.Invalid("axis", r.Axis.String(), "drinks are put in order of sweetness or strength, not of %v", r.Axis)
	}
	var line []placed
	for _, i := range t.served(&r) {
		if v := value(&t.classics[i]); v >= least {
			line = append(line, placed{&t.classics[i], v, math.Log(v) / math.Log1p(threshold.Weber(r.Axis))})
		}
	}
	agree := func(_, _ *classic) bool { return true }
	if r.Axis == ratio.Sweet {
		agree = sweeterByAcidToo
	}
	var three []placed
	for size := max(r.Size, leastGap); len(three) < 3 && size >= leastGap; size = lowered(size) {
		for _, i := range rng.Perm(len(line)) {
			if three = spaced(line, line[i], size, agree, rng); len(three) == 3 {
				break
			}
		}
	}
	if len(three) < 3 {
		return nil, flavor.Invalid("axis", r.Axis.String(), "no three proven drinks differ enough in %v; %s", r.Axis, r.Avoid.remedy("ask for another axis"))
	}
	round := &Round{Request: r, Size: min(three[1].at-three[0].at, three[2].at-three[1].at),
		Question: wording.ToOrder(r.Axis)}
	round.key.order = make([]int, 3)
	for place, which := range rng.Perm(3) {
		round.Specs = append(round.Specs, three[which].drink.spec)
		round.key.order[which] = place
		round.key.values = append(round.key.values, three[which].value)
	}
	round.key.axis = r.Axis
	return round, nil
}

// placed is a drink with what is asked of it, and its place in just-noticeable differences.
type placed struct {
	drink     *classic
	value, at float64
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

// spaced draws a drink below and one above another, each about a size away: nearer or
// further by nearTimes at most, never nearer than leastGap. It is nil if there is none.
func spaced(line []placed, middle placed, size float64, agree func(less, more *classic) bool, rng *rand.Rand) []placed {
	low, high := max(leastGap, size/nearTimes), size*nearTimes
	var below, above []placed
	for _, x := range line {
		switch gap := x.at - middle.at; {
		case gap <= -low && gap >= -high && agree(x.drink, middle.drink):
			below = append(below, x)
		case gap >= low && gap <= high && agree(middle.drink, x.drink):
			above = append(above, x)
		}
	}
	if len(below) == 0 || len(above) == 0 {
		return nil
	}
	return []placed{below[rng.IntN(len(below))], middle, above[rng.IntN(len(above))]}
}

// sweeterByAcidToo reports whether a drink with more sugar than another also has no more
// acid to its sugar. A guest judges sweet against sour, and where the two disagree nobody
// can be held to either: such drinks are never asked together. Common practice, no source.
func sweeterByAcidToo(less, more *classic) bool {
	return more.drink.SweetPer100*less.drink.AcidPer100 >= less.drink.SweetPer100*more.drink.AcidPer100
}

// What a finished drink has at least that is put in order: in one with less sugar than a
// tongue finds in water, about 1 g in 100 mL, nobody tells how sweet it is. From memory.
const (
	leastOrderedSweet = 1.0 // g of sugar per 100 mL
	leastOrderedABV   = 1.0 // % vol
)

// finished returns what shows an axis in the finished drink, nil for an axis that
// drinks are not put in order of, and the least of it that counts.
func finished(a ratio.Axis) (value func(*classic) float64, least float64) {
	switch a {
	case ratio.Strong:
		return func(c *classic) float64 { return c.drink.ABV }, leastOrderedABV
	case ratio.Sweet:
		return func(c *classic) float64 { return c.drink.SweetPer100 }, leastOrderedSweet
	}
	return nil, 0
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
	g.Solution = wording.InOrder(name(0), name(1), name(2))
	steps := [2]float64{tasting.JND(k.axis, v(0), v(1)), tasting.JND(k.axis, v(1), v(2))}
	g.Text = wording.Gaps(k.axis, [3]float64{v(0), v(1), v(2)}, steps, threshold.Weber(k.axis))
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
