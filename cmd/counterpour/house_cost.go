package main

import (
	"fmt"
	"strings"

	"counterpour/api"

	"github.com/spf13/cobra"
)

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
			answer, err := api.AnswerCost(cmd.Context(), v.Now(), api.CostBody{Drinks: args})
			if err != nil {
				return err
			}
			return deliver(cmd, *asJSON, answer, showCosts)
		},
	}
	asJSON = addJSON(cmd)
	return cmd
}

func showCosts(p *page, a *api.CostAnswer) {
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
