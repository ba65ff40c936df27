package measure

import (
	"math"
	"slices"

	"counterpour/flavor"
)

// jigger is the marks on a set of jiggers: the multiples of every, and a few between.
type jigger struct {
	every float64
	marks []float64
}

// jiggerOf returns the marks in a unit. Metric jiggers are marked at the fives and
// at 7.5 and 22.5 mL, which stand for ¼ and ¾ oz: common practice, no source. Other
// units go by their step. A top has no marks.
func jiggerOf(u flavor.Unit) jigger {
	switch u {
	case flavor.Top:
		return jigger{}
	case flavor.Millilitre:
		return jigger{5, []float64{2.5, 7.5, 22.5}}
	case flavor.Centilitre:
		return jigger{0.5, []float64{0.25, 0.75, 2.25}}
	}
	return jigger{every: Step(u)}
}

// Jigger returns the marks on a jigger in a unit: the multiples of every, and some
// between. It returns zero and none for a unit without marks.
func Jigger(u flavor.Unit) (every float64, between []float64) {
	j := jiggerOf(u)
	return j.every, slices.Clone(j.marks)
}

// JiggerStep returns the next mark above or below an amount, in the same unit. It returns
// zero if there is none, or if the amount is not a finite number above zero.
func JiggerStep(amount float64, u flavor.Unit, up bool) float64 {
	j := jiggerOf(u)
	if j.every == 0 || !positive(amount) {
		return 0
	}
	at := (math.Ceil(amount/j.every-slack) - 1) * j.every
	if up {
		at = (math.Floor(amount/j.every+slack) + 1) * j.every
	}
	for _, m := range j.marks {
		if up && m > amount+slack {
			at = math.Min(at, m)
		}
		if !up && m < amount-slack {
			at = math.Max(at, m)
		}
	}
	return math.Max(0, at)
}

// JiggerMarks returns the marks from one amount to another, both inclusive, ascending.
func JiggerMarks(u flavor.Unit, from, to float64) []float64 {
	j := jiggerOf(u)
	if j.every == 0 || !positive(from) || !positive(to) {
		return nil
	}
	var out []float64
	for n := math.Ceil(from/j.every - slack); n*j.every <= to+slack; n++ {
		out = append(out, n*j.every)
	}
	for _, m := range j.marks {
		if m >= from-slack && m <= to+slack {
			out = append(out, m)
		}
	}
	slices.Sort(out)
	return out
}
