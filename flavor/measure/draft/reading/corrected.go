package reading

import (
	"cmp"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/rewriting/correcting"
)

// corrected reads a draft with what it corrects of itself carried out, which is said; it is false if it
// corrects nothing, or if that leaves anything open.
func corrected(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	if overlooked.AsksWhether(d.String()) {
		return Reading{}, false, nil
	}
	b := naming.NewResolver(f)
	c, ok := correcting.Of(d.String(), b)
	if !ok || b.Err() != nil {
		return Reading{}, false, b.Err()
	}
	out, err := resolveAny(d.Anew(c.Text), f)
	if err != nil || len(out.Faults) > 0 || out.Several {
		return Reading{}, false, err
	}
	out.told = cmp.Or(out.told, c.Text)
	out.Spec.Notes = append(c.Notes, out.Spec.Notes...)
	return out, true, nil
}

// unsettled is the fault of a draft that takes something back and names in its place what is not poured.
func unsettled(d draft.Draft, out *Reading, f naming.Finder) *flavor.DataFault {
	if len(out.Faults) > 0 {
		return nil
	}
	fault := correcting.Unsettled(d.String(), out.Spec.Pours, naming.NewResolver(f))
	if fault != nil {
		fault.Location = measure.LineLocation(1)
	}
	return fault
}
