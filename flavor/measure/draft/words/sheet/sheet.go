package sheet

import (
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/token"
)

// Table is a table whose head was read.
type Table struct {
	Unit    flavor.Unit // that all its amounts are in, where its head says one for all
	Skipped []string    // heads of columns that say nothing of what is poured, or of another size
	Sized   string      // the head of the size that is read, where there are several

	sign    string
	even    bool // each of its rows has a cell in every column, and an amount
	columns []column
	pairs   []pair
}

// pair are the columns of one pour; below 0 for none.
type pair struct{ name, amount, also, unit int }

// Cell is a stretch of a row.
type Cell struct {
	At    entry.Span
	Label label.Kind // of what a cell says of making and serving
}

// Pour is a pour of a row: its name, and its amount, which is empty where none is written.
type Pour struct {
	Name, Amount, Also, UnitAt entry.Span
	Unit                       flavor.Unit // that the head says of the amount, where it differs from the others'
	AlsoUnit                   flavor.Unit // of the amount once more
}

// Row is a row of a table.
type Row struct {
	Drink entry.Span // the name of the drink, where a column holds it
	Pours []Pour
	All   entry.Span // all that is poured, where one column holds it
	Said  []Cell
}

// Head reads a line as the head of a table, and is false if it is none.
func Head(text string, line entry.Span) (*Table, bool) {
	sign := signOf(text[line.Start:line.End])
	if sign == "" || namesDrink(text[line.Start:line.End]) {
		return nil, false
	}
	t := &Table{sign: sign}
	known, strange := 0, 0
	if sign == gap && strings.HasPrefix(text[line.Start:line.End], gap) { // nothing stands over the names
		t.columns = append(t.columns, column{role: name})
		known++
	}
	for _, c := range cells(text, line, sign) {
		if len(t.columns) == 0 && sign == comma && columnOf(text[c.Start:c.End]).role == unknown {
			return nil, false // most lines with a comma are no head
		}
		col := columnOf(text[c.Start:c.End])
		switch {
		case col.role != unknown:
			known++
		case c.End > c.Start:
			strange++
		}
		t.columns = append(t.columns, col)
	}
	t.measured()
	if known < leastKnown || strange > known/2 || sign == gap && strange > 0 {
		return nil, false
	}
	if t.list(); t.has(listed) {
		return t, true
	}
	if !t.has(amount) {
		return nil, false
	}
	t.settle()
	if !t.has(name) || !t.measures() {
		return nil, false
	}
	t.pair()
	return t, true
}

// measured takes a column that is headed like one of names before it, and by a unit, as that of its amounts:
// "spirit,spirit_ml".
func (t *Table) measured() {
	heads := map[string]bool{}
	for i := range t.columns {
		c := &t.columns[i]
		if c.role != name {
			continue
		}
		words := wordsOfHead(c.head)
		if c.unit != "" && len(words) > 1 && heads[strings.Join(words[:len(words)-1], " ")] {
			c.role = amount
		}
		heads[strings.Join(words, " ")] = true
	}
}

// Ruled reports whether a line is the rule under the head of a table, and holds no word: "|---|:-:|".
func Ruled(line string) bool {
	return strings.Contains(line, stroke) && strings.Contains(line, "--") && strings.Trim(line, "|-:+= \t\r") == ""
}

// namesDrink reports whether a line gives the name of a drink by its label, whatever signs are in
// it: "name: No. 2, x 10".
func namesDrink(line string) bool {
	head, _, ok := strings.Cut(line, ":")
	return ok && strings.EqualFold(strings.TrimSpace(head), "name")
}

// list takes a table whose rows are drinks and that holds all their pours in one column, "Name;
// Spec;Glass", as one.
func (t *Table) list() {
	drinks := slices.IndexFunc(t.columns, func(c column) bool { return c.role == drink || c.role == thing })
	all := slices.IndexFunc(t.columns, func(c column) bool { return holdsAll[strings.ToLower(strings.TrimSpace(c.head))] })
	measured := slices.ContainsFunc(t.columns, func(c column) bool { return c.unit != "" || c.size > 0 || c.role == unit })
	if drinks < 0 || all < 0 || measured || !t.has(said) {
		return
	}
	for i := range t.columns {
		switch c := &t.columns[i]; {
		case i == drinks:
			c.role = drink
		case i == all:
			c.role = listed
		case c.role == amount || c.role == name: // a second one: no such table
			t.columns[all].role = amount
			return
		case c.role != said:
			c.role = apart
		}
	}
}

// leastKnown is the fewest columns that a head says something of.
const leastKnown = 2

func (t *Table) has(r role) bool {
	return slices.ContainsFunc(t.columns, func(c column) bool { return c.role == r })
}

// measures reports whether some column is surely one of amounts: "top, dash" is none.
func (t *Table) measures() bool {
	return slices.ContainsFunc(t.columns, func(c column) bool { return c.role == amount && c.unit != flavor.Dash })
}

// settle says of columns that may hold one of two things which it is: "Name" is the drink
// beside "Base", and the ingredient beside "oz".
func (t *Table) settle() {
	for i := range t.columns {
		c := &t.columns[i]
		switch {
		case c.role == thing && (t.has(name) || i > 0 && t.has(drink)):
			c.role = drink
			if t.has(name) && i > 0 { // "Ingredient | Bottle | oz"
				c.role = apart
			}
		case c.role == thing:
			c.role = name
		}
	}
	if !t.has(name) {
		for i := range t.columns {
			if t.columns[i].role == unknown {
				t.columns[i].role = name
				break
			}
		}
	}
	for i := range t.columns {
		if c := &t.columns[i]; c.role == unknown {
			c.role = apart
		}
	}
	if t.has(name) {
		return
	}
	if i := slices.IndexFunc(t.columns, func(c column) bool { return c.role == drink }); i >= 0 {
		t.columns[i].role = name
	} else if c := &t.columns[0]; c.role == amount && c.unit == "" && c.size == 0 { // "Spec | oz"
		c.role = name
	}
}

// pair finds the amounts of each name: behind it, or before it in a table that begins with
// an amount.
func (t *Table) pair() {
	first := slices.IndexFunc(t.columns, func(c column) bool { return c.role == name || c.role == amount })
	before := t.columns[first].role == amount
	var names []int
	for i := range t.columns {
		if t.columns[i].role == name {
			names = append(names, i)
		}
	}
	for k, at := range names {
		from, to := at, len(t.columns)
		if k+1 < len(names) {
			to = names[k+1]
		}
		if before {
			from, to = 0, at
			if k > 0 {
				from = names[k-1]
			}
			if len(names) == 1 {
				to = len(t.columns)
			}
		}
		t.pairs = append(t.pairs, t.pairOf(at, from, to))
	}
	t.unitForAll()
	for i := range t.columns {
		c := &t.columns[i]
		if c.role == apart && c.head != "" || c.role == amount && !slices.ContainsFunc(t.pairs, func(p pair) bool { return p.amount == i || p.also == i }) {
			t.Skipped = append(t.Skipped, strings.TrimSpace(c.head))
		}
	}
}

// pairOf is the pair of the name at a column, whose amounts stand from one column to another.
func (t *Table) pairOf(at, from, to int) pair {
	p := pair{name: at, amount: -1, also: -1, unit: -1}
	sized := 0
	for i := from; i < to; i++ {
		switch c := &t.columns[i]; {
		case c.role == unit && p.unit < 0:
			p.unit = i
		case c.role != amount:
		case p.amount < 0:
			p.amount = i
			sized = 1
		case c.size > 0:
			sized++
			if was := &t.columns[p.amount]; was.size > 0 && c.size < was.size {
				p.amount = i
			}
		case p.also < 0 && t.columns[p.amount].size == 0 && c.unit != "" && t.columns[p.amount].unit != "":
			p.also = i
		}
	}
	if sized > 1 {
		t.Sized = strings.TrimSpace(t.columns[p.amount].head)
	}
	return p
}

// unitForAll keeps the unit that all columns of amounts are in.
func (t *Table) unitForAll() {
	for _, p := range t.pairs {
		if p.amount < 0 {
			continue
		}
		switch u := t.columns[p.amount].unit; {
		case !u.Jigger() && u != flavor.PartUnit:
		case t.Unit != "" && t.Unit != u:
			t.Unit = ""
			return
		default:
			t.Unit = u
		}
	}
}

// Row reads a line as a row of the table, and is false if it is none: it has another number
// of cells, or no pour.
func (t *Table) Row(text string, line entry.Span) (Row, bool) {
	in := cells(text, line, t.sign)
	if len(in) < leastKnown || len(in) > len(t.columns) && slices.ContainsFunc(in[len(t.columns):], filled) || t.sign == gap && len(in) != len(t.columns) {
		return Row{}, false
	}
	if t.even && (len(in) != len(t.columns) || !costed(text, in)) {
		return Row{}, false
	}
	var row Row
	if i := slices.IndexFunc(t.columns, func(c column) bool { return c.role == listed }); i >= 0 && i < len(in) {
		row.All = in[i]
	}
	at := func(i int) entry.Span {
		if i < 0 || i >= len(in) {
			return entry.Span{}
		}
		return in[i]
	}
	for _, p := range t.pairs {
		pour := Pour{Name: at(p.name), Amount: at(p.amount), Also: at(p.also), UnitAt: at(p.unit)}
		if !filled(pour.Name) {
			continue
		}
		if p.amount >= 0 && t.Unit == "" || p.amount >= 0 && t.columns[p.amount].unit != t.Unit {
			pour.Unit = t.columns[p.amount].unit
		}
		if p.also >= 0 {
			pour.AlsoUnit = t.columns[p.also].unit
		}
		row.Pours = append(row.Pours, pour)
	}
	for i := range min(len(in), len(t.columns)) {
		switch c := &t.columns[i]; {
		case !filled(in[i]):
		case c.role == drink:
			row.Drink = in[i]
		case c.role == said:
			row.Said = append(row.Said, Cell{in[i], c.label})
		}
	}
	return row, filled(row.All) || slices.ContainsFunc(row.Pours, func(p Pour) bool { return filled(p.Amount) })
}

// sums are what the row is called that adds the others up.
var sums = token.Words(`total totals sum subtotal sub-total cost costs total_cost all overall yield summe gesamt totale suma somme`)

// Sums reports whether a line is a row that adds up the others of the table: its name says so, and all
// else in it are figures.
func (t *Table) Sums(text string, line entry.Span) bool {
	in := slices.DeleteFunc(cells(text, line, t.sign), func(c entry.Span) bool { return !filled(c) })
	if len(in) < leastKnown || !strings.Contains(text[line.Start:line.End], t.sign) {
		return false
	}
	for _, w := range wordsOfHead(text[in[0].Start:in[0].End]) {
		if !sums[w] {
			return false
		}
	}
	return !slices.ContainsFunc(in[1:], func(c entry.Span) bool {
		return strings.ContainsFunc(text[c.Start:c.End], unicode.IsLetter) && !measured(text[c.Start:c.End])
	})
}

// measured reports whether a cell is an amount with its unit and nothing else.
func measured(cell string) bool {
	toks := token.Lex(nil, cell, 0, len(cell))
	return entry.AmountAt(toks) == len(toks)
}

// Quoted reads a row without a head above it that has a cell in quotes, "gin, dry",45,ml, and
// is false if it holds anything but one name, its amount and its unit.
func Quoted(text string, line entry.Span) (Pour, bool) {
	written := text[line.Start:line.End]
	sign := signOf(written)
	if !strings.Contains(written, `"`) || sign == "" || sign == stroke || sign == gap {
		return Pour{}, false
	}
	var p Pour
	for _, c := range cells(text, line, sign) {
		toks := token.Lex(nil, text, c.Start, c.End)
		_, unit := entry.UnitAt(toks)
		switch {
		case len(toks) == 0:
		case entry.AmountAt(toks) == len(toks) && p.Amount.Empty():
			p.Amount = c
		case unit == len(toks) && p.UnitAt.Empty() && !p.Amount.Empty():
			p.UnitAt = c
		case p.Name.Empty() && !entry.StartsAmount(toks):
			p.Name = c
		default:
			return Pour{}, false
		}
	}
	return p, !p.Name.Empty() && !p.Amount.Empty()
}

func filled(s entry.Span) bool { return !s.Empty() }
