package reading

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/everyday"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/speech"
)

// withoutEveryday reads a draft that no rule reads without what it says in everyday words beside its
// pours, which is said of each clause. It returns what was read before if that leaves anything open.
func withoutEveryday(d draft.Draft, before Reading, f naming.Finder) (Reading, error) {
	if d.PoursOnly() || before.several {
		return before, nil
	}
	b := naming.NewBook(f)
	text := d.String()
	clauses := everyday.Clauses(text, before.Spec.Pours, b)
	if b.Err() != nil {
		return before, b.Err()
	}
	for _, passed := range waysToPass(text, clauses, before.Faults) {
		masked, spans := withoutClauses(text, passed)
		out, err := anyWay(d.Anew(masked), f)
		if err != nil {
			return before, err
		}
		if takesBack(text, masked) || numberedAnew(text, &out.Draft, passed) {
			continue
		}
		if passesTitle(text, passed) && out.Spec.Name != "" { // the next line would be the name, and may be a pour
			continue
		}
		if len(out.Faults) > 0 || out.several || len(overlooked.Said(masked, &out.Spec)) > 0 || overlooked.Unheld(text, out.Spec.Pours) || overlooked.Removes(text, out.Spec.Pours) {
			continue
		}
		out.Spec.Notes = append(passedOver(text, spans), out.Spec.Notes...)
		if out.Draft.String() == masked {
			out.Draft = out.Draft.Restored(text, spans)
		}
		return out, nil
	}
	return before, nil
}

// takesBack reports whether a text takes a pour back by words that are set aside.
func takesBack(text, masked string) bool {
	words, _ := speech.Unsettled(text)
	left, _ := speech.Unsettled(masked)
	return words != left
}

// numberedAnew reports whether part of the first line is set aside, and what is left of it is a name with a
// number that may be an amount: "Umeboshi 20 / 3 March".
func numberedAnew(text string, d *draft.Draft, passed []everyday.Clause) bool {
	first, _, _ := strings.Cut(text, "\n")
	if passed[0].At.Start >= len(first) || passed[0].Alone {
		return false
	}
	return everyday.Numbered(d.Name)
}

// waysToPass lists which clauses may be passed over together: at first those of lines that are at
// fault, then all of them. The first line of a text may be the name of the drink, unless it is a
// sentence.
func waysToPass(text string, clauses []everyday.Clause, faults flavor.Faults) [][]everyday.Clause {
	if len(clauses) == 0 {
		return nil
	}
	var out [][]everyday.Clause
	faulty := slices.DeleteFunc(slices.Clone(clauses), func(c everyday.Clause) bool {
		return !slices.ContainsFunc(faults, func(f *flavor.Fault) bool { return f.Place().Line == c.Line })
	})
	if len(faulty) > 0 && len(faulty) < len(clauses) {
		out = append(out, faulty)
	}
	if passesTitle(text, clauses) && len(clauses) > 1 {
		out = append(out, clauses[1:])
	}
	return append(out, clauses)
}

// passesTitle reports whether the first of some clauses begins the text and is no sentence: it may be
// the name of the drink.
func passesTitle(text string, clauses []everyday.Clause) bool {
	c := &clauses[0]
	return strings.TrimSpace(text[:c.At.Start]) == "" && !(c.Alone && c.Spoken)
}

// withoutClauses returns a text with blanks in place of clauses, of the brackets around them, and of the
// signs before those that end a line; and what was blanked.
func withoutClauses(text string, clauses []everyday.Clause) (string, []entry.Span) {
	out := []byte(text)
	var spans []entry.Span
	for _, c := range slices.Backward(clauses) {
		at := c.At
		before, behind := strings.TrimRight(string(out[:at.Start]), " \t"), strings.TrimLeft(string(out[at.End:]), " \t")
		switch {
		case strings.HasSuffix(before, "(") && strings.HasPrefix(behind, ")"), strings.HasSuffix(before, "[") && strings.HasPrefix(behind, "]"):
			at = entry.Span{Start: len(before) - 1, End: len(text) - len(behind) + 1}
		case behind == "" || behind[0] == '\n' || behind[0] == '\r':
			at.Start = len(strings.TrimRight(before, " \t,;-–—+•*/|"))
		}
		for i := at.Start; i < at.End; i++ {
			out[i] = ' '
		}
		spans = append(spans, at)
	}
	return string(out), spans
}
