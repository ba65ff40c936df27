package exchange

import (
	"io"

	"counterpour/data/house"
	"counterpour/flavor/measure"
)

// StockColumns are the columns of a stock file, in the order they are written.
func StockColumns() []string {
	return []string{"id", "name", "ingredient", "well", "abv_pct", "brix", "sugar_g_per_l", "acid_g_per_l",
		"price", "currency", "size_ml", "size_g", "stock", "note"}
}

// WriteStock writes bottles as CSV.
func WriteStock(w io.Writer, bottles []house.Bottle) error {
	var rows [][]string
	for _, b := range bottles {
		well := ""
		if b.Well {
			well = "yes"
		}
		rows = append(rows, []string{b.ID, b.Name, b.Ingredient, well,
			optional(b.ABVPct), optional(b.Brix), optional(b.SugarGPerL), optional(b.AcidGPerL),
			optional(b.Price), b.Currency, unlessZero(b.SizeML), unlessZero(b.SizeG), exact(b.Stock), b.Note})
	}
	return writeTable(w, StockColumns(), rows)
}

// ReadStock reads bottles from CSV. The finder turns names of ingredients into
// ids; without one they must be ids.
func ReadStock(r io.Reader, f measure.Finder) (*Reading, error) {
	out := &Reading{}
	t, err := readTable(r, StockColumns(), []string{"name", "ingredient"}, out)
	if err != nil {
		return nil, err
	}
	for _, row := range t.rows {
		l := &line{t: t, row: row.cells}
		b := l.bottle(f)
		if l.err == nil && out.add(row.number, b) {
			continue
		}
		out.spoil(row)
		if l.err != nil {
			out.bad(row.number, b.ID, l.err)
		}
	}
	return out.done(), nil
}

func (l *line) bottle(f measure.Finder) house.Bottle {
	b := house.Bottle{ID: l.word("id"), Name: l.text("name"), Ingredient: l.ingredient(f), Well: l.yes("well"),
		Measured: house.Measured{ABVPct: l.number("abv_pct"), Brix: l.number("brix"),
			SugarGPerL: l.number("sugar_g_per_l"), AcidGPerL: l.number("acid_g_per_l")},
		Price: l.number("price"), Currency: l.word("currency"),
		SizeML: l.numberOr("size_ml", 0), SizeG: l.numberOr("size_g", 0), Stock: l.numberOr("stock", 0), Note: l.text("note")}
	if b.ID == "" {
		b.ID = house.IDOf(house.KindBottle, b.Name)
	}
	return b
}

// ingredient reads an id or a name.
func (l *line) ingredient(f measure.Finder) string {
	w := l.word("ingredient")
	if w == "" {
		l.fail("ingredient: is empty; write an id or a name")
		return ""
	}
	if f == nil {
		return w
	}
	p, _, err := f.Resolve(w)
	if err != nil {
		l.fail("ingredient: %s", faultText(err))
		return ""
	}
	return p.ID
}
