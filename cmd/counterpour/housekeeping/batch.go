package housekeeping

import (
	"cmp"

	"github.com/spf13/cobra"

	"counterpour/api/shape"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house/prep"
)

// newBatch plans a batch.
//
//	counterpour house batch "Quay Sour" --serves 40 --from fridge --house bar.house
//	counterpour house batch draft.txt --bottle 750 --from freezer
func newBatch(open premises.Kitchens, where *string) *cobra.Command {
	var asJSON *bool
	var body shape.BatchBody
	cmd := &cobra.Command{
		Use:   "batch DRINK|FILE|- (--serves N | --bottle ML | --keg LITRES) [--house PATH]",
		Short: "Plan a batch: how much of each, the water for the ice, and how long it keeps",
		Long: `Plans a batch of a drink of the house, or of a draft, for a number of serves or to
fill a bottle or a keg, by volume and by weight. The water is what the ice would
have added. From the freezer, water that would turn it to slush is left for the
glass. What sparkles, and what must be fresh in each drink, is left out.`,
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if !oneOf(body.Servings != 0, body.BottleML != 0, body.KegLitres != 0) {
				return terminal.Usagef("say one of --serves, --bottle and --keg")
			}
			v, done, err := premises.AtHouse(cmd.Context(), open, *where)
			if err != nil {
				return err
			}
			defer done()
			file, err := terminal.ReadDraftOrName(cmd, args[0], &body.Text, &body.Drink)
			if err != nil {
				return err
			}
			answer, err := shape.AnswerBatch(cmd.Context(), v.Now(), body)
			if err != nil {
				return terminal.Explain(err, file)
			}
			return terminal.Deliver(cmd, *asJSON, answer, showBatch)
		},
	}
	asJSON = terminal.AddJSON(cmd)
	cmd.Flags().Float64Var(&body.Servings, "serves", 0, "how many to make")
	cmd.Flags().Float64Var(&body.BottleML, "bottle", 0, "volume of the bottle to fill, in mL, such as 750 or 1000")
	cmd.Flags().Float64Var(&body.KegLitres, "keg", 0, "volume of the keg to fill, in litres, such as 19")
	cmd.Flags().BoolVar(&body.JuiceApart, "juice-apart", false, "leave fresh juice out; it is pressed for each drink")
	cmd.Flags().StringVar(&body.From, "from", string(prep.Fridge), "where it is kept: fridge, freezer, or \"to order\" for shaking or stirring each, without water")
	return cmd
}

func showBatch(p *terminal.Page, a *shape.BatchAnswer) {
	p.Line("%s, %s servings of %s mL: %s mL in all, %s %% vol, ice forms at about %s °C", cmp.Or(a.Name, "A drink without a name"), terminal.Number(a.Servings, 1), terminal.Number(a.ServingML, 0),
		terminal.Number(a.TotalML, 0), terminal.Number(a.ABVPct, 1), terminal.Number(a.FreezingC, 0))
	for _, l := range a.Lines {
		p.Row("  "+l.Name, terminal.Number(l.JugML, 0)+" mL by volume", terminal.Number(l.ScaleG, 0)+" g by weight")
	}
	for _, part := range []struct {
		title string
		lines []shape.ApartLine
	}{{"To each drink, as it is made", a.Apart}, {"To each glass, at the end", a.Tops}} {
		if len(part.lines) > 0 {
			p.Head("%s", part.title)
		}
		for _, l := range part.lines {
			p.Row("  "+l.Name, terminal.Number(l.Amount, 2)+" "+l.Unit)
		}
	}
	if a.LaterML > 0 {
		p.Line("  and %s mL of water to each glass, since it would freeze in the batch", terminal.Number(a.LaterML, 0))
	}
	least := ""
	if len(a.Unpriced) > 0 {
		least = "at least "
	}
	p.Head("Costs %s%s %s", least, terminal.Number(a.Cost, 2), a.Currency)
	days := "days"
	if a.KeepDays == 1 {
		days = "day"
	}
	p.Line("Keeps %d %s at most. %s", a.KeepDays, days, a.Keep)
	for _, n := range a.Notes {
		p.Line("%s", n)
	}
	p.Line("Write the allergens and the date on the bottle; the labels of its ingredients decide.")
}
