package cover

import (
	"slices"

	"counterpour/flavor"
)

// Diets lists the words that [Guest.Keep] knows, in order.
func Diets() []string { return flavor.DietNames() }

// Keep adds a diet, such as "vegan" or "alcohol-free", to what the guest must
// not have; see [flavor.ParseDiet] for an unknown word.
func (g *Guest) Keep(diet string) error {
	d, err := flavor.ParseDiet(diet)
	if err != nil {
		return err
	}
	for _, a := range d.NoAnimal {
		if !slices.Contains(g.NoAnimal, a) {
			g.NoAnimal = append(g.NoAnimal, a)
		}
	}
	for _, a := range d.Avoid {
		if !slices.Contains(g.Avoid, a) {
			g.Avoid = append(g.Avoid, a)
		}
	}
	g.NoAlcohol, g.NoTrace = g.NoAlcohol || d.NoAlcohol, g.NoTrace || d.NoTrace
	return nil
}
