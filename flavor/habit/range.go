package habit

import "math"

// Range is an amount that proven drinks have, such as the size of the glass: what good
// drinks have of it at most. It is read-only once built.
type Range struct {
	custom  Custom
	samples []sample
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
	r := &Range{custom: c}
	for _, x := range amounts {
		s := sampleOf(x.Has, x.Drink, c.Reach)
		s.sure = x.Sure
		r.samples = append(r.samples, s)
	}
	sortSamples(r.samples)
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
func (r *Range) Known() bool { return len(r.samples) > 0 }

// Most returns what all but a few good drinks stay below; near is the weight of each
// proven drink, not negative, by its place. It is +Inf if none weighs anything.
func (r *Range) Most(near []float64) float64 {
	_, most := r.Bound(near)
	return most
}

// Bound returns what good drinks have in the middle, and what all but a few stay below; near
// is as for Most. Both are +Inf if none weighs anything.
func (r *Range) Bound(near []float64) (middle, most float64) {
	numbers := r.rooms.take(2 * len(r.samples))
	defer r.rooms.put(numbers)
	room := *numbers
	t := tail{weights: room[:len(r.samples)]}
	for i := range r.samples {
		x := &r.samples[i]
		t.add(i, x, near[x.drink]*x.sure)
	}
	if t.total <= 0 {
		return math.Inf(1), math.Inf(1)
	}
	return math.Exp(t.middle / t.total), math.Exp(t.most(r.samples, r.custom.Rare, r.custom.Reach, room[len(r.samples):]))
}

// Reaches reports whether [Range.Most] is an amount or more, which is quicker than to
// find it.
func (r *Range) Reaches(near []float64, amount float64) bool {
	total := 0.0
	for i := range r.samples {
		total += near[r.samples[i].drink] * r.samples[i].sure
	}
	enough := r.custom.Rare * total
	lift, above := math.Exp(math.Log(amount)/r.custom.Reach), 0.0
	for i := len(r.samples) - 1; i >= 0 && above < enough; i-- {
		x := &r.samples[i]
		above += near[x.drink] * x.sure * math.Min(1, x.lift/lift)
	}
	return above >= enough
}
