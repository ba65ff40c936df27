package part

import (
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/measure/draft/reading"
)

// Millilitres that all bare numbers of one drink come to, common practice.
const (
	leastBareML = 50.0
	mostBareML  = 300.0
)

// NamedUnit is a unit of the jigger, as it is called where it stands alone.
type NamedUnit struct {
	Unit flavor.Unit
	Name string
}

var unitNames = []NamedUnit{{flavor.Ounce, "ounces"}, {flavor.Millilitre, "mL"}, {flavor.Centilitre, "cL"}}

// BareLines returns the lines whose bare number was read as an amount of the jigger, or as parts.
func BareLines(r *reading.Reading) (lines []int) {
	for i, at := range r.Pours {
		l := &r.Draft.Lines[i]
		if at >= 0 && l.Unit == "" && l.Measure == "" && !l.AmountAt.Empty() && (r.Spec.Pours[at].Unit.Jigger() || r.Spec.Pours[at].Unit == flavor.PartUnit) {
			lines = append(lines, i)
		}
	}
	return lines
}

// UnitsFitting returns the units in which the bare numbers of some lines come to one drink.
func UnitsFitting(d draft.Draft, lines []int) (out []NamedUnit) {
	sum := 0.0
	for _, i := range lines {
		sum += d.Lines[i].Amount
	}
	for _, u := range unitNames {
		if per, ok := measure.MLPerUnit(u.Unit, nil); ok && sum*per >= leastBareML && sum*per <= mostBareML {
			out = append(out, u)
		}
	}
	return out
}

// InUnit writes a unit to the amounts of some lines.
func InUnit(d draft.Draft, lines []int, u flavor.Unit) string {
	for _, i := range lines {
		if i < len(d.Lines) {
			d = edit.SetAmount(d, i, d.Lines[i].Amount, u)
		}
	}
	return d.String()
}
