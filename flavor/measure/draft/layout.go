package draft

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/token"
)

// What a line lacks may stand in the line beside it: an amount above its name, a head
// that states the amount of a list, a sign that repeats the amount above.

// headWords stand in a line that heads a list.
var headWords = token.Words(`each ea all equal`)

// headsList keeps the amount of a line that heads a list, "3/4 oz each:", and is false
// if it does not.
func (r *reader) headsList(n int, span entry.Span, toks []token.Token) bool {
	if !slices.ContainsFunc(toks, func(t token.Token) bool { return headWords[t.Text] }) {
		return false
	}
	p := entry.Read(r.text, toks)
	if !(p.Shape == entry.ShapeAmount && p.Each && p.Fault == nil) {
		in := r.join.Gathered(toks)
		if len(in) == 0 || len(in) == 1 || in[1].Pour.Shape != entry.ShapeServing {
			in = r.join.Spread(in)
		}
		if len(in) == 0 || in[0].Pour.Shape != entry.ShapeAmount || !in[0].Pour.Each || in[0].Pour.Fault != nil {
			return false
		}
		if len(in) > 1 { // "30 ml each, stir, rocks"
			head := in[0].Toks
			at := entry.Span{Start: head[0].Start, End: head[len(head)-1].End}
			if in[1].Pour.Shape != entry.ShapeServing || !r.amountBelow(n, at, in[0].Pour) {
				return false
			}
			r.entries(n, entry.Span{Start: in[1].Toks[0].Start, End: span.End}, toks[len(head):], false)
			return true
		}
		p = in[0].Pour
	}
	if r.amountBelow(n, span, p) {
		return true
	}
	r.heading = &p
	if p.Unit != flavor.PartUnit && !p.AmountAt.Empty() {
		r.idle = &idleHead{line: n, entry: len(r.d.Entries), written: token.OneLine(r.text[span.Start:span.End])}
	}
	r.entry(KindRemark, n, span)
	return true
}

// idleHead is an amount of each of a list, of which nothing is listed yet.
type idleHead struct {
	line, entry int
	written     string
}

// unheaded refuses an amount of each that nothing took: it may be that of the pours above.
func (r *reader) unheaded() {
	if h := r.idle; h != nil {
		r.d.Entries[h.entry].Kind = KindUnread
		r.fail(h.line, measure.Invalid("amount", h.written, "%q is an amount of each, and nothing without an amount stands beside it; write it before the name of each pour", h.written))
	}
}

// amountBelow gives the names on the lines right above the amount that ends their list,
// "gin", "lime", "20 ml each"; it is false if there are none.
func (r *reader) amountBelow(n int, span entry.Span, p entry.Written) bool {
	d := &r.d
	first := len(d.Doubts)
	for first > 0 && d.Doubts[first-1].Entry == len(d.Entries)-(len(d.Doubts)-first)-1 {
		first--
	}
	if first == len(d.Doubts) {
		return r.eachOfName(n, span, p)
	}
	names := slices.Clone(d.Doubts[first:])
	d.Doubts = d.Doubts[:first]
	if at := names[0].Entry - 1; at >= 0 && d.Entries[at].Kind == KindName && !d.Labelled && len(d.Lines) == 0 {
		q := joining.Repeated(r.text, p, parting.Unlist(token.Lex(nil, r.text, d.Entries[at].Span.Start, d.Entries[at].Span.End)))
		line := r.lineOf(d.Entries[at].Line, &q)
		d.PerhapsPour = &line
	}
	for _, name := range names {
		e := d.Entries[name.Entry]
		q := joining.Repeated(r.text, p, name.toks)
		d.Entries[name.Entry].Kind = KindPour
		line := r.lineOf(e.Line, &q)
		d.Lines = append(d.Lines, line)
	}
	r.entry(KindRemark, n, span)
	return true
}

// eachOfName gives the names that the first line lists the amount of the line below it:
// "bourbon, amaro, lemon" above "all 22.5 ml".
func (r *reader) eachOfName(n int, span entry.Span, p entry.Written) bool {
	d := &r.d
	if len(d.Entries) == 0 || len(d.Lines) > 0 || d.Labelled || d.Entries[len(d.Entries)-1].Kind != KindName {
		return false
	}
	e := d.Entries[len(d.Entries)-1]
	names := entry.PartNames(parting.Unlist(token.Lex(nil, r.text, e.Span.Start, e.Span.End)))
	if len(names) < 2 {
		return false
	}
	d.Entries = d.Entries[:len(d.Entries)-1]
	d.Name, d.NameAt, d.PerhapsPour = "", entry.Span{}, nil
	for _, name := range names {
		if name = entry.TrimMarks(name); len(name) == 0 {
			continue
		}
		q := joining.Repeated(r.text, p, name)
		r.takePour(e.Line, entry.Span{Start: name[0].Start, End: name[len(name)-1].End}, &q, false)
	}
	r.entry(KindRemark, n, span)
	return true
}

// amountsBelow gives the names of the line above the amounts of a line that holds nothing
// else, as many as there are names: "vodka, lime, ginger" above "1.5 / .75 / .5 oz".
func (r *reader) amountsBelow(n int, span entry.Span, toks []token.Token) bool {
	d := &r.d
	last := len(d.Entries) - 1
	if last < 0 || len(d.Lines) > 0 || toks[0].Kind != token.Numeral || d.Labelled || d.Entries[last].Kind != KindName && d.Entries[last].Kind != KindUnread {
		return false
	}
	var amounts []entry.Written
	unit := flavor.Unit("")
	for _, part := range amountParts(toks) {
		p := entry.Read(r.text, part)
		if p.Shape != entry.ShapeAmount || p.Fault != nil || p.Each {
			return false
		}
		if p.Unit != "" {
			unit = p.Unit
		}
		amounts = append(amounts, p)
	}
	from, names := r.namesAbove(len(amounts))
	if names == nil || slices.ContainsFunc(names, func(name []token.Token) bool { return len(entry.TrimMarks(name)) == 0 }) {
		return false
	}
	line := d.Entries[from].Line
	if d.Entries[from].Kind == KindName {
		d.Name, d.NameAt, d.PerhapsPour = "", entry.Span{}, nil
	}
	d.Doubts = slices.DeleteFunc(d.Doubts, func(o Doubt) bool { return o.Entry >= from })
	d.Entries = d.Entries[:from]
	for i, name := range names {
		q := joining.Repeated(r.text, amounts[i], entry.TrimMarks(name))
		if q.Unit == "" {
			q.Unit, q.UnitAt = unit, q.AmountAt
		}
		q.Shared = true
		r.takePour(line, entry.Span{Start: name[0].Start, End: name[len(name)-1].End}, &q, false)
	}
	r.entry(KindRemark, n, span)
	return true
}

// amountParts parts amounts at colons too, and drops the brackets of their unit: "2 : 1 :
// 3/4 (oz)".
func amountParts(toks []token.Token) [][]token.Token {
	out := make([]token.Token, 0, len(toks))
	for _, t := range toks {
		switch {
		case t.Is("(") || t.Is(")"):
		case t.Is(":") || t.Is("-") && !t.Glued:
			t.Text = "/"
			fallthrough
		default:
			out = append(out, t)
		}
	}
	return entry.PartNames(out)
}

// namesAbove returns so many names that stand without amounts right above: on one line,
// or each on its own, and the entry that they begin with; none if there are not so many.
func (r *reader) namesAbove(want int) (from int, names [][]token.Token) {
	d := &r.d
	for from = len(d.Entries) - 1; from >= 0 && len(names) < want; from-- {
		e := d.Entries[from]
		if e.Kind != KindName && e.Kind != KindUnread {
			break
		}
		parts := entry.PartNames(parting.Unlist(token.Lex(nil, r.text, e.Span.Start, e.Span.End)))
		names = append(parts, names...)
		if len(parts) == want && len(names) == want || e.Kind == KindName {
			from--
			break
		}
	}
	if len(names) != want || want < 2 {
		return 0, nil
	}
	return from + 1, names
}

// underHead gives the names of a line the amount that heads their list. Anything else
// ends the list.
func (r *reader) underHead(in []joining.Piece) []joining.Piece {
	if r.heading == nil {
		return in
	}
	for i := range in {
		if !in[i].Listed() || in[i].Pour.Shape == entry.ShapeGarnish {
			if in[i].Pour.Shape != entry.ShapePour {
				r.heading = nil
			}
			return in
		}
	}
	r.idle = nil
	for i := range in {
		in[i].Pour = joining.Repeated(r.text, *r.heading, in[i].Toks)
		in[i].Sep = ";"
	}
	return in
}

var dittoWords = token.Words(`ditto do idem same dito`)

// ditto reads a name with a sign that repeats the amount above: `" lime`, "lime ditto".
func (r *reader) ditto(n int, span entry.Span, toks []token.Token) bool {
	if r.amount == nil || len(toks) < 2 {
		return false
	}
	name, ok := withoutDitto(toks)
	if !ok {
		return false
	}
	if p := entry.Read(r.text, name); p.Shape != entry.ShapeName && !(p.Shape == entry.ShapeGarnish && p.ByNoun) && !(p.Shape == entry.ShapeImplied && p.NoAmount) {
		return false
	}
	p := joining.Repeated(r.text, *r.amount, name)
	p.Shared, p.Guessed = false, true
	p.AmountAt, p.UnitAt = entry.Span{}, entry.Span{}
	p.Note = ""
	p.AddNote("“" + token.OneLine(r.text[span.Start:span.End]) + "” is read as " + measure.FormatAmount(p.Amount, p.Unit))
	p.Of = toks
	r.takePour(n, span, &p, false)
	return true
}

// dittoUnits writes the unit of the pour above for a word that repeats it behind a number: "bitters, 3 do."
func (r *reader) dittoUnits(n int, toks []token.Token) []token.Token {
	unit := ""
	if r.amount != nil {
		unit = cmp.Or(r.amount.Measure, string(r.amount.Unit))
	}
	for i := 1; i < len(toks); i++ {
		if entry.IsUnit(&toks[i-1]) {
			unit = toks[i-1].Text
		}
		if unit == "" {
			continue
		}
		ends := i+1 == len(toks) || toks[i+1].Kind == token.Mark || toks[i].Text == "ditto" || toks[i].Text == "dito" // "2 ditto vermouth"
		if _, k := entry.AmountOf(toks[i-1 : i]); k == 0 || toks[i].Kind != token.Word || !dittoWords[toks[i].Text] || !ends {
			continue
		}
		toks = slices.Clone(toks)
		r.said.Notes = append(r.said.Notes, lineNote(n, "“"+toks[i-1].Text+" "+toks[i].Text+"” repeats the unit above, "+unit))
		toks[i].Text = unit
		if i+1 < len(toks) && toks[i+1].Is(".") { // "3 do. bitters"
			toks = slices.Delete(toks, i+1, i+2)
		}
	}
	return toks
}

// withoutDitto returns a name without its sign of repetition at either end.
func withoutDitto(toks []token.Token) ([]token.Token, bool) {
	first, last := 0, len(toks)
	for first < last && dittoMark(&toks[first]) {
		first++
	}
	for last > first && dittoMark(&toks[last-1]) {
		last--
	}
	if first == last || first > 0 == (last < len(toks)) { // none, or quotes around it
		return nil, false
	}
	return toks[first:last], true
}

func dittoMark(t *token.Token) bool {
	return t.Kind == token.Mark && strings.ContainsAny(t.Text, "\"”“″〃'") || t.Kind == token.Word && dittoWords[t.Text]
}

// remarkFrom returns the tokens before an arrow that points back at them, which begins
// a remark: "1/4 fernet <- less?".
func (r *reader) remarkFrom(n int, toks []token.Token) []token.Token {
	for i := 1; i < len(toks); i++ {
		if toks[i].Is("←") || toks[i].Is("<") && i+1 < len(toks) && toks[i+1].Is("-") && toks[i+1].Glued {
			r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[toks[i].Start:toks[len(toks)-1].End])+"” is skipped")
			return toks[:i]
		}
	}
	return toks
}
