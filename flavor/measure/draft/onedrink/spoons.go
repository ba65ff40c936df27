package onedrink

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
)

// mostSpoons is the most small spoons of one thing that anybody measures for a drink; more is poured by the
// jigger. Common practice, no source.
const mostSpoons = 12

// spooned asks about a pour of more spoons than one drink takes whose unit is one letter: it is more likely the
// first of a name, "gin 30 t. sec 20".
func spooned(d *draft.Draft, s *flavor.Spec, at []int) *flavor.DataFault {
	if says(d, manyWords) || says(d, largeWords) {
		return nil
	}
	for i := range s.Pours {
		p, k := &s.Pours[i], slices.Index(at, i)
		if k < 0 || p.Unit != flavor.Teaspoon && p.Unit != flavor.Barspoon || p.Amount <= mostSpoons {
			continue
		}
		if at := d.Lines[k].UnitAt; at.End-at.Start != 1 {
			continue
		}
		poured := measure.FormatAmount(p.Amount, p.Unit) + " of " + p.Profile.Name
		f := measure.Invalid("amount", poured, "%s is more than anybody spoons into one drink; check the unit, or write how many drinks they make, such as \"serves 6\"", poured)
		f.Location = measure.LineLocation(d.Lines[k].Number)
		return f
	}
	return nil
}
