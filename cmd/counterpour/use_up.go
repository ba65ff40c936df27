package main

import (
	"strconv"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/shape"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/webui/words"
)

// newUseUp drafts drinks that use up bottles.
//
//	counterpour use-up --bottle "fino sherry" --bottle mezcal --avoid eggs
func newUseUp(open premises.Kitchens) *cobra.Command {
	var asJSON, cautions *bool
	var stock, where string
	var body shape.UseUpBody
	cmd := &cobra.Command{
		Use:   "use-up --bottle NAME...",
		Short: "Draft balanced drinks that use bottles up",
		Long: `Drafts balanced drinks, across the families, that use up the bottles that must
move, with what else the house stocks, and says which bottles found no use and why.
A draft moves a bottle if it pours half an ounce of it or more, a quarter ounce of
a sweetener, a spoon of an anise spirit, or as much as is usual of what is poured by
less. If one balanced drink can use two of the bottles, the list has a drink with both.`,
		Args: cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			body.Bottles = append(body.Bottles, args...) // allows --bottle mezcal "fino sherry"
			if len(body.Bottles) == 0 {
				return terminal.Usagef("--bottle is not given; name the bottles that must move, such as --bottle \"fino sherry\"")
			}
			return premises.Ask(cmd, open, where, "", *asJSON, func(house *service.Snapshot) (a *shape.UseUpAnswer, err error) {
				if body.Stock, err = stockFrom(cmd, house, stock); err != nil {
					return nil, err
				}
				return shape.AnswerUseUp(cmd.Context(), house, body)
			}, func(p *terminal.Page, a *shape.UseUpAnswer) { showUseUp(p, a, *cautions) })
		},
	}
	asJSON, cautions = terminal.AddJSON(cmd), printed.AddCautionsFlag(cmd)
	cmd.Flags().StringArrayVar(&body.Bottles, "bottle", nil, "a bottle that must move: name, alias or id; may be repeated, 24 at most")
	guestFlags{&body.Avoid, &body.Diet, &body.MaxABV, &body.MaxCost}.add(cmd)
	cmd.Flags().StringArrayVar(&body.Toward, "toward", nil, "a limit, such as \"no smoke\" or \"below 12 %\"; may be repeated")
	cmd.Flags().StringArrayVar(&body.Families, "family", nil, "id of a family that is wanted, all if none is given; may be repeated")
	premises.AddFlag(cmd, &where)
	cmd.Flags().StringVar(&stock, "stock", "", "file that lists what may be poured beside them, one name or id a line, # for comments; the house's stock if empty")
	cmd.Flags().StringVar(&body.Unit, "unit", "oz", "what the amounts are measured in, oz or ml")
	cmd.Flags().IntVar(&body.Limit, "limit", service.DefaultUseUps, "most drafts to list, 1 to 100")
	cmd.Flags().Uint64Var(&body.Seed, "seed", 0, seedFlag)
	return cmd
}

func showUseUp(p *terminal.Page, a *shape.UseUpAnswer, everyCaution bool) {
	var cautions printed.Cautions
	if a.House != "" {
		p.Line("From the stock of %s%s", a.House, invented(a.Invented))
	}
	if len(a.Drafts) == 0 {
		p.Line("No balanced draft pours these bottles with the allowed ingredients")
	}
	printed.CrossContact(p, a.CrossContact)
	for i, d := range a.Drafts {
		p.Head("%d. %s", i+1, d.Name)
		p.Line("     %s", d.Text)
		p.Line("     %s", d.Why)
		printed.Drink(p, &d.Spec, d.Allergens)
		printed.Ask(p, d.Ask)
		p.Line("     %s, %s; score %s%s", d.Spec.Method, d.Spec.Service, words.Points(d.Score), printed.Cost(d.Cost, a.Currency))
		cautions.Add(strconv.Itoa(i+1), d.Cautions)
	}
	if len(a.Unused) > 0 {
		p.Head("No use found for")
	}
	for _, u := range a.Unused {
		p.Row("  "+u.Name, u.Text)
	}
	cautions.Show(p, everyCaution)
	showLabels(p, a.IfLabelClears)
	showLeftOut(p, &a.Refused, a.Seed)
}
