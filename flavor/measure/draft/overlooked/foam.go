package overlooked

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"
)

// foam is a foam that stands among the pours without an amount: egg white, aquafaba or a foamer may be meant,
// which is for a guest to know. "Nutmeg on foam" tells where something lies.
var foam = pattern.Of(`(?im)(?:^|[,;+/&•]|\b(?:and|with|plus|add|w))[ \t]*((?:a[ \t]+|some[ \t]+)?(?:foam(?:er|ing agent)?|froth|fluff))[ \t]*(?:[,;.+/&•!\n]|$)`)

// foamed is the fault of such a foam where nothing that foams is poured.
func foamed(line string, pours []flavor.Pour) *flavor.DataFault {
	m := foam.FindStringSubmatch(line)
	if m == nil || slices.ContainsFunc(pours, func(p flavor.Pour) bool { return p.Profile.Class.Part() == flavor.PartTexture }) {
		return nil
	}
	f := measure.Invalid("ingredient", m[1], "%q may be egg white, aquafaba or a foamer; write which, with its amount", m[1])
	f.Suggest = []string{"egg white", "aquafaba", "quillaja foamer"}
	return f
}
