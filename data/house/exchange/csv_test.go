package exchange_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor"
)

// What a spreadsheet takes for a formula, and what of it is a mere number; said
// apart from the code on purpose.
var (
	formula = regexp.MustCompile("^[ \\x{a0}\"]*[=+\\-@\t\r\n＝＋－＠]")
	number  = regexp.MustCompile(`^[+-]?[0-9.,]+(e[+-]?[0-9]+)?$`)
)

func namedStock(names ...string) (out []house.Bottle) {
	for i, n := range names {
		out = append(out, house.Bottle{ID: fmt.Sprint("b-", i), Name: n, Ingredient: "vodka", SizeML: 700, Note: n})
	}
	return out
}

func TestFormulasAreGuarded(t *testing.T) {
	for _, c := range []struct{ name, cell string }{
		{"=1+1", "'=1+1"},
		{`=HYPERLINK("http://x","y")`, `'=HYPERLINK("http://x","y")`},
		{"+44 20", "'+44 20"},
		{"-2+3", "'-2+3"},
		{"@SUM(A1)", "'@SUM(A1)"},
		{"＝1", "'＝1"},
		{`"=1"`, `'"=1"`},
		{"'=1", "''=1"},
		{"-5", "-5"},
		{"+49151", "+49151"},
		{"-5,5", "-5,5"},
		{"1e5", "1e5"},
		{"-", "'-"},
		{"o'clock = late", "o'clock = late"},
		{"'Tis", "'Tis"},
		{"Gin - the blue one", "Gin - the blue one"},
	} {
		var out bytes.Buffer
		require.NoError(t, exchange.WriteStock(&out, namedStock(c.name)))
		file := out.String()
		rows, err := csv.NewReader(&out).ReadAll()
		require.NoError(t, err)
		assert.Equal(t, c.cell, rows[1][1])
		r, err := readStock(strings.NewReader(file), nil)
		require.NoError(t, err)
		require.Len(t, r.Items, 1, r.Faults())
		assert.Equal(t, c.name, r.Items[0].(house.Bottle).Name)
	}
}

// Whatever a house holds, no cell of what it writes is run.
func TestNoCellIsAFormula(t *testing.T) {
	f := shelf(t)
	rapid.Check(t, func(t *rapid.T) {
		var out bytes.Buffer
		if rapid.Bool().Draw(t, "specs") {
			require.NoError(t, exchange.WriteSpecs(&out, []house.Spec{genSpec(t, f, "x")}))
		} else {
			require.NoError(t, exchange.WriteStock(&out, []house.Bottle{genBottle(t, "x")}))
		}
		rows, err := csv.NewReader(&out).ReadAll()
		require.NoError(t, err)
		for _, row := range rows {
			for _, cell := range row {
				require.True(t, !formula.MatchString(cell) || number.MatchString(cell), "%q would be run", cell)
				for _, stretch := range strings.Split(cell, ";")[1:] { // a cell, where semicolons separate
					require.False(t, formula.MatchString(stretch), "%q would be run", stretch)
				}
			}
		}
	})
}

// A formula behind a semicolon is guarded, and read back as it was.
func TestFormulaBehindASemicolon(t *testing.T) {
	b := house.Bottle{ID: "dock-gin", Name: "Dock gin;=1", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1, Note: "a; =2;-3;b"}
	var out bytes.Buffer
	require.NoError(t, exchange.WriteStock(&out, []house.Bottle{b}))
	assert.Contains(t, out.String(), "Dock gin;'=1")
	assert.Contains(t, out.String(), "a;' =2;'-3;b")
	r, err := readStock(&out, shelf(t))
	require.NoError(t, err)
	require.Len(t, r.Items, 1, r.Faults())
	assert.Equal(t, b.Name, r.Items[0].(house.Bottle).Name)
	assert.Equal(t, b.Note, r.Items[0].(house.Bottle).Note)
}

// Three bad rows among 300 are named by number; none of the 300 is lost.
func TestGoodRowsSurviveBadOnes(t *testing.T) {
	f := shelf(t)
	text, bad := threeHundred()
	r, err := readStock(strings.NewReader(text), f)
	require.NoError(t, err)
	var numbers []int
	for _, b := range r.Bad {
		numbers = append(numbers, b.Number)
	}
	assert.Equal(t, []int{42, 118, 277}, numbers, r.Faults())
	assert.Len(t, r.Items, 297)
	assert.Equal(t, "name,ingredient,size_ml,stock,note\n"+strings.Join(bad, "\n")+"\n", r.Rest(), "as they stood")

	s := open(t)
	_, err = exchange.Import(t.Context(), s, who, r, exchange.AllOrNone)
	require.ErrorIs(t, err, house.ErrInvalid)
	assert.Empty(t, records(t, s))
	done, err := exchange.Import(t.Context(), s, who, r, exchange.KeepGood)
	require.NoError(t, err)
	assert.Equal(t, 297, done.Added)

	mended := strings.NewReplacer(`unobtainium`, "gin", `seven`, "700", `"Bottle 277,`, "Bottle 277,").Replace(r.Rest())
	r, err = readStock(strings.NewReader(mended), f)
	require.NoError(t, err)
	assert.Empty(t, r.Rest(), r.Faults())
	_, err = exchange.Import(t.Context(), s, who, r, exchange.AllOrNone)
	require.NoError(t, err)
	assert.Len(t, records(t, s), 300)
}

// threeHundred is a file of 300 bottles with three bad rows, the last of which
// opens a quotation mark and never closes it.
func threeHundred() (text string, bad []string) {
	rows := []string{"name,ingredient,size_ml,stock,note"}
	for n := 2; n <= 301; n++ {
		row := fmt.Sprintf(`Bottle %d,gin,700,1,"shelf %d, left"`, n, n)
		switch n {
		case 42:
			row = fmt.Sprintf("Bottle %d,unobtainium,700,1,", n)
		case 118:
			row = fmt.Sprintf("Bottle %d,gin,seven,1,", n)
		case 277:
			row = fmt.Sprintf(`"Bottle %d,gin,700,1,`, n)
		}
		if n == 42 || n == 118 || n == 277 {
			bad = append(bad, row)
		}
		rows = append(rows, row)
	}
	return strings.Join(rows, "\r\n") + "\r\n", bad
}

// A file that counts the stock does not wipe what it says nothing of.
func TestColumnsThatAreLeftOut(t *testing.T) {
	there := []house.Bottle{{ID: "blue", Name: "Blue", Ingredient: "london-dry-gin", Well: true, Measured: house.Measured{ABVPct: ptr(43), SugarGPerL: ptr(1), AcidGPerL: ptr(2)},
		Price: ptr(24.9), Currency: "EUR", SizeML: 700, Stock: 2, Note: "left"}}
	for _, c := range []struct {
		file   string
		change func(*house.Bottle)
	}{
		{"id,name,ingredient,stock\nblue,Blue,gin,7\n", func(b *house.Bottle) { b.Stock = 7 }},
		{"name,ingredient,stock\nBlue,gin,\n", func(b *house.Bottle) {}}, // nobody counted
		{"name,ingredient,stock\nBlue,gin,0\n", func(b *house.Bottle) { b.Stock = 0 }},
		{"name,ingredient,brix\nBlue,gin,5\n", func(b *house.Bottle) { b.Brix, b.SugarGPerL = ptr(5), nil }},
		{"name,ingredient,price\nBlue,gin,\n", func(b *house.Bottle) { b.Price, b.Currency = nil, "" }},
		{"name,ingredient,price\nBlue,gin,30\n", func(b *house.Bottle) { b.Price = ptr(30) }},
		{"name,ingredient,size_g,well\nBlue,gin,900,\n", func(b *house.Bottle) { b.SizeML, b.SizeG, b.Well = 0, 900, false }},
		{"name,ingredient,label_contains,label_may_contain,label_read_by,label_read_at\nBlue,gin,\"milk, nuts\",egg,Ines,2026-04-01\n", func(b *house.Bottle) {
			b.Label = &house.Label{Contains: []flavor.Allergen{flavor.Milk, flavor.TreeNuts}, MayContain: []flavor.Allergen{flavor.Eggs}, ReadBy: "Ines", ReadAt: time.Date(2026, 4, 1, 0, 0, 0, 0, time.UTC)}
		}},
		{"name,ingredient,label_read_by,label_read_at\nBlue,gin,,\n", func(b *house.Bottle) {}},
		{"name,ingredient,abv_pct,note\nBlue,gin,,\n", func(b *house.Bottle) { b.ABVPct, b.Note = nil, "" }},
	} {
		r, err := readStockOver(strings.NewReader(c.file), shelf(t), there)
		require.NoError(t, err)
		require.Empty(t, r.Bad, r.Faults())
		want := there[0]
		c.change(&want)
		assert.Equal(t, []house.Item{want}, r.Items, c.file)
	}
	r, err := readStock(strings.NewReader("name,ingredient,stock\nBlue,gin,7\n"), shelf(t))
	require.NoError(t, err)
	assert.Contains(t, r.Faults(), "what a full one holds", "one that is new needs its size")
}

func TestBadSpecsAreKeptWhole(t *testing.T) {
	r, err := exchange.ReadSpecs(strings.NewReader(`name,method,service,amount,unit,ingredient
Good,shake,up,2,oz,gin
Broken,shake,up,2,oz,gin

,,,two,oz,lemon juice
,,,1,oz,simple syrup
`), shelf(t))
	require.NoError(t, err)
	require.Len(t, r.Specs(), 1)
	assert.Equal(t, 5, r.Bad[0].Number)
	assert.Equal(t, `name,method,service,amount,unit,ingredient
Broken,shake,up,2,oz,gin
,,,two,oz,lemon juice
,,,1,oz,simple syrup
`, r.Rest())
	assert.Equal(t, flavor.Shake, r.Specs()[0].Method)
}

// A file in the letters of an older program is read in them, and says so.
func TestNotUTF8(t *testing.T) {
	r, err := readStock(strings.NewReader("name,ingredient,size\nCr\xe8me de nuit,gin,70cl\n"), shelf(t))
	require.NoError(t, err)
	require.Len(t, r.Items, 1, r.Faults())
	assert.Equal(t, "Crème de nuit", r.Items[0].(house.Bottle).Name)
	assert.Contains(t, strings.Join(r.Notes, " "), "Windows-1252")
	r, err = readStock(strings.NewReader("\xff\xfen\x00a\x00m\x00e\x00,\x00s\x00i\x00z\x00e\x00\n\x00g\x00i\x00n\x00,\x001\x00L\x00\n\x00"), shelf(t))
	require.NoError(t, err)
	require.Len(t, r.Items, 1, r.Faults())
	assert.Equal(t, 1000.0, r.Items[0].(house.Bottle).SizeML)
}

// However often the reading starts anew, no row of a broken file is dropped or
// read twice: here every row is bad, since none states a size.
func TestEveryRowOfABrokenFileIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		body := rapid.StringMatching(`([a"', 1]{0,6}\r?\n){0,12}`).Draw(t, "rows")
		r, err := readStock(strings.NewReader("name,ingredient\n"+body), nil)
		require.NoError(t, err)
		require.Empty(t, r.Items)
		for _, letter := range []string{"a", "1", "'"} { // a row without any is a blank one
			_, rest, _ := strings.Cut(r.Rest(), "\n")
			require.Equal(t, strings.Count(body, letter), strings.Count(rest, letter), "%q of %q in %q", letter, body, rest)
		}
	})
}
