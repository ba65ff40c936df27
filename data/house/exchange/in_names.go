package exchange

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/grid"
	"counterpour/data/house/exchange/jotted"
)

// saidInName are the fields that may stand in a name, in the order in which their columns are added.
var saidInName = []column.Field{column.Size, column.Strength, column.Stock, column.Price}

// takeFromNames moves how many there are, what one costs, and beside these what a full one holds, from the
// names of rows into the cells for them, since a list that has no place for them keeps them there.
// It adds the columns that are missing. A name that says what a cell of its row says too stays as
// it is, to be seen.
func (s *sheetReader) takeFromNames(rows []grid.Row) {
	at := slices.IndexFunc(s.Columns, func(c column.Column) bool { return c.Field == column.Name })
	if at < 0 || s.titled(column.ID) || slices.ContainsFunc(rows, func(r grid.Row) bool { return len(r.Cells) > len(s.Columns) }) {
		return
	}
	var taken []string
	for i := range rows {
		if at >= len(rows[i].Cells) {
			continue
		}
		name, said := jotted.InName(grid.Unguard(rows[i].Cells[at]))
		if len(said) == 0 || s.saysToo(rows[i], said) {
			continue
		}
		taken = append(taken, name)
		s.place(&rows[i], at, name, said)
	}
	if len(taken) > 0 {
		s.Notes = append(s.Notes, fmt.Sprintf("How many there are, what they hold or cost is taken out of the name of %s.", house.FirstFew(taken)))
	}
	for i, f := range s.settled.Columns {
		if i >= 0 && i < len(s.Columns) {
			s.Columns[i].Field = f
		}
	}
}

// saysToo reports whether a cell of a row says what its name does.
func (s *sheetReader) saysToo(row grid.Row, said map[column.Field]string) bool {
	for i, c := range s.Columns {
		if i < len(row.Cells) && said[c.Field] != "" && strings.TrimSpace(row.Cells[i]) != "" {
			return true
		}
		if said[column.Size] != "" && (c.Field == column.SizeML || c.Field == column.SizeG) {
			return true
		}
	}
	return false
}

// place writes what a name said into the cells of its row.
func (s *sheetReader) place(row *grid.Row, at int, name string, said map[column.Field]string) {
	row.Cells = slices.Clone(row.Cells)
	row.Cells[at] = name
	for _, f := range saidInName {
		text := said[f]
		if text == "" {
			continue
		}
		to := slices.IndexFunc(s.Columns, func(c column.Column) bool { return c.Field == f })
		if to < 0 {
			to = len(s.Columns)
			s.Columns = append(s.Columns, column.Column{Title: strings.ToUpper(string(f)[:1]) + string(f)[1:], Field: f})
		}
		for len(row.Cells) <= to {
			row.Cells = append(row.Cells, "")
		}
		row.Cells[to] = text
		if c := &s.Columns[to]; len(c.Samples) < mostSamples {
			c.Samples = append(slices.Clip(c.Samples), text)
		}
	}
}

// mostSamples is how many cells of a column that was added are shown.
const mostSamples = 3
