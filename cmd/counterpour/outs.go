package main

import (
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/shape"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
)

// newOuts finds covers for the menu of the house.
//
//	counterpour outs --out falernum --out "triple sec"
func newOuts(open premises.Kitchens) *cobra.Command {
	var asJSON, cautions *bool
	var body shape.OutsBody
	var ahead bool
	var where string
	cmd := &cobra.Command{
		Use:   "outs --out NAME...",
		Short: "Cover every drink of the house that missing bottles touch",
		Long: `Lists every drink of the house that needs a bottle that ran out, each with its
best cover from what is in stock: those without one first. Says which bottle to
fetch, and which substitutes serve most drinks.`,
		Args: cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			body.Out = append(body.Out, args...) // allows --out falernum orgeat
			if len(body.Out) == 0 && !ahead {
				return terminal.Usagef("--out is not given; name the bottles that ran out, such as --out falernum")
			}
			if ahead {
				return premises.Ask(cmd, open, where, "", *asJSON, func(house *service.Snapshot) (*shape.CoverageAnswer, error) {
					return shape.AnswerCoverage(cmd.Context(), house, shape.CoverageBody{})
				}, showCoverage)
			}
			return premises.Ask(cmd, open, where, "", *asJSON, func(house *service.Snapshot) (*shape.OutsAnswer, error) {
				return shape.AnswerOuts(cmd.Context(), house, body)
			}, func(p *terminal.Page, a *shape.OutsAnswer) { showOuts(p, a, *cautions) })
		},
	}
	asJSON, cautions = terminal.AddJSON(cmd), printed.AddCautionsFlag(cmd)
	cmd.Flags().StringArrayVar(&body.Out, "out", nil, "a bottle that ran out: name, alias or id; may be repeated")
	guestFlags{avoid: &body.Avoid, diet: &body.Diet, maxABV: &body.MaxABV}.add(cmd)
	cmd.Flags().Float64Var(&body.MaxCost, "max-cost", 0, substitutesCostFlag)
	premises.AddFlag(cmd, &where)
	cmd.Flags().BoolVar(&ahead, "ahead", false, "before service: list the bottles that nothing in stock covers well, to order two of")
	cmd.Flags().IntVar(&body.MaxParts, "max-parts", service.DefaultMaxParts, "most ingredients that one cover may be made of, 1 to 3")
	return cmd
}

func showOuts(p *terminal.Page, a *shape.OutsAnswer, everyCaution bool) {
	var cautions printed.Cautions
	p.Line("%s%s", a.House, invented(a.Invented))
	if len(a.Outs) == 0 {
		p.Line("  no drink of the house needs what is out")
	}
	printed.CrossContact(p, a.CrossContact)
	for _, o := range a.Outs {
		names := make([]string, len(o.Missing))
		for i, m := range o.Missing {
			names[i] = m.Name
		}
		p.Head("%s, without %s", o.Spec.Name, flavor.JoinAnd(names))
		showRemoved(p, o.Removed, o.Missing, o.Unstated, nil)
		showVerdict(p, o.Near, o.ProvenBest, o.Covers, o.IfLabelClears)
		if o.LeftOut != nil && o.Chosen < 0 {
			p.Line("  or %s", o.LeftOut.Text)
		}
		for _, b := range o.Barred {
			p.Line("  %s", b.Text)
		}
		if o.Chosen < 0 && o.LeftOut == nil {
			p.Line("  no cover in stock; do not serve it")
		} else if o.Chosen >= 0 {
			c := &o.Covers[o.Chosen]
			p.Line("  %s", c.Text)
			showCover(p, c)
			cautions.Add(o.Spec.Name, c.Cautions)
		}
		if len(o.IfLabelClears) > 0 {
			c := &o.IfLabelClears[0]
			p.Line("  not safe as it stands: %s, %s", c.Text, labelsOf(c))
		}
	}
	cautions.Show(p, everyCaution)
	if len(a.Fetch) > 0 {
		p.Head("Fetch first")
	}
	for _, f := range a.Fetch {
		p.Row("  "+f.Name, terminal.Drinks(f.Drinks)+" complete again", terminal.Number(float64(f.Lost), 0)+" of them without a cover")
	}
	if len(a.Opened) > 0 {
		p.Head("Keep at hand")
	}
	for _, o := range a.Opened {
		p.Row("  "+o.Name, "for "+terminal.Drinks(o.Drinks))
	}
	if a.Spared > 0 {
		p.Line("  %s fewer to open than with the best cover of each drink; all drinks together move %s noticeable steps further",
			terminal.Number(float64(a.Spared), 0), terminal.Number(a.GivenJND, 2))
	}
}

func invented(is bool) string {
	if is {
		return " (an invented house)"
	}
	return ""
}

// mostToBuy is how many bottles to buy are listed; --json lists all.
const mostToBuy = 8

func showCoverage(p *terminal.Page, a *shape.CoverageAnswer) {
	p.Line("%s%s: order two of these", a.House, invented(a.Invented))
	if len(a.Weak) == 0 {
		p.Line("  every bottle of the menu has a good cover in stock")
	}
	for _, w := range a.Weak {
		p.Row("  "+w.Name, strings.Join(w.Drinks, ", "))
	}
	if len(a.Buy) > 0 {
		p.Head("Or buy one that covers them")
	}
	for _, b := range a.Buy[:min(len(a.Buy), mostToBuy)] {
		closes := make([]string, len(b.Closes))
		for i, g := range b.Closes {
			closes[i] = g.Without.Name + " in " + g.Drink
		}
		p.Row("  "+b.Name, strings.Join(closes, ", "))
	}
	p.Line("  a cover is good up to %s noticeable steps, and one that every bar pours further", terminal.Number(a.GoodJND, 0))
}
