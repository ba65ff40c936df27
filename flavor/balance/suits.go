package balance

import (
	"slices"

	"counterpour/flavor/guest"
)

// Suits reports whether a fix of a draft pours nothing that the guest must not have, beyond
// what of it the draft pours already.
func (f *Fix) Suits(g *guest.Guest) bool {
	return !slices.ContainsFunc(f.Changes, func(c Change) bool { return c.ToML > c.FromML && !g.Accepts(c.Profile) })
}
