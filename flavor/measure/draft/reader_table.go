package draft

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/sheet"
	"counterpour/flavor/measure/draft/words/token"
)

// headsTable keeps the head of a table, and is false if the line is none.
func (r *reader) headsTable(n int, line entry.Span) bool {
	t, ok := sheet.Head(r.text, line)
	if !ok {
		return false
	}
	r.table, r.d.Headed = t, t.Unit
	if t.Sized != "" {
		r.said.Notes = append(r.said.Notes, lineNote(n, "the amounts of “"+t.Sized+"” are read, and those of other sizes skipped"))
	}
	if len(t.Skipped) > 0 {
		r.said.Notes = append(r.said.Notes, lineNote(n, "what stands under “"+strings.Join(t.Skipped, "”, “")+"” is skipped"))
	}
	r.entry(KindRemark, n, line)
	return true
}

// costed reads the rows of a sheet of costs that has no head.
func (r *reader) costed() {
	if t, ok := sheet.Costed(r.d.text); ok {
		r.table = t
		r.said.Notes = append(r.said.Notes, "the last column is skipped: it is what each pour costs")
	}
}

// row reads a line as a row of the table that is above it, and is false if it is none.
func (r *reader) row(n int, line entry.Span) bool {
	if r.table == nil {
		return r.quotedRow(n, line)
	}
	if sheet.Ruled(r.text[line.Start:line.End]) {
		r.entry(KindRemark, n, line)
		return true
	}
	if len(r.d.Lines) > 0 && r.table.Sums(r.text, line) {
		r.skips(n, r.lex(line))
		r.entry(KindRemark, n, line)
		return true
	}
	row, ok := r.table.Row(r.text, line)
	if !ok {
		return false
	}
	if len(row.Pours) == 1 && r.labelledRow(n, line, &row.Pours[0]) {
		return true
	}
	if !row.Drink.Empty() && !r.drinkOfRow(n, row.Drink) {
		return true
	}
	for i := range row.Pours {
		if p := r.pourOfRow(n, &row.Pours[i]); len(p.Toks) > 0 {
			r.take(n, line, &p, false)
		}
	}
	if !row.All.Empty() {
		r.entries(n, row.All, r.lex(row.All), false)
	}
	for _, c := range row.Said {
		if toks := r.lex(c.At); len(toks) > 0 {
			r.says(n, c.Label, toks)
		}
	}
	return true
}

// quotedRow reads a row that has no head above it, and a cell in quotes.
func (r *reader) quotedRow(n int, line entry.Span) bool {
	if strings.IndexByte(r.text[line.Start:line.End], '"') < 0 {
		return false
	}
	c, ok := sheet.Quoted(r.text, line)
	if !ok {
		return false
	}
	p := r.pourOfRow(n, &c)
	r.take(n, line, &p, false)
	return true
}

// says takes what a cell says of making and serving.
func (r *reader) says(n int, l label.Kind, toks []token.Token) {
	at := entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}
	if !r.labelled(n, at, l, toks) {
		r.entries(n, at, toks, l == label.Serving)
	}
}

// labelledRow reads a row whose name is the label of what is said of making, and is false if
// it is none: "Glass | coupe".
func (r *reader) labelledRow(n int, line entry.Span, p *sheet.Pour) bool {
	l := label.Words[strings.ToLower(strings.TrimRight(r.text[p.Name.Start:p.Name.End], ": "))]
	toks := r.lex(entry.Span{Start: p.Amount.Start, End: line.End})
	if l == label.None || l == label.Pours || len(toks) == 0 || entry.StartsAmount(toks) || p.Amount.Start < p.Name.Start {
		return false
	}
	r.says(n, l, toks)
	return true
}

// drinkOfRow takes the drink that a row names, and is false if the rows above are of
// another one.
func (r *reader) drinkOfRow(n int, at entry.Span) bool {
	written := token.OneLine(r.text[at.Start:at.End])
	switch {
	case r.tabled == written:
	case r.tabled != "":
		r.unread(n, at, measure.Invalid("", written, "the rows above are of %q and this one is of %q; write one drink at a time", r.tabled, written))
		return false
	case r.d.Name == "":
		r.setName(n, at)
	default:
		r.skips(n, r.lex(at))
	}
	r.tabled = written
	return true
}

// lex returns the tokens of a stretch of the text.
func (r *reader) lex(s entry.Span) []token.Token {
	return entry.TrimMarks(parting.Unlist(token.Lex(nil, r.text, s.Start, s.End)))
}

// noAmount are the words that a cell has where nothing is poured.
var noAmount = token.Words(`- – — 0 0.0 0.00 n/a na none nil x /`)

// pourOfRow is the pour of a row; it is empty where the row says that nothing is poured.
func (r *reader) pourOfRow(n int, c *sheet.Pour) joining.Piece {
	name, amount := r.lex(c.Name), r.lex(c.Amount)
	if written := strings.ToLower(r.text[c.Amount.Start:c.Amount.End]); noAmount[written] {
		r.skips(n, name)
		return joining.Piece{}
	}
	all := slices.Concat(name, amount)
	slices.SortStableFunc(all, func(a, b token.Token) int { return a.Start - b.Start })
	toks := all
	if entry.StartsAmount(amount) && len(name) > 0 { // the amount first, so that a number in the name is none
		if amount = slices.Concat(amount, r.lex(c.UnitAt)); entry.AmountAt(amount) == len(amount) {
			toks = slices.Concat(amount, name)
		}
	}
	p := joining.Piece{Toks: all, Sep: ";", Pour: entry.Read(r.text, toks)}
	p.Pour.Of = all
	r.underUnits(c, &p.Pour)
	return p
}

// underUnits gives a bare number the unit of its column, and holds it against the amount in
// another column.
func (r *reader) underUnits(c *sheet.Pour, p *entry.Written) {
	if p.Shape != entry.ShapePour || p.Fault != nil {
		return
	}
	if p.Unit == "" {
		p.Unit = c.Unit
	}
	also := entry.Read(r.text, r.lex(c.Also))
	if also.Shape != entry.ShapeAmount || also.Fault != nil {
		return
	}
	if also.Unit == "" {
		also.Unit = c.AlsoUnit
	}
	if p.Unit == "" && r.d.Headed != "" && also.Unit != flavor.Dash {
		p.Unit = r.d.Headed
	}
	p.Agree(r.text, &also)
}

// unitsStated reads what says the unit of numbers that have none, keeps it for the draft
// or puts it behind its number, "gin 4 (cl)", and returns the rest of the line.
func (r *reader) unitsStated(toks []token.Token) []token.Token {
	first := 0
	for first < len(toks) {
		if _, n := sheet.UnitStatedAt(toks, first); n > 0 {
			break
		}
		first++
	}
	if first == len(toks) {
		return toks // as in nearly all lines
	}
	out := toks[:first:first]
	for i := first; i < len(toks); {
		u, n := sheet.UnitStatedAt(toks, i)
		switch {
		case n == 0:
			out = append(out, toks[i])
			i++
			continue
		case n == sheet.TokensOfBracket && i > 0 && toks[i-1].Kind == token.Numeral:
			out = append(out, toks[i+1])
		default:
			r.d.Headed = u
		}
		i += n
	}
	return entry.TrimMarks(out)
}

// withoutBatch drops what a line says of the batch, in a text with a column for one.
func (r *reader) withoutBatch(n int, toks []token.Token) []token.Token {
	if !r.batch {
		return toks
	}
	out, at := sheet.WithoutBatch(toks)
	if !at.Empty() {
		r.said.Notes = append(r.said.Notes, lineNote(n, "“"+token.OneLine(r.text[at.Start:at.End])+"” is skipped: it is for a batch"))
	}
	return out
}
