package stock

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/webui/say"
)

// sortHead is the head of a column that the list can be sorted by.
type sortHead struct {
	Title, Address string
	Sorted         string // ascending or descending, empty if it is not sorted by this
}

// sortKeys are what the list may be sorted by, as numbers or as text; what is not
// known comes last either way.
var sortKeys = map[string]func(*stockroom, *house.Bottle) (number float64, text string){
	"name":  func(_ *stockroom, b *house.Bottle) (float64, string) { return 0, strings.ToLower(b.Name) },
	"stock": func(_ *stockroom, b *house.Bottle) (float64, string) { return b.Stock, "" },
	"strength": func(r *stockroom, b *house.Bottle) (float64, string) {
		ref, ok := referTo(r.catalogue, r.shelf, b.Ingredient)
		if !ok {
			return math.NaN(), ""
		}
		laid, _ := laidOver(ref.profile, *b)
		return laid.ABV.Value, ""
	},
	"price": func(r *stockroom, b *house.Bottle) (float64, string) {
		ref, ok := referTo(r.catalogue, r.shelf, b.Ingredient)
		if !ok || b.Price == nil {
			return math.NaN(), ""
		}
		return prep.PourCost(*b.Price, b.VolumeML(ref.profile), 1), ""
	},
}

// heads are the heads of the columns; the one that is sorted by turns the order.
func (q *stockQuery) heads() []sortHead {
	var out []sortHead
	for _, h := range []struct{ key, title string }{{"name", say.It("stock.column-bottle")}, {"stock", say.It("stock.column-on-hand")}, {"strength", say.It("stock.strength")}, {"price", say.It("stock.price")}} {
		next := *q
		next.Sort, next.Down = h.key, q.Sort == h.key && !q.Down
		head := sortHead{Title: h.title, Address: next.address(1)}
		switch {
		case q.Sort == h.key && q.Down:
			head.Sorted = "descending"
		case q.Sort == h.key:
			head.Sorted = "ascending"
		}
		out = append(out, head)
	}
	return out
}

// sort puts bottles, which are in the order of the shelves, in the order asked for.
func (r *stockroom) sort(bottles []house.Bottle, q stockQuery) {
	key := sortKeys[q.Sort]
	if key == nil {
		return
	}
	slices.SortStableFunc(bottles, func(a, b house.Bottle) int {
		x, s := key(r, &a)
		y, t := key(r, &b)
		if math.IsNaN(x) || math.IsNaN(y) {
			return cmp.Compare(order(math.IsNaN(x)), order(math.IsNaN(y)))
		}
		c := cmp.Or(cmp.Compare(x, y), strings.Compare(s, t))
		if q.Down {
			return -c
		}
		return c
	})
}

// order puts what is unknown after what is known.
func order(unknown bool) int {
	if unknown {
		return 1
	}
	return 0
}
