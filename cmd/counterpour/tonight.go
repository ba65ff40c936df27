package main

import (
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/shape"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
)

// newTonight says what can be poured of the menu of the house now.
//
//	counterpour tonight --avoid "tree nuts"
func newTonight(open premises.Kitchens) *cobra.Command {
	var asJSON *bool
	var body shape.TonightBody
	var where string
	cmd := &cobra.Command{
		Use:   "tonight",
		Short: "Say what can be poured of the menu now, for everybody or for one guest",
		Long: `Lists the menu of the house as things stand: each drink ready, with a cover, missing
something, or not for this guest, and why.`,
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return premises.Ask(cmd, open, where, "", *asJSON, func(house *service.Snapshot) (*shape.TonightAnswer, error) {
				return shape.AnswerTonight(cmd.Context(), house, body)
			}, showTonight)
		},
	}
	asJSON = terminal.AddJSON(cmd)
	guestFlags{avoid: &body.Avoid, diet: &body.Diet, maxABV: &body.MaxABV}.add(cmd)
	premises.AddFlag(cmd, &where)
	cmd.Flags().IntVar(&body.MaxParts, "max-parts", service.DefaultMaxParts, "most ingredients that one cover may be made of, 1 to 3")
	cmd.AddCommand(newTonightFlight(open))
	for _, c := range cmd.Commands() {
		c.Args = terminal.WrongArgs(c.Args)
	}
	return cmd
}

// newTonightFlight plans a flight of several drinks of the menu.
//
//	counterpour tonight flight "Tide Table" "Wicker Lee" --guests 4
func newTonightFlight(open premises.Kitchens) *cobra.Command {
	var asJSON *bool
	var body shape.TonightFlightBody
	var where string
	cmd := &cobra.Command{
		Use:   "flight DRINK DRINK...",
		Short: "Plan a flight: a little of several drinks for each guest",
		Long: `Plans a flight of two to six drinks of the house, each as it can be poured now: how many
of each to make, what is left, and in which order they are tasted. A flight that holds
more alcohol than two standard drinks for each guest is refused. One drink with a little
more and a little less of something is "counterpour flight".`,
		Args: cobra.MinimumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			body.Drinks = args
			return premises.Ask(cmd, open, where, "", *asJSON, func(house *service.Snapshot) (*shape.TonightFlightAnswer, error) {
				return shape.AnswerTonightFlight(cmd.Context(), house, body)
			}, showTonightFlight)
		},
	}
	asJSON = terminal.AddJSON(cmd)
	cmd.Flags().Float64Var(&body.EachML, "each", shape.DefaultShareML, "what each guest gets of each drink, in mL, 10 to 120")
	cmd.Flags().IntVar(&body.Guests, "guests", shape.DefaultGuests, "how many guests, 1 to 60")
	guestFlags{avoid: &body.Avoid, diet: &body.Diet, maxABV: &body.MaxABV}.add(cmd)
	premises.AddFlag(cmd, &where)
	return cmd
}

func showTonight(p *terminal.Page, a *shape.TonightAnswer) {
	p.Line("%s%s", a.House, invented(a.Invented))
	printed.CrossContact(p, a.CrossContact)
	for i := range a.Drinks {
		d := &a.Drinks[i]
		p.Row("  "+d.Name, stateOf(d))
	}
	if len(a.Drinks) == 0 {
		p.Line("  the house has no drink on its menu")
	}
}

// stateOf says what can be made of a drink, and why.
func stateOf(d *shape.TonightDrink) string {
	out := d.State
	switch {
	case d.Because != "":
		out += ": " + d.Because
	case d.Text != "":
		out += ": " + d.Text
	case d.Poured == nil:
		out += " " + namesOf(d.Missing)
	}
	if d.Nearest != "" {
		out += "; as another drink, and tell the guest: " + d.Nearest
	}
	if d.Because != "" && len(d.Read) > 0 {
		out += "; read the label of " + namesOf(d.Read) + " first"
	}
	return out
}

func namesOf(list []shape.Ingredient) string {
	names := make([]string, len(list))
	for i := range list {
		names[i] = list[i].Name
	}
	return strings.Join(names, ", ")
}

func showTonightFlight(p *terminal.Page, a *shape.TonightFlightAnswer) {
	p.Line("For %d guests, %s mL of each drink, in the order of tasting", a.Guests, terminal.Number(a.EachML, 0))
	printed.CrossContact(p, a.CrossContact)
	for i := range a.Glasses {
		g := &a.Glasses[i]
		p.Head("%d. %s  %s %% vol", i+1, g.Name, terminal.Number(g.ABVPct, 1))
		p.Line("  make %d, %s mL in all; %s mL is left", g.Make, terminal.Number(g.MadeML, 0), terminal.Number(g.LeftML, 0))
		for _, x := range g.Poured.Pours {
			p.Row("  "+printed.Amount(x.Amount, x.Unit), x.Ingredient)
		}
		p.Line("  %s, %s", g.Poured.Method, g.Poured.Service)
		switch {
		case g.Text != "" && len(g.Missing) > 0:
			p.Line("  without %s: %s", namesOf(g.Missing), g.Text)
		case g.Text != "":
			p.Line("  %s", g.Text)
		}
		printed.Allergens(p, g.Allergens)
	}
	printed.Care(p, a.Care, a.Cautions)
}
