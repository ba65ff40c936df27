package draft

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
)

// Bitters are written among what garnishes a drink, "garnish: cherry, 2 dashes aromatic
// bitters". They are poured all the same, on top.

// bittersWord ends the name of what is dashed on a drink.
const bittersWord = "bitters"

// dosed takes what is dashed or dropped onto a drink out of its garnish as pours, and is
// false if there is none.
func (r *reader) dosed(n int, at entry.Span) bool {
	toks := token.Lex(nil, r.text, at.Start, at.End)
	parts, pours := [][]token.Token(nil), 0
	from := 0
	for i := 0; i <= len(toks); i++ {
		if i < len(toks) && !(toks[i].Is(",") || toks[i].Is("+") || toks[i].Is(";") || toks[i].Is("&") || toks[i].Text == "and" || toks[i].Text == "with") {
			continue
		}
		if part := entry.TrimMarks(toks[from:i]); len(part) > 0 {
			parts = append(parts, part)
			if _, ok := r.dose(part); ok {
				pours++
			}
		}
		from = i + 1
	}
	if pours == 0 {
		return false
	}
	for _, part := range parts {
		span := entry.Span{Start: part[0].Start, End: part[len(part)-1].End}
		if p, ok := r.dose(part); ok {
			p.AddNote("“" + token.OneLine(r.text[span.Start:span.End]) + "” is named as garnish, and poured on top")
			r.takePour(n, span, &p, false)
			continue
		}
		r.garnishText(n, span)
	}
	return true
}

// dose is the pour of a part of a garnish: by the dash or the drop, or bitters of which
// nobody says how much.
func (r *reader) dose(part []token.Token) (entry.Written, bool) {
	p := entry.Read(r.text, part)
	if p.Fault != nil {
		return p, false
	}
	if p.Shape == entry.ShapePour && (p.Unit == flavor.Dash || p.Unit == flavor.Drop) && p.Name != "" {
		p.After = true
		return p, true
	}
	name := part
	if p.Shape == entry.ShapeImplied && p.Unit.After() {
		name = p.NameTokens()
	}
	if len(name) < 2 || name[len(name)-1].Text != bittersWord {
		return p, false
	}
	q := entry.Written{Of: part, Shape: entry.ShapeImplied}
	q.TakeNameOnly(r.text, name)
	q.Amount, q.Unit, q.After = 1, flavor.Top, true
	return q, true
}
