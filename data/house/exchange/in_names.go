package exchange

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/grid"
	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor/measure/pattern"
)

// strengthInName matches a strength among the words of a name: "Hawse dry gin 70cl 40% vol".
var strengthInName = pattern.Of(`(?i)[\s,]+(\d{1,2}(?:[.,]\d+)?\s*%(?:\s*(?:vol|abv|alc)\b\.?)*)(?:[\s,]|$)`)

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
		name, said := inName(grid.Unguard(rows[i].Cells[at]))
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

// inName parts a name from what else it says; nothing if it says neither how many there are, nor a
// price, nor how large a pack is, nor a strength beside what a full one holds.
func inName(written string) (name string, said map[column.Field]string) {
	said = map[column.Field]string{}
	rest := strings.TrimSpace(written)
	if m := strengthInName.FindStringSubmatchIndex(rest); m != nil {
		said[column.Strength] = rest[m[2]:m[3]]
		rest = strings.TrimSpace(rest[:m[0]] + " " + strings.TrimLeft(rest[m[3]:], " ,"))
	}
	m := plainCells(rest)
	if m == nil || m[0]+m[3] == "" && !packed(m[2]) && (said[column.Strength] == "" || m[2] == "") {
		return written, nil
	}
	if n, pack := numeral.PackIn(rest); m[3] == "" && n > 1 && strings.HasPrefix(pack, m[0]) { // of what, and not how many there are
		m[0], m[2] = "", m[0]+" x "+m[2]
	}
	for i, f := range []column.Field{column.Stock, column.Name, column.Size, column.Price} {
		if m[i] != "" && f != column.Name {
			said[f] = m[i]
		}
	}
	return strings.TrimRight(m[1], " ,"), said
}

// packed reports whether a size is that of several bottles in a pack.
func packed(size string) bool {
	n, _, ok := numeral.Pack(size)
	return ok && n > 1
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

// smallML is up to how much a bottle holds that is bought by the case: common practice, no source.
const smallML = 350.0

// ofACase reports whether a price beside several bottles of a size may be that of their case: small
// bottles are priced so.
func ofACase(count, size string) bool {
	n, err := strconv.Atoi(count)
	a, open, ok := numeral.Size(size, "", false)
	return err == nil && n > 1 && ok && !open && a.ML > 0 && a.ML <= smallML
}
