package exchange

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/grid"
	"counterpour/data/house/exchange/jotted"
	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"
)

// laid lays out a row of one cell, in a file of several columns, as its words say: parted by
// tabs where the rest of the file has another separator, or a plain line among cells. A row
// that says what no column holds stays as it is: nothing is lost.
func (s *sheetReader) laid(row grid.Row) grid.Row {
	only := -1
	for i, c := range row.Cells {
		if strings.TrimSpace(c) != "" && only >= 0 {
			return row
		} else if strings.TrimSpace(c) != "" {
			only = i
		}
	}
	if only < 0 || s.plain || len(s.Columns) < 2 || only < len(s.Columns) && s.Columns[only].Field != column.Name {
		return row
	}
	said := map[column.Field]string{}
	if parts := strings.Split(row.Cells[only], "\t"); len(parts) > 1 {
		if len(parts) == len(s.Columns) {
			row.Cells = parts
			return row
		}
		said = s.byLooks(parts)
	} else if m := jotted.Cells(row.Cells[only]); m != nil && m[0]+m[3] != "" {
		said = map[column.Field]string{column.Stock: m[0], column.Name: m[1], column.Size: m[2], column.Price: m[3]}
	}
	cells, placed := make([]string, len(s.Columns)), 0
	for i, c := range s.Columns {
		if text := strings.TrimSpace(said[c.Field]); text != "" {
			cells[i], placed = text, placed+1
		}
	}
	for _, text := range said {
		if strings.TrimSpace(text) != "" {
			placed--
		}
	}
	if placed != 0 || len(said) == 0 {
		return row
	}
	row.Cells = cells
	return row
}

// byLooks assigns parts of a line to fields by what they look like; none if a part looks like
// nothing that is still open.
func (s *sheetReader) byLooks(parts []string) map[column.Field]string {
	said := map[column.Field]string{}
	looks := []struct {
		field column.Field
		is    func(string) bool
	}{
		{column.Size, numeral.LooksLikeSize},
		{column.Price, func(p string) bool { return numeral.LooksLikeMoney(p) || numeral.HasCents(p) }},
		{column.Stock, func(p string) bool { _, ok := numeral.Number(p, s.comma); return ok }},
		{column.Name, grid.HasWords},
	}
	for _, part := range parts {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		at := slices.IndexFunc(looks, func(l struct {
			field column.Field
			is    func(string) bool
		}) bool {
			return said[l.field] == "" && l.is(part)
		})
		if at < 0 {
			return nil
		}
		said[looks[at].field] = part
	}
	return said
}

var (
	// sizeInName matches what a full one holds among the words of a name, a case of several too.
	sizeInName = pattern.Of(`(?i)(?:^|[\s,(])((?:\d+\s*[x×]\s*)?\d+(?:[.,]\d+)?\s*(?:ml|cl|l|ltr|lit(?:re|er)|oz|g|kg))(?:[\s,.)]|$)`)
	// piecesInName matches a number of pieces among them.
	piecesInName = pattern.Of(`(?i)(?:^|[\s,(])(\d+)\s*(?:pcs?|pieces?|stk|stück|count|ct)\.?(?:[\s,)]|$)`)
)

// What fruit gives pressed, in mL per g of it, rounded down to some: common practice, no source.
const (
	juiceMLPerG  = 0.36
	juiceRoundML = 100
)

// sizeOfName takes what a full one holds from the name where no cell says it, and reports
// whether that settles it. Fruit by weight is asked about: it is not the juice that it gives.
func (b *bottleReader) sizeOfName() bool {
	name, kind := b.r.Bottle.Name, b.r.Kind.Profile
	if m := sizeInName.FindStringSubmatch(name); m != nil {
		a, open, ok := numeral.Size(m[1], "", b.comma)
		if n, _, pack := numeral.Pack(m[1]); pack && n > 1 && !b.has(column.Size) || open || !ok {
			return false
		}
		if a.G > 0 && kind != nil && kind.Class == flavor.ClassJuice && !strings.Contains(strings.ToLower(name), "juice") {
			pressed := exact(math.Floor(a.G*juiceMLPerG/juiceRoundML)*juiceRoundML) + " ml"
			b.fault(column.Size, fmt.Sprintf("%s of fruit is not as much %s; how much juice do you press of it?", m[1], kind.Name),
				Remedy{"some " + pressed, column.Size, pressed}, Remedy{"it is juice, " + exact(a.G) + " g", column.Size, exact(a.G) + " g"})
			return true
		}
		b.r.Bottle.SizeML, b.r.Bottle.SizeG, b.r.Cells[column.Size] = a.ML, a.G, m[1]
		return true
	}
	m := piecesInName.FindStringSubmatch(name)
	if m == nil || kind == nil {
		return false
	}
	n, _ := numeral.Number(m[1], false)
	ml, err := measure.ToML(n, flavor.Piece, kind)
	if err != nil || !(ml > 0) {
		return false
	}
	b.r.Bottle.SizeML = math.Round(ml)
	return true
}

// SameName is a name as rows are told alike by it: without sizes, case and accents.
func SameName(name string) string {
	return flavor.NormaliseName(piecesInName.ReplaceAllString(sizeInName.ReplaceAllString(name, " "), " "))
}

// settledKinds maps the names of rows whose kind somebody settled to that kind, so that the same
// name is asked about once. Of two answers for one name neither speaks for a third row.
func (s *sheetReader) settledKinds(rows []grid.Row) map[string]string {
	out := map[string]string{}
	for _, row := range rows {
		said, ok := s.settled.Cells[Cell{row.Number, column.Kind}]
		if !ok {
			continue
		}
		for i, c := range s.Columns {
			if c.Field != column.Name || i >= len(row.Cells) {
				continue
			}
			key := SameName(row.Cells[i])
			if old, known := out[key]; known && old != said {
				said = ""
			}
			out[key] = said
		}
	}
	return out
}
