package mend

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
)

// sparesBase reports whether no fault is of the base, and something balances the draft
// that leaves all of it as it was ordered.
func (f *fixing) sparesBase() bool {
	if slices.ContainsFunc(f.faults, func(x fault.Fault) bool {
		return x.Profile != nil && x.Profile.Base() || x.Axis == ratio.Strong && x.High
	}) {
		return false
	}
	return slices.ContainsFunc(f.found, func(c candidate) bool {
		return c.balanced() && !slices.ContainsFunc(c.changes, func(x change.Change) bool { return x.Profile.Base() })
	})
}

// takesBase reports whether a candidate takes a base further from what was ordered than a
// fix may that no fault asks for; a smaller drink of the same kind does not.
func (c *candidate) takesBase() bool {
	return !c.scales() && slices.ContainsFunc(c.changes, func(x change.Change) bool {
		return x.Profile.Base() && x.FromML > 0 && math.Abs(x.ToML-x.FromML) > strayShare*x.FromML+slack
	})
}

// What a fix may do to how much a guest drinks: beyond two standard drinks of 14 g
// (as the United States count them), no more than half as much ethanol again.
// Judged.
const (
	plentyG       = 28.0
	strongerTimes = 1.5
)

// heady reports whether changes make much more alcohol in the glass than in the draft.
func (f *fixing) heady(changes []change.Change) bool {
	before := ethanol(f.spec)
	g := before
	for i := range changes {
		x := &changes[i]
		g += (x.ToML - x.FromML) * x.Profile.ABV.Value / 100 * mix.EthanolDensity
	}
	return g > plentyG && g > strongerTimes*before
}

// spikes reports whether changes pour what holds alcohol into a draft without.
func (f *fixing) spikes(changes []change.Change) bool {
	return f.free && slices.ContainsFunc(changes, func(x change.Change) bool { return x.ToML > x.FromML && x.Profile.ABV.Value > flavor.NoAlcoholABV })
}

// bursts reports whether a candidate still shakes what is hot, if that is what is wrong:
// to pour less of it is no way to make that safe.
func (f *fixing) bursts(c candidate) bool {
	if !c.making.Stays() || !slices.ContainsFunc(f.faults, func(x fault.Fault) bool { return x.Method == technique.HotOnIce }) {
		return false
	}
	spec := c.apply(f.spec)
	return technique.HotInside(&spec)
}

// curdles reports whether milk or cream still turns in a mended draft, if that is what is
// wrong: less of it is as full of curds.
func (f *fixing) curdles(x *Fix) (bool, error) {
	if weigh.VerdictOf(x.Score) == weigh.Balanced || !slices.ContainsFunc(f.faults, func(x fault.Fault) bool { return x.Method == technique.Curdled }) {
		return false, nil
	}
	build, err := f.bench.Set.Prepare(&x.Spec)
	if err != nil {
		return false, err
	}
	defer build.Done()
	judged := build.Judge(build.Amounts())
	return slices.ContainsFunc(judged.Method, func(s technique.Misstep) bool { return s.Flaw == technique.Curdled }), nil
}

// ethanol returns the g of it in a spec.
func ethanol(s *flavor.Spec) float64 {
	var ml float64
	for i := range s.Pours {
		ml += s.Pours[i].ML * s.Pours[i].Profile.ABV.Value / 100
	}
	return ml * mix.EthanolDensity
}
