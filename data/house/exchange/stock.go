package exchange

import (
	"io"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/flavor"
)

// StockColumns are the columns of a stock file, in the order in which they are written.
func StockColumns() []string {
	return []string{"id", "name", "ingredient", "well", "abv_pct", "brix", "sugar_g_per_l", "acid_g_per_l",
		"price", "currency", "size_ml", "size_g", "stock", "par", "note",
		"label_contains", "label_may_contain", "label_vegan", "label_read_by", "label_read_at", "label_unread", "out_since", "words"}
}

// WriteStock writes bottles and the house's own words as CSV. The row of a bottle holds
// the words for its ingredient. Words for ingredients without a bottle get rows without a
// name.
func WriteStock(w io.Writer, bottles []house.Bottle, names ...house.Name) error {
	var rows [][]string
	beside, left := wordsOf(bottles, names)
	for i, b := range bottles {
		rows = append(rows, []string{b.ID, b.Name, b.Ingredient, yesIf(b.Well),
			optional(b.ABVPct), optional(b.Brix), optional(b.SugarGPerL), optional(b.AcidGPerL),
			optional(b.Price), b.Currency, unlessZero(b.SizeML), unlessZero(b.SizeG), exact(b.Stock), unlessZero(b.Par), b.Note,
			listOf(b.Label.Says(flavor.Contains)), listOf(b.Label.Says(flavor.MayContain)), yesIf(b.Label.SaysVegan()), b.Label.Reader(), readAt(b.Label), yesIf(b.Unread), momentOf(b.OutSince), strings.Join(beside[i], wordsApart)})
	}
	for _, n := range left {
		row := make([]string, len(StockColumns()))
		row[2], row[len(row)-1] = n.Ingredient, n.Written
		rows = append(rows, row)
	}
	return writeTable(w, StockColumns(), rows)
}

func yesIf(is bool) string {
	if is {
		return "yes"
	}
	return ""
}

func listOf(allergens []flavor.Allergen) string {
	words := make([]string, len(allergens))
	for i, a := range allergens {
		words[i] = string(a)
	}
	return strings.Join(words, ", ")
}

// readAt returns when the label was read; "" if nobody has read it.
func readAt(l *house.Label) string {
	if l == nil {
		return ""
	}
	return momentOf(&l.ReadAt)
}

// momentOf returns a time as a cell; "" if there is none.
func momentOf(at *time.Time) string {
	if at == nil {
		return ""
	}
	return at.Format(time.RFC3339Nano)
}
