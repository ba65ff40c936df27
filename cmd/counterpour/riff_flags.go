package main

import (
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/shape"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
)

// guestFlags are the flags about the guest.
type guestFlags struct {
	avoid, diet *[]string
	maxABV      *float64
	maxCost     *float64
}

// add registers the flags whose fields are not nil.
func (g guestFlags) add(cmd *cobra.Command) {
	cmd.Flags().StringArrayVar(g.avoid, "avoid", nil, "an allergen that the guest must not have; may be repeated")
	cmd.Flags().StringArrayVar(g.diet, "diet", nil, "what the guest keeps to: vegan, vegetarian, no egg, no dairy, no honey, alcohol-free (up to 0.5 % vol) or 0.0 % alcohol; may be repeated")
	if g.maxABV != nil {
		cmd.Flags().Float64Var(g.maxABV, "max-abv", 0, "highest strength of the finished drink, in % vol; 0 for any")
	}
	if g.maxCost != nil {
		cmd.Flags().Float64Var(g.maxCost, "max-cost", 0, "highest cost of all pours of one drink, by the house's prices; 0 for any")
	}
}

const (
	houseFlag           = "file that the house is kept in, or a postgres:// address; the invented demo house if empty"
	houseOrNoneFlag     = "file that the house is kept in, or a postgres:// address; no house if empty"
	substitutesCostFlag = "highest cost of the substitutes of one drink, by the house's prices; 0 for any"
	seedFlag            = "another number gives another list of much the same quality"
)

// stockFrom reads the ids of a stock file; nil if path is empty.
func stockFrom(house *service.Snapshot, path string) ([]string, error) {
	if path == "" {
		return nil, nil
	}
	text, err := terminal.ReadFile(path)
	if err != nil {
		return nil, err
	}
	ids, err := house.StockList(text)
	if err != nil {
		return nil, terminal.Explain(err, path)
	}
	return ids, nil
}

// showDrink lists the pours and the allergens of a drink.
func showDrink(p *terminal.Page, s *shape.Spec, allergens []shape.Allergen) {
	for _, x := range s.Pours {
		p.Row("   "+amount(x.Amount, x.Unit), x.Ingredient)
	}
	lines := allergenLines(allergens)
	for _, l := range lines {
		p.Line("     %s: %s", l[0], l[1])
	}
	if len(lines) == 0 {
		p.Line("     no allergen is recorded; read the labels")
	}
}

// showNew names the allergens that the original drink does not have.
func showNew(p *terminal.Page, names []string) {
	if len(names) > 0 {
		p.Line("     new allergens: %s", strings.Join(names, ", "))
	}
}

// showAsk lists what to ask the guest before pouring.
func showAsk(p *terminal.Page, questions []string) {
	for _, q := range questions {
		p.Line("     ask the guest: %s", q)
	}
}

// showCross says what to clean for a guest with an allergy or a diet.
func showCross(p *terminal.Page, text string) {
	if text != "" {
		p.Line("%s", text)
	}
}

// allergenLines returns a line for each certainty: the allergens that the drink contains,
// those that it may contain, each with its pours, and what nobody has stated of a pour.
func allergenLines(marks []shape.Allergen) [][2]string {
	var out [][2]string
	var known []flavor.Allergen
	var open []shape.Allergen
	for _, c := range flavor.Certainties() {
		var names []string
		for _, m := range marks {
			switch {
			case m.Certainty != string(c):
			case c == flavor.Unstated:
				open = append(open, m)
			default:
				known = append(known, flavor.Allergen(m.Allergen))
				names = append(names, m.Allergen+" ("+terminal.OrNone(m.From)+")")
			}
		}
		if len(names) > 0 {
			out = append(out, [2]string{string(c), terminal.OrNone(names)})
		}
	}
	if len(open) > 0 {
		out = append(out, [2]string{"not stated", strings.Join(openLines(open, known), "; ") + "; read the label"})
	}
	return out
}

// openLines says what nobody has stated of each pour, beside what is known of the drink.
func openLines(open []shape.Allergen, known []flavor.Allergen) []string {
	of := map[string][]flavor.Allergen{}
	var order []string // what is open in words, as the pours come
	from := map[string][]string{}
	var pours []string
	for _, m := range open {
		for _, id := range m.From {
			if of[id] == nil {
				pours = append(pours, id)
			}
			of[id] = append(of[id], flavor.Allergen(m.Allergen))
		}
	}
	for _, id := range pours {
		what := flavor.OpenWords(of[id], known)
		if from[what] == nil {
			order = append(order, what)
		}
		from[what] = append(from[what], id)
	}
	var out []string
	for _, what := range order {
		out = append(out, what+" ("+terminal.OrNone(from[what])+")")
	}
	return out
}

// costText returns a cost to append to a line; "" if there is none.
func costText(cost *float64, currency string) string {
	if cost == nil {
		return ""
	}
	return strings.TrimRight("; costs "+terminal.Number(*cost, 2)+" "+currency, " ")
}
