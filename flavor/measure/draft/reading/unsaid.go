package reading

import (
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
	named := r.book.mentioned(words)
	if len(named) == 0 {
		f := r.book.find(words, place{unit: flavor.Splash})
		switch {
		case f.profile == nil && f.fault.Kind == flavor.ErrUnknown:
			return draft.KindStep
		case f.profile == nil:
			return draft.KindUnread
		}
		named = append(named, f.profile)
	}
	if slices.ContainsFunc(named, func(p *flavor.Profile) bool { return !p.Class.Solid() }) {
		return draft.KindUnread
	}
	if !served && strings.HasSuffix(pressed(words), " juice") && !r.complete() {
		return draft.KindUnread
	}
	return draft.KindGarnish
}

// complete reports whether a draft is sour or long without the fruit that stands at its
// end without an amount, so that this is laid on the drink.
func (r *resolver) complete() bool {
	return slices.ContainsFunc(r.tasks, func(t *task) bool {
		p := t.hit.profile
		return p != nil && (p.Class == flavor.ClassSourJuice || p.Carbonated)
	})
}

// mentioned returns the ingredients that words name, the longest names first.
func (b *book) mentioned(text string) []*flavor.Profile {
	words := strings.Fields(strings.NewReplacer("+", " ", "&", " ", ",", " ", "(", " ", ")", " ", ".", " ", ";", " ").Replace(text))
	var out []*flavor.Profile
	for i := 0; i < len(words); {
		n := min(longestName, len(words)-i)
		for ; n > 0; n-- {
			name := strings.Join(words[i:i+n], " ")
			key := flavor.NormaliseName(name)
			p, _, ok := b.named(name)
			if full, changed := lengthen(key); !ok && changed {
				p, _, ok = b.named(full)
			}
			if !ok && stems[key] != "" {
				p, _, ok = b.named(stems[key])
			}
			if !ok && tongues[key] != "" {
				p, _, ok = b.named(tongues[key])
			}
			if !ok && len(key) >= shortestHeadless && !qualities[key] && shorthand[key] != "" {
				p, _, ok = b.named(shorthand[key])
			}
			if ok {
				out = append(out, p)
				break
			}
		}
		i += max(n, 1)
	}
	return out
}
