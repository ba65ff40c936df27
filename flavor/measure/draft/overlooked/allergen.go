package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/naming"
)

// Unheld reports whether a line of a text names an allergen in brackets that nothing poured is known to
// carry, so that no reading may pass it over.
func Unheld(text string, pours []flavor.Pour) bool {
	for line := range strings.Lines(text) {
		if unheld(line, pours) != nil {
			return true
		}
	}
	return false
}

// unheld is the fault of an allergen in brackets that nothing poured is known to carry: another
// bottle than the one that was found may be meant, "foamer (soy)", and a guest may be harmed.
func unheld(line string, pours []flavor.Pour) *flavor.Fault {
	if !strings.ContainsAny(line, "([") {
		return nil
	}
	for _, m := range bracketed.FindAllStringSubmatch(line, -1) {
		for _, a := range naming.AllergensAlone(m[1]) {
			carries := func(p flavor.Pour) bool { _, marked := p.Profile.Allergen(a); return marked }
			if !slices.ContainsFunc(pours, carries) {
				return measure.Invalid("ingredient", m[1], "%q names an allergen that is in nothing poured here; write which bottle holds it, or leave it out", m[1])
			}
		}
	}
	return nil
}
