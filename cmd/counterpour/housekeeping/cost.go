package housekeeping

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api/shape"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/terminal"
)

// newCost lists what drinks cost to pour.
//
//	counterpour house cost --house bar.house "Quay Sour"
func newCost(open premises.Kitchens, where *string) *cobra.Command {
	var asJSON *bool
	cmd := &cobra.Command{
		Use:   "cost [DRINK...] --house PATH",
		Short: "List what drinks cost to pour, by the prices of the bottles",
		Long: `Lists what each drink costs to pour and what each pour has of it, by the price of
the bottle that is poured; what the house makes costs what its parts do. What has
no price is named, and the cost is then at least what is shown. Without --house it
works on the invented demo house.`,
		RunE: func(cmd *cobra.Command, args []string) error {
			v, done, err := premises.AtHouse(cmd.Context(), open, *where)
			if err != nil {
				return err
			}
			defer done()
			answer, err := shape.AnswerCost(cmd.Context(), v.Now(), shape.CostBody{Drinks: args})
			if err != nil {
				return err
			}
			return terminal.Deliver(cmd, *asJSON, answer, showCosts)
		},
	}
	asJSON = terminal.AddJSON(cmd)
	return cmd
}

func showCosts(p *terminal.Page, a *shape.CostAnswer) {
	if len(a.Drinks) == 0 {
		p.Line("  the house has no specs yet")
	}
	for _, d := range a.Drinks {
		least := ""
		if len(d.Unpriced) > 0 {
			least = "at least "
		}
		p.Head("%s: %s%s", d.Name, least, strings.TrimSpace(terminal.Number(d.Cost, 2)+" "+d.Currency))
		for _, c := range d.Pours {
			if !c.Priced {
				p.Row("  "+c.Name, terminal.Number(c.ML, 1)+" mL", "no price", "")
				continue
			}
			p.Row("  "+c.Name, terminal.Number(c.ML, 1)+" mL", terminal.Number(c.Cost, 2)+" "+d.Currency, fmt.Sprintf("%s %%", terminal.Number(c.SharePct, 0)))
		}
	}
}
