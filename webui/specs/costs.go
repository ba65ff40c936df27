package specs

import (
	"cmp"
	"context"
	"errors"
	"math"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// costsPath is the address of what the drinks of the menu cost, and sell for.
const costsPath = "/costs"

// costsAPage is how many drinks it lists at once.
const costsAPage = 120

// costsView is the costs of the menu: a drink a row.
type costsView struct {
	Heads    []costHead
	Rows     []costRow
	Drinks   int
	Pager    part.Pager
	Here     string // the address of the list as it is sorted
	Currency string // of the bottles, and so of what drinks cost
	Sells    string // the currency of prices: of the house, else of the bottles
	Fault    string // why no drink has a cost
	Apart    bool   // prices and costs are in two currencies, so that there are no shares
	Together string // what one of each costs, of what they sell for
	Unknown  string // drinks whose cost is not known in full
	Undo     *part.Undo
	Saved    bool
	Trouble  string // why prices that were sent are not kept
}

// costHead is the head of a column, which sorts by it.
type costHead struct{ Title, Address, Sorted, Class string }

// costRow is what a drink costs, and sells for.
type costRow struct {
	Name, Page string
	Cost       string // empty if it is not known
	Reason     string // why it is not known in full
	Field      string // of its price in the form
	Price      string // as it is kept, or as it was typed
	Kept       string // in the currency that it was kept in
	Share      string
	Fault      string

	Slug    string
	Version int64 // of the price that is kept; 0 if none is

	cost, price, share float64 // 0 if unknown
	sure               bool    // every pour has a price
}

// costs lists what the drinks of the menu cost to pour, and takes their prices.
func (p *pages) costs(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	page, err := part.ReadPage(r.Form)
	if err != nil {
		return err
	}
	key, down := strings.CutPrefix(r.Form.Get("sort"), "-")
	if key != "" && costKeys[key] == nil {
		return form.ErrUnreadable
	}
	v, err := p.costsOf(r.Context(), key, down, page)
	if err != nil {
		return err
	}
	if r.Method != http.MethodPost {
		v.Saved, v.Undo = r.Form.Has("saved"), part.UndoIn(r.Form, v.Here)
		return p.Write(w, r, http.StatusOK, "costs", "layout", v)
	}
	v, changes, err := p.keepPrices(r, v, func() (*costsView, error) { return p.costsOf(r.Context(), key, down, page) })
	undo := part.UndoOf(changes, v.Here)
	switch {
	case errors.Is(err, house.ErrConflict):
		v.Trouble = say.It("specs.price-changed-meanwhile")
		return p.Write(w, r, http.StatusConflict, "costs", "layout", v)
	case err != nil:
		return err
	case v.Trouble != "":
		v.Undo = undo
		return p.Write(w, r, http.StatusUnprocessableEntity, "costs", "layout", v)
	}
	back := url.Values{"saved": {"yes"}}
	if undo != nil {
		back.Set("undo", undo.Mark)
	}
	http.Redirect(w, r, withMore(v.Here, back)+"#said", http.StatusSeeOther)
	return nil
}

// withMore is an address with more said in it.
func withMore(address string, more url.Values) string {
	if strings.Contains(address, "?") {
		return address + "&" + more.Encode()
	}
	return address + "?" + more.Encode()
}

// costsOf works out the page.
func (p *pages) costsOf(ctx context.Context, key string, down bool, page int) (*costsView, error) {
	menu, err := p.house.Menu(ctx)
	if err != nil {
		return nil, err
	}
	t, err := part.TariffOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	kept, err := house.All[house.MenuPrice](ctx, p.house.Store())
	if err != nil {
		return nil, err
	}
	v := &costsView{Drinks: len(menu), Fault: t.Fault, Currency: t.Currency}
	if v.Sells = cmp.Or(p.house.Settings().Currency, v.Currency); v.Currency == "" {
		v.Currency = v.Sells
	}
	v.Apart = v.Currency != v.Sells
	rows := make([]costRow, len(menu))
	var unknown []string
	for i := range menu {
		rows[i] = costRowOf(t, &menu[i], kept, v.Sells)
		if !rows[i].sure {
			unknown = append(unknown, rows[i].Name)
		}
	}
	v.add(t, rows)
	if t.Fault == "" && len(unknown) > 0 {
		v.Unknown = house.FirstFew(unknown)
	}
	fields := url.Values{}
	if key != "" {
		sortCosts(rows, key, down)
		fields.Set("sort", map[bool]string{true: "-"}[down]+key)
	}
	v.Heads = costHeads(key, down, v.Currency, v.Sells)
	v.Pager = part.NewPager(len(rows), costsAPage, page, costsPath, fields)
	v.Rows = part.PageOf(v.Pager, rows)
	if page > 1 {
		fields.Set(part.PageField, strconv.Itoa(page))
	}
	v.Here = form.Link(costsPath, fields)
	return v, nil
}

func costRowOf(t *part.Tariff, m *behind.HouseSpec, kept []house.Kept[house.MenuPrice], sells string) costRow {
	c := t.CostOf(&m.Spec)
	row := costRow{Slug: m.Slug, Name: m.Spec.Name, Page: "/specs/" + m.Slug, Field: "price." + m.Slug, cost: c.Known, sure: c.Reason() == ""}
	if t.Fault == "" {
		row.Reason = c.Reason()
	}
	if c.Amount != "" {
		row.Cost = t.Figure(c.Known)
	}
	if c.Amount != "" && !row.sure {
		row.Cost = say.It("specs.at-least", "Figure", row.Cost)
	}
	at, found := slices.BinarySearchFunc(kept, m.Slug, func(k house.Kept[house.MenuPrice], slug string) int { return strings.Compare(k.Item.Spec, slug) })
	if !found {
		return row
	}
	price := &kept[at]
	row.Version, row.price = price.Version, price.Item.Amount
	if row.Price = words.Figure(price.Item.Amount, 2); price.Item.Amount == math.Trunc(price.Item.Amount) {
		row.Price = words.Plain(price.Item.Amount)
	}
	row.Price = t.Figures(row.Price)
	row.Kept = row.Price
	if sells != "" && price.Item.Currency != sells {
		row.Price, row.Kept = words.Joined(row.Price, price.Item.Currency), words.Joined(row.Price, price.Item.Currency)
	}
	switch {
	case t.Currency != "" && price.Item.Currency != t.Currency:
		row.Reason = say.It("specs.price-in-another-currency", "Price", price.Item.Currency, "Bottles", t.Currency)
	case c.Amount != "":
		row.share = c.Known / row.price
		if row.Share = words.Figure(100*row.share, 1); !row.sure {
			row.Share = say.It("specs.at-least", "Figure", row.Share)
		}
	}
	return row
}

// add says what one of each drink costs, of those with a price and a cost.
func (v *costsView) add(t *part.Tariff, rows []costRow) {
	n, cost, price := 0, 0.0, 0.0
	for i := range rows {
		if r := &rows[i]; r.sure && r.share > 0 {
			n, cost, price = n+1, cost+r.cost, price+r.price
		}
	}
	if n > 1 {
		v.Together = say.It("specs.one-of-each", "Drinks", n, "Cost", t.Money(cost), "Price", t.Money(price), "Share", words.Figure(100*cost/price, 1))
	}
}
