package mend

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
)

// How far a fix may take a pour that no fault names: the base by a share of what
// was ordered, the rest by a factor.
const (
	strayShare = 0.25
	strayTimes = 2.5
)

// byOthers moves the pours that no fault names, either way.
func (f *fixing) byOthers() error {
	for i := range f.spec.Pours {
		for _, more := range []bool{false, true} {
			ladder := f.served(f.freely(i, more))
			if at, score := f.along(i, ladder, comfortable); at >= 0 {
				f.keep(candidate{changes: []change.Change{ladder[at]}, asked: unasked, steps: at + 1, score: score})
			}
		}
	}
	return nil
}

// freely is the ladder of a pour that no fault names.
func (f *fixing) freely(pour int, more bool) []change.Change {
	p := &f.spec.Pours[pour]
	if !p.Profile.Class.Movable() || f.isStrange(p.Profile) {
		return nil
	}
	ladder := change.Ladder(p, pour, more, false)
	for i := range ladder {
		c := &ladder[i]
		far := math.Max(c.ToML/c.FromML, c.FromML/c.ToML) > strayTimes
		if p.Profile.Base() {
			far = math.Abs(c.ToML-c.FromML) > strayShare*c.FromML+slack
		}
		if far && !f.blamed(p.Profile, more) || p.Profile.Base() && c.FromML-c.ToML > max(f.spec.MLOf((*flavor.Profile).Base)/2, c.FromML-f.leastOfBase(pour))+slack {
			return ladder[:i] // a drink without half of its base is another one
		}
	}
	return ladder
}

// blamed reports whether a fault names an ingredient that way.
func (f *fixing) blamed(p *flavor.Profile, more bool) bool {
	return slices.ContainsFunc(f.faults, func(x fault.Fault) bool { return x.Profile == p && x.High != more })
}
