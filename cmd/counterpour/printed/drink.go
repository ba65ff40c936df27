// Package printed is what several commands print of a drink in the same words: its pours,
// its allergens, its strength in standard drinks, its cautions.
package printed

import (
	"strings"

	"counterpour/api/shape"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// Amount formats an amount with its unit, as a draft writes it.
func Amount(v float64, unit string) string { return measure.FormatAmount(v, flavor.Unit(unit)) }

// Drink lists the pours and the allergens of a drink.
func Drink(p *terminal.Page, s *shape.Spec, allergens []shape.Allergen) {
	for _, x := range s.Pours {
		p.Row("   "+Amount(x.Amount, x.Unit), x.Ingredient)
	}
	lines := AllergenLines(allergens)
	for _, l := range lines {
		p.Line("     %s: %s", l[0], l[1])
	}
	if len(lines) == 0 {
		p.Line("     no allergen is recorded; read the labels")
	}
}

// Ask lists what to ask the guest before pouring.
func Ask(p *terminal.Page, questions []string) {
	for _, q := range questions {
		p.Line("     ask the guest: %s", q)
	}
}

// StandardDrinks formats the two measures that most labels state.
func StandardDrinks(servings []shape.Serving) string {
	text := ""
	for _, s := range servings {
		switch s.Country {
		case "United States":
			text += ", " + terminal.Number(s.Count, 1) + " US standard drinks"
		case "United Kingdom":
			text += ", " + terminal.Number(s.Count, 1) + " UK units"
		}
	}
	return text
}

// Cost returns a cost to append to a line; "" if there is none.
func Cost(cost *float64, currency string) string {
	if cost == nil {
		return ""
	}
	return strings.TrimRight("; costs "+terminal.Number(*cost, 2)+" "+currency, " ")
}
