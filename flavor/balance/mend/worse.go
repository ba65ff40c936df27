package mend

import (
	"slices"

	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
)

// leavesWorse reports whether a candidate balances the draft with little room, and moves none of the
// pour of which there is too much by more steps than what it moves is out: the draft is balanced as
// a larger drink that is as wrong.
func (f *fixing) leavesWorse(c *candidate) bool {
	if !c.balanced() || c.score >= roomy || c.scales() || !c.making.Stays() {
		return false
	}
	mends := 0.0
	for i := range f.faults {
		if x := &f.faults[i]; c.moves(x) {
			mends = max(mends, x.Deviation)
		}
	}
	return slices.ContainsFunc(f.faults, func(x fault.Fault) bool {
		return x.High && x.Profile != nil && x.Method == "" && x.Deviation > worseTimes*mends && !c.moves(&x)
	})
}

// worseTimes is by how many times as many steps something is out from where it is worse. Judged.
const worseTimes = 1.5

// moves reports whether a candidate moves the pour that a fault names, as it says.
func (c *candidate) moves(x *fault.Fault) bool {
	return slices.ContainsFunc(c.changes, func(o change.Change) bool { return o.Profile == x.Profile && (o.ToML < o.FromML) == x.High })
}

// leftWorse reports whether all that balances the draft leaves what is worse.
func (f *fixing) leftWorse() bool {
	return f.mended() && !slices.ContainsFunc(f.found, func(c candidate) bool { return c.balanced() && !c.small && !c.leaves })
}
