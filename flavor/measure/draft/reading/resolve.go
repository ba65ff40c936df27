package reading

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/literal"
	"counterpour/flavor/measure/draft/meaning"
	"counterpour/flavor/measure/draft/names/dressing"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/onedrink"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/rewriting/layout"
	"counterpour/flavor/measure/draft/rewriting/likeliest"
	"counterpour/flavor/measure/draft/rewriting/runon"
	"counterpour/flavor/measure/draft/rewriting/shorthand"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/pattern"
)

// Reading is what a draft means to a finder, whichever way it was read.
type Reading struct {
	meaning.Meaning

	asks bool   // whether the name of the drink is poured, which no other way to set the text settles
	told string // the text without what it corrects and what it tells of making; empty where it does neither
}

// Err returns the faults as an error, nil if everything was read.
func (r *Reading) Err() error {
	if len(r.Faults) == 0 {
		return nil
	}
	return r.Faults
}

// Read reads a text as a spec. Its error is [flavor.DataFaults], everything that is
// wrong with the text at once, or the failure of the finder; beside faults the
// spec holds what could be read.
func Read(text string, f naming.Finder) (flavor.Spec, error) {
	r, err := Resolve(draft.Parse(text), f)
	if err != nil {
		return flavor.Spec{}, err
	}
	return r.Spec, r.Err()
}

// Resolve looks up the names of a draft and works out units, millilitres, method
// and service. It fails only with the failure of the finder, wrapped; what is
// wrong with the draft is in the reading.
//
// Where a draft may be parsed in two ways, the one with fewer faults is meant. What
// cannot be read as a list is read as a text that runs on, if nothing is left over then,
// then without what is said to colleagues around the pours, and at last as what most likely
// stands in it.
func Resolve(d draft.Draft, f naming.Finder) (Reading, error) {
	f = naming.Remembering(f)
	if out, ok, err := literally(d, f); ok || err != nil {
		return out, err
	}
	out, err := resolveAny(d, f)
	if err == nil && len(out.Faults) == 0 && !out.Several {
		out.Faults = lastLook(&d, &out, f)
	}
	if err == nil && !out.Several {
		out.Faults = meaning.InOrder(append(out.Faults, onedrink.Ranges(&out.Draft, out.Spec.Pours, out.Pours)...))
	}
	if err == nil {
		err = naming.Complete(out.Faults, f)
		out.lacking(f)
	}
	if err == nil {
		if len(out.Faults) == 0 && !out.Several {
			out.Spec.Notes = append(out.Spec.Notes, onedrink.Many(d.String(), out.Spec.Notes)...)
			out.Spec.Notes = append(out.Spec.Notes, onedrink.Makes(&out.Spec)...)
		}
		err = out.dress(d.String(), f)
	}
	return out, err
}

// literally reads a draft in which every word says what it is; false if it is none.
func literally(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	if !literal.Written(&d) {
		return Reading{}, false, nil
	}
	out, err := resolve(d, f)
	if err != nil || len(out.Faults) > 0 || out.Several || !literal.Poured(&out.Spec, d.Lines, naming.NewResolver(f).Named) {
		return Reading{}, false, err
	}
	return out, true, dressing.Dress(&out.Spec, f)
}

// lastLook is what a text that was read leaves open, held against its pours whichever way it was read.
func lastLook(d *draft.Draft, out *Reading, f naming.Finder) flavor.DataFaults {
	text := cmp.Or(out.told, d.String())
	b := naming.NewResolver(f)
	faults := overlooked.Open(text, out.Spec.Pours, b)
	if split := overlooked.SplitName(text, out.Spec.Name, out.Spec.Pours, b); split != nil {
		faults = append(faults, split)
	}
	if glued := overlooked.GluedStop(d.String()); glued != nil {
		faults = append(faults, glued)
	}
	if counted := overlooked.NamePours(text, out.Spec.Name, out.Spec.Pours, b); counted != nil {
		faults = append(faults, counted)
	}
	if equal := overlooked.EqualOfOne(d.String(), out.Spec.Pours); equal != nil {
		faults = append(faults, equal)
	}
	if two := overlooked.TwoManners(d.String(), out.Spec.Name); two != nil {
		faults = append(faults, two)
	}
	if twice := overlooked.ToldTwice(d.String()); twice != nil {
		faults = append(faults, twice)
	}
	return faults
}

// dress looks up what is laid on the drink, and what else the text names that carries an
// allergen and that nothing of the drink is known to carry.
func (r *Reading) dress(text string, f naming.Finder) error {
	err := dressing.Dress(&r.Spec, f)
	r.Spec.Notes = append(r.Spec.Notes, dressing.Notes(&r.Spec)...)
	if err != nil || len(r.Faults) > 0 || r.Several || len(r.Spec.Pours) == 0 {
		return err
	}
	poured := map[int]bool{}
	for i := range r.Draft.Lines {
		poured[r.Draft.Lines[i].Number] = true
	}
	faults, kept := overlooked.Uncarried(text, &r.Spec, poured)
	r.Faults = append(r.Faults, faults...)
	kept = slices.DeleteFunc(kept, func(line string) bool { return slices.Contains(r.Spec.Steps, line) })
	if len(kept) == 0 {
		return nil
	}
	r.Spec.Steps = append(slices.Clone(r.Spec.Steps), kept...)
	return dressing.Dress(&r.Spec, f)
}

// resolveAny is Resolve over a finder that remembers, whose faults are left to be completed.
func resolveAny(d draft.Draft, f naming.Finder) (Reading, error) {
	for _, read := range [...]func(draft.Draft, naming.Finder) (Reading, bool, error){ofTicket, ofChat, ofKinds, corrected, ofWhichPours} {
		if out, ok, err := read(d, f); ok || err != nil {
			return out, err
		}
	}
	out, err := anyWay(d, f)
	if err == nil && len(out.Faults) == 0 {
		out.Faults = overlooked.Said(d.String(), &out.Spec)
		if out, err = phrased(d, out, f); err != nil {
			return out, err
		}
	}
	if f := unsettled(d, &out, f); err == nil && f != nil {
		out.Faults = append(out.Faults, f)
		return out, nil
	}
	if err != nil || len(out.Faults) == 0 {
		return out, err
	}
	if once, ok, err := namedOnce(d, f); ok || err != nil {
		return once, err
	}
	out, err = withoutEveryday(d, out, f)
	if f := unsettled(d, &out, f); err == nil && f != nil {
		out.Faults = append(out.Faults, f)
	}
	return out, err
}

// anyWay is Resolve without a look at what else the text says of its pours.
func anyWay(d draft.Draft, f naming.Finder) (Reading, error) {
	for _, read := range [...]func(draft.Draft, naming.Finder) (Reading, bool, error){asPage, inTotal, ofDrink} {
		if out, ok, err := read(d, f); ok || err != nil {
			return out, err
		}
	}
	out, err := asSet(d, f)
	if err != nil || out.Several || out.asks || len(out.Faults) == 0 {
		return out, err
	}
	return setAnew(d, out, f)
}

// asSet is anyWay of a draft as its lines are set.
func asSet(d draft.Draft, f naming.Finder) (Reading, error) {
	if out, ok, err := plainly(d, f); ok || err != nil {
		return out, err
	}
	if out, ok, err := withoutMaking(d, f); ok || err != nil {
		return out, err
	}
	out, err := byRules(d, f)
	switch {
	case err != nil || out.Several:
		return out, err
	case len(out.Faults) == 0:
		return eitherWay(d, out, f)
	}
	return likeliestList(d, out, f)
}

// byRules is Resolve without what most likely stands in a draft.
func byRules(d draft.Draft, f naming.Finder) (Reading, error) {
	out, err := resolveWhole(d, f)
	if err != nil || len(out.Faults) == 0 || out.Several {
		return out, err
	}
	if full, ok, err := writtenOut(d, f); err != nil || ok {
		return full, err
	}
	return withoutTalk(d, out, f)
}

// writtenOut reads a draft with its clipped and run-together words written out, which is said
// of each; it is false if that leaves anything open.
func writtenOut(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	b := naming.NewResolver(f)
	text, changes, ok := shorthand.WrittenOut(d.String(), b)
	if !ok || b.Err() != nil {
		return Reading{}, false, b.Err()
	}
	out, err := resolveWhole(d.Anew(text), f)
	if err == nil && len(out.Faults) > 0 && !out.Several {
		out, err = withoutTalk(d.Anew(text), out, f)
	}
	if err != nil || len(out.Faults) > 0 || out.Several {
		return Reading{}, false, err
	}
	out.Spec.Notes = append(changes, out.Spec.Notes...)
	return out, true, nil
}

// resolveWhole is Resolve of a draft with everything that is said in it.
func resolveWhole(d draft.Draft, f naming.Finder) (Reading, error) {
	out, err := resolve(d, f)
	if err != nil || len(out.Faults) == 0 && !(d.Led && namesPour(&d, f)) {
		return out, err
	}
	if d.Led {
		if other, err := resolve(d.Plainly(), f); err != nil || len(other.Faults) < max(len(out.Faults), 1) {
			out = other
			if err != nil || len(out.Faults) == 0 {
				return out, err
			}
		}
	}
	if out.Several { // what parts them is to stay
		return out, nil
	}
	beside, apart, err := withoutUnpoured(d, out, f)
	if err != nil || apart && len(beside.Faults) == 0 {
		return beside, err
	}
	if apart {
		out = beside
	}
	return onward(d, out, f)
}

// namesPour reports whether what stands before the pours of the first line is the name of an
// ingredient: "wh rum 1 jam rum 1 lime 3/4" may write its amounts behind the names.
func namesPour(d *draft.Draft, f naming.Finder) bool {
	b := naming.NewResolver(f)
	hit := b.Find(d.Name, naming.Place{Unit: flavor.Ounce, Amount: 1})
	return hit.Firm() && hit.Dropped == ""
}

// eitherWay asks whether the word that leads the pours of a line is the name of the drink, where
// it may be poured as well.
func eitherWay(d draft.Draft, out Reading, f naming.Finder) (Reading, error) {
	b := naming.NewResolver(f)
	name, text := out.Spec.Name, d.String()
	line, rest, ok := strings.Cut("\n"+text, "\n"+name+" ")
	if d.Labelled || d.Titled || !ok || rest == "" || name == "" || !strings.ContainsRune("0123456789.½¼¾⅓⅔", []rune(rest)[0]) || layout.Called(name, b) {
		return out, nil
	}
	at := entry.Span{Start: len(line), End: len(line) + len(name)}
	if !likeliest.MayPour(text, at, named(&out.Draft), b) {
		return out, b.Err()
	}
	ask := measure.Invalid("amount", name, "%q may be the name of the drink, or be poured and have its amount behind it; put a comma behind each pour, or write \"%s %s\"", name, draft.NamePrefix, name)
	ask.Location = measure.LineLocation(lineOf(text, at.Start))
	out.Faults, out.asks = flavor.DataFaults{ask}, true
	return out, nil
}

// named is how many pours of a draft have their names in the text: an amount left over at the end is read as that
// of bitters.
func named(d *draft.Draft) int {
	n := 0
	for i := range d.Lines {
		if !d.Lines[i].NameAt.Empty() {
			n++
		}
	}
	return n
}

// onward reads a draft as a text that runs on, and returns what was read before if that
// leaves anything open.
func onward(d draft.Draft, before Reading, f naming.Finder) (Reading, error) {
	if d.PoursOnly() {
		return before, nil
	}
	b := naming.NewResolver(f)
	list, passed, ok := runon.AsList(d.String(), b)
	if !ok || b.Err() != nil || !keepsAmounts(d.String(), list+" "+strings.Join(passed, " ")) || slices.ContainsFunc(passed, mayBePoured) {
		return before, b.Err()
	}
	out, err := resolve(draft.Parse(list), f)
	if err != nil || len(out.Faults) > 0 {
		return before, err
	}
	notes := []string{"the text runs on; it is read as these lines: “" + strings.ReplaceAll(list, "\n", " / ") + "”"}
	for _, p := range passed {
		notes = append(notes, "“"+p+"” is "+out.keepOrSkip(p))
	}
	out.Spec.Notes = append(notes, out.Spec.Notes...)
	return out, nil
}

// measured is an amount in figures with its unit.
var measured = pattern.Of(`(?i)(\d[\d.,/]*|[½¼¾⅓⅔])[ \t]?(?:ml|cl|oz)\b`)

// white is the white of an egg by its last word: "and a white".
var white = pattern.Of(`(?i)\b(?:an?|one|the)[ \t]+(?:egg[ \t]+)?whites?\s*$`)

// unit is a unit of the bar amid words: "qtr oz syrup".
var unit = pattern.Of(`(?i)\b(?:oz|ml|cl|ounces?|dash(?:es)?|barspoons?|bsp|tsp|tbsp)[ \t]+\pL`)

// mayBePoured reports whether words that are passed over pour the white of an egg, or measure anything.
func mayBePoured(words string) bool { return white.MatchString(words) || unit.MatchString(words) }

// keepsAmounts reports whether every measured number of a text stands in what was made of it.
func keepsAmounts(text, made string) bool {
	for _, m := range measured.FindAllStringSubmatch(text, -1) {
		if !strings.Contains(made, m[1]) {
			return false
		}
	}
	return true
}

// resolve is Resolve for one way to parse a draft.
func resolve(d draft.Draft, f naming.Finder) (Reading, error) {
	m, err := meaning.Of(d, f)
	return Reading{Meaning: m}, err
}
