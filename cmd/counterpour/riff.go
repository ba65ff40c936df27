package main

import (
	"strconv"

	"github.com/spf13/cobra"

	"counterpour/api"
	"counterpour/api/service"
	"counterpour/webui/words"
)

// newRiff finds variations of a draft.
//
//	counterpour riff draft.txt --toward "more bitter" --toward "below 15 %" --avoid "tree nuts"
func newRiff(open kitchens) *cobra.Command {
	var asJSON, cautions *bool
	var stock, where string
	var body api.RiffBody
	cmd := &cobra.Command{
		Use:   "riff [FILE|-]",
		Short: "Find variations of a draft that stay in balance",
		Long: `Reads a draft, one pour a line, from a file or from the input, and lists
variations that stay in balance, each unlike the others, made of what the house
stocks and what is in the draft; then the proven drinks nearest to the draft.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			text, file, err := readDraft(cmd, args)
			if err != nil {
				return err
			}
			house, done, err := snapshotOf(cmd.Context(), open, where)
			if err != nil {
				return err
			}
			defer done()
			if body.Stock, err = stockFrom(house, stock); err != nil {
				return err
			}
			body.Text = &text
			answer, err := api.AnswerRiff(cmd.Context(), house, body)
			if err != nil {
				return explain(err, file)
			}
			return deliver(cmd, *asJSON, answer, func(p *page, a *api.RiffAnswer) { showRiffs(p, a, *cautions) })
		},
	}
	asJSON, cautions = addJSON(cmd), addCautions(cmd)
	cmd.Flags().StringArrayVar(&body.Toward, "toward", nil, "a wish, such as \"more bitter\", nuttier, \"no nuts\" or \"below 12 %\"; may be repeated")
	guestFlags{&body.Avoid, &body.Diet, &body.MaxABV, &body.MaxCost}.add(cmd)
	cmd.Flags().StringVar(&where, "house", "", houseFlag)
	cmd.Flags().StringVar(&stock, "stock", "", "file that lists what may be poured, one name or id a line, # for comments; the house's stock and the draft if empty")
	cmd.Flags().IntVar(&body.Limit, "limit", service.DefaultRiffs, "most riffs to list, 1 to 100")
	cmd.Flags().Uint64Var(&body.Seed, "seed", 0, seedFlag)
	return cmd
}

func showRiffs(p *page, a *api.RiffAnswer, everyCaution bool) {
	var cautions cautionList
	if len(a.Riffs) == 0 {
		p.line("No riff from the allowed ingredients stays in balance and meets every wish")
	}
	showCross(p, a.CrossContact)
	for i, r := range a.Riffs {
		p.head("%d. %s", i+1, r.Name)
		p.line("     %s", r.Text)
		p.line("     %s", r.Why)
		showDrink(p, &r.Spec, r.Allergens)
		showNew(p, r.NewAllergens)
		showAsk(p, r.Ask)
		p.line("     %s, %s; %s; %s %% vol; %s noticeable steps away, a guest %s notice; score %s%s", r.Spec.Method, r.Spec.Service, r.Family,
			number(r.ABVPct, 1), number(r.DistanceJND, 1), r.Notice, words.Points(r.Score), costText(r.Cost, a.Currency))
		cautions.add(strconv.Itoa(i+1), r.Cautions)
	}
	p.head("Proven relatives of the draft, the nearest first; at a distance of 0 it is the same drink")
	for _, x := range a.Relatives {
		p.row("  "+number(x.Distance, 2), x.Name, x.Family, x.Source+" ("+x.Status+")")
	}
	if len(a.Relatives) == 0 {
		p.line("  none that the guest may have")
	}
	cautions.show(p, everyCaution)
	showLeftOut(p, &a.Refused, a.Seed)
}

// showLeftOut says what could not be listed, and how to see the list again.
func showLeftOut(p *page, n *api.Unlisted, seed uint64) {
	p.head("Left out: %d ingredients by the guest or a wish; of the drafts %d out of balance, %d poured as no bar pours, %d beyond a limit, %d short of a wish, %d too alike. Seed %d",
		n.ByGuest, n.Off, n.Unfit, n.ByLimit, n.Unmet, n.TooAlike, seed)
}
