package exchange

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/numeral"
)

// byThePack is appended to a size if the count and the price of its row are for packs.
const byThePack = ", by the pack"

// pack decides whether a row counts packs or bottles: bottles, if there are at least as
// many as in a pack or if the file's prices are for one bottle; otherwise the user must
// say.
func (b *bottleReader) pack() {
	written, bottle := b.cell(column.Size), &b.r.Bottle
	n, one, ok := numeral.Pack(strings.TrimSuffix(written, byThePack))
	switch {
	case !ok || n < 2 || !b.has(column.Size):
	case strings.HasSuffix(written, byThePack):
		bottle.Stock *= float64(n)
		if bottle.Price != nil {
			each := math.Round(*bottle.Price/float64(n)*1e4) / 1e4
			bottle.Price = &each
		}
	case bottle.Stock >= float64(n), !b.has(column.Stock) && bottle.Price == nil, b.priceOfOne():
	default:
		b.fault(column.Size, fmt.Sprintf("%q is a pack of %d; are the count and the price of bottles or of packs?", written, n),
			Remedy{"of bottles", column.Size, one}, Remedy{"of packs", column.Size, written + byThePack})
	}
}

// priceOfOne reports whether the title of the price column says that prices are for one
// bottle. Then the file counts bottles.
func (b *bottleReader) priceOfOne() bool {
	for _, c := range b.Columns {
		if c.Field != column.Price {
			continue
		}
		for _, word := range strings.FieldsFunc(strings.ToLower(c.Title), func(r rune) bool { return !unicode.IsLetter(r) }) {
			if slices.Contains([]string{"bottle", "btl", "unit", "each"}, word) {
				return true
			}
		}
	}
	return false
}
