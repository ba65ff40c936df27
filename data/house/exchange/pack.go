package exchange

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/grid"
	"counterpour/data/house/exchange/numeral"
)

// What is appended to a size once it is settled what the count and the price of its row are for.
const (
	byThePack       = ", by the pack"
	byTheBottle     = ", by the bottle"
	pricedByThePack = ", priced by the pack" // the count is of bottles
)

// bareSize is a size without what is settled of its pack.
func bareSize(written string) string {
	for _, mark := range []string{byThePack, byTheBottle, pricedByThePack} {
		written = strings.TrimSuffix(written, mark)
	}
	return written
}

// pack decides whether a row counts packs or bottles, and which of them it prices: bottles, if
// the file's prices are for one bottle, or if a size that is written as a pack counts at least
// as many as are in it; otherwise the user must say.
func (b *bottleReader) pack() {
	written, bottle := b.cell(column.Size), &b.r.Bottle
	n, one, ok := numeral.Pack(bareSize(written))
	switch settled := ok && n > 1 && b.has(column.Size); {
	case strings.HasSuffix(written, byTheBottle):
	case settled && strings.HasSuffix(written, byThePack):
		if b.counted() {
			bottle.Stock *= float64(n)
		}
		b.priceEach(n)
	case settled && strings.HasSuffix(written, pricedByThePack):
		b.priceEach(n)
	case !b.counted() && bottle.Price == nil, b.priceOfOne():
	case settled:
		if bottle.Stock < float64(n) {
			b.askPack(fmt.Sprintf("%q is a pack of %d", written, n), one, written)
		}
	default:
		b.packBeside()
	}
}

// packBeside asks about a pack that another cell than the size tells of.
func (b *bottleReader) packBeside() {
	bottle := &b.r.Bottle
	n, said := b.packSaid()
	if n < 2 || bottle.Price == nil && bottle.Stock >= float64(n) {
		return
	}
	one := bareSize(b.cell(column.Size))
	switch {
	case one != "":
	case bottle.SizeML > 0:
		one = exact(bottle.SizeML) + " ml"
	case bottle.SizeG > 0:
		one = exact(bottle.SizeG) + " g"
	default:
		return // the size is asked about first
	}
	if _, bare, pack := numeral.Pack(one); pack {
		one = bare
	}
	b.askPack(fmt.Sprintf("%q says packs of %d", said, n), one, fmt.Sprintf("%d x %s", n, one))
}

// askPack asks what the count and the price are for. A count of at least a pack's worth is one
// of bottles.
func (b *bottleReader) askPack(says, one, pack string) {
	n, _, _ := numeral.Pack(pack)
	what, by := "are the count and the price", byThePack
	switch {
	case !b.counted():
		what = "is the price"
	case b.r.Bottle.Price == nil:
		what = "is the count"
	case b.r.Bottle.Stock >= float64(n):
		what, by = "is the price", pricedByThePack
	}
	b.fault(column.Size, fmt.Sprintf("%s; %s of bottles or of packs?", says, what),
		Remedy{"of bottles", column.Size, one + byTheBottle}, Remedy{"of packs", column.Size, pack + by})
}

// counted reports whether the row says how many there are.
func (b *bottleReader) counted() bool { return b.has(column.Stock) && !b.r.Uncounted }

// priceEach makes the price of a pack that of one bottle in it.
func (b *bottleReader) priceEach(n int) {
	if p := b.r.Bottle.Price; p != nil {
		each := math.Round(*p/float64(n)*1e4) / 1e4
		b.r.Bottle.Price = &each
	}
}

// packSaid returns how many bottles are in the pack that a row tells of beside its size, and the
// words that say so; 0 if none do. A list that this program wrote counts bottles.
func (b *bottleReader) packSaid() (n int, said string) {
	if b.titled(column.ID) && b.titled(column.SizeML) {
		return 0, ""
	}
	for i, c := range b.Columns {
		if i >= len(b.r.row.Cells) {
			break
		}
		cell := strings.TrimSpace(grid.Unguard(b.r.row.Cells[i]))
		switch c.Field {
		case column.Name, column.Note, column.Size:
			n, said = numeral.PackIn(cell)
		case column.Beside, column.Nothing:
			if n, said = numeral.PackIn(cell); n == 0 && column.OfPacks(c.Title) {
				n, said = numeral.PackCell(cell), c.Title+": "+cell
			}
		}
		if n > 1 {
			return n, said
		}
	}
	return 0, ""
}

// priceOfOne reports whether the title of the price column says that prices are for one
// bottle. Then the file counts bottles.
func (b *bottleReader) priceOfOne() bool {
	for _, c := range b.Columns {
		if c.Field != column.Price {
			continue
		}
		for _, word := range strings.FieldsFunc(strings.ToLower(c.Title), func(r rune) bool { return !unicode.IsLetter(r) }) {
			if slices.Contains([]string{"bottle", "btl", "unit", "each", "flasche", "flaschenpreis", "stückpreis", "unitaire", "unitario"}, word) {
				return true
			}
		}
	}
	return false
}
