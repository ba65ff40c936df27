package reading

import (
	"counterpour/flavor/measure/draft/naming"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
)

// unsaid settles the lines without an amount. One that stands behind the last pour is
// kept as a garnish if all it names is solid, and as a step if it names no ingredient,
// which is said; any other lacks its amount.
func (r *resolver) unsaid(out *Reading) {
	d := r.draft
	if len(d.Doubts) == 0 {
		return
	}
	out.Draft.Entries = slices.Clone(d.Entries)
	for i := range d.Doubts {
		doubt := &d.Doubts[i]
		e := &out.Draft.Entries[doubt.Entry]
		written := strings.Trim(token.OneLine(d.String()[e.Span.Start:e.Span.End]), " .,;-")
		at := measure.LineLocation(e.Line) + ": “" + written + "” "
		kind := draft.KindUnread
		if doubt.After == len(d.Lines) && len(d.Lines) > 0 && !d.PoursOnly() && !numbered(written) {
			kind = r.unpouredKind(written, doubt.Laid)
		}
		switch kind {
		case draft.KindStep:
			r.steps = append(r.steps, written)
			r.note(at + "names nothing that is poured, and is kept as a step")
		case draft.KindGarnish:
			d.Garnish = strings.TrimPrefix(d.Garnish+", "+written, ", ")
			r.note(at + "is kept as garnish; write it with an amount to have it poured")
		default:
			r.found = append(r.found, doubt.Fault)
			continue
		}
		e.Kind = kind
	}
}

// numbered reports whether words hold a number.
func numbered(words string) bool {
	toks := token.Lex(nil, words, 0, len(words))
	for i := range toks {
		if toks[i].Kind != token.Word && toks[i].Kind != token.Mark && !(i+1 < len(toks) && serving.DegreeWords[toks[i+1].Text]) { // "dilution by 30 turns"
			return true
		}
	}
	return false
}

// unpouredKind is what words behind the last pour are: a step where they name no
// ingredient, a garnish where all they name is solid, and unread else. A fruit that may
// be meant for its juice is a garnish only behind the service.
func (r *resolver) unpouredKind(words string, served bool) draft.Kind {
	named := r.book.Mentioned(words)
	if len(named) == 0 {
		f := r.book.Find(words, naming.Place{Unit: flavor.Splash})
		switch {
		case f.Profile == nil && f.Fault.Kind == flavor.ErrUnknown:
			return draft.KindStep
		case f.Profile == nil:
			return draft.KindUnread
		}
		named = append(named, f.Profile)
	}
	if slices.ContainsFunc(named, func(p *flavor.Profile) bool { return !p.Class.Solid() }) {
		return draft.KindUnread
	}
	if !served && strings.HasSuffix(naming.Pressed(words), " juice") && !r.complete() {
		return draft.KindUnread
	}
	return draft.KindGarnish
}

// complete reports whether a draft is sour or long without the fruit that stands at its
// end without an amount, so that this is laid on the drink.
func (r *resolver) complete() bool {
	return slices.ContainsFunc(r.tasks, func(t *task) bool {
		p := t.hit.Profile
		return p != nil && (p.Class == flavor.ClassSourJuice || p.Carbonated)
	})
}
