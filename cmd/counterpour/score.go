package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api/shape"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
	"counterpour/webui/words"
)

// newScore scores a draft spec.
//
//	counterpour score draft.txt
//	counterpour score - --json < draft.txt
func newScore(open premises.Kitchens) *cobra.Command {
	var asJSON *bool
	var arithmetic, partial bool
	var cautions *bool
	cmd := &cobra.Command{
		Use:   "score [FILE|-]",
		Short: "Score a draft and say how to fix it",
		Long: `Reads a draft, one pour a line, from a file or from the input, and says what is
in the glass, how well it fits its family of drinks and how to fix it.

  Halyard Sour
  2 oz London dry gin
  3/4 oz lemon juice
  1/2 oz simple syrup
  shake, up`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			text, file, err := terminal.ReadDraft(cmd, args)
			if err != nil {
				return err
			}
			house, done, err := premises.SnapshotOrNone(cmd.Context(), open, "")
			if err != nil {
				return err
			}
			defer done()
			answer, err := shape.AnswerScore(cmd.Context(), house, shape.ScoreBody{Draft: shape.Draft{Text: &text}, Explain: arithmetic, Partial: partial})
			if err != nil {
				return terminal.Explain(err, file)
			}
			return terminal.Deliver(cmd, *asJSON, answer, func(p *terminal.Page, a *shape.ScoreAnswer) { showScore(p, a, *cautions) })
		},
	}
	asJSON, cautions = terminal.AddJSON(cmd), printed.AddCautionsFlag(cmd)
	cmd.Flags().BoolVar(&partial, "partial", false, "score the lines that can be read while others cannot, and list those")
	cmd.Flags().BoolVar(&arithmetic, "explain", false, "also show the arithmetic of the score, line by line")
	return cmd
}

func showScore(p *terminal.Page, a *shape.ScoreAnswer, everyCaution bool) {
	p.Line("%s", title(a.Spec.Name, a.Spec.Method, a.Spec.Service))
	for _, x := range a.Spec.Pours {
		asked := ""
		if x.Match.How == string(flavor.MatchFuzzy) {
			asked = fmt.Sprintf("read from %q", x.Match.Asked)
		}
		p.Row(printed.Amount(x.Amount, x.Unit), x.Name, terminal.Number(x.ML, 2)+" mL", asked)
	}
	for _, n := range a.Spec.Notes {
		p.Line("  note: %s", n)
	}
	if len(a.Incomplete) > 0 {
		p.Head("Incomplete: these lines are not in what follows")
	}
	for _, e := range a.Incomplete {
		p.Line("  %s: %s", e.Location, e.Message)
	}
	p.Head("Score %s of 100: %s", words.Points(a.Score), strings.ToLower(words.Verdict(weigh.Verdict(a.Verdict))))
	showFaults(p, a)
	showFinished(p, &a.Finished)
	p.Head("Family")
	for _, t := range a.Templates {
		p.Row(t.Name, terminal.Number(100*t.Probability, 1)+" % likely", "fit "+terminal.Number(t.Fit, 1))
	}
	if len(a.Explanation) > 0 {
		p.Head("How the score is worked out")
	}
	for _, step := range a.Explanation {
		p.Line("  %s", step.Text)
	}
	showAllergens(p, a.Allergens)
	var cautions printed.Cautions
	cautions.Add("", a.Cautions)
	cautions.Show(p, everyCaution)
}

func showFaults(p *terminal.Page, a *shape.ScoreAnswer) {
	for _, f := range a.Faults {
		if f.Axis == ratio.Method.String() { // method has no measure in steps
			p.Row(f.Word+":", f.Text)
			continue
		}
		p.Row(f.Word+":", f.Text, "("+steps(f)+")")
	}
	if len(a.Fixes) > 0 {
		p.Head("To fix it, one of")
	}
	for i, f := range a.Fixes {
		p.Row(fmt.Sprintf("%d.", i+1), f.Text, "score "+words.Points(f.Score))
	}
}

// steps says how far off a fault is. Faults that are not about the ratio have no
// plus-or-minus.
func steps(f shape.Fault) string {
	if f.PlusMinus == 0 {
		return terminal.Number(f.Deviation, 1) + " noticeable steps"
	}
	return terminal.Number(f.Deviation, 1) + " ± " + terminal.Number(f.PlusMinus, 1) + " noticeable steps"
}

func showFinished(p *terminal.Page, f *shape.Finished) {
	p.Head("Finished")
	for _, r := range mix.Readouts() {
		value, spread, _ := f.Read(r.Key) // a test of package api checks that every key exists
		row := []string{strings.ToLower(r.Label), reading(&r, value, spread)}
		if r.Key == "ethanol_g" {
			row[1] += printed.StandardDrinks(f.Servings)
		}
		p.Row(row...)
	}
	p.Row("glass", f.Glass)
	p.Row("looks", f.Colour.Words)
}

// reading formats a figure of a drink, with its spread and its unit.
func reading(r *mix.Readout, value, spread float64) string {
	said := terminal.Number(r.Shown(value), r.Digits)
	if spread > 0 {
		said += " ± " + terminal.Number(spread, r.Digits)
	}
	return said + " " + r.Unit
}

func showAllergens(p *terminal.Page, allergens []shape.Allergen) {
	p.Head("Allergens")
	lines := printed.AllergenLines(allergens)
	for _, l := range lines {
		p.Row(l[0], l[1])
	}
	if len(lines) == 0 {
		p.Row("none is recorded for these pours; read the labels")
	}
}

// title returns the name of a drink and how it is made.
func title(name, method, service string) string {
	if name == "" {
		name = "A drink without a name"
	}
	return name + " (" + method + ", " + service + ")"
}
