package part

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/webui/words"
)

// Unfit lists what of a drink a guest must not have, besides allergens: animal products,
// alcohol, and too high a strength. abv is that of the drink, in % vol.
func Unfit(s *flavor.Spec, abv float64, g *guest.Guest) []string {
	var out []string
	say := func(what string, holds func(*flavor.Profile) bool) {
		var from []string
		for _, b := range Bottles(s) {
			if holds(b) {
				from = append(from, b.Name)
			}
		}
		if len(from) > 0 {
			out = append(out, "holds "+what+" ("+words.List(from)+")")
		}
	}
	for _, animal := range g.NoAnimal {
		what := animal
		if animal == flavor.Finings {
			what = "what may be cleared with finings from animals"
		}
		say(what, func(b *flavor.Profile) bool { return slices.Contains(b.Animal, animal) })
	}
	switch {
	case g.NoTrace:
		say("alcohol", func(b *flavor.Profile) bool { return b.ABV.Value > 0 })
		say("what may have a trace of alcohol", func(b *flavor.Profile) bool { return b.ABV.Value == 0 && !b.StatesNoAlcohol() })
	case g.NoAlcohol:
		say("alcohol", func(b *flavor.Profile) bool { return b.ABV.Value > flavor.NoAlcoholABV })
	case g.TooStrong(abv):
		out = append(out, "comes to "+words.Figure(abv, 1)+"\u00a0% vol")
	}
	return out
}
