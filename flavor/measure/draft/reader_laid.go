package draft

import (
	"slices"
	"strings"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
)

// laidOn reports whether an entry that follows the service on its line is a fruit
// laid on the drink: "stir, up, lemon".
func laidOn(p *piece) bool {
	toks := entry.TrimMarks(p.toks)
	return p.pour.Shape == entry.ShapeName && len(toks) > 0 && len(toks) <= 2 && entry.EndsLaid(toks)
}

// studded reports whether words without an amount name a fruit with spices stuck into it,
// which is laid on a drink: "clove studded lemon".
func studded(toks []token.Token) bool {
	i := slices.IndexFunc(toks, func(t token.Token) bool { return t.Text == "studded" || strings.HasSuffix(t.Text, "-studded") })
	return i >= 0 && i+2 == len(toks) && entry.EndsLaid(toks)
}

// dressed reports whether an entry that follows the service on its line is what the
// rim is dressed with: "rocks, salt".
func dressed(before, p *piece) bool {
	toks := entry.TrimMarks(p.toks)
	if p.pour.Shape != entry.ShapeName || len(toks) != 1 || toks[0].Text != "salt" && toks[0].Text != "sugar" || before.pour.Shape != entry.ShapeServing {
		return false
	}
	s := serving.Read(before.toks)
	return s.Service != "" || s.Glass != ""
}

// laid keeps what is laid on a drink, and says so: it might have been meant to be
// poured.
func (r *reader) laid(n int, toks []token.Token) {
	at := entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}
	r.garnish(n, at)
	r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[at.Start:at.End])+"” is kept as garnish; write it on a line of its own, with an amount, to have it poured")
}
