package training

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/shape/training"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
)

// newFlight plans a tasting flight.
//
//	counterpour flight Ropewalk --axis sour --tasters 8
func newFlight(open premises.Kitchens) *cobra.Command {
	var asJSON *bool
	var where string
	var body training.FlightBody
	cmd := &cobra.Command{
		Use:   "flight DRINK --axis AXIS",
		Short: "Plan a tasting flight: one drink, a little more and a little less of something",
		Long: `Plans small builds of one drink that differ along one axis in noticeable steps, with
a code for each glass, the order in which each taster gets them, and what to measure for
all. DRINK is a file with a draft, one pour a line, - for the input, or the name of a
drink of the house or of a proven one, such as Daiquiri. A flight that holds more alcohol than two standard drinks for each
taster is refused.`,
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			file, err := terminal.ReadDraftOrName(cmd, args[0], &body.Text, &body.Drink)
			if err != nil {
				return err
			}
			return premises.Ask(cmd, open, where, file, *asJSON, func(house *service.Snapshot) (*training.FlightAnswer, error) {
				return training.AnswerFlight(house, body)
			}, showFlight)
		},
	}
	asJSON = terminal.AddJSON(cmd)
	cmd.Flags().StringVar(&body.Axis, "axis", "", "what differs: strong, sweet, sour, bitter or long")
	cmd.Flags().IntVar(&body.Builds, "builds", training.DefaultBuilds, "how many, 3 or 5, the drink as it is in the middle")
	cmd.Flags().Float64Var(&body.StepJND, "step", training.DefaultStepJND, "noticeable steps between neighbours, 0.5 to 4")
	cmd.Flags().Float64Var(&body.BuildML, "build", 0, "what each taster gets of each, in mL, 10 to 120; 0 for 60 or as much as is safe")
	cmd.Flags().IntVar(&body.Tasters, "tasters", training.DefaultTasters, "how many taste, 1 to 60")
	cmd.Flags().StringVar(&body.Seed, "seed", "", "digits and letters; the same give the same codes and orders")
	premises.AddFlag(cmd, &where)
	return cmd
}

// newTriangle plans a triangle test.
//
//	counterpour triangle Ropewalk "agave syrup" --tasters 12
func newTriangle(open premises.Kitchens) *cobra.Command {
	var asJSON *bool
	var where string
	var body training.TriangleBody
	cmd := &cobra.Command{
		Use:   "triangle DRINK COVER",
		Short: "Plan a triangle test: can anybody tell the cover from the drink?",
		Long: `Plans a test in which each taster gets three glasses, two of them alike, and says which
is the odd one: how many tasters it takes, what each is handed, from how many right
answers the two count as different, and how to pour both. DRINK is a drink of the house
or a proven one; COVER is what is poured in it instead, or another such drink. Who is
handed what is not for the tasters.`,
		Args: cobra.ExactArgs(2),
		RunE: func(cmd *cobra.Command, args []string) error {
			body.Drink, body.Cover = args[0], args[1]
			return premises.Ask(cmd, open, where, "", *asJSON, func(house *service.Snapshot) (*training.TriangleAnswer, error) {
				return training.AnswerTriangle(cmd.Context(), house, body)
			}, showTriangle)
		},
	}
	asJSON = terminal.AddJSON(cmd)
	cmd.Flags().Float64Var(&body.GlassML, "glass", training.DefaultGlassML, "what one of three glasses holds, in mL, 5 to 120")
	cmd.Flags().IntVar(&body.Tasters, "tasters", 0, "how many taste, 6 to 100; 0 for as many as it takes")
	cmd.Flags().Float64Var(&body.Alpha, "alpha", training.DefaultAlpha, "chance of calling alike drinks different, 0.001 to 0.2")
	cmd.Flags().Float64Var(&body.Power, "power", training.DefaultPower, "chance of finding out if the share can tell, 0.5 to 0.99")
	cmd.Flags().Float64Var(&body.Share, "share", training.DefaultShare, "share of people who can tell that is worth finding out, up to 1")
	cmd.Flags().StringVar(&body.Seed, "seed", "", "digits and letters; the same give the same codes and orders")
	premises.AddFlag(cmd, &where)
	return cmd
}

func showFlight(p *terminal.Page, a *training.FlightAnswer) {
	name := a.Builds[0].Spec.Name
	if name == "" {
		name = "the same drink"
	}
	p.Line("%d glasses of %s, the least %s first (seed %s)", len(a.Builds), name, a.Axis, a.Seed)
	if a.Watered {
		p.Line("Nothing differs but the water: stirred or shaken too short, as it should be, and too long.")
	}
	for _, b := range a.Builds {
		p.Head("%d  %s noticeable steps, %s %s", b.Code, signed(b.JND), terminal.Number(b.Value, 1), a.Unit)
		showRows(p, b.Pours, b.WaterML, b.Tops, a.Foams)
		p.Line("  %s mL in all, %s mL for each", terminal.Number(b.TotalML, 0), terminal.Number(b.PourML, 0))
	}
	p.Head("To each taster, in this order")
	for i, codes := range a.Orders {
		words := make([]string, len(codes))
		for k, code := range codes {
			words[k] = strconv.Itoa(code)
		}
		p.Row(fmt.Sprintf("  %d.", i+1), strings.Join(words, " "))
	}
	if a.Foams {
		p.Line("%s", noFoamKeeps)
	}
	if a.Hot {
		p.Line("Keep every batch hot in a flask, and pour all glasses at one heat: a cooler one gives itself away.")
	}
	if a.Stray != nil {
		p.Line("Note that %s moves too, by up to %s noticeable steps.", a.Stray.Axis, terminal.Number(a.Stray.JND, 1))
	}
	printed.Allergens(p, a.Allergens)
	printed.Care(p, a.Care, a.Cautions)
	p.Head("Once it is tasted: %s", a.Lesson)
}

func showTriangle(p *terminal.Page, a *training.TriangleAnswer) {
	p.Line("%d tasters; from %d right answers the two count as different (seed %s)", a.Tasters, a.LeastRight, a.Seed)
	p.Line("called different though alike: %s %%; found out if %s %% of people can tell: %s %%", terminal.Number(100*a.Alpha, 1),
		terminal.Number(100*a.Share, 0), terminal.Number(100*a.Power, 1))
	assumed := ""
	if a.Assumed {
		assumed = ", as of a neat spirit, since the house does not know the drink"
	}
	p.Line("%s g of alcohol for each taster%s%s", terminal.Number(a.EthanolG, 1), printed.StandardDrinks(a.Servings), assumed)
	for _, side := range []struct {
		mark string
		*training.TriangleSide
	}{{"A", a.A}, {"B", a.B}} {
		if side.TriangleSide == nil {
			continue
		}
		instead := ""
		if side.mark == "B" && a.Instead != nil {
			instead = ", without its " + a.Instead.Name
		}
		p.Head("%s: %s%s, for %d glasses", side.mark, side.Spec.Name, instead, side.Glasses)
		showRows(p, side.Pours, side.WaterML, side.Tops, side.Foams)
		if side.Foams {
			p.Line("  %s", noFoamKeeps)
		}
	}
	for _, name := range a.Unknown {
		p.Line("Nobody here knows %s: any allergen may be in it, and how it is poured is for you to say.", name)
	}
	switch {
	case a.A != nil:
		p.Head("In what every taster drinks, A and B alike")
		printed.Allergens(p, a.Allergens)
	case len(a.Allergens) > 0:
		p.Head("Of what is known")
		printed.Allergens(p, a.Allergens)
	}
	if a.Looks != "" {
		p.Line("Serve both in dark glasses: %s.", a.Looks)
	}
	p.Head("To each taster, from left to right; not for their eyes")
	for i, h := range a.Handed {
		p.Row(fmt.Sprintf("  %d.", i+1), h.Order, fmt.Sprintf("%d %d %d", h.Codes[0], h.Codes[1], h.Codes[2]))
	}
	printed.Care(p, a.Care, a.Cautions)
}

// noFoamKeeps says how a drink is poured whose foam no batch keeps.
const noFoamKeeps = "Foam does not keep in a batch: shake each round of glasses with ice just before it is served."

// showRows lists what is measured for several glasses; what is shaken gets its water of the
// ice.
func showRows(p *terminal.Page, rows []training.BatchRow, waterML float64, tops []training.BatchRow, shaken bool) {
	for _, r := range rows {
		p.Row("  "+measuredOut(&r), r.Name)
	}
	if waterML > 0 && !shaken {
		p.Row("  "+measuredOut(&training.BatchRow{Unit: string(flavor.Millilitre), ML: waterML}), "water, in place of the ice")
	}
	for _, r := range tops {
		p.Row("  "+measuredOut(&r), r.Name+", into each glass at the end")
	}
}

// measuredOut says an amount as it is measured: liquids to the marks of a vessel, solids as the
// drink has them.
func measuredOut(r *training.BatchRow) string {
	if r.Unit == string(flavor.Millilitre) {
		return strconv.FormatFloat(r.ML, 'f', -1, 64) + " mL"
	}
	return printed.Amount(r.Amount, r.Unit)
}

// signed writes a number with its sign.
func signed(v float64) string { return fmt.Sprintf("%+.1f", v) }
