package flavor

import (
	"fmt"
	"math"
	"slices"
)

// Origin says where a number comes from.
type Origin string

// The origins a number may have, the most trusted first.
const (
	OriginPublished Origin = "published"       // read in a named publication, standard or open table
	OriginLaw       Origin = "law"             // set by a named legal definition
	OriginComputed  Origin = "computed"        // worked out here from published figures, or weighed out in the making
	OriginPractice  Origin = "common practice" // what the trade does; no source sets it
	// OriginComputedMemory is worked out here from figures of which one that
	// matters is recalled.
	OriginComputedMemory Origin = "computed from memory"
	OriginMemory         Origin = "from memory" // recalled, not looked up; treat with care
)

// Origins lists every origin, the most trusted first.
func Origins() []Origin {
	return []Origin{OriginPublished, OriginLaw, OriginComputed, OriginPractice, OriginComputedMemory, OriginMemory}
}

// Valid reports whether o is one of [Origins].
func (o Origin) Valid() bool {
	return slices.Contains(Origins(), o)
}

// Figure is a number one can argue with: Value and Spread are in the same
// unit, Spread being one standard deviation between bottles, fruit or batches;
// Source names the publication or says how the number was found, and may be
// empty for a number of common practice or from memory.
type Figure struct {
	Value  float64
	Spread float64
	Origin Origin
	Source string
}

// Check reports why f cannot be used: a value or spread that is not finite or
// is negative, an origin that is not known, or a published or legal figure
// that names no source. It returns nil for a sound figure.
func (f Figure) Check() error {
	switch {
	case math.IsNaN(f.Value) || math.IsInf(f.Value, 0) || f.Value < 0:
		return fmt.Errorf("value %v must be a finite number, zero or more", f.Value)
	case math.IsNaN(f.Spread) || math.IsInf(f.Spread, 0) || f.Spread < 0:
		return fmt.Errorf("spread %v must be a finite number, zero or more", f.Spread)
	case !f.Origin.Valid():
		return fmt.Errorf("origin %q must be one of %v", f.Origin, Origins())
	case f.Source == "" && (f.Origin == OriginPublished || f.Origin == OriginLaw):
		return fmt.Errorf("a figure whose origin is %q must name its source", f.Origin)
	}
	return nil
}
