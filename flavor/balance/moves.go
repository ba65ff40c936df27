package balance

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
)

// How far a pour is moved, as a factor and in steps of the jigger.
const (
	farthest  = 8.0
	mostSteps = 48
)

// ladderOf returns the amounts that a pour may be taken to, more of it or less, from
// the nearest on. What is too much in itself goes on below the least of the jigger,
// in the units of seasoning.
func ladderOf(p *flavor.Pour, at int, more, beyond bool) []Change {
	per, ok := measure.MLPerUnit(p.Unit, p.Profile)
	if !ok {
		return nil
	}
	out := jiggered(p, at, per, more, beyond)
	if more || !beyond || fineUnit(p.Unit) && p.Unit != flavor.Gram {
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
		out = append(out, changed(p, at, u, handy, handy*each))
	}
	return out
}

// amountsFrom returns the amounts above that of a pour, or below it, in its unit, the nearest
// first.
func amountsFrom(p *flavor.Pour, more bool) []float64 {
	amounts := measure.Neighbours(p.Amount, p.Unit, mostSteps)
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
	u := finestUnit(p.Profile, 0)
	fine, ok := measure.MLPerUnit(u, p.Profile)
	if !ok {
		return nil
	}
	for n := math.Floor(math.Min(leastML, mostFineML)/fine - slack); n >= 1; n-- {
		if n*fine < p.ML {
			out = append(out, changed(p, at, u, n, n*fine))
		}
	}
	return out
}

// changed is a pour taken to another amount.
func changed(p *flavor.Pour, at int, u flavor.Unit, amount, ml float64) Change {
	c := Change{Pour: at, Profile: p.Profile, Unit: u, From: p.Amount, To: amount, FromML: p.ML, ToML: ml, Heat: p.Heat}
	if u != p.Unit {
		c.FromUnit = p.Unit
	}
	return c
}

// mostFineML is the most that is poured in units of seasoning.
const mostFineML = 5.0

// addition is an ingredient that a bartender reaches for when nothing in the
// glass can mend it, in the amounts that are tried.
type addition struct {
	profile *flavor.Profile
	unit    flavor.Unit
	amounts []float64
	asked   int  // place of the fault that asks for it
	fills   bool // it lengthens a draft that is short of what lengthens it
}

// additions lists what may be added to a draft: what its faults ask for and
// nothing in it brings already.
func (f *fixing) additions() []addition {
	s, p := f.spec, &f.judge.pantry
	ounce, amounts := flavor.Ounce, []float64{0.25, 0.5, 0.75, 1}
	bases := []float64{1, 1.5, 2}
	if measure.SystemOf(s) == measure.Metric {
		ounce, amounts, bases = flavor.Millilitre, []float64{7.5, 15, 22.5, 30}, []float64{30, 45, 60}
	}
	if s.AlcoholFree() { // nothing else in it is a part of its base
		bases = bases[1:]
	}
	asked := func(wants ...Fault) int {
		for i := range f.faults {
			for _, w := range wants {
				if f.faults[i].Axis == w.Axis && f.faults[i].High == w.High {
					return i
				}
			}
		}
		return unasked
	}
	low := func(a ratio.Axis) Fault { return Fault{Axis: a} }
	high := func(a ratio.Axis) Fault { return Fault{Axis: a, High: true} }
	sweet := asked(low(ratio.Sweet), high(ratio.Sour))
	sour := asked(low(ratio.Sour), high(ratio.Sweet))
	bitter := asked(low(ratio.Bitter), high(ratio.Sweet))
	long := unasked
	if s.Service != flavor.Up && s.Service != flavor.Neat {
		if long = asked(low(ratio.Long)); long == unasked && s.Service == flavor.Long {
			long = asked(high(ratio.Strong))
		}
	}
	var out []addition
	add := func(asked int, x *flavor.Profile, u flavor.Unit, amounts ...float64) {
		if asked != unasked && x != nil && !brings(s, x.Class) {
			out = append(out, addition{profile: x, unit: u, amounts: amounts, asked: asked})
		}
	}
	if strong := asked(low(ratio.Strong)); strong != unasked && f.faults[strong].Profile == nil {
		add(strong, f.build.Forgotten().UsualBase(p.Sober), ounce, bases...)
	}
	add(sweet, p.Syrup, ounce, amounts...)
	add(sweet, p.Syrup, flavor.Barspoon, 1, 2)
	if p.Sour != nil {
		add(sour, cmp.Or(f.build.Forgotten().UsualSour(), p.Sour), ounce, amounts...)
	}
	add(bitter, p.Bitters, flavor.Dash, 1, 2, 3)
	length := p.Length
	if s.Service == flavor.Hot {
		length = p.Water
	} else if length != nil && s.Service == flavor.Long {
		length = cmp.Or(f.build.Forgotten().UsualLength(), length)
	}
	add(long, length, ounce, amounts[1], amounts[3], 2*amounts[3], 3*amounts[3], 4*amounts[3], 5*amounts[3])
	return out
}

// brings reports whether a pour of a draft does what a class does: seasonings
// differ by class, all else by part.
func brings(s *flavor.Spec, c flavor.Class) bool {
	return s.HasClass(c) || c.Part() != flavor.PartSeasoning && s.HasPart(c.Part())
}

// ladder returns the amounts of a pour that is not there yet.
func (a *addition) ladder(pour int) []Change {
	per, ok := measure.MLPerUnit(a.unit, a.profile)
	if !ok {
		return nil
	}
	var out []Change
	for _, amount := range a.amounts {
		out = append(out, Change{Pour: pour, Profile: a.profile, Unit: a.unit, To: amount, ToML: amount * per})
	}
	return out
}
