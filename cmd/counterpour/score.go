package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"counterpour/api"
	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// newScore scores a draft spec.
//
//	counterpour score draft.txt
//	counterpour score - --json < draft.txt
func newScore(open kitchens) *cobra.Command {
	var asJSON *bool
	var arithmetic, partial bool
	var cautions *bool
	cmd := &cobra.Command{
		Use:   "score [FILE|-]",
		Short: "Score a draft and say how to fix it",
		Long: `Reads a draft, one pour a line, from a file or from the input, and says what is
in the glass, how it sits in its family of drinks and how to fix it.

  Halyard Sour
  2 oz London dry gin
  3/4 oz lemon juice
  1/2 oz simple syrup
  shake, up`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			text, file, err := readDraft(cmd, args)
			if err != nil {
				return err
			}
			house, done, err := demoOf(cmd.Context(), open)
			if err != nil {
				return err
			}
			defer done()
			answer, err := api.AnswerScore(cmd.Context(), house, api.ScoreBody{Draft: api.Draft{Text: &text}, Explain: arithmetic, Partial: partial})
			if err != nil {
				return explain(err, file)
			}
			return deliver(cmd, *asJSON, answer, func(p *page, a *api.ScoreAnswer) { showScore(p, a, *cautions) })
		},
	}
	asJSON, cautions = addJSON(cmd), addCautions(cmd)
	cmd.Flags().BoolVar(&partial, "partial", false, "score the lines that can be read while others cannot, and list those")
	cmd.Flags().BoolVar(&arithmetic, "explain", false, "also show the arithmetic of the score, line by line")
	return cmd
}

func showScore(p *page, a *api.ScoreAnswer, everyCaution bool) {
	p.line("%s", title(a.Spec.Name, a.Spec.Method, a.Spec.Service))
	for _, x := range a.Spec.Pours {
		asked := ""
		if x.Match.How == string(flavor.MatchFuzzy) {
			asked = fmt.Sprintf("read from %q", x.Match.Asked)
		}
		p.row(amount(x.Amount, x.Unit), x.Name, number(x.ML, 2)+" mL", asked)
	}
	for _, n := range a.Spec.Notes {
		p.line("  note: %s", n)
	}
	if len(a.Incomplete) > 0 {
		p.head("Incomplete: these lines are not in what follows")
	}
	for _, e := range a.Incomplete {
		p.line("  %s: %s", e.Location, e.Message)
	}
	p.head("Score %s: %s", number(a.Score, 1), a.Verdict)
	showFaults(p, a)
	showFinished(p, &a.Finished)
	p.head("Family")
	for _, t := range a.Templates {
		p.row(t.Name, number(100*t.Probability, 1)+" % likely", "fit "+number(t.Fit, 1))
	}
	if len(a.Explanation) > 0 {
		p.head("How the score comes about")
	}
	for _, step := range a.Explanation {
		p.line("  %s", step.Text)
	}
	showAllergens(p, a.Allergens)
	var cautions cautionList
	cautions.add("", a.Cautions)
	cautions.show(p, everyCaution)
}

func showFaults(p *page, a *api.ScoreAnswer) {
	for _, f := range a.Faults {
		p.row(f.Word+":", f.Text, "("+steps(f)+")")
	}
	if len(a.Fixes) > 0 {
		p.head("To fix it, one of")
	}
	for i, f := range a.Fixes {
		p.row(fmt.Sprintf("%d.", i+1), f.Text, "score "+number(f.Score, 1))
	}
}

// steps says how far a fault is out; what does not show in the ratio has no
// plus-or-minus of its own.
func steps(f api.Fault) string {
	if f.PlusMinus == 0 {
		return number(f.Deviation, 1) + " noticeable steps"
	}
	return number(f.Deviation, 1) + " ± " + number(f.PlusMinus, 1) + " noticeable steps"
}

func showFinished(p *page, f *api.Finished) {
	p.head("Finished")
	p.row("volume", number(f.VolumeML, 0)+" ± "+number(f.PlusMinus.VolumeML, 0)+" mL")
	p.row("strength", number(f.ABVPct, 1)+" ± "+number(f.PlusMinus.ABVPct, 1)+" % vol")
	p.row("sugar", number(f.SugarPer100, 1)+" ± "+number(f.PlusMinus.SugarPer100, 1)+" g/100 mL")
	p.row("acid", number(f.AcidPer100, 2)+" ± "+number(f.PlusMinus.AcidPer100, 2)+" g/100 mL")
	p.row("bitter", number(f.Bitter, 0)+" mg/L as quinine")
	p.row("dilution", number(f.DilutionPct, 0)+" ± "+number(f.PlusMinus.DilutionPct, 0)+" %")
	p.row("ethanol", number(f.EthanolG, 1)+" g"+standardDrinks(f.Servings))
	p.row("energy", number(f.EnergyKcal, 0)+" kcal")
	p.row("temperature", number(f.TemperatureC, 1)+" °C")
	p.row("glass", f.Glass)
	p.row("looks", f.Colour.Words)
}

// standardDrinks says the two measures that most labels give.
func standardDrinks(servings []api.Serving) string {
	text := ""
	for _, s := range servings {
		switch s.Country {
		case "United States":
			text += ", " + number(s.Count, 1) + " US standard drinks"
		case "United Kingdom":
			text += ", " + number(s.Count, 1) + " UK units"
		}
	}
	return text
}

func showAllergens(p *page, allergens []api.Allergen) {
	p.head("Allergens")
	lines := allergenLines(allergens)
	for _, l := range lines {
		p.row(l[0], l[1])
	}
	if len(lines) == 0 {
		p.row("none is recorded for these pours; read the labels")
	}
}

// title names a drink and how it is made.
func title(name, method, service string) string {
	if name == "" {
		name = "A drink without a name"
	}
	return name + " (" + method + ", " + service + ")"
}

func amount(v float64, unit string) string { return measure.FormatAmount(v, flavor.Unit(unit)) }
