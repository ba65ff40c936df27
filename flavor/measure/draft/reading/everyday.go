package reading

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/rewriting/around"
	"counterpour/flavor/measure/draft/rewriting/everyday"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
)

// withoutEveryday reads a draft that no rule reads without what it says in everyday words beside its
// pours, which is said of each clause. It returns what was read before if that leaves anything open.
func withoutEveryday(d draft.Draft, before Reading, f naming.Finder) (Reading, error) {
	if d.PoursOnly() || before.Several {
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
	ways := everyday.WaysToPass(text, clauses, before.Faults)
	if other := slices.DeleteFunc(around.Of(text, b), listed); len(other) > 0 {
		ways = append(ways, other, everyday.Merged(other, clauses))
	}
	if lead, ok := around.LeadIn(text, b); ok {
		one := []everyday.Clause{lead}
		ways = append(ways, one, everyday.Merged(one, clauses))
	}
	for _, passed := range ways {
		masked, spans := everyday.Without(text, passed)
		out, err := anyWay(d.Anew(masked), f)
		if err != nil {
			return before, err
		}
		if takesBack(text, masked) || deniedBy(text, passed, &out.Spec) || numberedAnew(text, &out.Draft, passed) {
			continue
		}
		if out.Spec.Name != "" && everyday.BeginsText(text, passed) && (everyday.PassesTitle(text, passed) || mayPour(out.Spec.Name, b)) { // the next line would be the name, and may be a pour
			continue
		}
		if len(out.Faults) > 0 || out.Several || len(overlooked.Said(masked, &out.Spec)) > 0 || overlooked.Unheld(text, out.Spec.Pours) || overlooked.Removes(text, out.Spec.Pours) {
			continue
		}
		out.passOver(text, spans)
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

// mayPour reports whether a name names something poured, or is written as no name of a drink is.
func mayPour(name string, b *naming.Resolver) bool {
	first, _ := utf8.DecodeRuneInString(name)
	_, _, known := b.Named(name)
	return known || unicode.IsLower(first) || unicode.IsDigit(first)
}
