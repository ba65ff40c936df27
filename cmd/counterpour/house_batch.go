package main

import (
	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
)

// batchAnswer is a drink made ahead.
type batchAnswer struct {
	ID        string      `json:"id"`
	Name      string      `json:"name"`
	Servings  float64     `json:"servings"`
	Lines     []batchLine `json:"lines"` // in the order of the spec, the water last
	Apart     []apartLine `json:"apart"` // for each drink, as it is made
	Tops      []apartLine `json:"tops"`  // for each glass, at the end
	TotalML   float64     `json:"total_ml"`
	ServingML float64     `json:"serving_ml"`
	LaterML   float64     `json:"later_ml"` // water for each glass that would freeze in the freezer
	ABVPct    float64     `json:"abv_pct"`
	FreezingC float64     `json:"freezing_c"`
	Cost      float64     `json:"cost"`
	Currency  string      `json:"currency"`
	Unpriced  []string    `json:"unpriced"`
	KeepDays  int         `json:"keep_days"` // at most; 0 is do not make it ahead
	Keep      string      `json:"keep"`
	Notes     []string    `json:"notes"`
}

// batchLine is one thing to pour, by volume and by weight, and as a jug and a
// scale show it.
type batchLine struct {
	Name   string  `json:"name"`
	ML     float64 `json:"ml"`
	G      float64 `json:"g"`
	JugML  float64 `json:"jug_ml"`
	ScaleG float64 `json:"scale_g"`
}

type apartLine struct {
	Name   string  `json:"name"`
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
}

// newBatch plans a batch.
//
//	counterpour house batch "Quay Sour" --serves 40 --from fridge --house bar.house
func newBatch(open kitchens, where *string) *cobra.Command {
	var asJSON *bool
	var serves, bottle, keg float64
	var from string
	cmd := &cobra.Command{
		Use:   "batch DRINK (--serves N | --bottle ML | --keg LITRES) --house PATH",
		Short: "Plan a batch: how much of each, the water for the ice, and how long it keeps",
		Long: `Plans a batch of a drink, for so many serves or to fill a bottle or a keg, by
volume and by weight. The water is what the ice would have added. From the
freezer, water that would turn it to slush is left for the glass. What sparkles,
and what has to be fresh in each drink, stays out.`,
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			t, err := targetOf(serves, bottle, keg, from)
			if err != nil {
				return err
			}
			v, done, err := atHouse(cmd.Context(), open, *where)
			if err != nil {
				return err
			}
			defer done()
			drinks, err := drinksNamed(v, args)
			if err != nil {
				return err
			}
			answer, err := batchOf(cmd, v, &drinks[0], t)
			if err != nil {
				return err
			}
			return deliver(cmd, *asJSON, answer, showBatch)
		},
	}
	asJSON = addJSON(cmd)
	cmd.Flags().Float64Var(&serves, "serves", 0, "how many to make")
	cmd.Flags().Float64Var(&bottle, "bottle", 0, "what the bottle to fill holds, in mL, such as 750 or 1000")
	cmd.Flags().Float64Var(&keg, "keg", 0, "what the keg to fill holds, in litres, such as 19")
	cmd.Flags().StringVar(&from, "from", string(prep.Fridge), "where it waits: fridge, freezer, or \"to order\" for shaking or stirring each, without water")
	return cmd
}

// targetOf reads what to make; one size must be given, and no more.
func targetOf(serves, bottle, keg float64, from string) (prep.Target, error) {
	given := 0
	for _, v := range []float64{serves, bottle, keg} {
		if v != 0 {
			given++
		}
	}
	if given != 1 {
		return prep.Target{}, usagef("say one of --serves, --bottle and --keg")
	}
	t := prep.Target{Servings: serves, Place: prep.Place(from)}
	switch {
	case bottle != 0:
		t.Fill = prep.Container{Name: number(bottle, 0) + " mL bottle", ML: bottle}
	case keg != 0:
		t.Fill = prep.Container{Name: number(keg, 1) + " litre keg", ML: 1000 * keg}
	}
	return t, nil
}

func batchOf(cmd *cobra.Command, v *service.Venue, d *service.Drink, t prep.Target) (*batchAnswer, error) {
	kept, err := house.All[house.Made](cmd.Context(), v.Store())
	if err != nil {
		return nil, err
	}
	b, err := prep.Scale(v.Kitchen().Mixer, d.Spec, t, house.Items(kept))
	if err != nil {
		return nil, err
	}
	now := v.Now()
	cost := now.Prices.Batch(b)
	a := &batchAnswer{ID: d.ID, Name: d.Spec.Name, Servings: rounded(b.Servings, 1), Lines: []batchLine{}, Apart: apartLines(b.Apart), Tops: apartLines(b.Tops),
		TotalML: rounded(b.TotalML, 0), ServingML: rounded(b.ServingML, 1), LaterML: rounded(b.LaterML, 1), ABVPct: rounded(b.ABVPct, 1),
		FreezingC: rounded(b.FreezingC, 1), Cost: rounded(cost.Amount, 2), Currency: cost.Currency, Unpriced: []string{},
		KeepDays: b.Keep.Days, Keep: b.Keep.Text, Notes: append([]string{}, b.Notes...)}
	for _, l := range b.Lines {
		a.Lines = append(a.Lines, batchLine{l.Name, rounded(l.ML, 1), rounded(l.G, 1), rounded(l.JugML, 2), rounded(l.ScaleG, 2)})
	}
	for _, id := range cost.Unpriced {
		a.Unpriced = append(a.Unpriced, nameOn(now.Shelf, id))
	}
	return a, nil
}

func apartLines(pours []flavor.Pour) []apartLine {
	out := []apartLine{}
	for _, p := range pours {
		out = append(out, apartLine{p.Profile.Name, p.Amount, string(p.Unit)})
	}
	return out
}

func showBatch(p *page, a *batchAnswer) {
	p.line("%s, %s serves of %s mL: %s mL in all, %s %% vol, ice forms at about %s °C", a.Name, number(a.Servings, 1), number(a.ServingML, 0),
		number(a.TotalML, 0), number(a.ABVPct, 1), number(a.FreezingC, 0))
	for _, l := range a.Lines {
		p.row("  "+l.Name, number(l.JugML, 0)+" mL by the jug", number(l.ScaleG, 0)+" g by the scale")
	}
	for _, part := range []struct {
		title string
		lines []apartLine
	}{{"To each drink, as it is made", a.Apart}, {"To each glass, at the end", a.Tops}} {
		if len(part.lines) > 0 {
			p.head("%s", part.title)
		}
		for _, l := range part.lines {
			p.row("  "+l.Name, number(l.Amount, 2)+" "+l.Unit)
		}
	}
	if a.LaterML > 0 {
		p.line("  and %s mL of water to each glass, which would freeze", number(a.LaterML, 0))
	}
	least := ""
	if len(a.Unpriced) > 0 {
		least = "at least "
	}
	p.head("Costs %s%s %s", least, number(a.Cost, 2), a.Currency)
	days := "days"
	if a.KeepDays == 1 {
		days = "day"
	}
	p.line("Keeps %d %s at most. %s", a.KeepDays, days, a.Keep)
	for _, n := range a.Notes {
		p.line("%s", n)
	}
	p.line("Write the allergens and the date on the bottle; the labels of what is in it decide.")
}
