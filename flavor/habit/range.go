package habit

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// Range is an amount that proven drinks have, such as the size of the glass: what good
// drinks have of it at most. It is read-only once built.
type Range struct {
	custom  Custom
	samples columns
	sure    []float64 // of each sample, how surely the drink has it
	byDrink []float64 // the same, in the order of the drinks; 0 for those that have none
	rooms   rooms
}

// Custom is the share of good drinks that may have more than the most, and by what factor,
// as a logarithm, they go beyond one that is known.
type Custom struct{ Rare, Reach float64 }

// InGlass returns the custom of what every drink has in its glass: all have a size, so the reach
// is closer than that of a pour. Chosen by leaving out each proven drink in turn.
func InGlass() Custom { return Custom{Rare: 0.03, Reach: 0.14} }

// Amount is what one proven drink has: above 0, and how surely, 0 to 1.
type Amount struct {
	Drink     int // its place among the proven drinks
	Has, Sure float64
}

// NewRange reads the amounts of the proven drinks.
func NewRange(c Custom, amounts []Amount) *Range {
	r := &Range{custom: c, sure: make([]float64, len(amounts))}
	samples, drinks := make([]sample, len(amounts)), 0
	for i, x := range amounts {
		samples[i] = sampleOf(x.Has, x.Drink, c.Reach)
		samples[i].sure = x.Sure
		drinks = max(drinks, x.Drink+1)
	}
	sortSamples(samples)
	r.samples, r.byDrink = columnsOf(samples), make([]float64, drinks)
	for i := range samples {
		r.sure[i] = samples[i].sure
		r.byDrink[samples[i].drink] += samples[i].sure
	}
	return r
}

// OfAll returns amounts that all proven drinks surely have.
func OfAll(amounts []float64) []Amount {
	out := make([]Amount, len(amounts))
	for i, x := range amounts {
		out[i] = Amount{Drink: i, Has: x, Sure: 1}
	}
	return out
}

// Known reports whether any proven drink has the amount.
func (r *Range) Known() bool { return len(r.sure) > 0 }

// Most returns what all but a few good drinks stay below; near is the weight of each
// proven drink, not negative, by its place. It is +Inf if none weighs anything.
func (r *Range) Most(near []float64) float64 {
	_, most := r.Bound(near)
	return most
}

// Bound returns what good drinks have in the middle, and what all but a few stay below; near
// is as for Most. Both are +Inf if none weighs anything.
func (r *Range) Bound(near []float64) (middle, most float64) {
	s, n := &r.samples, len(r.sure)
	numbers := r.rooms.take(2 * n)
	defer r.rooms.put(numbers)
	room := *numbers
	weights := room[:n]
	for i, drink := range s.drink {
		weights[i] = near[drink] * r.sure[i]
	}
	t := tailOf(weights, s.at)
	if t.total <= 0 {
		return math.Inf(1), math.Inf(1)
	}
	return math.Exp(t.middle / t.total), math.Exp(t.most(s.lift, r.custom.Rare, r.custom.Reach, room[n:]))
}

// Reaches reports whether [Range.Most] is an amount or more, which is quicker than to
// find it.
func (r *Range) Reaches(near []float64, amount float64) bool {
	s := &r.samples
	enough := r.custom.Rare * floats.Dot(near[:len(r.byDrink)], r.byDrink)
	lift, above := math.Exp(math.Log(amount)/r.custom.Reach), 0.0
	for i := len(r.sure) - 1; i >= 0 && above < enough; i-- {
		above += near[s.drink[i]] * r.sure[i] * min(1, s.lift[i]/lift)
	}
	return above >= enough
}
