package draft

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/token"
)

// ratioList takes "3:2:1 white rum, lime, simple" as a pour for each number, and
// returns what follows.
func (r *reader) ratioList(n int, toks []token.Token) []token.Token {
	at := 0
	names, amounts, units, rest := parting.RatioFirst(toks)
	if amounts == nil {
		at, names, amounts, units, rest = parting.RatioLast(toks)
	}
	if names == nil {
		return toks
	}
	for i, name := range names {
		p := entry.Written{Of: name, Shape: entry.ShapePour, Stated: true}
		p.Amount, p.Unit, p.AmountAt, p.Shared = amounts[i], units[i], entry.Span{Start: toks[at].Start, End: toks[at].End}, true
		p.Figures = true
		if amounts[i] == 0 {
			p.Amount, p.Unit, p.After, p.Shape, p.Stated, p.Figures = 1, flavor.Top, true, entry.ShapeImplied, false, false
		}
		p.TakeNameOnly(r.text, name)
		r.takePour(n, entry.Span{Start: name[0].Start, End: name[len(name)-1].End}, &p, false)
	}
	return entry.TrimMarks(rest)
}
