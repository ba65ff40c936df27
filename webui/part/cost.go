package part

import (
	"context"
	"errors"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/webui/behind"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Tariff is the house's prices.
type Tariff struct {
	prep.Prices
	shelf *house.Shelf
	said  house.Settings
	Fault string // why there are no prices, for the user
}

// TariffOf reads the current prices.
func TariffOf(ctx context.Context, h behind.House) (*Tariff, error) {
	t := &Tariff{shelf: h.Shelf(), said: h.Settings()}
	var err error
	t.Prices, err = h.Prices(ctx)
	var own *house.Error
	switch {
	case errors.As(err, &own) && errors.Is(err, house.ErrInvalid):
		t.Fault = words.Sentence(own.Key + ": " + own.Message)
	case err != nil:
		return nil, err
	case len(t.PerML) == 0:
		t.Fault = say.It("part.no-price-yet")
	}
	return t, nil
}

// Cost is the cost of a drink or a batch.
type Cost struct {
	Amount  string // begins with "at least" if something has no price; "" if nothing has one
	Missing string // names of what has no price
	Fault   string // why the cost is unknown
	Known   float64
}

// Reason says why the cost is incomplete; "" if it is complete.
func (c *Cost) Reason() string {
	switch {
	case c.Fault != "":
		return c.Fault
	case c.Missing != "":
		return say.It("part.no-price-for", "Names", c.Missing)
	}
	return ""
}

// CostOf returns the cost of a drink.
func (t *Tariff) CostOf(s *flavor.Spec) Cost { return t.Say(t.Drink(*s)) }

// Fact returns the cost of a drink as a line, or nothing unless every pour has a price.
func (t *Tariff) Fact(s *flavor.Spec) []string {
	if c := t.CostOf(s); c.Reason() == "" {
		return []string{say.It("part.costs-to-pour", "Amount", c.Amount)}
	}
	return nil
}

// Say formats a cost.
func (t *Tariff) Say(c prep.Cost) Cost {
	if t.Fault != "" {
		return Cost{Fault: t.Fault}
	}
	v := Cost{Missing: words.List(t.names(c.Unpriced)), Known: c.Amount}
	switch {
	case len(c.Unpriced) == 0:
		v.Amount = t.Money(c.Amount)
	case c.Amount > 0:
		v.Amount = say.It("part.at-least", "Amount", t.Money(c.Amount))
	}
	return v
}

// Money formats an amount in the currency of the bottles.
func (t *Tariff) Money(v float64) string {
	return t.Figure(v) + "\u00a0" + t.Currency
}

// Figure formats an amount where the currency is said beside it.
func (t *Tariff) Figure(v float64) string { return t.Figures(words.Figure(v, 2)) }

// Figures writes the figures of a text with the decimal mark of the house, as somebody there
// would type them.
func (t *Tariff) Figures(text string) string { return t.said.Figures(text) }

// names returns the names of ingredients by their ids.
func (t *Tariff) names(ids []string) []string {
	var out []string
	for _, id := range ids {
		name := id
		if p, ok := t.shelf.ByID(id); ok {
			name = p.Name
		}
		out = append(out, name)
	}
	return out
}

// Difference formats the difference in cost between a cover and the original drink. It
// names the ingredients without a price; it is "" if no ingredient has one.
func (t *Tariff) Difference(original, cover *flavor.Spec) string {
	if t.Fault != "" {
		return ""
	}
	d := t.Compare(*original, *cover)
	if !d.Sure {
		if d.Original.Amount == 0 && d.Cover.Amount == 0 {
			return ""
		}
		missing := t.names(together(d.Original.Unpriced, d.Cover.Unpriced))
		return say.It("part.cost-not-known", "Names", words.List(missing))
	}
	costs := t.Money(d.Cover.Amount)
	switch more := words.Figure(d.More, 2); {
	case strings.Trim(more, "−0.") == "":
		return say.It("part.cost-the-same", "Amount", costs)
	case d.More > 0:
		return say.It("part.cost-more", "Amount", costs, "More", t.Money(d.More))
	}
	return say.It("part.cost-less", "Amount", costs, "Less", t.Money(-d.More))
}

// together joins lists of ids without duplicates, in order.
func together(lists ...[]string) []string {
	var out []string
	seen := map[string]bool{}
	for _, l := range lists {
		for _, id := range l {
			if !seen[id] {
				seen[id] = true
				out = append(out, id)
			}
		}
	}
	return out
}
