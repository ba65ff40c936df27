package training

import (
	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/shape/training"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/webui/words"
)

// newCard shows one family on one page.
//
//	counterpour card sour
func newCard(open premises.Kitchens) *cobra.Command {
	var asJSON, cautions *bool
	var where string
	cmd := &cobra.Command{
		Use:   "card FAMILY",
		Short: "Show a family on one page, for a new starter",
		Long: `Shows the ratio of a family, how far each part may move by itself, three drinks of the
house or proven ones, and what usually goes wrong. FAMILY is its id, such as sour.`,
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			return premises.Ask(cmd, open, where, "", *asJSON, func(house *service.Snapshot) (*training.CardAnswer, error) {
				return training.AnswerCard(house, args[0])
			}, func(p *terminal.Page, a *training.CardAnswer) { showCard(p, a, *cautions) })
		},
	}
	asJSON, cautions = terminal.AddJSON(cmd), printed.AddCautionsFlag(cmd)
	premises.AddFlag(cmd, &where)
	return cmd
}

func showCard(p *terminal.Page, a *training.CardAnswer, everyCaution bool) {
	var cautions printed.Cautions
	p.Line("%s: %s", a.Name, a.Ratio)
	p.Line("the middle of its proven drinks, the largest part as 8; usual ratio: %s", a.Source)
	p.Head("Each part, by itself")
	for _, part := range a.Parts {
		low, high := part.FittedPct*part.Low, min(100, part.FittedPct*part.High)
		p.Row("  "+part.Axis, terminal.Number(part.SharePct, 0)+" % as usual", terminal.Number(part.FittedPct, 0)+" % in proven drinks",
			"from "+terminal.Number(low, 0)+" to "+terminal.Number(high, 0)+" %")
	}
	for _, x := range a.Examples {
		from := "of the house"
		if x.Proven {
			from = "a proven drink"
		}
		p.Head("%s, %s, score %s", x.Spec.Name, from, words.Points(x.Score))
		printed.Drink(p, &x.Spec, x.Allergens)
		p.Line("     %s, %s", x.Spec.Method, x.Spec.Service)
		cautions.Add(x.Spec.Name, x.Cautions)
	}
	if len(a.Examples) == 0 {
		p.Line("No drink of this family is known here yet")
	}
	p.Head("When it goes wrong")
	p.Line("%s", a.Usual)
	cautions.Show(p, everyCaution)
}
