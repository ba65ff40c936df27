package everyday

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
)

// Which of the clauses that pour nothing may be passed over together, and a text without them.

// Merged returns the clauses of two lists in order, those of the first where they meet.
func Merged(one, other []Clause) []Clause {
	out := slices.Clone(one)
	for _, c := range other {
		if !slices.ContainsFunc(one, func(o Clause) bool { return c.At.Start < o.At.End && o.At.Start < c.At.End }) {
			out = append(out, c)
		}
	}
	slices.SortFunc(out, func(a, b Clause) int { return cmp.Compare(a.At.Start, b.At.Start) })
	return out
}

// WaysToPass lists which clauses may be passed over together: at first those of lines that are at
// fault, then all of them. The first line of a text may be the name of the drink, unless it is a
// sentence.
func WaysToPass(text string, clauses []Clause, faults flavor.DataFaults) [][]Clause {
	if len(clauses) == 0 {
		return nil
	}
	var out [][]Clause
	faulty := slices.DeleteFunc(slices.Clone(clauses), func(c Clause) bool {
		return !slices.ContainsFunc(faults, func(f *flavor.DataFault) bool { return f.Place().Line == c.Line })
	})
	if k := titled(text, clauses); k > 0 {
		out = append(out, slices.Delete(slices.Clone(clauses), k, k+1))
	}
	if len(faulty) > 0 && len(faulty) < len(clauses) {
		out = append(out, faulty)
	}
	if PassesTitle(text, clauses) && len(clauses) > 1 {
		out = append(out, clauses[1:])
	}
	return append(out, clauses)
}

// titled returns which clause is the title of a draft that begins with references, "3/11 tasting notes";
// 0 if none is.
func titled(text string, clauses []Clause) int {
	if !BeginsText(text, clauses) || !clauses[0].Refers && !(clauses[0].Alone && clauses[0].Spoken) {
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

// PassesTitle reports whether the first of some clauses begins the text and is no sentence: it may be
// the name of the drink.
func PassesTitle(text string, clauses []Clause) bool {
	c := &clauses[0]
	return BeginsText(text, clauses) && !(c.Alone && c.Spoken) && !c.Refers
}

// BeginsText reports whether the first of some clauses does.
func BeginsText(text string, clauses []Clause) bool {
	return strings.TrimSpace(text[:clauses[0].At.Start]) == ""
}

// Without returns a text with blanks in place of clauses, of the brackets around them, and of the
// signs before those that end a line; and what was blanked.
func Without(text string, clauses []Clause) (string, []entry.Span) {
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
