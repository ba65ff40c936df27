package column

import (
	"slices"
	"strings"

	"counterpour/data/house/exchange/numeral"
)

// Words of a title beside one for a pack that say what else its column holds: money, marks and
// places, and counts, unless they are per pack. Common practice, no source.
var (
	notOfPacks = []string{"price", "cost", "value", "preis", "ek", "vk", "netto", "prix", "coût", "precio", "coste", "prezzo", "costo", "no", "nr", "nummer", "number", "code", "ean", "sku", "barcode", "date"}
	countWords = []string{"hand", "stock", "order", "ordered", "par", "bestand", "bestellt", "min", "minimum", "max", "received", "total"}
	perWords   = []string{"per", "pro", "je", "por"}
)

// OfPacks reports whether a title says that the figures below it are how many bottles come in
// one pack, such as "units per case" or "VE".
func OfPacks(title string) bool {
	words := strings.Fields(titleKey(title))
	has := func(list []string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(list, w) })
	}
	return slices.ContainsFunc(words, numeral.PackWord) && !has(notOfPacks) && (!has(countWords) || has(perWords))
}
