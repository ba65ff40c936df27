package printed

import (
	"strings"

	"counterpour/api/shape"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
)

// AllergenLines returns a line for each certainty: the allergens that the drink contains,
// those that it may contain, each with its pours, and what nobody has stated of a pour.
func AllergenLines(marks []shape.Allergen) [][2]string {
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

// Allergens lists the allergens of what is tasted.
func Allergens(p *terminal.Page, marks []shape.Allergen) {
	lines := AllergenLines(marks)
	for _, l := range lines {
		p.Line("  %s: %s", l[0], l[1])
	}
	if len(lines) == 0 {
		p.Line("  no allergen is recorded; read the labels")
	}
}

// NewAllergens names the allergens that the original drink does not have.
func NewAllergens(p *terminal.Page, names []string) {
	if len(names) > 0 {
		p.Line("     new allergens: %s", strings.Join(names, ", "))
	}
}

// CrossContact says what to clean for a guest with an allergy or a diet.
func CrossContact(p *terminal.Page, text string) {
	if text != "" {
		p.Line("%s", text)
	}
}
