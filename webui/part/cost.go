package part

import (
	"context"
	"errors"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/webui/behind"
	"counterpour/webui/words"
)

// Tariff is what the house pays for its bottles.
type Tariff struct {
	prep.Prices
	shelf *house.Shelf
	said  house.Settings
	Fault string // why nothing can be priced, fit to be read
}

// TariffOf reads the prices of the bottles as they stand.
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
		t.Fault = "No bottle has a price yet."
	}
	return t, nil
}

// Cost is what a drink or a batch costs to pour.
type Cost struct {
	Amount  string // with "at least" before it if something has no price; empty if nothing is known
	Missing string // the names of what has no price
	Fault   string // why nothing is known
	Known   float64
}

// Reason says in a line why the cost is not all there; empty if it is.
func (c *Cost) Reason() string {
	switch {
	case c.Fault != "":
		return c.Fault
	case c.Missing != "":
		return "No price for " + c.Missing + "."
	}
	return ""
}

// CostOf says what a drink costs.
func (t *Tariff) CostOf(s *flavor.Spec) Cost { return t.Say(t.Drink(*s)) }

// Fact says what a drink costs in a line of its own, none if not all of it has a
// price.
func (t *Tariff) Fact(s *flavor.Spec) []string {
	if c := t.CostOf(s); c.Reason() == "" {
		return []string{"Costs " + c.Amount + " to pour."}
	}
	return nil
}

// Say says a cost that was worked out.
func (t *Tariff) Say(c prep.Cost) Cost {
	if t.Fault != "" {
		return Cost{Fault: t.Fault}
	}
	v := Cost{Missing: words.List(t.names(c.Unpriced)), Known: c.Amount}
	switch {
	case len(c.Unpriced) == 0:
		v.Amount = t.Money(c.Amount)
	case c.Amount > 0:
		v.Amount = "at least " + t.Money(c.Amount)
	}
	return v
}

// Money writes an amount in the currency of the bottles.
func (t *Tariff) Money(v float64) string {
	return t.said.Figures(words.Figure(v, 2)) + "\u00a0" + t.Currency
}

// names are the names of ingredients by id.
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

// Difference says what a cover costs against the drink that it stands for;
// empty if nothing of both is known.
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
		return "What it costs against the drink itself is not known: no price for " + words.List(missing) + "."
	}
	costs := "Costs " + t.Money(d.Cover.Amount) + " to pour, "
	switch more := words.Figure(d.More, 2); {
	case strings.Trim(more, "−0.") == "":
		return costs + "as the drink itself does."
	case d.More > 0:
		return costs + t.Money(d.More) + " more than the drink itself."
	}
	return costs + t.Money(-d.More) + " less than the drink itself."
}

// together joins lists of ids, each once, in order.
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
