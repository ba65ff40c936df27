package mend

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
)

// byMethod changes how the drink is made, or leaves out what suffers.
func (f *fixing) byMethod() {
	for i := range f.faults {
		x := &f.faults[i]
		if x.Axis == ratio.Temperature && !x.High {
			f.tryMaking(i, technique.Heating(f.spec))
		}
		if x.Axis == ratio.Sour && x.Missing && f.spec.Method == flavor.Shake { // or it was meant without, and clear
			f.tryStirring(i)
		}
		switch x.Method {
		case technique.EggUnshaken:
			f.tryMaking(i, technique.Shaking(f.spec, true))
			f.leaveOutPart(i, x.Profile.Class.Part())
		case technique.Uniced:
			if f.clear() {
				f.tryMaking(i, technique.Making{Method: flavor.Stir, Do: technique.StirIt})
				continue
			}
			f.tryMaking(i, technique.Shaking(f.spec, false))
		case technique.Unshaken:
			f.tryMaking(i, technique.Shaking(f.spec, false))
		case technique.Clouded:
			f.tryMaking(i, technique.Making{Method: flavor.Stir, Do: technique.StirIt})
		case technique.Flat:
			f.tryMaking(i, technique.Afterwards(f.spec))
		case technique.HotOnIce:
			f.tryMaking(i, technique.BuiltHot(f.spec))
		case technique.FatSet:
			f.tryWithout(i, 1, func(p *flavor.Profile) bool { return p == x.Profile })
		case technique.Curdled:
			f.uncurdle(i, x)
		}
	}
}

// leaveOutPart leaves out every pour of a part.
func (f *fixing) leaveOutPart(asked int, part flavor.Part) {
	f.tryWithout(asked, change.MostSteps, func(p *flavor.Profile) bool { return p.Class.Part() == part })
}

// What decides which of two pours that do not go together is the odd one: what fewer of
// the drinks with the same rest have. The drink is one of milk from this share of it on,
// or where there is coffee, which takes milk and no citrus. Common practice, no source.
const milkyShare = 0.45

// uncurdle leaves out the milk or what turns it, first the odd one of the two unless
// only the other way mends the draft.
func (f *fixing) uncurdle(asked int, x *fault.Fault) {
	dairy := func(p *flavor.Profile) bool { return p == x.Profile }
	acid := func(p *flavor.Profile) bool {
		return p == x.With || x.With.Class.Part() == flavor.PartSour && p.Class.Part() == flavor.PartSour
	}
	odd, other := dairy, acid
	if f.isStrange(x.Profile) { // what is out of place goes, whatever the rest is
		f.keep(f.parted(asked, 1, dairy))
		return
	}
	if f.isStrange(x.With) {
		f.keep(f.parted(asked, 1, acid))
		return
	}
	if f.milky(dairy) {
		odd, other = acid, dairy
	}
	first, second := f.parted(asked, 1, odd), f.parted(asked, change.MostSteps, other)
	if first.score < weigh.NearFrom && second.score >= weigh.BalancedFrom {
		first.steps, second.steps = second.steps, first.steps
	}
	if len(first.changes) > 0 && first.score <= f.base { // curds are worse than whatever else is wrong
		f.base = first.score - leastLift
	}
	f.keep(first)
	if !first.balanced() {
		f.keep(second)
	}
}

// parted leaves out one of two pours that do not go together, and shakes the rest if only
// that mends it.
func (f *fixing) parted(asked, steps int, is func(*flavor.Profile) bool) candidate {
	c := candidate{changes: f.without(is), asked: asked, steps: steps, sure: true}
	if len(c.changes) == len(f.spec.Pours) {
		return candidate{}
	}
	c.score = f.scoreWith(c.changes, 0)
	if c.balanced() {
		return c
	}
	shaken := c
	shaken.making = technique.Shaking(f.spec, false)
	if shaken.making.Stays() {
		return c
	}
	spec := shaken.apply(f.spec)
	if shaken.score = f.scoreOf(&spec, weigh.BalancedFrom); shaken.balanced() {
		return shaken
	}
	return c
}

// milky reports whether a drink is one of milk rather than a sour with milk in it.
func (f *fixing) milky(dairy func(*flavor.Profile) bool) bool {
	ml := 0.0
	for i := range f.spec.Pours {
		p := &f.spec.Pours[i]
		if p.Profile.Class == flavor.ClassCoffee {
			return true
		}
		if dairy(p.Profile) {
			ml += p.ML
		}
	}
	return ml >= milkyShare*f.spec.VolumeML() || f.build.Forgotten().Milky()
}

// scoreWith is that of the draft with changes made, 0 if it is below least or nothing is
// left to weigh.
func (f *fixing) scoreWith(changes []change.Change, least float64) float64 {
	spec := change.Apply(f.spec, changes)
	return f.scoreOf(&spec, least)
}

// scoreOf is that of a spec, 0 if it is below least or there is nothing in it to weigh.
func (f *fixing) scoreOf(s *flavor.Spec, least float64) float64 {
	score, ok, err := f.bench.Set.Reaches(s, least)
	if err != nil || !ok {
		return 0
	}
	return score
}

// tryWithout keeps the draft without the pours of some ingredients.
func (f *fixing) tryWithout(asked, steps int, is func(*flavor.Profile) bool) {
	c := candidate{changes: f.without(is), asked: asked, steps: steps}
	if len(c.changes) == len(f.spec.Pours) || len(c.changes) == 0 {
		return
	}
	c.score, c.sure = f.scoreWith(c.changes, f.base), true
	f.keep(c)
}

// tryMaking keeps another way to make the drink.
func (f *fixing) tryMaking(asked int, m technique.Making) {
	if m.Stays() {
		return
	}
	c := candidate{asked: asked, steps: 1, making: m, sure: true}
	spec := c.apply(f.spec)
	c.score = f.scoreOf(&spec, f.base)
	f.keep(c)
}

// clear reports whether nothing in the draft wants shaking.
func (f *fixing) clear() bool {
	return !f.spec.Has(technique.WantsShaking)
}

// tryStirring keeps the draft stirred, after what puts back the juice for which it is shaken,
// if nothing in it wants shaking.
func (f *fixing) tryStirring(asked int) {
	if !f.clear() {
		return
	}
	c := candidate{asked: asked, steps: change.MostSteps, making: technique.Making{Method: flavor.Stir, Do: technique.StirWithoutJuice}, sure: true}
	spec := c.apply(f.spec)
	if c.score = f.scoreOf(&spec, weigh.BalancedFrom); c.balanced() {
		f.keep(c)
	}
}

// largerGlass pours the drink into the smallest larger glass that holds it.
func (f *fixing) largerGlass(asked int) {
	room := f.faults[asked].Room
	named, ok := mix.GlassOf(f.spec)
	if room <= 0 || !ok {
		return
	}
	standing := mix.Standing(f.spec)
	ml := named.RoomML(standing) / room
	if standing == flavor.Up {
		f.pourInto(asked, stemmed, standing, "", ml)
		if slices.ContainsFunc(f.spec.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated }) {
			f.pourInto(asked, tumblers, flavor.Long, flavor.Long, ml)
		}
		return
	}
	f.pourInto(asked, tumblers, standing, "", ml)
}

// pourInto pours the drink into the first of some glasses that holds so many mL as it
// stands, served otherwise if a service is given, if that mends it: else it is the drink
// that is too large.
func (f *fixing) pourInto(asked int, glasses []string, standing, service flavor.Service, ml float64) {
	for _, name := range glasses {
		if g, _ := mix.GlassNamed(name); g.RoomML(standing) >= ml {
			m := technique.Making{Glass: name, Service: service, Do: technique.PourInto}
			if spec := (&candidate{making: m}).apply(f.spec); f.scoreOf(&spec, roomy) >= roomy {
				f.tryMaking(asked, m)
			}
			return
		}
	}
}

// The glasses that every bar has, the smallest first; common practice.
var (
	stemmed  = []string{"wine glass", "balloon glass"}
	tumblers = []string{"rocks glass", "highball glass", "collins glass", "pint glass"}
)
