package stock

import (
	"cmp"
	"maps"
	"net/http"
	"slices"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/webui/form"
	"counterpour/webui/frame"
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
	Unstated []parRow // the same, each with a field for its par
}

// parRow is a bottle that ran out, and the field in which its par is written.
type parRow struct {
	Name, Address, Size string
	Field               string
	Typed, Fault        string
}

// parField is the field of a form in which the par of a bottle is written.
func parField(b *house.Bottle) string { return "par-" + b.ID }

// orderLine is a bottle to order up to its par.
type orderLine struct {
	Number, Name, Address, Size string
	Each, Sum                   string // empty if the bottle has no price
}

// orderPage lists what to order, to print, and takes the par of what ran out without one.
func (p *pages) orderPage(w http.ResponseWriter, r *http.Request) error {
	typed := form.Values{}
	status := http.StatusOK
	if r.Method == http.MethodPost {
		if err := form.Parse(r); err != nil {
			return err
		}
		typed = form.Values(r.PostForm)
		kept, err := p.keepPars(r, typed)
		if err != nil {
			return err
		}
		if kept {
			http.Redirect(w, r, orderPath, http.StatusSeeOther)
			return nil
		}
		status = http.StatusUnprocessableEntity
	}
	room, err := p.stockroom(r.Context())
	if err != nil {
		return err
	}
	v := room.orderList(typed)
	v.House, v.Day = p.house.Settings().Name, words.Day(time.Now())
	return p.Write(w, r, status, "stock-order", "layout", v)
}

// keepPars writes the pars that were typed for bottles that have none, all of them; false if one of
// them cannot be read, and then nothing is written.
func (p *pages) keepPars(r *http.Request, typed form.Values) (kept bool, err error) {
	there, err := house.All[house.Bottle](r.Context(), p.house.Store())
	if err != nil {
		return false, err
	}
	var edits []house.Edit
	for _, b := range there {
		if b.Item.Par != 0 || typed.Get(parField(&b.Item)) == "" {
			continue
		}
		if b.Item.Par, err = parOf(typed, &b.Item); err != nil {
			return false, nil
		}
		edits = append(edits, house.Put(b.Item, b.Version))
	}
	if len(edits) == 0 {
		return true, nil
	}
	_, err = p.house.Store().Write(r.Context(), frame.By(r), edits...)
	return err == nil, err
}

// mostPar bounds what a slip of the hand may order.
const mostPar = 1000

// parOf reads how many to order up to, above 0 and at most mostPar.
func parOf(typed form.Values, b *house.Bottle) (float64, error) {
	n, err := typed.Number(parField(b), say.It("stock.par"), say.It("stock.bottles"))
	if err == nil && (n <= 0 || n > mostPar) {
		err = form.Missing(parField(b), say.It("stock.par-range", "Most", mostPar))
	}
	return n, err
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
// typed is what was written as pars and could not be kept.
func (r *stockroom) orderList(typed form.Values) *orderView {
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
	var gone []string
	for _, b := range r.goneWithoutPar() {
		gone = append(gone, b.Name)
		row := parRow{Name: b.Name, Address: bottleAddress(&b), Size: part.SizeOf(&b), Field: parField(&b), Typed: typed.Get(parField(&b))}
		if row.Typed != "" {
			if _, err := parOf(typed, &b); err != nil {
				row.Fault = words.Sentence(form.Message(err))
			}
		}
		v.Unstated = append(v.Unstated, row)
	}
	if len(gone) > 0 {
		v.Gone = say.It("stock.out-without-par", "Names", words.List(gone))
	}
	return v
}

// goneWithoutPar lists what ran out and says of no number how many to order, in the order of the names.
func (r *stockroom) goneWithoutPar() (out []house.Bottle) {
	for i := range r.bottles {
		if b := &r.bottles[i]; b.Par == 0 && !r.there(b) {
			out = append(out, *b)
		}
	}
	slices.SortFunc(out, func(a, b house.Bottle) int {
		return cmp.Or(strings.Compare(a.Name, b.Name), strings.Compare(a.ID, b.ID))
	})
	return out
}
