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
	"counterpour/flavor/riff/walk"
	"counterpour/webui/words"
)

// newWalk finds drinks between two drinks.
//
//	counterpour walk draft.txt "Ropewalk" --steps 3
func newWalk(open premises.Kitchens) *cobra.Command {
	var asJSON, cautions *bool
	var stock, where string
	var body shape.WalkBody
	cmd := &cobra.Command{
		Use:   "walk FROM TO",
		Short: "Find balanced drinks that lie between two",
		Long: `Finds balanced drinks that lie between two, for a tasting, in steps as even as the
jigger allows, and adds up the alcohol of small pours. Where what the two pour leaves
a long hop, proven drinks that the stock pours lie between too, by name. FROM and TO are files with
a draft, one pour a line, or names of drinks of the house; one may be - for the
input.`,
		Args: cobra.ExactArgs(2),
		RunE: func(cmd *cobra.Command, args []string) error {
			answer, err := walkBetween(cmd, args, open, where, stock, &body)
			if err != nil {
				return err
			}
			return terminal.Deliver(cmd, *asJSON, answer, func(p *terminal.Page, a *shape.WalkAnswer) { showWalk(p, a, *cautions) })
		},
	}
	asJSON, cautions = terminal.AddJSON(cmd), printed.AddCautionsFlag(cmd)
	cmd.Flags().IntVar(&body.Steps, "steps", walk.DefaultSteps, "balanced drinks between the two, 1 to 8")
	cmd.Flags().Float64Var(&body.PourML, "pour", service.DefaultSmallPourML, "how much of each drink is poured, in mL, 10 to 200")
	guestFlags{&body.Avoid, &body.Diet, &body.MaxABV, &body.MaxCost}.add(cmd)
	premises.AddFlag(cmd, &where)
	cmd.Flags().StringVar(&stock, "stock", "", "file that lists what proven drinks between the two may pour, one name or id a line, # for comments; the house's stock if empty")
	return cmd
}

// walkBetween reads both ends and finds the walk.
func walkBetween(cmd *cobra.Command, args []string, open premises.Kitchens, where, stock string, body *shape.WalkBody) (*shape.WalkAnswer, error) {
	if args[0] == "-" && args[1] == "-" {
		return nil, terminal.Usagef("FROM and TO cannot both be the input; name a file or a drink of the house for one")
	}
	files := map[string]string{}
	for i, end := range []struct {
		name string
		to   *shape.WalkEnd
	}{{"from", &body.From}, {"to", &body.To}} {
		file, err := terminal.ReadDraftOrName(cmd, args[i], &end.to.Text, &end.to.Drink)
		if err != nil {
			return nil, err
		}
		files[end.name] = file
	}
	house, done, err := premises.SnapshotOf(cmd.Context(), open, where)
	if err != nil {
		return nil, err
	}
	defer done()
	if body.Stock, err = stockFrom(cmd, house, stock); err != nil {
		return nil, err
	}
	answer, err := shape.AnswerWalk(cmd.Context(), house, *body)
	if err != nil {
		return nil, explainWalk(err, files)
	}
	return answer, nil
}

// explainWalk adds the file names to faults of the ends.
func explainWalk(err error, files map[string]string) error {
	err = flavor.Relocated(err, func(f *flavor.DataFault) {
		for end, file := range files {
			rest, ok := strings.CutPrefix(f.Location, end)
			if !ok || rest != "" && rest[0] != '.' {
				continue
			}
			rest = strings.TrimPrefix(rest, ".")
			switch {
			case rest == "drink":
				f.Location = strings.ToUpper(end)
				f.Message += "; there is no file of that name either"
			case strings.HasPrefix(rest, "line "):
				f.Location = file + ", " + rest
			default:
				f.Location = strings.ToUpper(end)
			}
		}
	})
	return terminal.Explain(err, "")
}

func showWalk(p *terminal.Page, a *shape.WalkAnswer, everyCaution bool) {
	printed.CrossContact(p, a.CrossContact)
	stops := a.Stops
	if x := a.IfLabelClears; x != nil {
		stops = x.Stops
		names := make([]string, len(x.Read))
		for i, b := range x.Read {
			names[i] = b.Name
		}
		p.Head("Not safe as it stands: nobody has stated every allergen. Pour this only if the label clears it for the guest: read that of %s", flavor.JoinAnd(names))
	}
	for i, s := range stops {
		text := s.Text
		if s.Spec.Name != "" {
			text = s.Spec.Name + ": " + text
		}
		p.Head("%d. %s", i+1, text)
		printed.Drink(p, &s.Spec, s.Allergens)
		printed.NewAllergens(p, s.NewAllergens)
		printed.Ask(p, s.Ask)
		hop := ""
		if i > 0 {
			hop = "; " + terminal.Number(s.HopJND, 1) + " noticeable steps from the one before"
		}
		p.Line("     %s, %s; %s %% vol%s; score %s", s.Spec.Method, s.Spec.Service, terminal.Number(s.ABVPct, 1), hop, words.Points(s.Score))
	}
	p.Head("%d pours of %s mL: %s mL in all, with %s g of ethanol%s", len(stops), terminal.Number(a.PourML, 0), terminal.Number(a.VolumeML, 0),
		terminal.Number(a.EthanolG, 1), printed.StandardDrinks(a.Servings))
	var cautions printed.Cautions
	cautions.Add("", a.Cautions)
	cautions.Show(p, everyCaution)
}
