package reading

import (
	"slices"

	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/page"
	"counterpour/flavor/measure/draft/setting"
	"counterpour/flavor/measure/draft/token"
)

// setAnew reads a draft that no rule reads as it stands in the first way to set it anew that leaves
// nothing open. It returns what was read before if none does.
func setAnew(d draft.Draft, before Reading, f naming.Finder) (Reading, error) {
	if d.PoursOnly() || d.Labelled {
		return before, nil
	}
	b := naming.NewBook(f)
	for _, way := range waysToSet(d.String(), b) {
		if b.Err() != nil {
			return before, b.Err()
		}
		out, err := asSet(d.Anew(way.Text), f)
		if err != nil {
			return before, err
		}
		if len(out.Faults) > 0 || out.several || len(overlooked.Said(way.Text, &out.Spec)) > 0 || !way.Holds(d.String(), &out.Spec, b) {
			continue
		}
		for _, p := range slices.Backward(slices.Concat(way.Denied, way.Passed, way.Aside)) {
			out.Spec.Notes = slices.Insert(out.Spec.Notes, 0, "“"+token.OneLine(p)+"” is skipped")
		}
		out.Spec.Steps = append(slices.Clone(way.Steps), out.Spec.Steps...)
		if out.Draft.String() == way.Text {
			out.Draft = out.Draft.Restored(d.String(), nil)
		}
		return out, nil
	}
	return before, nil
}

// waysToSet lists how a text may be set anew, as a page first.
func waysToSet(text string, b *naming.Book) []setting.Set {
	ways := setting.Ways(text, b)
	if p, ok := page.Of(text, b); ok {
		ways = slices.Insert(ways, 0, setting.Set{Text: p.Text, Passed: p.Passed, Steps: p.Steps, Aside: p.Aside})
	}
	return ways
}
