package tables

import (
	"embed"
	"encoding/csv"
	"fmt"
	"strconv"
)

//go:embed *.csv figures.toml
var files embed.FS

// row is a row of a table: its numbers by column. Numbers that the table does not state
// are absent.
type row struct {
	table, key string // as in figures.toml: "usda 09152"
	name       string
	cells      map[string]float64
}

func (r *row) ref() string { return r.table + " " + r.key }

// get returns a number, and whether the table states it.
func (r *row) get(column string) (float64, bool) {
	v, ok := r.cells[column]
	return v, ok
}

// or0 returns a number, or zero if the table does not state it.
func (r *row) or0(column string) float64 { return r.cells[column] }

// citation is how a figure cites its table.
var citation = map[string]string{
	"usda":       "USDA SR 26, NDB ",
	"ciqual":     "Ciqual code ",
	"acids":      "Longvah et al. 2017 or Japan 2020, acids of ",
	"market":     "Nordic monopolies, ",
	"beer":       "beer by style, ",
	"juices":     "citric acid of juices, ",
	"flavonoids": "USDA Flavonoid Database 3.3, ",
}

// loadRows reads a table. The first column is the key, the second the name. A key may
// have several rows, from several countries.
func loadRows(table string) (map[string][]*row, error) {
	f, err := files.Open(table + ".csv")
	if err != nil {
		return nil, err
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("tables: %s.csv: %w", table, err)
	}
	out := map[string][]*row{}
	for i, line := range lines[1:] {
		r := &row{table: table, key: line[0], name: line[1], cells: map[string]float64{}}
		for j, text := range line[2:] {
			if text == "" {
				continue
			}
			v, err := strconv.ParseFloat(text, 64)
			if err != nil {
				return nil, fmt.Errorf("tables: %s.csv line %d: column %s: %q is not a number", table, i+2, lines[0][j+2], text)
			}
			r.cells[lines[0][j+2]] = v
		}
		out[r.key] = append(out[r.key], r)
	}
	return out, nil
}
