package reading

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/rewriting/layout"
	"counterpour/flavor/measure/draft/rewriting/paired"
	"counterpour/flavor/measure/draft/rewriting/phrasing"
	"counterpour/flavor/measure/draft/rewriting/recipe"
	"counterpour/flavor/measure/draft/words/token"
)

// setAnew reads a draft that no rule reads as it stands in the first way to set it anew that leaves
// nothing open. It returns what was read before if none does.
func setAnew(d draft.Draft, before Reading, f naming.Finder) (Reading, error) {
	if d.PoursOnly() || d.Labelled && !layout.Fielded(d.String()) && !layout.Dotted(d.String()) {
		return before, nil
	}
	b := naming.NewResolver(f)
	for _, way := range waysToSet(d.String(), b) {
		if b.Err() != nil {
			return before, b.Err()
		}
		if out, ok, err := setSo(d, &way, b, f); ok || err != nil {
			return out, err
		}
	}
	return cutAnew(d, before, b, f)
}

// phrased reads a draft in plain phrases whose garnish tells more than what is laid on the drink, or
// whose one fault such phrases do not hold. It returns what was read before if that leaves anything open.
func phrased(d draft.Draft, before Reading, f naming.Finder) (Reading, error) {
	if len(before.Faults) != 1 {
		return before, nil
	}
	p, fault := phrasing.Of(d.String()), before.Faults[0]
	if p.Text == d.String() || fault.Field != "garnish" && strings.Contains(p.Text, fault.Value) {
		return before, nil
	}
	out, ok, err := setSo(d, &layout.Set{Text: p.Text, Aside: p.Aside, Steps: p.Steps, Told: p.Told}, naming.NewResolver(f), f)
	if !ok || err != nil {
		return before, err
	}
	return out, nil
}

// cutAnew reads a draft whose first line begins with a name that nothing parts from its pours. It
// returns what was read before if no place to cut it leaves nothing open, or if two of them pour
// differently.
func cutAnew(d draft.Draft, before Reading, b *naming.Resolver, f naming.Finder) (Reading, error) {
	cut := before
	for _, way := range layout.Cuts(d.String(), b) {
		if b.Err() != nil {
			return before, b.Err()
		}
		out, ok, err := setSo(d, &way, b, f)
		switch {
		case err != nil:
			return before, err
		case !ok:
		case len(cut.Faults) > 0:
			out.Spec.Notes = append([]string{"“" + way.Title + "” is read as the name of the drink"}, out.Spec.Notes...)
			cut = out
		case len(out.Spec.Pours) != len(cut.Spec.Pours) || !keeps(out.Spec.Pours, cut.Spec.Pours):
			return before, nil
		}
	}
	return cut, nil
}

// asPage reads a draft that is nothing but a recipe as a page prints it; it is false for another, and
// if that leaves anything open.
func asPage(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	if d.PoursOnly() || d.Labelled || !recipe.Numbered(d.String()) {
		return Reading{}, false, nil
	}
	b := naming.NewResolver(f)
	p, ok := recipe.Of(d.String(), b)
	if !ok || b.Err() != nil {
		return Reading{}, false, b.Err()
	}
	return setSo(d, paged(&p), b, f)
}

// inTotal reads a draft in a ratio that says what the whole drink comes to; it is false for another, and
// if that leaves anything open.
func inTotal(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	if d.PoursOnly() || d.Labelled {
		return Reading{}, false, nil
	}
	b := naming.NewResolver(f)
	text, ok := paired.Scaled(d.String(), b)
	if !ok || b.Err() != nil {
		return Reading{}, false, b.Err()
	}
	return setSo(d, &layout.Set{Text: text}, b, f)
}

// ofDrink reads a draft in the ratio of a drink of which everybody knows the pours; it is false for another.
func ofDrink(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	if d.PoursOnly() {
		return Reading{}, false, nil
	}
	b := naming.NewResolver(f)
	text, told, ask, ok := paired.OfDrink(d.String(), b)
	if !ok || ask != nil || b.Err() != nil {
		return Reading{}, false, b.Err()
	}
	return setSo(d, &layout.Set{Text: text, Told: told}, b, f)
}

// ofWhichPours asks which pours a ratio measures, where the drink is known and they are not; it is false for
// another draft. No other way to set the text settles that.
func ofWhichPours(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	if d.PoursOnly() {
		return Reading{}, false, nil
	}
	b := naming.NewResolver(f)
	_, _, ask, ok := paired.OfDrink(d.String(), b)
	if !ok || ask == nil || b.Err() != nil {
		return Reading{}, false, b.Err()
	}
	out, err := resolve(d, f)
	ask.Field, ask.Location = "amount", measure.LineLocation(lineOf(d.String(), strings.Index(d.String(), ask.Value)))
	out.Faults = flavor.DataFaults{ask}
	return out, err == nil, err
}

// setSo reads a draft set anew in one way; it is false if that leaves anything open.
func setSo(d draft.Draft, way *layout.Set, b *naming.Resolver, f naming.Finder) (Reading, bool, error) {
	out, err := asSet(d.Anew(way.Text), f)
	if err != nil || len(out.Faults) > 0 || out.Several || len(overlooked.Said(way.Text, &out.Spec)) > 0 || !way.Holds(d.String(), &out.Spec, b) {
		return Reading{}, false, err
	}
	for _, p := range slices.Backward(slices.Concat(way.Denied, way.Passed, way.Aside)) {
		out.Spec.Notes = slices.Insert(out.Spec.Notes, 0, "“"+token.OneLine(p)+"” is skipped")
	}
	out.Spec.Notes = append(slices.Clone(way.Told), out.Spec.Notes...)
	out.Spec.Steps = append(slices.Clone(way.Steps), out.Spec.Steps...)
	if out.Draft.String() == way.Text && len(way.Text) == len(d.String()) {
		out.Draft = out.Draft.Restored(d.String(), nil)
	}
	return out, true, nil
}

// paged is a page as a text set anew.
func paged(p *recipe.Page) *layout.Set {
	return &layout.Set{Text: p.Text, Passed: p.Passed, Steps: p.Steps, Aside: p.Aside}
}

// waysToSet lists how a text may be set anew, as a page first, as it stands and with its lines set
// anew.
func waysToSet(text string, b *naming.Resolver) []layout.Set {
	ways := layout.Ways(text, b)
	p, ok := recipe.Of(text, b)
	if !ok {
		return ways
	}
	out := []layout.Set{*paged(&p)}
	for _, way := range layout.Ways(p.Text, b) {
		way.Passed, way.Aside, way.Steps = slices.Concat(p.Passed, way.Passed), slices.Concat(p.Aside, way.Aside), slices.Concat(p.Steps, way.Steps)
		out = append(out, way)
	}
	return append(out, ways...)
}
