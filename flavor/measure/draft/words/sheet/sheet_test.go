package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/words/entry"
)

// rows reads a text whose first line is the head of a table, and writes each row that is one.
func rows(text string) (head *Table, out []string) {
	from := 0
	for line := range strings.SplitSeq(text, "\n") {
		at := entry.Span{Start: from, End: from + len(line)}
		from = at.End + 1
		if head == nil {
			var ok bool
			if head, ok = Head(text, at); !ok {
				return nil, nil
			}
			continue
		}
		row, ok := head.Row(text, at)
		if !ok {
			out = append(out, "no row")
			continue
		}
		cell := func(s entry.Span) string { return text[s.Start:s.End] }
		var pours []string
		for _, p := range row.Pours {
			amount := strings.TrimSpace(cell(p.Amount) + " " + string(p.Unit) + cell(p.UnitAt))
			pours = append(pours, strings.TrimSpace(fmt.Sprintf("%s %s", amount, cell(p.Name))))
		}
		said := cell(row.Drink)
		for _, c := range row.Said {
			said += "; " + cell(c.At)
		}
		out = append(out, strings.Join(pours, ", ")+" ("+said+")")
	}
	return head, out
}

// What stands in which column is told by its head, whatever their order and the sign between
// them. Common practice, no source.
func TestTables(t *testing.T) {
	for _, c := range []struct{ text, unit, rows, skipped string }{
		{"Item\tml\t%abv\nrye\t45\t50\nshake", "ml", "45 rye () | no row", "%abv"},
		{"oz,ingredient,cost\n2,rye,1.2", "oz", "2 rye ()", "cost"},
		{"ingredient,amount,unit,notes\n\"gin, dry\",45,ml,house", "", "45 ml gin, dry ()", "notes"},
		{"Name\tBase\toz\tMod 1\toz\tMeth\nDock\trye\t2\tamaro\t1\tstir", "oz", "2 rye, 1 amaro (Dock; stir)", ""},
		{"Drink,Spirit,cl,Bitters,ds\nDock,rye,6,orange,2", "cl", "6 rye, 2 dash orange (Dock)", ""},
		{"| What | ml |\n| rye | 60 |", "ml", "60 rye ()", ""},
		{"ml|Spirit|ml|Citrus\n45|gin|20|lime", "ml", "45 gin, 20 lime ()", ""},
		{"Ingredient   sml   reg   lrg\nrye   30   45   60", "", "45 rye ()", "sml, lrg"},
		{"Spec\t1 drink (oz)\tBatch x20 (ml)\nrye\t2\t1200", "oz", "2 rye ()", "Batch x20 (ml)"},
		{"Ingredient | oz | ml\nrye | 2 | 60", "oz", "2 rye ()", ""},
		{"Prod.;ml;Supplier\nrye;60;Hill", "ml", "60 rye ()", "Supplier"},
		{"Item | Qty\nlime, fresh | 20ml\nrye | ", "", "20ml lime, fresh () | no row", ""},
	} {
		head, got := rows(c.text)
		if !assert.NotNil(t, head, c.text) {
			continue
		}
		assert.Equal(t, c.rows, strings.Join(got, " | "), c.text)
		assert.Equal(t, c.unit, string(head.Unit), c.text)
		assert.Equal(t, c.skipped, strings.Join(head.Skipped, ", "), c.text)
	}
}

// A line that may be a pour, or that says how a drink is made, heads no table.
func TestLinesThatHeadNoTable(t *testing.T) {
	for _, line := range []string{"gin, 2 oz", "2 oz gin, 1 oz lemon", "wine | 5 oz", "bitters, dash", "top, float", "shake, rocks", "Method: shake | Glass: coupe", "juice; syrup", "oz", "", "rye   60   ml", "stir, glass, ice"} {
		_, ok := Head(line, entry.Span{Start: 0, End: len(line)})
		assert.False(t, ok, line)
	}
}

// A sheet of costs needs no head: it speaks of costs, and its last column holds sums. Common
// practice, no source.
func TestSheetsOfCosts(t *testing.T) {
	text := "COST SHEET\nrye;50;1.20\nlemon;25 ml;£0.18\nshake; rocks; up\ntotal; 1.38"
	table, ok := Costed(text)
	assert.True(t, ok)
	var got []string
	from := 0
	for line := range strings.SplitSeq(text, "\n") {
		row, ok := table.Row(text, entry.Span{Start: from, End: from + len(line)})
		from += len(line) + 1
		for _, p := range row.Pours {
			assert.True(t, ok, line)
			got = append(got, text[p.Name.Start:p.Name.End]+" "+text[p.Amount.Start:p.Amount.End])
		}
	}
	assert.Equal(t, []string{"rye 50", "lemon 25 ml"}, got)
	for _, other := range []string{"rye;50;1.20\nlemon;25;0.18", "cost\nrye;50;1.20", "cost\nrye;50;1\nlemon;25;2", "cost\nrye;50;1.20\nlemon|25|0.18", "cost\nrye, 50, 1.20\nlemon, 25, 0.18"} {
		_, ok := Costed(other)
		assert.False(t, ok, other)
	}
}

// A cell in quotes may hold the sign that parts the others.
func TestQuotedCells(t *testing.T) {
	text := ` "a, b" , c "d" ,"" , "e`
	var got []string
	for _, s := range cells(text, entry.Span{Start: 0, End: len(text)}, comma) {
		got = append(got, text[s.Start:s.End])
	}
	assert.Equal(t, []string{"a, b", `c "d"`, "", `"e`}, got)
}

// Whatever is typed, every stretch lies in the line that it was read from.
func FuzzRows(f *testing.F) {
	f.Add("Item\tml\tcost", "gin\t45\t1.2")
	f.Add("a,oz,\"b\"", "\"x,y\",,")
	f.Fuzz(func(t *testing.T, head, line string) {
		table, ok := Head(head, entry.Span{Start: 0, End: len(head)})
		if !ok {
			return
		}
		at := entry.Span{Start: 0, End: len(line)}
		row, _ := table.Row(line, at)
		for _, p := range row.Pours {
			for _, s := range []entry.Span{p.Name, p.Amount, p.Also, p.UnitAt} {
				if s.Start < at.Start || s.End > at.End || s.End < s.Start {
					t.Fatalf("%+v lies outside of %q", s, line)
				}
			}
		}
	})
}
