package flavor_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

func TestWhatIsOpenIsNamed(t *testing.T) {
	almost := func(keep ...flavor.Allergen) []flavor.Allergen {
		return slices.DeleteFunc(flavor.Allergens(), func(a flavor.Allergen) bool { return slices.Contains(keep, a) })
	}
	has := []flavor.AllergenMark{{Allergen: flavor.Eggs, Certainty: flavor.Contains}}
	for name, c := range map[string]struct {
		of   flavor.Profile
		want string
	}{
		"all is known":                {flavor.Profile{AllergensKnown: true}, ""},
		"nothing is stated":           {flavor.Profile{}, "any allergen"},
		"one is there":                {flavor.Profile{AllergenMarks: has}, "any other allergen"},
		"a few are open":              {flavor.Profile{FreeOf: almost(flavor.Celery, flavor.Mustard, flavor.Sulphites)}, "celery, mustard or sulphites"},
		"a few are open, one is in":   {flavor.Profile{AllergenMarks: has, FreeOf: almost(flavor.Eggs, flavor.Celery)}, "celery"},
		"a few are cleared":           {flavor.Profile{FreeOf: []flavor.Allergen{flavor.TreeNuts, flavor.Peanuts}}, "any allergen but peanuts and tree nuts"},
		"one is in, one is cleared":   {flavor.Profile{AllergenMarks: has, FreeOf: []flavor.Allergen{flavor.Milk}}, "any other allergen but milk"},
		"half are open, half are not": {flavor.Profile{FreeOf: flavor.Allergens()[7:]}, "gluten, crustaceans, eggs, fish, peanuts, soybeans or milk"},
	} {
		assert.Equal(t, c.want, flavor.OpenWords(c.of.Open(), marked(&c.of)), name)
	}
}

func marked(p *flavor.Profile) (out []flavor.Allergen) {
	for _, m := range p.AllergenMarks {
		out = append(out, m.Allergen)
	}
	return out
}

// What is open is exactly what a guest who avoids it may not have for want of a label.
func TestWhatIsOpenIsNotStated(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		some := rapid.SliceOfDistinct(rapid.SampledFrom(flavor.Allergens()), rapid.ID)
		p := flavor.Profile{AllergensKnown: rapid.Bool().Draw(t, "known"), FreeOf: some.Draw(t, "free of")}
		for _, a := range some.Draw(t, "contains") {
			if !slices.Contains(p.FreeOf, a) {
				p.AllergenMarks = append(p.AllergenMarks, flavor.AllergenMark{Allergen: a, Certainty: flavor.Contains})
			}
		}
		for _, a := range flavor.Allergens() {
			assert.Equal(t, p.Clear([]flavor.Allergen{a}) == flavor.NotStated, slices.Contains(p.Open(), a), a)
		}
		assert.Equal(t, len(p.Open()) == 0, flavor.OpenWords(p.Open(), marked(&p)) == "")
	})
}
