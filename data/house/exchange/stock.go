package exchange

import (
	"io"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
)

// StockColumns are the columns of a stock file, in the order they are written.
func StockColumns() []string {
	return []string{"id", "name", "ingredient", "well", "abv_pct", "brix", "sugar_g_per_l", "acid_g_per_l",
		"price", "currency", "size_ml", "size_g", "stock", "note",
		"label_contains", "label_may_contain", "label_read_by", "label_read_at"}
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
			optional(b.Price), b.Currency, unlessZero(b.SizeML), unlessZero(b.SizeG), exact(b.Stock), b.Note,
			listOf(b.Label.Says(flavor.Contains)), listOf(b.Label.Says(flavor.MayContain)), b.Label.Reader(), readAt(b.Label)})
	}
	return writeTable(w, StockColumns(), rows)
}

// ReadStock reads bottles from CSV. The finder turns names of ingredients into
// ids; without one they must be ids.
func ReadStock(r io.Reader, f draft.Finder) (*Reading, error) { return ReadStockOver(r, f, nil) }

// ReadStockOver is [ReadStock] for a house that has bottles: what a file has no
// column for stays as it is in the bottle of that id. An empty field is empty.
func ReadStockOver(r io.Reader, f draft.Finder, there []house.Bottle) (*Reading, error) {
	out := &Reading{}
	t, err := readTable(r, StockColumns(), []string{"name", "ingredient"}, out)
	if err != nil {
		return nil, err
	}
	byID := map[string]house.Bottle{}
	for _, b := range there {
		byID[b.ID] = b
	}
	for _, row := range t.rows {
		l := &line{t: t, row: row.cells}
		id := l.word("id")
		if id == "" {
			id = house.IDOf(house.KindBottle, l.text("name"))
		}
		b := byID[id]
		b.ID = id
		l.bottle(&b, f)
		if l.err == nil && out.add(row.number, b) {
			continue
		}
		out.spoil(row)
		if l.err != nil {
			out.bad(row.number, id, l.err)
		}
	}
	return out.done(), nil
}

// bottle puts what a row states into a bottle.
func (l *line) bottle(b *house.Bottle, f draft.Finder) {
	b.Name, b.Ingredient = l.text("name"), l.ingredient(f)
	if l.has("well") {
		b.Well = l.yes("well")
	}
	l.measured(&b.Measured)
	if l.has("price") {
		if b.Price = l.number("price"); b.Price == nil && !l.has("currency") {
			b.Currency = ""
		}
	}
	if l.has("currency") {
		b.Currency = l.word("currency")
	}
	if l.has("size_ml") || l.has("size_g") { // one of the two, so that both are stated with either
		b.SizeML, b.SizeG = l.numberOr("size_ml", 0), l.numberOr("size_g", 0)
	}
	if l.has("stock") {
		b.Stock = l.numberOr("stock", 0)
	}
	if l.has("note") {
		b.Note = l.text("note")
	}
	if l.has("label_read_by") {
		b.Label = l.label()
	}
}

func (l *line) measured(m *house.Measured) {
	if l.has("abv_pct") {
		m.ABVPct = l.number("abv_pct")
	}
	if l.has("brix") || l.has("sugar_g_per_l") { // one of the two
		m.Brix, m.SugarGPerL = l.number("brix"), l.number("sugar_g_per_l")
	}
	if l.has("acid_g_per_l") {
		m.AcidGPerL = l.number("acid_g_per_l")
	}
}

// label reads what somebody read on a bottle; nil where nobody has.
func (l *line) label() *house.Label {
	said := house.Label{Contains: l.allergens("label_contains"), MayContain: l.allergens("label_may_contain"), ReadBy: l.word("label_read_by")}
	when := l.word("label_read_at")
	if said.ReadBy == "" && when == "" && len(said.Contains)+len(said.MayContain) == 0 {
		return nil
	}
	for _, layout := range []string{time.RFC3339Nano, time.DateOnly} {
		at, err := time.Parse(layout, when)
		if err == nil {
			said.ReadAt = at
			return &said
		}
	}
	l.fail("label_read_at: %q is no date; write it as 2026-04-01", when)
	return nil
}

// allergens reads a list of allergens with commas between them.
func (l *line) allergens(column string) []flavor.Allergen {
	var out []flavor.Allergen
	for w := range strings.SplitSeq(l.word(column), ",") {
		if w = strings.TrimSpace(w); w == "" {
			continue
		}
		a, err := flavor.ParseAllergen(w)
		if err != nil {
			l.fail("%s: %s", column, err)
			return nil
		}
		out = append(out, a)
	}
	return out
}

func listOf(allergens []flavor.Allergen) string {
	words := make([]string, len(allergens))
	for i, a := range allergens {
		words[i] = string(a)
	}
	return strings.Join(words, ", ")
}

// readAt is when a label was read, empty if nobody has.
func readAt(l *house.Label) string {
	if l == nil {
		return ""
	}
	return l.ReadAt.Format(time.RFC3339Nano)
}

// ingredient reads an id or a name.
func (l *line) ingredient(f draft.Finder) string {
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
