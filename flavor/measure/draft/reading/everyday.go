package reading

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/around"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/everyday"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/speech"
	"counterpour/flavor/measure/draft/token"
)

// withoutEveryday reads a draft that no rule reads without what it says in everyday words beside its
// pours, which is said of each clause. It returns what was read before if that leaves anything open.
func withoutEveryday(d draft.Draft, before Reading, f naming.Finder) (Reading, error) {
	if d.PoursOnly() || before.several {
		return before, nil
	}
	b := naming.NewResolver(f)
	text := d.String()
	clauses := everyday.Clauses(text, before.Spec.Pours, b)
	if b.Err() != nil {
		return before, b.Err()
	}
	listed := func(c everyday.Clause) bool { return c.Listed(text) }
	clauses = slices.DeleteFunc(clauses, listed)
	ways := waysToPass(text, clauses, before.Faults)
	if other := slices.DeleteFunc(around.Of(text, b), listed); len(other) > 0 {
		ways = append(ways, other, merged(other, clauses))
	}
	for _, passed := range ways {
		masked, spans := withoutClauses(text, passed)
		out, err := anyWay(d.Anew(masked), f)
		if err != nil {
			return before, err
		}
		if takesBack(text, masked) || deniedBy(text, passed, &out.Spec) || numberedAnew(text, &out.Draft, passed) {
			continue
		}
		if out.Spec.Name != "" && beginsText(text, passed) && (passesTitle(text, passed) || mayPour(out.Spec.Name, b)) { // the next line would be the name, and may be a pour
			continue
		}
		if len(out.Faults) > 0 || out.several || len(overlooked.Said(masked, &out.Spec)) > 0 || overlooked.Unheld(text, out.Spec.Pours) || overlooked.Removes(text, out.Spec.Pours) {
			continue
		}
		out.Spec.Notes = append(passedOver(text, spans), out.Spec.Notes...)
		out.lay(text, passed)
		if out.Draft.String() == masked {
			out.Draft = out.Draft.Restored(text, spans)
		}
		return out, nil
	}
	return before, nil
}

// lay keeps the clauses that name what is laid on the drink as its garnish.
func (r *Reading) lay(text string, passed []everyday.Clause) {
	for _, c := range passed {
		if !c.Laid {
			continue
		}
		said := token.OneLine(text[c.At.Start:c.At.End])
		for _, at := range [...]*string{&r.Draft.Garnish, &r.Spec.Garnish} {
			*at = strings.TrimPrefix(*at+", "+said, ", ")
		}
		r.Spec.Notes = append(r.Spec.Notes, measure.LineLocation(c.Line)+": “"+said+"” is kept as garnish; write it with an amount to have it poured")
	}
}

// deniedBy reports whether a clause that is passed over says of the drink what is not so: "0.0", above one
// with alcohol.
func deniedBy(text string, passed []everyday.Clause, s *flavor.Spec) bool {
	return slices.ContainsFunc(passed, func(c everyday.Clause) bool { return len(overlooked.Said("("+text[c.At.Start:c.At.End]+")", s)) > 0 })
}

// merged returns the clauses of two lists in order, those of the first where they meet.
func merged(one, other []everyday.Clause) []everyday.Clause {
	out := slices.Clone(one)
	for _, c := range other {
		if !slices.ContainsFunc(one, func(o everyday.Clause) bool { return c.At.Start < o.At.End && o.At.Start < c.At.End }) {
			out = append(out, c)
		}
	}
	slices.SortFunc(out, func(a, b everyday.Clause) int { return cmp.Compare(a.At.Start, b.At.Start) })
	return out
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
func waysToPass(text string, clauses []everyday.Clause, faults flavor.DataFaults) [][]everyday.Clause {
	if len(clauses) == 0 {
		return nil
	}
	var out [][]everyday.Clause
	faulty := slices.DeleteFunc(slices.Clone(clauses), func(c everyday.Clause) bool {
		return !slices.ContainsFunc(faults, func(f *flavor.DataFault) bool { return f.Place().Line == c.Line })
	})
	if k := titled(text, clauses); k > 0 {
		out = append(out, slices.Delete(slices.Clone(clauses), k, k+1))
	}
	if len(faulty) > 0 && len(faulty) < len(clauses) {
		out = append(out, faulty)
	}
	if passesTitle(text, clauses) && len(clauses) > 1 {
		out = append(out, clauses[1:])
	}
	return append(out, clauses)
}

// titled returns which clause is the title of a draft that begins with references, "3/11 tasting notes";
// 0 if none is.
func titled(text string, clauses []everyday.Clause) int {
	if !beginsText(text, clauses) || !clauses[0].Refers && !(clauses[0].Alone && clauses[0].Spoken) {
		return 0
	}
	k := 1
	for k < len(clauses) && clauses[k].Refers {
		k++
	}
	if k == len(clauses) || !clauses[k].Alone || clauses[k].Spoken || strings.TrimSpace(text[clauses[k-1].At.End:clauses[k].At.Start]) != "" {
		return 0
	}
	return k
}

// passesTitle reports whether the first of some clauses begins the text and is no sentence: it may be
// the name of the drink.
func passesTitle(text string, clauses []everyday.Clause) bool {
	c := &clauses[0]
	return beginsText(text, clauses) && !(c.Alone && c.Spoken) && !c.Refers
}

// beginsText reports whether the first of some clauses does.
func beginsText(text string, clauses []everyday.Clause) bool {
	return strings.TrimSpace(text[:clauses[0].At.Start]) == ""
}

// mayPour reports whether a name names something poured, or is written as no name of a drink is.
func mayPour(name string, b *naming.Resolver) bool {
	first, _ := utf8.DecodeRuneInString(name)
	_, _, known := b.Named(name)
	return known || unicode.IsLower(first) || unicode.IsDigit(first)
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
		if !c.Laid {
			spans = append(spans, at)
		}
	}
	return string(out), spans
}
