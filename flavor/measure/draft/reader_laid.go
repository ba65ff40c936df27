package draft

import (
	"slices"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// laid keeps what is laid on a drink, and says so: it might have been meant to be
// poured.
func (r *reader) laid(n int, toks []token.Token) {
	at := entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}
	r.garnish(n, at)
	r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[at.Start:at.End])+"” is kept as garnish; write it on a line of its own, with an amount, to have it poured")
}

// servedAfter takes a sentence that says how the drink is made or served from behind what dresses it, and
// returns what stands before it: "glass: coupe. Shake".
func (r *reader) servedAfter(n int, toks []token.Token) []token.Token {
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is(".") })
	if at < 1 || at+1 >= len(toks) {
		return toks
	}
	rest := toks[at+1:]
	if s := serving.Read(rest); !s.States() || len(s.Unknown) > 0 || s.Conflict != nil {
		return toks
	}
	r.takeServing(n, entry.Span{Start: rest[0].Start, End: rest[len(rest)-1].End}, rest, false)
	return toks[:at]
}

// takeGarnish keeps a garnish with the words that are not only "garnish with".
func (r *reader) takeGarnish(n int, at entry.Span, p *joining.Piece) {
	if q, ok := r.handful(p.Toks); ok {
		r.takePour(n, at, &q, false)
		return
	}
	written := token.OneLine(r.text[at.Start:at.End])
	if p.Pour.ByNoun && laid.HerbAlone(entry.TrimMarks(p.Toks)) && r.served == 0 && r.said.Service == "" { // "mint", above "shake"
		r.unnamed(n, at, written, p.Toks)
		r.d.Doubts[len(r.d.Doubts)-1].Herb = true
		return
	}
	if first := p.Toks[0].Text; (first == "handful" || first == "bunch") && r.served == 0 {
		r.unread(n, at, measure.Invalid("amount", written, "%q states no number; write one, such as \"8 mint leaves\", or \"garnish: %s\" if it is laid on the drink", written, written))
		return
	}
	toks, beside := withoutGarnish(p.Toks)
	if len(toks) == 0 || len(toks) == 1 && toks[0].Text == "no" { // "no garnish"
		r.entry(KindRemark, n, at)
		return
	}
	if beside && measuredIn(toks) {
		r.unread(n, at, measure.Invalid("amount", written, "%q is a glass of its own; write it as a drink of its own, or a # before it", written))
		return
	}
	kept := entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}
	r.garnish(n, kept)
	switch {
	case beside:
		r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[kept.Start:kept.End])+"” is kept as garnish, and not counted")
	case entry.ThinCut(toks):
		r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+written+"” is kept as garnish; write it such as \"1 slice lime\" to have it counted")
	case p.Pour.Unit.Counted() && p.Pour.UnitAt.Start == at.Start || serving.OtherMeasures[toks[0].Text]:
		r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+written+"” is kept as garnish; write 1 before it to have it counted")
	case p.Pour.ByNoun && (len(toks) == 1 || spiceEnds.Has(toks[len(toks)-1].Text)) && r.said.Method == "" && r.said.Service == "": // "mint", above "shake": perhaps it goes in
		r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+written+"” is kept as garnish; write it with an amount to have it poured")
	}
}

// measuredIn reports whether tokens hold an amount in a unit of the bar: who measures what stands beside
// a drink pours a second one.
func measuredIn(toks []token.Token) bool {
	for i := range toks {
		if toks[i].Kind == token.Numeral || token.NumberWords[toks[i].Text] > 0 {
			if u, n := entry.UnitAt(toks[i+1:]); n > 0 && u.Jigger() {
				return true
			}
		}
	}
	return false
}

// garnishWords lead to what is laid on a drink.
var garnishWords = vocabulary.Words(`garnish garnished garn gar dress ornament adorn is are with the`)

// withoutGarnish returns what is laid on a drink without the words before and behind it that say so,
// and whether it is served beside the drink.
func withoutGarnish(toks []token.Token) (kept []token.Token, beside bool) {
	for len(toks) > 0 && (toks[0].Kind == token.Mark || garnishWords.Has(toks[0].Text) || toks[0].Text == "of" && len(toks) > 1) {
		toks = toks[1:]
	}
	for len(toks) > 0 && !(len(toks) == 1 && toks[0].Text == "no") {
		last := &toks[len(toks)-1]
		k, t := pouring.TailAt(toks)
		switch {
		case k > 0 && t.Beside && k < len(toks):
			return toks, true
		case k > 0 && t.Garnish:
			toks = toks[:len(toks)-k]
		case last.Kind == token.Mark && !last.Is(")"):
			toks = toks[:len(toks)-1]
		default:
			return toks, false
		}
	}
	return toks, false
}

// spiceEnds end the name of a spice that is as often heated in a drink as laid on it.
var spiceEnds = vocabulary.Words(`stick sticks pod pods`)

// inHandful is how many leaves or berries a handful is; common practice.
const inHandful = 10

// handful reads a handful of leaves or berries that stands before the service as a number of
// them: "handful of mint".
func (r *reader) handful(toks []token.Token) (entry.Written, bool) {
	name := toks
	for len(name) > 1 && (name[0].Text == "handful" || name[0].Text == "of" || token.BiasWords[name[0].Text]) {
		name = name[1:]
	}
	if len(name) == len(toks) || r.served > 0 || len(r.d.Lines) == 0 || !laid.Noun(name[len(name)-1].Text) || !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Text == "handful" }) {
		return entry.Written{}, false
	}
	q := entry.Written{Of: toks, Shape: entry.ShapeImplied}
	q.TakeNameOnly(r.text, name)
	q.Amount, q.Figures, q.Guessed = inHandful, true, true
	q.AddNote("a handful is taken as " + measure.FormatAmount(inHandful, ""))
	return q, true
}
