package part

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Unfit lists what of a drink a guest must not have, besides allergens: animal products,
// alcohol, and too high a strength. abv is that of the drink, in % vol.
func Unfit(s *flavor.Spec, abv float64, g *guest.Guest) []string {
	var out []string
	add := func(what string, holds func(*flavor.Profile) bool) {
		var from []string
		for _, b := range Bottles(s) {
			if holds(b) {
				from = append(from, b.Name)
			}
		}
		if len(from) > 0 {
			out = append(out, say.It("part.holds", "What", what, "From", words.List(from)))
		}
	}
	for _, animal := range g.NoAnimal {
		holds := func(b *flavor.Profile) bool { return slices.Contains(b.Animal, animal) }
		switch animal {
		case flavor.Finings:
			add(say.It("part.cleared-with-animals"), holds)
		case flavor.Insect:
			add(animal, func(b *flavor.Profile) bool { return holds(b) && !b.MayHoldInsect() })
			add(say.It("part.maybe-insect"), (*flavor.Profile).MayHoldInsect)
		default:
			add(animal, holds)
		}
	}
	switch {
	case g.NoTrace:
		add(say.It("part.alcohol"), func(b *flavor.Profile) bool { return b.ABV.Value > 0 })
		add(say.It("part.trace-of-alcohol"), func(b *flavor.Profile) bool { return b.ABV.Value == 0 && !b.StatesNoAlcohol() })
	case g.NoAlcohol:
		add(say.It("part.alcohol"), func(b *flavor.Profile) bool { return b.ABV.Value > flavor.NoAlcoholABV })
	case g.TooStrong(abv):
		out = append(out, say.It("part.comes-to", "Strength", words.Figure(abv, 1)))
	}
	return out
}
