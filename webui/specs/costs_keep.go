package specs

import (
	"errors"
	"math"
	"net/http"
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// keepPrices writes the prices of a form that differ from those that are kept, and returns the
// page as it is then. One that cannot be read stays as it was typed and says why; the others are
// kept all the same.
func (p *pages) keepPrices(r *http.Request, v *costsView, again func() (*costsView, error)) (*costsView, []house.Change, error) {
	var edits []house.Edit
	var bad []costRow
	for i := range v.Rows {
		row := &v.Rows[i]
		if !r.PostForm.Has(row.Field) {
			continue
		}
		typed := strings.TrimSpace(r.PostForm.Get(row.Field))
		if typed == row.Price {
			continue
		}
		row.Price = typed
		edit, err := p.priceEdit(row, typed, v.Sells, v.Currency, r.PostForm.Get("version."+row.Slug))
		if err != nil {
			row.Fault = words.Sentence(form.Message(err))
			bad = append(bad, *row)
			continue
		}
		edits = append(edits, edit)
	}
	var changes []house.Change
	var err error
	if len(edits) > 0 {
		if changes, err = p.house.Store().Write(r.Context(), frame.By(r), edits...); err != nil || len(bad) == 0 {
			return v, changes, err
		}
		now, err := again()
		if err != nil {
			return v, changes, err
		}
		v = now
		v.markBad(bad)
	}
	if len(bad) > 0 {
		v.Trouble = say.It("specs.prices-not-understood", "Prices", len(bad), "Kept", len(edits))
	}
	return v, changes, nil
}

// markBad writes what was typed and cannot be read back into its rows, with why.
func (v *costsView) markBad(bad []costRow) {
	for i := range v.Rows {
		for _, b := range bad {
			if row := &v.Rows[i]; row.Slug == b.Slug {
				row.Price, row.Fault = b.Price, b.Fault
			}
		}
	}
}

// priceEdit is what keeps a price as it was typed; an empty one is taken away.
func (p *pages) priceEdit(row *costRow, typed, currency, costs, version string) (house.Edit, error) {
	on, err := strconv.ParseInt(version, 10, 64)
	if err != nil {
		on = 0 // the drink had no price when the page was made
	}
	ref := house.Ref{Kind: house.KindPrice, ID: row.Slug}
	if typed == "" {
		return house.Remove(ref, on), nil
	}
	if currency == "" {
		return house.Edit{}, errors.New(say.It("specs.no-currency"))
	}
	amount, err := row.priceFor(typed, currency, costs)
	if err != nil {
		return house.Edit{}, err
	}
	item := house.MenuPrice{Spec: row.Slug, Amount: amount, Currency: currency}
	return house.Put(item, on), house.Check(item)
}

// priceFor reads a price, or the share of it that the pours may cost, as on the page of a spec;
// to the hundredth.
func (row *costRow) priceFor(typed, currency, costs string) (float64, error) {
	share, is := strings.CutSuffix(typed, "%")
	if !is {
		return form.PriceIn(typed, currency, say.It("specs.such-as-a-price"))
	}
	percent, err := readShare(share)
	switch {
	case err != nil:
		return 0, err
	case currency != costs:
		return 0, errors.New(say.It("specs.no-price-from-a-share", "Reason", say.It("specs.price-in-another-currency", "Price", currency, "Bottles", costs)))
	case !row.sure || row.cost <= 0:
		return 0, errors.New(say.It("specs.no-price-from-a-share", "Reason", row.Reason))
	}
	return math.Round(100*100*row.cost/percent) / 100, nil
}
