package mend

import (
	"cmp"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
)

// Pantry is what the judge may propose to add when no pour of the draft can
// mend it; an ingredient that is nil is not proposed. What proven drinks pour is proposed
// too, unless the pantry is empty.
type Pantry struct {
	Syrup   *flavor.Profile   // rich syrup
	Sour    *flavor.Profile   // lemon juice
	Bitters *flavor.Profile   // aromatic bitters
	Length  *flavor.Profile   // soda water
	Water   *flavor.Profile   // lengthens what is hot, in which nothing sparkles
	Sober   []*flavor.Profile // bases without alcohol, for a draft without
}

// empty reports whether nothing may be proposed to add.
func (p *Pantry) empty() bool {
	return p.Syrup == nil && p.Sour == nil && p.Bitters == nil && p.Length == nil && p.Water == nil && len(p.Sober) == 0
}

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
	s, p := f.spec, &f.bench.Pantry
	ounce, amounts := flavor.Ounce, []float64{0.25, 0.5, 0.75, 1}
	bases := []float64{1, 1.5, 2}
	if measure.SystemOf(s) == measure.Metric {
		ounce, amounts, bases = flavor.Millilitre, []float64{7.5, 15, 22.5, 30}, []float64{30, 45, 60}
	}
	if s.AlcoholFree() { // nothing else in it is a part of its base
		bases = bases[1:]
	}
	asked := func(wants ...fault.Fault) int {
		for i := range f.faults {
			for _, w := range wants {
				if f.faults[i].Axis == w.Axis && f.faults[i].High == w.High {
					return i
				}
			}
		}
		return unasked
	}
	low := func(a ratio.Axis) fault.Fault { return fault.Fault{Axis: a} }
	high := func(a ratio.Axis) fault.Fault { return fault.Fault{Axis: a, High: true} }
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
func (a *addition) ladder(pour int) []change.Change {
	per, ok := measure.MLPerUnit(a.unit, a.profile)
	if !ok {
		return nil
	}
	var out []change.Change
	for _, amount := range a.amounts {
		out = append(out, change.Change{Pour: pour, Profile: a.profile, Unit: a.unit, To: amount, ToML: amount * per})
	}
	return out
}
