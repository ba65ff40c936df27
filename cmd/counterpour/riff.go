package main

import (
	"strconv"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/shape"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
	"counterpour/webui/words"
)

// newRiff finds variations of a draft.
//
//	counterpour riff draft.txt --toward "more bitter" --toward "below 15 %" --avoid "tree nuts"
func newRiff(open premises.Kitchens) *cobra.Command {
	var asJSON, cautions *bool
	var stock, where string
	var body shape.RiffBody
	cmd := &cobra.Command{
		Use:   "riff [FILE|-]",
		Short: "Find variations of a draft that stay in balance",
		Long: `Reads a draft, one pour a line, from a file or from the input, and lists
variations that stay in balance, each unlike the others, made of what the house
stocks and what is in the draft, but for what it has marked as out; then the
proven drinks nearest to the draft. counterpour use-up finds drinks of any kind
that use a bottle up.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			text, file, err := terminal.ReadDraft(cmd, args)
			if err != nil {
				return err
			}
			body.Text = &text
			return premises.Ask(cmd, open, where, file, *asJSON, func(house *service.Snapshot) (*shape.RiffAnswer, error) {
				if body.Stock, err = stockFrom(cmd, house, stock); err != nil {
					return nil, err
				}
				return shape.AnswerRiff(cmd.Context(), house, body)
			}, func(p *terminal.Page, a *shape.RiffAnswer) { showRiffs(p, a, *cautions) })
		},
	}
	asJSON, cautions = terminal.AddJSON(cmd), printed.AddCautionsFlag(cmd)
	cmd.Flags().StringArrayVar(&body.Toward, "toward", nil, "a wish, such as \"more bitter\", nuttier, \"no nuts\" or \"below 12 %\"; may be repeated")
	guestFlags{&body.Avoid, &body.Diet, &body.MaxABV, &body.MaxCost}.add(cmd)
	premises.AddFlag(cmd, &where)
	cmd.Flags().StringVar(&stock, "stock", "", "file that lists what may be poured, one name or id a line, # for comments; what the house has, and of the draft all that it has not marked as out, if empty")
	cmd.Flags().IntVar(&body.Limit, "limit", service.DefaultRiffs, "most riffs to list, 1 to 100")
	cmd.Flags().Uint64Var(&body.Seed, "seed", 0, seedFlag)
	return cmd
}

func showRiffs(p *terminal.Page, a *shape.RiffAnswer, everyCaution bool) {
	var cautions printed.Cautions
	if len(a.Riffs) == 0 {
		p.Line("No riff from the allowed ingredients stays in balance and meets every wish")
	}
	if x := a.Nearest; x != nil {
		p.Line("%s (score %s): %s", words.Missed(x.Misses), words.Points(x.Score), x.Text)
	}
	for _, x := range a.LeftOut {
		p.Line("Without %s, which %s", x.Name, x.Why)
	}
	if a.OfRest {
		p.Line("%s", words.OfRest())
	}
	printed.CrossContact(p, a.CrossContact)
	for i, r := range a.Riffs {
		p.Head("%d. %s", i+1, r.Name)
		p.Line("     %s", r.Text)
		p.Line("     %s", r.Why)
		printed.Drink(p, &r.Spec, r.Allergens)
		printed.NewAllergens(p, r.NewAllergens)
		printed.Ask(p, r.Ask)
		p.Line("     %s, %s; %s; %s %% vol; %s noticeable steps away, a guest %s notice; score %s%s", r.Spec.Method, r.Spec.Service, r.Family,
			terminal.Number(r.ABVPct, 1), terminal.Number(r.DistanceJND, 1), r.Notice, words.Points(r.Score), printed.Cost(r.Cost, a.Currency))
		cautions.Add(strconv.Itoa(i+1), r.Cautions)
	}
	p.Head("Proven relatives of the draft, the nearest first; at a distance of 0 it is the same drink")
	for _, x := range a.Relatives {
		p.Row("  "+terminal.Number(x.Distance, 2), x.Name, x.Family, x.Source+" ("+x.Status+")")
	}
	if len(a.Relatives) == 0 {
		p.Line("  none that the guest may have")
	}
	cautions.Show(p, everyCaution)
	showLabels(p, a.IfLabelClears)
	showLeftOut(p, &a.Refused, a.Seed)
}

// mostLabels is how many bottles with an unclear label are named.
const mostLabels = 8

// showLabels names the bottles that could be poured too if their labels allow it.
func showLabels(p *terminal.Page, bottles []shape.Ingredient) {
	if len(bottles) == 0 {
		return
	}
	var names []string
	for _, b := range bottles[:min(len(bottles), mostLabels)] {
		names = append(names, b.Name)
	}
	if more := len(bottles) - len(names); more > 0 {
		names = append(names, strconv.Itoa(more)+" more")
	}
	p.Head("Not poured, since it may carry what the guest avoids, or nobody has stated it; read the label, which may clear it: %s", flavor.JoinAnd(names))
}

// showLeftOut says what could not be listed, and how to repeat the list.
func showLeftOut(p *terminal.Page, n *shape.Unlisted, seed uint64) {
	p.Head("Left out: %d ingredients by the guest or a wish; of the drafts %d out of balance, %d poured as no bar pours, %d beyond a limit, %d short of a wish, %d too alike. Seed %d",
		n.ByGuest, n.Off, n.Unfit, n.ByLimit, n.Unmet, n.TooAlike, seed)
}
