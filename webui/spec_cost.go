package webui

import (
	"context"
	"errors"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/webui/words"
)

// tariff is what the house pays for its bottles.
type tariff struct {
	prep.Prices
	shelf *house.Shelf
	fault string // why nothing can be priced, fit to be read
}

// tariff reads the prices of the bottles as they stand.
func (p *pages) tariff(ctx context.Context) (*tariff, error) {
	t := &tariff{shelf: p.house.Shelf()}
	var err error
	t.Prices, err = p.house.Prices(ctx)
	var own *house.Error
	switch {
	case errors.As(err, &own) && errors.Is(err, house.ErrInvalid):
		t.fault = words.Sentence(own.Key + ": " + own.Message)
	case err != nil:
		return nil, err
	case len(t.PerML) == 0:
		t.fault = "No bottle has a price yet."
	}
	return t, nil
}

// costView is what a drink or a batch costs to pour.
type costView struct {
	Amount  string // with "at least" before it if something has no price; empty if nothing is known
	Missing string // the names of what has no price
	Fault   string // why nothing is known
	known   float64
}

// Reason says in a line why the cost is not all there; empty if it is.
func (c *costView) Reason() string {
	switch {
	case c.Fault != "":
		return c.Fault
	case c.Missing != "":
		return "No price for " + c.Missing + "."
	}
	return ""
}

// drink says what a drink costs.
func (t *tariff) drink(s *flavor.Spec) costView { return t.view(t.Drink(*s)) }

// fact says what a drink costs in a line of its own, none if not all of it has a
// price.
func (t *tariff) fact(s *flavor.Spec) []string {
	if c := t.drink(s); c.Reason() == "" {
		return []string{"Costs " + c.Amount + " to pour."}
	}
	return nil
}

func (t *tariff) view(c prep.Cost) costView {
	if t.fault != "" {
		return costView{Fault: t.fault}
	}
	v := costView{Missing: words.List(t.names(c.Unpriced)), known: c.Amount}
	switch {
	case len(c.Unpriced) == 0:
		v.Amount = t.money(c.Amount)
	case c.Amount > 0:
		v.Amount = "at least " + t.money(c.Amount)
	}
	return v
}

// money writes an amount in the currency of the bottles.
func (t *tariff) money(v float64) string { return words.Figure(v, 2) + "\u00a0" + t.Currency }

// names are the names of ingredients by id.
func (t *tariff) names(ids []string) []string {
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

// difference says what a cover costs against the drink that it stands for;
// empty if nothing of both is known.
func (t *tariff) difference(original, cover *flavor.Spec) string {
	if t.fault != "" {
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
	costs := "Costs " + t.money(d.Cover.Amount) + " to pour, "
	switch more := words.Figure(d.More, 2); {
	case strings.Trim(more, "−0.") == "":
		return costs + "as the drink itself does."
	case d.More > 0:
		return costs + t.money(d.More) + " more than the drink itself."
	}
	return costs + t.money(-d.More) + " less than the drink itself."
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
