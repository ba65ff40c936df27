package exchange

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/grid"
	"counterpour/data/house/exchange/jotted"
	"counterpour/data/house/exchange/kinds"
	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/pattern"
)

// Sheet is a stock list as read: the field of each column, and every row with all its
// faults.
type Sheet struct {
	Columns  []column.Column
	Titles   int // number of the row of titles; 0 if there is none
	Rows     []SheetRow
	Notes    []string // assumptions about the whole file
	Currency string   // of prices without a currency; empty if unknown
	// AskCurrency means that there are prices and no currency is known.
	AskCurrency bool

	head       string
	unreadable []unreadableRow
	defaults   defaults
	kinds      *kinds.Finder
}

type unreadableRow struct {
	row grid.Row
	err error
}

// SheetRow is a row that may be a bottle.
type SheetRow struct {
	Number  int // row number in a spreadsheet
	Bottle  house.Bottle
	Kind    kinds.Kind
	Cells   map[column.Field]string // as written or as settled by the user
	Faults  []CellFault             // all of them
	LeftOut string                  // why the row is no bottle; empty if it is one
	Words   []string                // the house's own words for its ingredient
	// Uncounted means that the cell for the count says nothing. A bottle that is there
	// keeps its count, and a new one counts as one.
	Uncounted bool
	ByHand    bool // somebody said which kind it is, which its name does not

	row grid.Row
}

// CellFault is a fault of one cell.
type CellFault struct {
	Field    column.Field
	Written  string
	Message  string
	Remedies []Remedy
}

// Remedy mends a row by replacing one of its cells.
type Remedy struct {
	Say   string // describes the change
	Field column.Field
	Write string
}

// LeaveOut, settled as the text of [column.Row], skips a row, whatever is wrong with it.
const LeaveOut = "leave out"

// TakeIn, settled as the text of [column.Row], reads a row as a bottle that would be left out
// as [NotDrunk].
const TakeIn = "take in"

// NotDrunk is why a row is left out that names what a bar buys and nobody drinks.
const NotDrunk = "not drunk"

// Cell identifies a cell of a sheet.
type Cell struct {
	Row   int
	Field column.Field
}

// Settled holds the user's answers about a sheet. With the zero value everything is read
// from the file.
type Settled struct {
	Columns  map[int]column.Field // by index from 0; overrides the title
	Currency string               // three letters; of all prices without a currency
	House    string               // the house's currency, used for such prices if neither the user nor the file states one
	Cells    map[Cell]string      // overrides the text of the cell
	Known    bool                 // what is chosen by hand carries what its kind does, and no more
}

// sheetReader holds the state of reading a sheet.
type sheetReader struct {
	*Sheet
	settled Settled
	there   map[string]house.Bottle
	plain   bool              // lines without columns
	comma   bool              // decimal comma
	heading string            // the heading above the current rows
	said    map[string]string // the kinds that somebody settled, by the names of their rows
	seen    map[string]int
}

// ReadSheet reads a stock list in any usual form: any separator, any text before the
// titles, the trade's usual titles, prices with currency signs, sizes with units,
// headings between rows. For bottles that exist in the house, fields without a column
// keep their value. It fails only if the file has no rows.
func ReadSheet(r io.Reader, f naming.Finder, there []house.Bottle, settled Settled) (*Sheet, error) {
	text, err := readAll(r)
	if err != nil {
		return nil, err
	}
	for _, mark := range []string{"PK\x03\x04", "\xd0\xcf\x11\xe0"} {
		if bytes.HasPrefix(text, []byte(mark)) {
			return nil, unreadable("this is a spreadsheet file; save it as CSV and send that")
		}
	}
	s := &sheetReader{Sheet: &Sheet{kinds: kinds.New(f)}, settled: settled, there: map[string]house.Bottle{}, seen: map[string]int{}}
	for _, b := range there {
		s.there[b.ID] = b
	}
	text, was := decoded(text)
	if was != "" {
		s.Notes = append(s.Notes, "The file is read as "+was+"; look at the accents.")
	}
	rows, plain := jotted.Lines(text)
	if s.plain = plain; !plain {
		rows = s.split(text)
	}
	if len(rows) == 0 && len(s.unreadable) == 0 {
		return nil, unreadable("the file is empty; write one row for each bottle, with its name, its kind and its size")
	}
	if err := s.mapColumns(rows, there); err != nil {
		return nil, err
	}
	if at := column.HeadRow(rows); at >= 0 {
		rows = rows[at+1:]
	}
	for i := range rows {
		rows[i] = s.laid(rows[i])
	}
	s.said = s.settledKinds(rows)
	for _, row := range rows {
		if s.Titles > 0 && len(row.Cells) > len(s.Columns) && strings.TrimSpace(strings.Join(row.Cells[len(s.Columns):], "")) != "" {
			s.cannotRead(row, fmt.Errorf("the row has %d fields and the file %d columns; put quotes round a field that holds the separator", len(row.Cells), len(s.Columns)))
			continue
		}
		s.Rows = append(s.Rows, s.read(row))
	}
	s.settleCurrency()
	s.noteUncounted()
	s.noteCurrencies(there)
	return s.Sheet, nil
}

// mapColumns assigns a field to each column.
func (s *sheetReader) mapColumns(rows []grid.Row, there []house.Bottle) error {
	var head []string
	body := rows
	if at := column.HeadRow(rows); at >= 0 {
		head, body = rows[at].Cells, rows[at+1:]
		s.Titles, s.head = rows[at].Number, rows[at].Raw
	}
	s.Columns = column.Of(head, body, func(w string) bool { _, _, ok := s.kinds.Named(w); return ok })
	for i, f := range s.settled.Columns {
		if i >= 0 && i < len(s.Columns) {
			s.Columns[i].Field = f
		}
	}
	names := s.titled(column.Name) || s.titled(column.Kind)
	if !names {
		return unreadable("row %d: no column holds the names of the bottles; write a title over that column, such as Item or Name", max(1, s.Titles))
	}
	s.takeFromNames(body)
	var figures []string
	for i, c := range s.Columns {
		if c.Field == column.Price || c.Field == column.Stock || c.Field == column.Strength || c.Field == column.Size || c.Field == column.SizeML {
			figures = append(figures, grid.Column(body, i)...)
		}
	}
	s.comma = numeral.UsesComma(figures)
	s.defaults = defaultsOf(s, body, there)
	return nil
}

// titled reports whether a column has a field.
func (s *Sheet) titled(f column.Field) bool {
	return slices.ContainsFunc(s.Columns, func(c column.Column) bool { return c.Field == f })
}

// asSaid is why a row that the user leaves out is no bottle.
const asSaid = "left out, as you said"

// sumRow matches the first words of a row of totals. A bottle may have such a name, but
// then its row has a size or an ingredient.
var (
	sumRow = pattern.Of(`(?i)^\W*(?:` + sumWords + `)\W*$`)
	sumOf  = pattern.Of(`(?i)^\W*(?:` + sumWords + `)\b`)
)

// read reads a row: a heading, a row of totals, or a bottle.
func (s *sheetReader) read(row grid.Row) SheetRow {
	r := SheetRow{Number: row.Number, Cells: map[column.Field]string{}, row: row}
	filled := 0
	for i, cell := range row.Cells {
		cell = grid.Unguard(cell)
		if strings.TrimSpace(cell) != "" {
			filled++
		}
		if i < len(s.Columns) {
			if f := s.Columns[i].Field; f != column.Beside && f != column.Nothing {
				r.Cells[f] = cell
			}
		}
	}
	for cell, text := range s.settled.Cells {
		if cell.Row == row.Number {
			r.Cells[cell.Field] = text
		}
	}
	label := strings.TrimSpace(strings.Join(row.Cells, " "))
	switch {
	case r.Cells[column.Row] == LeaveOut:
		r.LeftOut = asSaid
		return r
	case s.ownWords(&r):
		return r
	case r.isSum():
		r.LeftOut = "a sum"
		return r
	case filled == 1 && len(s.Columns) > 1 && s.isHeading(label):
		s.heading, r.LeftOut = strings.Trim(label, " :*-–—"), "a heading"
		return r
	}
	b := &bottleReader{sheetReader: s, r: &r}
	if b.notDrunk() {
		r.LeftOut = NotDrunk
		return r
	}
	b.read()
	return r
}

// isHeading reports whether the only text of a row names a class of bottles.
func (s *sheetReader) isHeading(text string) bool {
	bare := strings.Trim(text, " :*-–—")
	named := !s.plain && s.kinds.ClassOf(bare) != "" // a plain line that names a kind may be a bottle of it
	return grid.HasWords(bare) && (named || bare == strings.ToUpper(bare) || strings.HasSuffix(text, ":"))
}

// settleCurrency replaces the faults about a missing currency by one question for the
// whole file.
func (s *sheetReader) settleCurrency() {
	s.Currency = s.defaults.currency
	for i := range s.Rows {
		for _, f := range s.Rows[i].Faults {
			s.AskCurrency = s.AskCurrency || f.Field == column.Currency && f.Written == ""
		}
	}
}

// noteUncounted says which bottles have an empty cell where their count should be.
func (s *sheetReader) noteUncounted() {
	var names []string
	for i := range s.Rows {
		if r := &s.Rows[i]; r.Uncounted && r.LeftOut == "" {
			names = append(names, r.Bottle.Name)
		}
	}
	if len(names) > 0 {
		s.Notes = append(s.Notes, "Nothing says how many there are of "+house.FirstFew(names)+"; what is there keeps its count, and what is new counts as one.")
	}
}

// noteCurrencies says before the import which bottles are priced in another currency than
// most, those that are in the house counted: no drink that pours both can be costed.
func (s *sheetReader) noteCurrencies(there []house.Bottle) {
	after := slices.Clone(there)
	for i := range s.Rows {
		if r := &s.Rows[i]; r.LeftOut == "" && len(r.Faults) == 0 {
			after = slices.DeleteFunc(after, func(b house.Bottle) bool { return b.ID == r.Bottle.ID })
			after = append(after, r.Bottle)
		}
	}
	if said := house.MixedCurrencies(after); said != "" {
		s.Notes = append(s.Notes, said)
	}
}

// Reading returns the sheet in the form that can be imported, with a note for each
// assumption.
func (s *Sheet) Reading() *Reading {
	out := &Reading{head: s.head, Notes: slices.Clone(s.Notes)}
	for _, bad := range s.unreadable {
		out.badRow(bad.row, bad.err)
	}
	var supplies []string
	for i := range s.Rows {
		r := &s.Rows[i]
		switch {
		case r.LeftOut == wordsAlone:
			s.addWords(out, r)
			continue
		case r.LeftOut == NotDrunk:
			supplies = append(supplies, r.Bottle.Name)
			continue
		case r.LeftOut != "":
			continue
		case len(r.Faults) > 0:
			out.spoil(r.row)
			out.bad(r.Number, r.Bottle.ID, errors.New(r.Fault()))
			continue
		case !out.add(r.Number, r.Bottle):
			out.spoil(r.row)
			continue
		}
		s.addWords(out, r)
		if r.Kind.Supposed {
			out.Notes = append(out.Notes, fmt.Sprintf("%d (%s): taken for %s, by %q%s", r.Number, r.Bottle.Name, r.Kind.Profile.Name, r.Kind.Why, orOf(r.Kind.Others)))
		}
	}
	if len(supplies) > 0 {
		out.Notes = append(out.Notes, "Left out, since nobody drinks it: "+house.FirstFew(supplies)+"; write its category beside what is a bottle after all.")
	}
	return out.done()
}

func orOf(names []string) string {
	if len(names) == 0 {
		return ""
	}
	return "; it may be " + flavor.JoinOr(names)
}

// Fault returns all faults of a row in one line.
func (r *SheetRow) Fault() string {
	var all []string
	for _, f := range r.Faults {
		all = append(all, f.Message)
	}
	return strings.Join(all, "; ")
}

// Unreadable lists the rows that could not be parsed.
func (s *Sheet) Unreadable() (out []Bad) {
	for _, u := range s.unreadable {
		out = append(out, Bad{Number: u.row.Number, Message: u.err.Error()})
	}
	return out
}

// RestRows maps the number of each bad row to its number in the text that [Reading.Rest]
// returns.
func (s *Sheet) RestRows() map[int]int {
	var numbers []int
	for _, u := range s.unreadable {
		numbers = append(numbers, u.row.Number)
	}
	for i := range s.Rows {
		if r := &s.Rows[i]; r.LeftOut == "" && len(r.Faults) > 0 {
			numbers = append(numbers, r.Number)
		}
	}
	slices.Sort(numbers)
	out := map[int]int{}
	for i, n := range numbers {
		out[n] = i + 2 // after the titles, or after an empty line if there are none
	}
	return out
}
