package meaning

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/laid"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
)

// leavesInHand is how many leaves of a herb go into a drink that counts none; common practice.
const leavesInHand = 6

// herbs takes fresh herbs without an amount, which stand amid the pours or before the words of
// making, as mixed in: "basil - shake". Behind them they are laid on the drink.
func (r *resolver) herbs() {
	d := r.draft
	if len(d.Doubts) == 0 || len(d.Lines) < 2 || d.PoursOnly() {
		return
	}
	d.Lines, d.Entries = slices.Clone(d.Lines), slices.Clone(d.Entries)
	var left []draft.Doubt
	taken := 0
	for _, doubt := range d.Doubts {
		e := &d.Entries[doubt.Entry]
		at, p := r.herbIn(e.Span)
		doubt.After += taken
		much := p != nil && at.Start > e.Span.Start && !strings.EqualFold(d.String()[e.Span.Start:at.Start], "fresh ") // "lots of mint"
		if p == nil || doubt.Top || doubt.Mixed || !much && (doubt.Laid || !r.mixedIn(doubt.Entry)) {
			left = append(left, doubt)
			continue
		}
		l := entry.Line{Number: e.Line, Span: e.Span, NameAt: at, Name: token.OneLine(d.String()[at.Start:at.End]), Asked: token.OneLine(d.String()[e.Span.Start:e.Span.End]), Amount: 1, Unit: flavor.Sprig, Guessed: true}
		if _, sprig := p.Yield(flavor.Sprig); !sprig {
			l.Amount, l.Unit = leavesInHand, flavor.Leaf
		}
		l.Note = "“" + l.Asked + "” has no amount; " + measure.FormatAmount(l.Amount, l.Unit) + " is taken as mixed in"
		d.Lines = slices.Insert(d.Lines, doubt.After, l)
		taken++
		e.Kind = draft.KindPour
	}
	d.Doubts = left
}

// mixedIn reports whether an entry stands before a pour or words of mixing, or on a line of its own
// amid those of the drink, and not beside what is laid on it: "mint, lime wheel".
func (r *resolver) mixedIn(i int) bool {
	d := r.draft
	lays := func(k int) bool { return k >= 0 && k < len(d.Entries) && d.Entries[k].Kind == draft.KindGarnish }
	if lays(i-1) || lays(i+1) || i+1 == len(d.Entries) {
		return false
	}
	line := d.Entries[i].Line
	alone := d.Entries[i+1].Line != line && (i == 0 || d.Entries[i-1].Line != line)
	return alone || slices.ContainsFunc(d.Entries[i+1:], func(o draft.Entry) bool {
		if o.Kind != draft.KindServing {
			return o.Kind == draft.KindPour
		}
		s := serving.Read(token.Lex(nil, d.String(), o.Span.Start, o.Span.End))
		return s.Muddle || serving.Mixes(s.Method) >= serving.Mixes(flavor.Swizzle)
	})
}

// herbIn is the fresh herb that a stretch names, and nothing else, with where its name stands;
// nil if it names none.
func (r *resolver) herbIn(s entry.Span) (entry.Span, *flavor.Profile) {
	toks := entry.TrimMarks(token.Lex(nil, r.draft.String(), s.Start, s.End))
	if toks = laid.Loosely(toks); len(toks) == 0 {
		return entry.Span{}, nil
	}
	at := entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}
	f := r.resolver.Find(r.draft.String()[at.Start:at.End], naming.Place{Unit: flavor.Sprig, Amount: 1})
	if !f.Firm() || f.Profile.Class != flavor.ClassFreshHerb {
		return entry.Span{}, nil
	}
	return at, f.Profile
}
