package specs

import (
	"errors"
	"net/http"
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// keepPrices writes the prices of a form that differ from those that are kept. What was
// typed stays in the rows; one that cannot be read says why, and then nothing is written.
func (p *pages) keepPrices(r *http.Request, v *costsView) ([]house.Change, error) {
	var edits []house.Edit
	bad := 0
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
		edit, err := p.priceEdit(row, typed, v.Currency, r.PostForm.Get("version."+row.Slug))
		if err != nil {
			row.Fault = words.Sentence(form.Message(err))
			bad++
			continue
		}
		edits = append(edits, edit)
	}
	switch {
	case bad > 0:
		v.Trouble = say.It("specs.prices-not-understood", "Prices", bad)
		return nil, nil
	case len(edits) == 0:
		return nil, nil
	}
	return p.house.Store().Write(r.Context(), frame.By(r), edits...)
}

// priceEdit is what keeps a price as it was typed; an empty one is taken away.
func (p *pages) priceEdit(row *costRow, typed, currency, version string) (house.Edit, error) {
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
	amount, err := form.PriceIn(typed, currency, say.It("specs.such-as-a-price"))
	if err != nil {
		return house.Edit{}, err
	}
	item := house.MenuPrice{Spec: row.Slug, Amount: amount, Currency: currency}
	return house.Put(item, on), house.Check(item)
}
