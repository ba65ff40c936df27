package habit

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// Range is an amount that every proven drink has in its glass, such as its size: what
// good drinks have of it at most. It is read-only once built.
type Range struct {
	samples []sample
	rooms   rooms
}

// NewRange reads the amounts of the proven drinks, all above 0.
func NewRange(amounts []float64) *Range {
	r := &Range{}
	for i, x := range amounts {
		r.samples = append(r.samples, sampleOf(x, i, rangeReach))
	}
	sortSamples(r.samples)
	return r
}

// The share of good drinks that may have more than the most, and by what factor, as a
// logarithm, they go beyond one that is known. All drinks have a size, so the reach is
// closer than that of a pour. Chosen by leaving out each proven drink in turn.
const (
	rareInRange = 0.03
	rangeReach  = 0.14
)

// Most returns what all but a few good drinks stay below; near is the weight of each
// proven drink, not negative, in the order of [NewRange]. It is +Inf if none weighs
// anything.
func (r *Range) Most(near []float64) float64 {
	numbers := r.rooms.take(2 * len(r.samples))
	defer r.rooms.put(numbers)
	room := *numbers
	t := tail{weights: room[:len(r.samples)]}
	for i := range r.samples {
		t.add(i, &r.samples[i], near[r.samples[i].drink])
	}
	if t.total <= 0 {
		return math.Inf(1)
	}
	return math.Exp(t.most(r.samples, rareInRange, rangeReach, room[len(r.samples):]))
}

// Reaches reports whether [Range.Most] is an amount or more, which is quicker than to
// find it.
func (r *Range) Reaches(near []float64, amount float64) bool {
	enough := rareInRange * floats.Sum(near)
	lift, above := math.Exp(math.Log(amount)/rangeReach), 0.0
	for i := len(r.samples) - 1; i >= 0 && above < enough; i-- {
		x := &r.samples[i]
		above += near[x.drink] * math.Min(1, x.lift/lift)
	}
	return above >= enough
}
