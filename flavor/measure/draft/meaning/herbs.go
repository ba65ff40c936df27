package meaning

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// leavesInHand is how many leaves of a herb go into a drink that counts none; common practice.
const leavesInHand = 6

// herbs takes fresh herbs without an amount, which stand amid the pours or before the words of
// making, as mixed in: "basil - shake". Behind them they are laid on the drink.
func (r *resolver) herbs() {
	d := r.draft
	if len(d.Lines) < 2 || d.PoursOnly() {
		return
	}
	d.Lines, d.Entries = slices.Clone(d.Lines), slices.Clone(d.Entries)
	defer r.workedIn()
	var left []draft.Doubt
	taken := 0
	for _, doubt := range d.Doubts {
		e := &d.Entries[doubt.Entry]
		at, p := r.herbIn(e.Span)
		if p == nil && doubt.Mixed {
			at, p = r.herbIn(r.behindVerb(e.Span))
		}
		doubt.After += taken
		much := doubt.Mixed && p != nil || p != nil && at.Start > e.Span.Start && !strings.EqualFold(d.String()[e.Span.Start:at.Start], "fresh ") // "lots of mint"
		if p == nil || doubt.Top || !much && (doubt.Laid || !r.mixedIn(doubt.Entry)) {
			left = append(left, doubt)
			continue
		}
		if r.poursHerb(p) { // told again: "muddle lemon + mint"
			if doubt.Entry > 0 && r.muddles(doubt.Entry-1) {
				e.Kind = draft.KindStep
				r.steps = append(r.steps, token.OneLine(d.String()[e.Span.Start:e.Span.End]))
				continue
			}
			left = append(left, doubt)
			continue
		}
		l := r.mixedHerb(e, at, p)
		d.Lines = slices.Insert(d.Lines, doubt.After, l)
		taken++
		e.Kind = draft.KindPour
	}
	d.Doubts = left
}

// mixedHerb is the pour of a herb that goes in without an amount.
func (r *resolver) mixedHerb(e *draft.Entry, at entry.Span, p *flavor.Profile) entry.Line {
	text := r.draft.String()
	l := entry.Line{Number: e.Line, Span: e.Span, NameAt: at, Name: token.OneLine(text[at.Start:at.End]), Asked: token.OneLine(text[e.Span.Start:e.Span.End]), Amount: 1, Unit: flavor.Sprig, Guessed: true}
	if _, sprig := p.Yield(flavor.Sprig); !sprig {
		l.Amount, l.Unit = leavesInHand, flavor.Leaf
	}
	l.Note = "“" + l.Asked + "” has no amount; " + measure.FormatAmount(l.Amount, l.Unit) + " is taken as mixed in"
	return l
}

// workedIn takes fresh herbs that a step tells to muddle, or to shake or stir with, and that no line pours, as
// mixed in: "muddle mint", "shake with mint".
func (r *resolver) workedIn() {
	d := r.draft
	for i := range d.Entries {
		e := &d.Entries[i]
		if e.Kind != draft.KindServing && e.Kind != draft.KindStep {
			continue
		}
		toks := token.Lex(nil, d.String(), e.Span.Start, e.Span.End)
		for k := worked(toks); k < len(toks); k++ {
			at, p := r.herbOf(toks[k:])
			if p == nil || r.poursHerb(p) {
				continue
			}
			after := 0
			for after < len(d.Lines) && d.Lines[after].Span.Start < e.Span.Start {
				after++
			}
			d.Lines = slices.Insert(d.Lines, after, r.mixedHerb(e, at, p))
		}
	}
}

// worked is where the words behind the verb of a step begin that tells to muddle, or to mix with
// something; their end if it does neither.
func worked(toks []token.Token) int {
	for k := range toks {
		said := serving.Read(toks[:k+1])
		if said.Muddle || toks[k].Text == "with" && said.Method != "" {
			return k + 1
		}
	}
	return len(toks)
}

// herbOf is the fresh herb whose name some words begin with, in up to two words; nil if they begin with none.
func (r *resolver) herbOf(toks []token.Token) (entry.Span, *flavor.Profile) {
	for n := min(2, len(toks)); n > 0; n-- {
		if toks[0].Kind != token.Word || toks[n-1].Kind != token.Word || serving.Fillers[toks[0].Text] {
			continue
		}
		if at, p := r.herbIn(entry.Span{Start: toks[0].Start, End: toks[n-1].End}); p != nil {
			return at, p
		}
	}
	return entry.Span{}, nil
}

// around are words that stand before the name of what is muddled or shaken with.
var around = vocabulary.Words(`muddle muddled press pressed bruise bruised clap smack mash crush ice and a some little few bit of the fresh then lightly gently with`)

// behindVerb is a stretch without the words before what is muddled.
func (r *resolver) behindVerb(s entry.Span) entry.Span {
	toks := token.Lex(nil, r.draft.String(), s.Start, s.End)
	for len(toks) > 1 && (around.Has(toks[0].Text) || toks[0].Kind != token.Word) {
		toks = toks[1:]
	}
	if len(toks) > 0 {
		s.Start = toks[0].Start
	}
	return s
}

// poursHerb reports whether a line with an amount pours a herb.
func (r *resolver) poursHerb(p *flavor.Profile) bool {
	return slices.ContainsFunc(r.draft.Lines, func(l entry.Line) bool {
		if l.AmountAt.Empty() && !l.Guessed {
			return false
		}
		return r.resolver.Find(l.Name, naming.PlaceOf(cmp.Or(l.Unit, flavor.Leaf), l.Amount, l.After)).Profile == p
	})
}

// muddles reports whether an entry tells to muddle.
func (r *resolver) muddles(i int) bool {
	at := r.draft.Entries[i].Span
	said := serving.Read(token.Lex(nil, r.draft.String(), at.Start, at.End))
	return said.Muddle
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
