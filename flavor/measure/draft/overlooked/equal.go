package overlooked

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"
)

// equalParts say that several things are poured alike.
var equalParts = pattern.Of(`(?i)\bequal(?:[ \t]+(?:parts?|measures|amounts|quantities))?\b`)

// EqualOfOne is the fault of a text that speaks of equal parts where one thing is poured: the others
// are named in a way that was passed over, such as "like a martini but half sherry, equal parts, lemon".
func EqualOfOne(text string, pours []flavor.Pour) *flavor.DataFault {
	if len(pours) != 1 || pours[0].Unit != flavor.PartUnit {
		return nil
	}
	at := equalParts.FindStringIndex(text)
	if at == nil {
		return nil
	}
	said := text[at[0]:at[1]]
	f := measure.Invalid("amount", said, "%q tells of several pours, and only %s is read as one; write each with its amount", said, pours[0].Match.Asked)
	f.Location = measure.LineLocation(1 + strings.Count(text[:at[0]], "\n"))
	return f
}
