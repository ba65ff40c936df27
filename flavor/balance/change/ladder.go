package change

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// How far a pour is moved, as a factor and in steps of the jigger.
const (
	farthest  = 8.0
	MostSteps = 48
)

// Ladder returns the amounts that a pour may be taken to, more of it or less, from
// the nearest on. What is too much in itself goes on below the least of the jigger,
// in the units of seasoning.
func Ladder(p *flavor.Pour, at int, more, beyond bool) []Change {
	per, ok := measure.MLPerUnit(p.Unit, p.Profile)
	if !ok {
		return nil
	}
	out := jiggered(p, at, per, more, beyond)
	if more || !beyond || Fine(p.Unit) && p.Unit != flavor.Gram {
		return out
	}
	return append(out, seasoned(p, at, measure.Step(p.Unit)*per)...)
}

// jiggered returns the amounts that a hand measures of a pour, more of it or less. Its unit holds
// per mL.
func jiggered(p *flavor.Pour, at int, per float64, more, beyond bool) (out []Change) {
	for i, amount := range amountsFrom(p, more) {
		if times := math.Max(amount/p.Amount, p.Amount/amount); times > farthest && i > 0 && !beyond {
			break
		}
		u, handy := measure.Handy(amount*per, p.Unit, p.Profile)
		each, ok := measure.MLPerUnit(u, p.Profile)
		if last := len(out) - 1; !ok || u != p.Unit && (last >= 0 && out[last].Unit == u && out[last].To == handy || (handy*each > p.ML) != more) {
			continue
		}
		out = append(out, To(p, at, u, handy, handy*each))
	}
	return out
}

// amountsFrom returns the amounts above that of a pour, or below it, in its unit, the nearest
// first.
func amountsFrom(p *flavor.Pour, more bool) []float64 {
	amounts := measure.Neighbours(p.Amount, p.Unit, MostSteps)
	below := 0
	for below < len(amounts) && amounts[below] < p.Amount {
		below++
	}
	if more {
		return amounts[below:]
	}
	amounts = slices.Clone(amounts[:below])
	slices.Reverse(amounts)
	return amounts
}

// seasoned returns the amounts of a pour below leastML in the unit of its seasoning.
func seasoned(p *flavor.Pour, at int, leastML float64) (out []Change) {
	u := Finest(p.Profile, 0)
	fine, ok := measure.MLPerUnit(u, p.Profile)
	if !ok {
		return nil
	}
	for n := math.Floor(math.Min(leastML, mostFineML)/fine - rounding); n >= 1; n-- {
		if n*fine < p.ML {
			out = append(out, To(p, at, u, n, n*fine))
		}
	}
	return out
}

// rounding is more than rounding does to an amount.
const rounding = 1e-9
