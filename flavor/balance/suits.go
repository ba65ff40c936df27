package balance

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/guest"
)

// Suits reports whether a draft, once mended so, pours nothing that the guest must not have, and
// has nothing of it laid on: less of it is still too much.
func (f *Fix) Suits(g *guest.Guest) bool {
	return g.MayHaveLaid(&f.Spec) && !slices.ContainsFunc(f.Spec.Pours, func(p flavor.Pour) bool { return !g.Accepts(p.Profile) })
}
