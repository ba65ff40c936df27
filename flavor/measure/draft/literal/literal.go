// Package literal tells drafts in which every word says what it is: pours with their amount,
// unit and name, the method and the service, and nothing else. Such a draft can be meant in one
// way only, so that nobody has to look for another.
package literal

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// served are the words that say nothing but a method or a service.
var served = vocabulary.Words(`shake dry stir build blend swizzle throw up rocks long crushed hot frozen neat`)

// Written reports whether the text of a draft is pours, each with its amount in figures, its unit
// and its name, then its method and its service, and not a word beside. Whether the names are
// those of ingredients only whoever looks them up can tell; see [Poured].
func Written(d *draft.Draft) bool {
	if d.Method == "" || d.Service == "" || d.Name != "" || d.PerhapsPour != nil || d.Headed != "" {
		return false
	}
	if len(d.Faults)+len(d.Notes)+len(d.Doubts)+len(d.Steps)+len(d.Garnish)+len(d.Glass)+len(d.Rim) > 0 {
		return false
	}
	text, line, end := d.String(), 0, 0
	for i := range d.Entries {
		e := &d.Entries[i]
		if !parts(text[end:e.Span.Start], i == 0, e.Kind) {
			return false
		}
		end = e.Span.End
		switch e.Kind {
		case draft.KindPour:
			if line == len(d.Lines) || d.Lines[line].Span != e.Span || !pour(text, &d.Lines[line]) {
				return false
			}
			line++
		case draft.KindServing:
			if !serves(text[e.Span.Start:e.Span.End]) {
				return false
			}
		default:
			return false
		}
	}
	return line == len(d.Lines) && strings.TrimSpace(text[end:]) == ""
}

// Poured reports whether what was written names the pours of a drink, each by a name that its
// ingredient has, and nothing of the drink was inferred or is to be told. A name with brackets
// tells more than what is poured.
func Poured(s *flavor.Spec, written []entry.Line, named func(string) (*flavor.Profile, flavor.MatchHow, bool)) bool {
	if len(s.Pours) != len(written) || len(s.Notes) > 0 || len(s.Steps) > 0 {
		return false
	}
	for i := range s.Pours {
		p, name := &s.Pours[i], written[i].Name
		if len(p.Match.Inferred) > 0 {
			return false
		}
		if name == p.Profile.Name {
			continue
		}
		if found, _, ok := named(name); !ok || found != p.Profile || strings.ContainsAny(name, "()[]{}") {
			return false
		}
	}
	return true
}

// parts reports whether what stands before an entry ends a line, and no more than one; a comma
// parts what says the method from what says the service.
func parts(between string, first bool, k draft.Kind) bool {
	between = strings.Trim(between, " \t")
	return first && between == "" || between == "\n" || between == "," && k == draft.KindServing
}

// pour reports whether a line is an amount, a unit and a name, one behind the other.
func pour(text string, l *entry.Line) bool {
	plain := entry.Line{
		Number: l.Number, Amount: l.Amount, Unit: l.Unit, Name: l.Name, Asked: l.Asked,
		Span: l.Span, AmountAt: l.AmountAt, UnitAt: l.UnitAt, NameAt: l.NameAt,
		Figures: true, Point: l.Point,
	}
	return *l == plain && !l.UnitAt.Empty() && l.Name == text[l.NameAt.Start:l.NameAt.End] &&
		l.AmountAt.Start == l.Span.Start && l.NameAt.End == l.Span.End && token.OneLine(text[l.Span.Start:l.Span.End]) == l.Asked &&
		follows(text, l.AmountAt, l.UnitAt) && follows(text, l.UnitAt, l.NameAt)
}

// follows reports whether only blanks stand between two spans.
func follows(text string, a, b entry.Span) bool {
	return a.End <= b.Start && strings.TrimSpace(text[a.End:b.Start]) == ""
}

// serves reports whether words say nothing but a method or a service.
func serves(words string) bool {
	for w := range strings.FieldsFuncSeq(words, func(r rune) bool { return r == ' ' || r == ',' }) {
		if !served.Has(w) {
			return false
		}
	}
	return true
}
