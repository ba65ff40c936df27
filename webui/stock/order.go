package stock

import (
	"cmp"
	"maps"
	"net/http"
	"slices"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// orderPath is the address of the list of what to order.
const orderPath = "/stock/order"

// orderView is the list of what to order of all bottles.
type orderView struct {
	House    string
	Day      string
	Lines    []orderLine
	Sums     []string // of the lines with a price, one for each currency
	Unpriced string   // what has no price and is in no sum
	Gone     string   // what ran out and has no par
}

// orderLine is a bottle to order up to its par.
type orderLine struct {
	Number, Name, Address, Size string
	Each, Sum                   string // empty if the bottle has no price
}

// orderPage lists what to order, to print.
func (p *pages) orderPage(w http.ResponseWriter, r *http.Request) error {
	room, err := p.stockroom(r.Context())
	if err != nil {
		return err
	}
	v := room.orderList()
	v.House, v.Day = p.house.Settings().Name, words.Day(time.Now())
	return p.Write(w, r, http.StatusOK, "stock-order", "layout", v)
}

// orders are the bottles to order, in the order of their names.
func (r *stockroom) orders() []house.Bottle {
	bottles := slices.DeleteFunc(slices.Clone(r.bottles), func(b house.Bottle) bool { return r.order(&b) <= 0 })
	slices.SortFunc(bottles, func(a, b house.Bottle) int {
		return cmp.Or(strings.Compare(a.Name, b.Name), strings.Compare(a.ID, b.ID))
	})
	return bottles
}

// orderList says how many of each bottle to order, and what they cost together.
func (r *stockroom) orderList() *orderView {
	v := &orderView{}
	sums, unpriced := map[string]float64{}, []string{}
	for _, b := range r.orders() {
		n := r.order(&b)
		line := orderLine{Number: words.Plain(n), Name: b.Name, Address: bottleAddress(&b), Size: part.SizeOf(&b)}
		if b.Price == nil {
			unpriced = append(unpriced, b.Name)
		} else {
			sums[b.Currency] += n * *b.Price
			line.Each = words.Joined(words.Figure(*b.Price, 2), b.Currency)
			line.Sum = words.Joined(words.Figure(n**b.Price, 2), b.Currency)
		}
		v.Lines = append(v.Lines, line)
	}
	for _, currency := range slices.Sorted(maps.Keys(sums)) {
		v.Sums = append(v.Sums, words.Joined(words.Figure(sums[currency], 2), currency))
	}
	if len(unpriced) > 0 {
		v.Unpriced = say.It("stock.in-no-sum", "Names", words.List(unpriced))
	}
	if gone := r.goneWithoutPar(); len(gone) > 0 {
		v.Gone = say.It("stock.out-without-par", "Names", words.List(gone))
	}
	return v
}

// goneWithoutPar names what ran out and says of no number how many to order.
func (r *stockroom) goneWithoutPar() (out []string) {
	for i := range r.bottles {
		if b := &r.bottles[i]; b.Par == 0 && !r.there(b) {
			out = append(out, b.Name)
		}
	}
	slices.Sort(out)
	return out
}
