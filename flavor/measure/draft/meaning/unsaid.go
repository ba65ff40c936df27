package meaning

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/rewriting/everyday"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/declared"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// unsaid settles the lines without an amount. One that stands behind the last pour is
// kept as a garnish if all it names is solid, and as a step if it names no ingredient,
// which is said; any other lacks its amount.
func (r *resolver) unsaid(out *Meaning) {
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
		if r.turnedBehind(written, doubt.After, e.Line) {
			e.Kind = draft.KindRemark
			continue
		}
		if doubt.Top && r.topsAbove(at) {
			e.Kind = draft.KindServing
			continue
		}
		kind := draft.KindUnread
		switch {
		case declared.NoAlcohol(written): // "zero proof"
			kind = draft.KindRemark
		case doubt.Herb:
			kind = draft.KindGarnish
		case doubt.Top || doubt.Mixed:
		case len(d.Lines) == 0 || d.PoursOnly() || numbered(written):
		case doubt.After == len(d.Lines):
			kind = r.unpouredKind(written, doubt.Laid)
		case r.talk(written): // amid the pours
			kind = draft.KindRemark
		}
		switch kind {
		case draft.KindStep:
			r.steps = append(r.steps, written)
			r.note(at + "names nothing that is poured, and is kept as a step")
		case draft.KindRemark:
			r.steps = append(r.steps, written)
			r.note(at + "states no amount and is taken as a remark; it is kept as a step")
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

// filledUp takes lines without an amount that name something sparkling, and nothing else, as
// what fills the glass: "lager in a pint". A line that heads the pours is asked for.
func (r *resolver) filledUp() {
	d := r.draft
	poured := slices.ContainsFunc(d.Lines, func(l entry.Line) bool { return !l.AmountAt.Empty() })
	if len(d.Doubts) == 0 || !poured {
		return
	}
	d.Lines, d.Entries = slices.Clone(d.Lines), slices.Clone(d.Entries)
	var left []draft.Doubt
	filled := 0
	for _, doubt := range d.Doubts {
		e := &d.Entries[doubt.Entry]
		p := entry.Read(d.String(), token.Lex(nil, d.String(), e.Span.Start, e.Span.End))
		if doubt.Top || doubt.Mixed || doubt.After == 0 || p.Shape != entry.ShapeName || !r.sparkles(p.Name) {
			doubt.After += filled
			left = append(left, doubt)
			continue
		}
		l := p.Line
		l.Number, l.Span, l.Asked = e.Line, e.Span, token.OneLine(d.String()[e.Span.Start:e.Span.End])
		l.Amount, l.Unit, l.After, l.NoAmount = 1, flavor.Top, true, true
		d.Lines = slices.Insert(d.Lines, doubt.After+filled, l)
		filled++
		e.Kind = draft.KindPour
		d.Glass = cmp.Or(d.Glass, p.Beside.Glass)
		d.Service = cmp.Or(d.Service, p.Beside.Service)
	}
	d.Doubts = left
}

// sparkles reports whether a name is that of something sparkling, and of one thing.
func (r *resolver) sparkles(name string) bool {
	f := r.resolver.Find(name, naming.Place{Unit: flavor.Top, Topped: true})
	p, _, named := r.resolver.Named(name) // not "fizz", which may be the glass
	return named && f.Firm() && f.Fault == nil && f.Profile == p && p.Carbonated
}

// topsAbove takes an instruction to top the drink, without a word of what with, as one that
// speaks of the last pour above that sparkles, and is false if none does.
func (r *resolver) topsAbove(at string) bool {
	for i := len(r.tasks) - 1; i >= 0; i-- {
		t := r.tasks[i]
		if p := t.Hit.Profile; p != nil && p.Carbonated {
			t.Line.After = true
			r.note(at + "refers to the " + p.Name + " above")
			return true
		}
	}
	return false
}

// talk reports whether words are a sentence that names nothing that is poured, or deny what
// they name: who lists pours writes neither.
func (r *resolver) talk(words string) bool {
	kept, denied := aside.Denials(words)
	if len(r.resolver.Mentioned(kept)) > 0 || len(strings.Fields(words)) < leastTalk {
		return false
	}
	return aside.Spoken(strings.Fields(kept)) || len(r.resolver.Mentioned(denied)) > 0
}

// leastTalk is the fewest words of a sentence.
const leastTalk = 3

// besideWords say that something is served beside the drink, and not in it.
var besideWords = []string{"next to", "alongside", "beside", "on the side", "as a chaser", "comes with"}

// numbered reports whether words hold a number that is no price.
func numbered(words string) bool {
	toks := token.Lex(nil, words, 0, len(words))
	for i := range toks {
		if toks[i].Kind == token.Numeral && i > 0 && strings.ContainsAny(toks[i-1].Text, "£$€¥") {
			continue
		}
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
	kept, denied := aside.Denials(words)
	named, not := r.resolver.Mentioned(kept), r.resolver.Mentioned(denied)
	if r.told(words) || len(named) == 0 && len(not) > 0 {
		return draft.KindRemark
	}
	if f := r.resolver.Find(words, naming.Place{Unit: flavor.Ounce, Amount: 1}); f.Firm() && f.Profile.ABV.Value > flavor.NoAlcoholABV && !r.poured(f.Profile) {
		return draft.KindUnread // "white menthe" is no leaf
	}
	if len(named) == 0 {
		p, kind := r.perhapsNamed(words)
		if p == nil {
			return kind
		}
		named = append(named, p)
	}
	told, sentence := true, aside.Spoken(strings.Fields(words))
	talked := sentence && served && len(strings.Fields(words)) >= leastTalk && !entry.TellsToPour(token.Lex(nil, words, 0, len(words)))
	for _, p := range named { // does it speak of what is poured, or of what is not to be?
		spokenOf := r.poured(p) || slices.Contains(not, p) || talked || sentence && r.poursKind(p)
		if !spokenOf && !p.Class.Solid() && p.Class != flavor.ClassSaline {
			return draft.KindUnread
		}
		told = told && spokenOf
	}
	switch {
	case told:
		return draft.KindRemark
	case topsUp(words): // "salt gfsoda top"
		return draft.KindUnread
	case !served && strings.HasSuffix(jargon.Pressed(words), " juice") && !r.complete():
		return draft.KindUnread
	}
	return draft.KindGarnish
}

// perhapsNamed is the ingredient that words mean though they do not name it, or, where it is nil,
// what the words are: a step if nothing is like them, unread if they may be poured.
func (r *resolver) perhapsNamed(words string) (*flavor.Profile, draft.Kind) {
	f := r.resolver.Find(words, naming.Place{Unit: flavor.Splash})
	switch {
	case f.Profile != nil:
		return f.Profile, ""
	case f.Fault.Kind != flavor.ErrUnknown || topsUp(words) || overlooked.Bottle(words, r.poursNow(), r.resolver) || everyday.MayAdd(words): // "moon juice top", "ew shake hrd"
		return nil, draft.KindUnread
	}
	return nil, draft.KindStep
}

// topsUp reports whether words tell to fill the glass with something.
func topsUp(words string) bool {
	return slices.ContainsFunc(token.Lex(nil, words, 0, len(words)), func(t token.Token) bool { return t.Kind == token.Word && pouring.Verbs[t.Text] != "" })
}

// told reports whether words speak of what is served beside the drink, or stand behind a
// heading that names no pour: "common mistake: too much fernet".
func (r *resolver) told(words string) bool {
	lower := strings.ToLower(words)
	if slices.ContainsFunc(besideWords, func(w string) bool { return strings.Contains(lower, w) }) {
		return true
	}
	heading, _, ok := strings.Cut(words, ":")
	return ok && heading != "" && len(r.resolver.Mentioned(heading)) == 0
}

// poured reports whether a draft pours an ingredient.
func (r *resolver) poured(p *flavor.Profile) bool {
	return slices.ContainsFunc(r.tasks, func(t *counting.Task) bool { return t.Hit.Profile == p })
}

// poursNow are the ingredients that are poured so far.
func (r *resolver) poursNow() []flavor.Pour {
	var out []flavor.Pour
	for _, t := range r.tasks {
		if t.Hit.Profile != nil {
			out = append(out, flavor.Pour{Profile: t.Hit.Profile})
		}
	}
	return out
}

// poursKind reports whether a draft pours something of an ingredient's class.
func (r *resolver) poursKind(p *flavor.Profile) bool {
	return slices.ContainsFunc(r.tasks, func(t *counting.Task) bool { return t.Hit.Profile != nil && t.Hit.Profile.Class == p.Class })
}

// complete reports whether a draft is sour or long without the fruit that stands at its
// end without an amount, so that this is laid on the drink.
func (r *resolver) complete() bool {
	return slices.ContainsFunc(r.tasks, func(t *counting.Task) bool {
		p := t.Hit.Profile
		return p != nil && (p.Class == flavor.ClassSourJuice || p.Carbonated)
	})
}
