package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"gonum.org/v1/gonum/floats/scalar"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/flavor"
)

// costAnswer is what drinks of a house cost to pour.
type costAnswer struct {
	Drinks []drinkCost `json:"drinks"` // as they were asked for, or the whole menu by name
}

// drinkCost is what one drink costs to pour.
type drinkCost struct {
	ID       string     `json:"id"`
	Name     string     `json:"name"`
	Cost     float64    `json:"cost"` // of what has a price
	Currency string     `json:"currency"`
	Unpriced []string   `json:"unpriced"` // names of what has none
	Pours    []pourCost `json:"pours"`
}

// pourCost is one pour's part; a share is of what has a price.
type pourCost struct {
	ID       string  `json:"id"`
	Name     string  `json:"name"`
	ML       float64 `json:"ml"`
	Cost     float64 `json:"cost"`
	SharePct float64 `json:"share_pct"`
	Priced   bool    `json:"priced"`
}

// newCost lists what drinks cost to pour.
//
//	counterpour house cost --house bar.house "Quay Sour"
func newCost(open kitchens, where *string) *cobra.Command {
	var asJSON *bool
	cmd := &cobra.Command{
		Use:   "cost [DRINK...] --house PATH",
		Short: "List what drinks cost to pour, by the prices of the bottles",
		Long: `Lists what each drink costs to pour and what each pour has of it, by the price of
the bottle that is poured; what the house makes costs what its parts do. What has
no price is named, and the cost is then at least what is shown. Without --house it
works on the invented demo house.`,
		RunE: func(cmd *cobra.Command, args []string) error {
			v, done, err := atHouse(cmd.Context(), open, *where)
			if err != nil {
				return err
			}
			defer done()
			drinks, err := drinksNamed(v, args)
			if err != nil {
				return err
			}
			return deliver(cmd, *asJSON, costsOf(v, drinks), showCosts)
		},
	}
	asJSON = addJSON(cmd)
	return cmd
}

// drinksNamed finds drinks of the menu by name or id; all of them if none is
// named.
func drinksNamed(v *service.Venue, names []string) ([]service.Drink, error) {
	menu := v.Now().Menu
	if len(names) == 0 {
		return menu, nil
	}
	var out []service.Drink
	for _, name := range names {
		d, ok := drinkNamed(menu, name)
		if !ok {
			return nil, usagef("the house has no drink %q; write its name as the menu has it", name)
		}
		out = append(out, d)
	}
	return out, nil
}

func drinkNamed(menu []service.Drink, name string) (service.Drink, bool) {
	key := flavor.NormaliseName(name)
	for _, d := range menu {
		if d.ID == name || flavor.NormaliseName(d.Spec.Name) == key {
			return d, true
		}
	}
	return service.Drink{}, false
}

func costsOf(v *service.Venue, drinks []service.Drink) *costAnswer {
	now := v.Now()
	a := &costAnswer{Drinks: []drinkCost{}}
	for _, d := range drinks {
		c := now.Prices.Drink(d.Spec)
		one := drinkCost{ID: d.ID, Name: d.Spec.Name, Cost: rounded(c.Amount, 2), Currency: c.Currency, Unpriced: []string{}, Pours: []pourCost{}}
		for _, id := range c.Unpriced {
			one.Unpriced = append(one.Unpriced, nameOn(now.Shelf, id))
		}
		for i, s := range now.Prices.Shares(d.Spec) {
			p := d.Spec.Pours[i].Profile
			one.Pours = append(one.Pours, pourCost{ID: p.ID, Name: p.Name, ML: rounded(d.Spec.Pours[i].ML, 1), Cost: rounded(s.Amount, 2),
				SharePct: rounded(100*s.Part, 1), Priced: s.Priced})
		}
		a.Drinks = append(a.Drinks, one)
	}
	return a
}

// rounded keeps so many decimals, so that a sum reads the same on every machine.
func rounded(v float64, digits int) float64 { return scalar.Round(v, digits) }

func nameOn(shelf *house.Shelf, id string) string {
	if p, ok := shelf.ByID(id); ok {
		return p.Name
	}
	return id
}

func showCosts(p *page, a *costAnswer) {
	if len(a.Drinks) == 0 {
		p.line("  the house has no specs yet")
	}
	for _, d := range a.Drinks {
		least := ""
		if len(d.Unpriced) > 0 {
			least = "at least "
		}
		p.head("%s: %s%s", d.Name, least, strings.TrimSpace(number(d.Cost, 2)+" "+d.Currency))
		for _, c := range d.Pours {
			if !c.Priced {
				p.row("  "+c.Name, number(c.ML, 1)+" mL", "no price", "")
				continue
			}
			p.row("  "+c.Name, number(c.ML, 1)+" mL", number(c.Cost, 2)+" "+d.Currency, fmt.Sprintf("%s %%", number(c.SharePct, 0)))
		}
	}
}
