package cover

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
)

// diets are the words for what a guest eats and drinks, and what each rules out.
var diets = map[string]Guest{
	"vegan":        {NoAnimal: []string{"milk", "egg", "honey", "fish", "insect", "meat"}},
	"vegetarian":   {NoAnimal: []string{"fish", "insect", "meat"}},
	"no egg":       {NoAnimal: []string{"egg"}, Avoid: []flavor.Allergen{flavor.Eggs}},
	"no dairy":     {NoAnimal: []string{"milk"}, Avoid: []flavor.Allergen{flavor.Milk}},
	"no honey":     {NoAnimal: []string{"honey"}},
	"alcohol-free": {NoAlcohol: true},
}

// Diets lists the words that [Guest.Keep] knows, in order.
func Diets() []string {
	out := make([]string, 0, len(diets))
	for w := range diets {
		out = append(out, w)
	}
	slices.Sort(out)
	return out
}

// Keep adds a diet, such as "vegan" or "alcohol-free", to what the guest must
// not have. An unknown word is a fault that lists the known ones: one that is
// passed over would be a guest served wrong.
func (g *Guest) Keep(diet string) error {
	d, ok := diets[strings.ToLower(strings.Join(strings.Fields(diet), " "))]
	if !ok {
		return &flavor.Fault{Kind: flavor.ErrInvalid, Location: "diet", Value: diet,
			Message: fmt.Sprintf("%q is no diet known here; use %s", diet, strings.Join(Diets(), ", ")), Suggest: Diets()}
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
	g.NoAlcohol = g.NoAlcohol || d.NoAlcohol
	return nil
}
