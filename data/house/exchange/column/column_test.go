package column_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/grid"
)

// rowsOf is a file of rows whose cells are apart by commas.
func rowsOf(text string) (rows []grid.Row) {
	for i, line := range strings.Split(text, "\n") {
		rows = append(rows, grid.Row{Number: i + 1, Cells: strings.Split(line, ","), Raw: line})
	}
	return rows
}

// A column is known by its title, else by its cells; common practice, no source.
func TestWhatColumnsHold(t *testing.T) {
	known := func(name string) bool { return name == "gin" || name == "rum" }
	for text, want := range map[string][]column.Field{
		"Name,Kind,Size,Price\nHawse,gin,700 ml,18.50":         {column.Name, column.Kind, column.Size, column.Price},
		"Item,Kind,Par,On hand\nHawse,gin,4,2":                 {column.Name, column.Kind, column.Par, column.Stock},
		"Bottle,Size,Bottle\nHawse,700 ml,700 ml":              {column.Name, column.Size, column.Beside},
		"Artikel,Kategorie,Lieferant\nHawse,gin,Kai":           {column.Name, column.Kind, column.Beside},
		"Item,Bottle\nHawse,gin\nSnub,rum":                     {column.Name, column.Kind},
		"Item,Total\nHawse,£20.00":                             {column.Name, column.Nothing},
		"The bar's list,,\nItem,Size (ml),ABV %\nHawse,700,40": {column.Name, column.SizeML, column.Strength},
		"Hawse,gin,700 ml,$18.50,2\nSnub,rum,750 ml,$20.00,1":  {column.Name, column.Kind, column.Size, column.Price, column.Stock},
		"Item,Case price,Price,\nHawse,90,18.50,":              {column.Name, column.Beside, column.Price, column.Nothing},
	} {
		rows := rowsOf(text)
		var head []string
		if at := column.HeadRow(rows); at >= 0 {
			head, rows = rows[at].Cells, rows[at+1:]
		}
		var got []column.Field
		for _, c := range column.Of(head, rows, known) {
			got = append(got, c.Field)
		}
		assert.Equal(t, want, got, text)
	}
}

// Every field that a person may choose is there once.
func TestFieldsAreDistinct(t *testing.T) {
	seen := map[column.Field]bool{}
	for _, f := range column.Fields() {
		assert.False(t, seen[f], f)
		seen[f] = true
	}
	assert.False(t, seen[column.Row], "a row is no field of a bottle")
}
