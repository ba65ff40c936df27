package reading

import (
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/layout"
)

// ofKinds reads a draft with the names written out that stand behind the kind that they are of, which is
// said; it is false if there are none, or if that leaves anything open.
func ofKinds(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	b := naming.NewResolver(f)
	text, notes, ok := layout.Kinds(d.String(), b)
	if !ok || b.Err() != nil {
		return Reading{}, false, b.Err()
	}
	out, err := resolveAny(d.Anew(text), f)
	if err != nil || len(out.Faults) > 0 || out.Several {
		return Reading{}, false, err
	}
	out.Spec.Notes = append(notes, out.Spec.Notes...)
	out.told = text
	return out, true, nil
}
