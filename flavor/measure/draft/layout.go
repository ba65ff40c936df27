package draft

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/parting"
	"counterpour/flavor/measure/draft/token"
)

// What a line lacks may stand in the line beside it: an amount above its name, a head
// that states the amount of a list, a sign that repeats the amount above.

// linesOf returns the lines of a text. Where amounts and names stand on lines of their
// own by turns, two lines are one.
func linesOf(text string) []numbered {
	var out []numbered
	for from, n := 0, 1; from <= len(text); n++ {
		to, next := lineEnd(text, from)
		for _, at := range byLabels(text, entry.Span{Start: from, End: to}) {
			out = append(out, numbered{number: n, at: at})
		}
		from = next
	}
	if !slices.ContainsFunc(out, func(l numbered) bool {
		return shortNumber(strings.TrimSpace(text[l.at.Start:l.at.End])) && shapeAlone(text, l.at) == entry.ShapeAmount
	}) {
		return out
	}
	return byTurns(text, out)
}

// byLabels parts a line that begins with a label where another label follows it, each
// with its colon: "Glass: rocks  Ice: big  Garnish: peel". A labelled name is kept to the
// letter.
func byLabels(text string, at entry.Span) []entry.Span {
	if at.End-at.Start > maxStep || strings.Count(text[at.Start:at.End], ":") < 2 {
		return []entry.Span{at}
	}
	toks := parting.Unlist(token.Lex(nil, text, at.Start, at.End))
	if l, rest := parting.Header(text, toks); l == entry.NoLabel || toks[0].Text == "name" || l == entry.LabelRemark || l == entry.LabelStep || len(rest) == 0 {
		return []entry.Span{at}
	}
	var out []entry.Span
	colon := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is(":") })
	for i := colon + 3; i < len(toks); i++ {
		if !toks[i].Is(":") || toks[i-1].Kind != token.Word || !laysOut(entry.Labels[toks[i-1].Text]) {
			continue
		}
		out = append(out, entry.Span{Start: at.Start, End: toks[i-1].Start})
		at.Start = toks[i-1].Start
	}
	return append(out, at)
}

// laysOut reports whether a label says how the drink is made or served.
func laysOut(l entry.Label) bool {
	return l == entry.LabelServing || l == entry.LabelGlass || l == entry.LabelGarnish || l == entry.LabelRim
}

// mostAlone is the most bytes of a line that holds an amount and nothing else.
const mostAlone = 16

// shortNumber reports whether a line begins with a figure and is too short to name much.
func shortNumber(line string) bool {
	if line == "" || len(line) > mostAlone {
		return false
	}
	first, _ := utf8.DecodeRuneInString(line)
	return unicode.IsNumber(first) || first == '.'
}

// numbered is a line with its number in the text, from 1.
type numbered struct {
	number int
	at     entry.Span
}

// unlabelled is lines without the labels of a list.
func unlabelled(text string, lines []numbered) []numbered {
	spans := make([]entry.Span, len(lines))
	for i := range lines {
		spans[i] = lines[i].at
	}
	parting.WithoutLabels(text, spans)
	for i := range lines {
		lines[i].at = spans[i]
	}
	return lines
}

// byTurns joins lines that hold an amount alone with the name on the next line, or on
// the line before where a name comes first.
func byTurns(text string, lines []numbered) []numbered {
	out := make([]numbered, 0, len(lines))
	for i := 0; i < len(lines); {
		run := 1
		first := shapeAlone(text, lines[i].at)
		if first != entry.ShapeNothing {
			for last := first; i+run < len(lines); run++ {
				next := shapeAlone(text, lines[i+run].at)
				if next == entry.ShapeNothing || next == last {
					break
				}
				last = next
			}
		}
		if run > 1 && first == entry.ShapeName && run%2 == 1 { // the first line names the drink
			out = append(out, lines[i])
			i, run = i+1, run-1
		}
		if run == 1 || first == entry.ShapeName && run < 4 { // "Halyard Sour" above "2 oz" is no pair
			out = append(out, lines[i])
			i++
			continue
		}
		for ; run > 1; run -= 2 {
			out = append(out, numbered{number: lines[i].number, at: entry.Span{Start: lines[i].at.Start, End: lines[i+1].at.End}})
			i += 2
		}
		if run == 1 {
			out = append(out, lines[i])
			i++
		}
	}
	return out
}

// shapeAlone is ShapeAmount for a line that holds an amount and nothing else, ShapeName
// for one that holds words that may be a name, and ShapeNothing for any other.
func shapeAlone(text string, at entry.Span) entry.Shape {
	if at.End-at.Start > entry.MostName {
		return entry.ShapeNothing
	}
	toks := parting.Unlist(token.Lex(nil, text, at.Start, at.End))
	if len(toks) == 0 {
		return entry.ShapeNothing
	}
	if l, _ := parting.Header(text, toks); l != entry.NoLabel {
		return entry.ShapeNothing
	}
	figures := false
	for i := range toks {
		figures = figures || toks[i].Kind == token.Numeral
		if toks[i].Is(",") || toks[i].Is("/") || toks[i].Is(";") || toks[i].Is(":") || toks[i].Is("#") {
			return entry.ShapeNothing
		}
	}
	p := entry.Read(text, toks)
	switch {
	case p.Fault != nil || p.Each:
	case p.Shape == entry.ShapeAmount && figures:
		return entry.ShapeAmount
	case !figures && listed(&piece{toks: toks, pour: p}):
		return entry.ShapeName
	}
	return entry.ShapeNothing
}

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
		in := r.gather(r.pieces(toks))
		if len(in) == 0 || len(in) == 1 || in[1].pour.Shape != entry.ShapeServing {
			in = r.spread(in)
		}
		if len(in) == 0 || in[0].pour.Shape != entry.ShapeAmount || !in[0].pour.Each || in[0].pour.Fault != nil {
			return false
		}
		if len(in) > 1 { // "30 ml each, stir, rocks"
			head := in[0].toks
			at := entry.Span{Start: head[0].Start, End: head[len(head)-1].End}
			if in[1].pour.Shape != entry.ShapeServing || !r.amountBelow(n, at, in[0].pour) {
				return false
			}
			r.entries(n, entry.Span{Start: in[1].toks[0].Start, End: span.End}, toks[len(head):], false)
			return true
		}
		p = in[0].pour
	}
	if r.amountBelow(n, span, p) {
		return true
	}
	r.heading = &p
	r.entry(KindRemark, n, span)
	return true
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
		q := r.repeated(p, parting.Unlist(token.Lex(nil, r.text, d.Entries[at].Span.Start, d.Entries[at].Span.End)))
		line := r.lineOf(d.Entries[at].Line, &q)
		d.PerhapsPour = &line
	}
	for _, name := range names {
		e := d.Entries[name.Entry]
		q := r.repeated(p, name.toks)
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
		q := r.repeated(p, name)
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
		q := r.repeated(amounts[i], entry.TrimMarks(name))
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
func (r *reader) underHead(in []piece) []piece {
	if r.heading == nil {
		return in
	}
	for i := range in {
		if !listed(&in[i]) || in[i].pour.Shape == entry.ShapeGarnish {
			if in[i].pour.Shape != entry.ShapePour {
				r.heading = nil
			}
			return in
		}
	}
	for i := range in {
		in[i].pour = r.repeated(*r.heading, in[i].toks)
		in[i].sep = ";"
	}
	return in
}

// repeated is a pour of a name with an amount that is written elsewhere.
func (r *reader) repeated(amount entry.Written, name []token.Token) entry.Written {
	q := amount
	q.Of, q.Each, q.Shared, q.Shape, q.Whole = name, false, true, entry.ShapePour, ""
	q.TakeNameOnly(r.text, name)
	q.CheckUnit(name)
	return q
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
	p := r.repeated(*r.amount, name)
	p.Shared, p.Guessed = false, true
	p.AmountAt, p.UnitAt = entry.Span{}, entry.Span{}
	p.Note = ""
	p.AddNote("“" + token.OneLine(r.text[span.Start:span.End]) + "” is read as " + measure.FormatAmount(p.Amount, p.Unit))
	p.Of = toks
	r.takePour(n, span, &p, false)
	return true
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

// saltAlone reports whether an entry is bare salt, which dresses the rim: who pours it
// states how much.
func saltAlone(p *piece) bool {
	toks := entry.TrimMarks(p.toks)
	n := len(toks)
	return p.pour.Shape == entry.ShapeName && (n == 1 || n == 2 && parting.DressesRim(toks[0].Text)) && salts[toks[n-1].Text]
}

// salts are words for salt, which dresses the rim where no amount is written.
var salts = token.Words(`salt sal salz sel sale`)

// numberedName reports whether what stands before a colon is a name that ends in a
// number, "service 1: 45 vodka", and no pour.
func numberedName(in []piece) bool {
	p := &in[0].pour
	return in[1].sep == ":" && p.Shape == entry.ShapePour && p.Whole != "" && p.Unit == "" && entry.StartsAmount(in[1].toks)
}
