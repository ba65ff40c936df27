package stocksheet

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"counterpour/data/house/exchange"
	"counterpour/data/house/exchange/column"
)

// What a person settles about a file travels in its form: columns as col.3, a
// currency for all, and cells. A cell is settled by a button, whose value names it,
// and is then kept in a hidden field; by a list of kinds; or in its own box.
const (
	columnField  = "col."  // and the place of the column
	cellField    = "cell." // and the row and the field
	kindField    = "kind." // and the row
	settledField = "settled"
	currencyBox  = "currency"
	remedyField  = "remedy"
	knownBox     = "known"
)

// cellMark names a cell and what to write there, as a button's value.
func cellMark(row int, f column.Field, text string) string {
	return strconv.Itoa(row) + " " + string(f) + " " + text
}

// readMark is the inverse of cellMark; it is false for what is none.
func readMark(mark string) (exchange.Cell, string, bool) {
	parts := strings.SplitN(mark, " ", 3)
	if len(parts) < 3 {
		return exchange.Cell{}, "", false
	}
	row, err := strconv.Atoi(parts[0])
	return exchange.Cell{Row: row, Field: column.Field(parts[1])}, parts[2], err == nil && slices.Contains(cellFields(), column.Field(parts[1]))
}

// cellFields are the fields of a cell that may be settled.
func cellFields() []column.Field { return append(column.Fields(), column.Row) }

// readSettled reads what was settled, but for the boxes of cells. What a form could
// not have sent is passed over.
func readSettled(sent url.Values) exchange.Settled {
	s := exchange.Settled{Columns: map[int]column.Field{}, Cells: map[exchange.Cell]string{}, Currency: strings.ToUpper(strings.TrimSpace(sent.Get(currencyBox)))}
	s.Known = sent.Has(knownBox)
	for name, values := range sent {
		switch {
		case strings.HasPrefix(name, columnField):
			at, err := strconv.Atoi(strings.TrimPrefix(name, columnField))
			if f := column.Field(values[0]); err == nil && slices.Contains(column.Fields(), f) {
				s.Columns[at] = f
			}
		case strings.HasPrefix(name, kindField) && values[0] != "":
			if row, err := strconv.Atoi(strings.TrimPrefix(name, kindField)); err == nil {
				s.Cells[exchange.Cell{Row: row, Field: column.Kind}] = values[0]
			}
		}
	}
	for _, mark := range append(slices.Clone(sent[settledField]), sent[remedyField]...) {
		if cell, text, ok := readMark(mark); ok {
			s.Cells[cell] = text
		}
	}
	return s
}

// typedOver settles the cells in whose boxes something else was typed than stood
// there, and reports whether there is one.
func typedOver(s *exchange.Settled, sheet *exchange.Sheet, sent url.Values) bool {
	any := false
	for i := range sheet.Rows {
		r := &sheet.Rows[i]
		for _, f := range column.Fields() {
			name := cellField + strconv.Itoa(r.Number) + "." + string(f)
			if !sent.Has(name) {
				continue
			}
			cell := exchange.Cell{Row: r.Number, Field: f}
			_, pressed := s.Cells[cell]
			if text := strings.TrimSpace(sent.Get(name)); !pressed && text != strings.TrimSpace(r.Cells[f]) {
				s.Cells[cell], any = text, true
			}
		}
	}
	return any
}

// settledOfRest is what was settled about the rows that are left once the good ones
// are in: they are numbered from the second row, under the titles. The columns, the
// currency and the kinds stay as they were read from the whole.
func settledOfRest(sheet *exchange.Sheet, s exchange.Settled) exchange.Settled {
	out := exchange.Settled{Columns: map[int]column.Field{}, Cells: map[exchange.Cell]string{}, Currency: sheet.Currency, Known: s.Known}
	for i, c := range sheet.Columns {
		out.Columns[i] = c.Field
	}
	renumbered := sheet.RestRows()
	for cell, text := range s.Cells {
		if row, left := renumbered[cell.Row]; left {
			out.Cells[exchange.Cell{Row: row, Field: cell.Field}] = text
		}
	}
	for i := range sheet.Rows {
		r := &sheet.Rows[i]
		if row, left := renumbered[r.Number]; left && r.Kind.Profile != nil && !(r.Kind.Supposed && r.Cells[column.Kind] != "") {
			out.Cells[exchange.Cell{Row: row, Field: column.Kind}] = r.Kind.Profile.ID
		}
	}
	return out
}
