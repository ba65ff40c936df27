package draft

import (
	"slices"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/joining"
	"counterpour/flavor/measure/draft/laid"
	"counterpour/flavor/measure/draft/pouring"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/vocabulary"
)

// laid keeps what is laid on a drink, and says so: it might have been meant to be
// poured.
func (r *reader) laid(n int, toks []token.Token) {
	at := entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}
	r.garnish(n, at)
	r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[at.Start:at.End])+"” is kept as garnish; write it on a line of its own, with an amount, to have it poured")
}

// takeGarnish keeps a garnish with the words that are not only "garnish with".
func (r *reader) takeGarnish(n int, at entry.Span, p *joining.Piece) {
	toks := p.Toks
	if q, ok := r.handful(toks); ok {
		r.takePour(n, at, &q, false)
		return
	}
	if p.Pour.ByNoun && laid.HerbAlone(entry.TrimMarks(toks)) && r.served == 0 && r.said.Service == "" { // "mint", above "shake"
		r.unnamed(n, at, token.OneLine(r.text[at.Start:at.End]), toks)
		r.d.Doubts[len(r.d.Doubts)-1].Herb = true
		return
	}
	if first := toks[0].Text; (first == "handful" || first == "bunch") && r.served == 0 {
		written := token.OneLine(r.text[at.Start:at.End])
		r.unread(n, at, measure.Invalid("amount", written, "%q states no number; write one, such as \"8 mint leaves\", or \"garnish: %s\" if it is laid on the drink", written, written))
		return
	}
	for len(toks) > 0 && (toks[0].Kind == token.Mark || toks[0].Text == "garnish" || toks[0].Text == "garnished" || toks[0].Text == "garn" || toks[0].Text == "gar" || toks[0].Text == "with" || toks[0].Text == "the" || toks[0].Text == "of" && len(toks) > 1) {
		toks = toks[1:]
	}
	for len(toks) > 0 && !(len(toks) == 1 && toks[0].Text == "no") { // "no garnish"
		last := &toks[len(toks)-1]
		k, t := pouring.TailAt(toks)
		switch {
		case k > 0 && t.Beside && k < len(toks):
			at := entry.Span{Start: toks[0].Start, End: last.End}
			r.garnish(n, at)
			r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[at.Start:at.End])+"” is kept as garnish, and not counted")
			return
		case k > 0 && t.Garnish:
			toks = toks[:len(toks)-k]
		case last.Kind == token.Mark && !last.Is(")"):
			toks = toks[:len(toks)-1]
		default:
			r.garnish(n, entry.Span{Start: toks[0].Start, End: last.End})
			if p.Pour.Unit.Counted() && p.Pour.UnitAt.Start == at.Start || serving.OtherMeasures[toks[0].Text] {
				r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[at.Start:at.End])+"” is kept as garnish; write 1 before it to have it counted")
			} else if p.Pour.ByNoun && (len(toks) == 1 || spiceEnds.Has(last.Text)) && r.said.Method == "" && r.said.Service == "" { // "mint", above "shake": perhaps it goes in
				r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[at.Start:at.End])+"” is kept as garnish; write it with an amount to have it poured")
			}
			return
		}
	}
	r.entry(KindRemark, n, at)
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
