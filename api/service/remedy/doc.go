// Package remedy finds the drafts that may have been meant in place of one: what mends its
// faults, and what else its names and its bare numbers may mean.
package remedy

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/reading"
)

// Kitchen is what is asked of a bar. [counterpour/api/service/kitchen.Kitchen] is one, and
// describes the methods.
type Kitchen interface {
	ReadRest(text string) (reading.Reading, error)
	Known() naming.Finder
	Others(written string, read *flavor.Profile, n int) []*flavor.Profile
	Beside(part *flavor.Spec, ml float64, n int) ([]*flavor.Profile, error)
	UsualML(p *flavor.Profile) float64
}

// mostNames is how many ingredients are offered for one name.
const mostNames = 4
