package reading

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/naming"
)

// CountedBare reports whether a bare number of the pour is a number of things,
// whatever the other lines say.
func CountedBare(p *flavor.Pour) bool {
	if p.Profile == nil {
		return false
	}
	t := task{line: &entry.Line{Name: p.Profile.Name}, base: naming.Found{Profile: p.Profile}, amount: p.Amount}
	return t.counts() == flavor.Piece && !t.perhapsPoured()
}
