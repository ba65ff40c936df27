package reading

import (
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/bilingual"
)

// namedOnce reads a draft with what it names in two tongues or scripts named once, which is said; it
// is false if it names nothing so, or if that leaves anything open.
func namedOnce(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	b := naming.NewResolver(f)
	text, changes, ok := bilingual.Once(d.String(), b)
	if !ok || b.Err() != nil {
		return Reading{}, false, b.Err()
	}
	out, err := resolveAny(d.Anew(text), f)
	if err != nil || len(out.Faults) > 0 || out.Several {
		return Reading{}, false, err
	}
	out.Spec.Notes = append(changes, out.Spec.Notes...)
	if out.Draft.String() == text {
		out.Draft = out.Draft.Restored(d.String(), nil)
	}
	return out, true, nil
}
