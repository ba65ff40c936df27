package manner

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
)

// HeatOf reads how warm a line says that its pour is. A word of the ingredient's
// own name says what it is called, see [flavor.Pour.Warmth].
func HeatOf(l *entry.Line, p *flavor.Profile) flavor.Heat {
	if !p.Class.Heated() {
		return ""
	}
	own := strings.Fields(flavor.NormaliseName(p.Name))
	if len(own) > 0 && serving.Warmth(own[0]) != "" {
		return ""
	}
	for _, w := range strings.Fields(flavor.NormaliseName(l.Asked + " " + l.Name)) {
		if heat := serving.Warmth(w); heat != "" {
			return heat
		}
	}
	return ""
}
