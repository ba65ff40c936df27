package forgotten

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
)

// Lesson is what one proven drink teaches, whatever the others are: the same for every book
// that it is added to.
type Lesson struct {
	spec                                  *flavor.Spec
	base, sour, length                    *flavor.Profile // the largest of each; nil if it has none
	strong, sharp, sweet, seasoned, milky bool            // as in a Book
	joined                                []joined
	unbased, unsweetened, unseasoned      Rest
	unturned, unsoured, unlengthed        Rest
}

// LessonOf reads a proven drink, given its parts, the mL of its pours, and what those are in
// all.
func LessonOf(spec *flavor.Spec, parts []makeup.Part, ml []float64, e *ratio.Equivalents) Lesson {
	base := largestOf(spec, flavor.PartBase)
	return Lesson{
		spec:        spec,
		base:        base,
		sour:        largestOf(spec, flavor.PartSour),
		length:      largestOf(spec, flavor.PartLength),
		strong:      base != nil || makeup.Presence(e[ratio.Strong], e.Total(), makeup.HalfWine) > 0.5,
		sharp:       makeup.Presence(souring(parts, ml, tastedAcid), e.Total(), halfSharp) > 0.5,
		sweet:       largestOf(spec, flavor.PartSweetener) != nil,
		seasoned:    slices.ContainsFunc(parts, func(p makeup.Part) bool { return isBitters(&p) }),
		milky:       slices.ContainsFunc(parts, func(p makeup.Part) bool { return technique.Turns(p.Profile) }),
		joined:      joinedOf(parts, ml),
		unbased:     RestOf(parts, ml, makeup.IsBase),
		unsweetened: RestOf(parts, ml, makeup.IsSweetener),
		unseasoned:  RestOf(parts, ml, isBitters),
		unturned:    RestOf(parts, ml, isSharpOrTurns),
		unsoured:    RestOf(parts, ml, makeup.IsSharp),
		unlengthed:  RestOf(parts, ml, lengthens),
	}
}
