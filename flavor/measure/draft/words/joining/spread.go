package joining

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
)

// Spread gives every name of a list its amount: "1 oz each a, b and c", or "a, b
// and c, 1 oz each".
func (j *Joiner) Spread(in []Piece) []Piece {
	each := slices.IndexFunc(in, func(p Piece) bool { return p.Pour.Each && p.Pour.Amount > 0 })
	if each < 0 {
		return in
	}
	from, to := shares(in, each)
	amount := in[each].Pour
	if to+1 < len(in) && amount.Unit == flavor.PartUnit && inBrackets(&in[to+1]) { // "equal parts a, b, c (22 ml)"
		to++
		takeMeasure(&amount, &in[to].Pour)
		in[to].Toks = in[to].Pour.NameTokens()
	}
	var names [][]token.Token
	for i := from; i <= to; i++ {
		toks := in[i].Toks
		if i == each {
			toks = amount.NameTokens()
		}
		names = append(names, entry.PartNames(toks)...)
	}
	if last := len(names) - 1; last > 0 && amount.Unit == flavor.PartUnit { // "equal red bitter & sweet vermouth 25 ml"
		if q := entry.Read(j.Text, names[last]); q.Shape == entry.ShapePour && q.Fault == nil && q.Unit.Jigger() && q.AmountAt.Start > q.NameAt.Start {
			takeMeasure(&amount, &q)
			names[last] = q.NameTokens()
		}
	}
	if len(names) == 1 { // "1 each egg white"; an amount alone, "equal parts", is of no one thing
		in[each].Pour.Each = in[each].Pour.Shape == entry.ShapeAmount
		return in
	}
	out := append([]Piece(nil), in[:from]...)
	for _, n := range names {
		n = entry.TrimMarks(n)
		if len(n) == 0 {
			continue
		}
		out = append(out, Piece{Toks: n, Sep: ";", Pour: Repeated(j.Text, amount, n)})
	}
	return append(out, in[to+1:]...)
}

// shares are the first and the last entry that an amount of each is the amount of: those listed
// behind it where it leads them, or else those before it.
func shares(in []Piece, each int) (from, to int) {
	from, to = each, each
	p := &in[each].Pour
	if p.NameAt.Empty() || p.AmountAt.Start < p.NameAt.Start {
		for to+1 < len(in) && in[to+1].Listed() {
			to++
		}
		if each > 1 && in[each-1].Listed() && in[each-2].Listed() && p.NameAt.Empty() && !slices.ContainsFunc(in[each+1:to+1], func(q Piece) bool { return !q.LaidOn() }) {
			to = each // "mezcal, vermouth, bitter, 25 ml each, orange"
		}
	}
	if to > each || !p.NameAt.Empty() && !p.AmountAt.Empty() && p.AmountAt.Start <= p.NameAt.Start {
		return from, to
	}
	for from > 0 && in[from-1].Listed() && !(from == 1 && (in[1].Sep == ":" || in[1].Sep == "-") && !(p.NameAt.Empty() && each == 1 && len(entry.PartNames(in[0].Toks)) > 1)) { // behind a title, but not "bourbon and lemon: 1.5 oz each"
		from--
	}
	return from, to
}

// takeMeasure takes over the amount of another pour, with where it is written.
func takeMeasure(p, of *entry.Written) {
	p.Amount, p.Unit, p.AmountAt, p.UnitAt = of.Amount, of.Unit, of.AmountAt, of.UnitAt
}

// inBrackets reports whether a pour states its amount behind its name in brackets.
func inBrackets(p *Piece) bool {
	toks := entry.TrimMarks(p.Toks)
	return p.Pour.Shape == entry.ShapePour && p.Pour.Fault == nil && p.Pour.Unit.Jigger() && p.Pour.AmountAt.Start > p.Pour.NameAt.Start && len(toks) > 0 && toks[len(toks)-1].Is(")")
}

// Repeated is a pour of a name with an amount that is written elsewhere.
func Repeated(text string, amount entry.Written, name []token.Token) entry.Written {
	q := amount
	q.Of, q.Each, q.Shared, q.Shape, q.Whole = name, false, true, entry.ShapePour, ""
	q.TakeNameOnly(text, name)
	q.CheckUnit(name)
	return q
}
