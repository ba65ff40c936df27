package house

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/carrier"
)

// Steeped is a nut, a seed or a grain that steeps in what the house makes and is strained out: it
// gives its aroma and what it carries, and is none of the volume. It keeps some of the liquid, so
// that what was made is measured where that counts. Common practice, no source.
type Steeped struct {
	Name  string  `json:"name"` // as it is written: "toasted sesame seeds"
	Grams float64 `json:"grams"`
}

// mostSteeped is how many things steep in one recipe at most.
const mostSteeped = 20

func checkSteeped(list []Steeped) error {
	if len(list) > mostSteeped {
		return invalid("parts", len(list), "at most %d things steep in one recipe", mostSteeped)
	}
	for _, s := range list {
		if err := checks(checkLine("parts", s.Name, true), checkRange("parts", s.Grams, 0.1, 100000)); err != nil {
			return err
		}
		if SolidIn(s.Name) == "" {
			return invalid("parts", s.Name, "%q is no nut, seed or grain known here", s.Name)
		}
	}
	return nil
}

// solids are what steeps and is strained out, with the words after which the catalogue calls what
// is made of it. Common practice, no source.
var solids = []struct{ name, made string }{
	{"almond", "orgeat"}, {"apricot kernel", "apricot kernel orgeat"}, {"hazelnut", "hazelnut orgeat"}, {"walnut", "walnut orgeat"}, {"macadamia", "macadamia orgeat"},
	{"pistachio", "pistachio orgeat"}, {"peanut", "peanut orgeat"}, {"groundnut", "peanut orgeat"}, {"sesame", "sesame orgeat"}, {"oat", "oat orgeat"}, {"cashew", "cashew drink"},
	{"pecan", "walnut orgeat"}, {"brazil nut", "macadamia orgeat"}, {"pine nut", ""}, {"chestnut", ""}, {"pumpkin seed", ""}, {"sunflower seed", ""}, {"poppy seed", ""},
	{"melon seed", ""}, {"rice", "rice drink"}, {"barley", ""}, {"tiger nut", ""}, {"coconut flake", "coconut syrup"}, {"desiccated coconut", "coconut syrup"},
}

// handled are words beside such a name that change nothing of what it is.
var handled = []string{"blanched", "toasted", "roasted", "raw", "whole", "sliced", "flaked", "slivered", "ground", "chopped", "crushed", "peeled", "skinned", "unsalted", "unroasted", "shelled",
	"black", "white", "brown", "rolled", "milled", "soaked", "seed", "kernel", "nut", "meal", "flake", "sweet", "of"}

// SolidIn returns what solid a name is of, such as "almond" for "blanched almonds"; "" if it is of
// none, or of something made of it.
func SolidIn(name string) string {
	words := strings.Fields(flavor.NormaliseName(name))
	for i, w := range words {
		words[i] = strings.TrimSuffix(w, "s")
	}
	for _, s := range solids {
		is := strings.Fields(s.name)
		for at := 0; at+len(is) <= len(words); at++ {
			if !slices.Equal(words[at:at+len(is)], is) {
				continue
			}
			rest := slices.Concat(words[:at], words[at+len(is):])
			if !slices.ContainsFunc(rest, func(w string) bool { return !slices.Contains(handled, w) }) {
				return s.name
			}
		}
	}
	return ""
}

// usualGPerML is how much of a solid usually steeps in what becomes of it: 300 g of almonds in a
// litre of orgeat. Common practice, no source.
const usualGPerML = 0.3

// mostTimes is how many times the usual aroma more of a solid gives at most.
const mostTimes = 2.0

// steep adds what steeped in a recipe: its aroma as what the trade makes of it has, by how much
// there is, and what it carries.
func (s *sum) steep(p *flavor.Profile, list []Steeped, shelf *Shelf) {
	for _, x := range list {
		p.AllergenMarks, p.Animal = withCarried(p.AllergenMarks, p.Animal, x.Name)
		made := ""
		for _, known := range solids {
			if known.name == SolidIn(x.Name) {
				made = known.made
			}
		}
		like, _, err := shelf.Resolve(made)
		if made == "" || err != nil {
			continue
		}
		times := min(x.Grams/s.ml/usualGPerML, mostTimes)
		for i := range p.Aroma {
			p.Aroma[i] += like.Aroma[i] * times
		}
		for _, m := range like.Materials {
			p.Materials = withMaterial(p.Materials, m.Material, m.Intensity*times)
		}
		p.AromaSpread = max(p.AromaSpread, like.AromaSpread)
		p.Fat.Value += like.Fat.Value * times
		if like.AllergensKnown {
			for _, m := range like.AllergenMarks {
				p.AllergenMarks = withMark(p.AllergenMarks, m)
			}
		}
	}
	p.FreeOf = slices.DeleteFunc(p.FreeOf, func(a flavor.Allergen) bool {
		return slices.ContainsFunc(p.AllergenMarks, func(m flavor.AllergenMark) bool { return m.Allergen == a })
	})
	slices.SortFunc(p.Materials, func(a, b flavor.MaterialShare) int { return strings.Compare(a.Material, b.Material) })
}

// withCarried adds what a name carries to marks and animals.
func withCarried(marks []flavor.AllergenMark, animal []string, name string) ([]flavor.AllergenMark, []string) {
	carried := carrier.Of(name)
	for _, m := range carried.Marks {
		marks = withMark(marks, m)
	}
	for _, a := range carried.Animal {
		animal = appendNew(animal, a)
	}
	return marks, animal
}

// withMark adds a mark, with the surer of two certainties.
func withMark(marks []flavor.AllergenMark, m flavor.AllergenMark) []flavor.AllergenMark {
	at := slices.IndexFunc(marks, func(o flavor.AllergenMark) bool { return o.Allergen == m.Allergen })
	switch {
	case at < 0:
		return append(slices.Clone(marks), m)
	case m.Certainty == flavor.Contains:
		marks = slices.Clone(marks)
		marks[at].Certainty = flavor.Contains
	}
	return marks
}

// withMaterial adds to the share of a material.
func withMaterial(list []flavor.MaterialShare, material string, intensity float64) []flavor.MaterialShare {
	list = slices.Clone(list)
	if at := slices.IndexFunc(list, func(m flavor.MaterialShare) bool { return m.Material == material }); at >= 0 {
		list[at].Intensity += intensity
		return list
	}
	return append(list, flavor.MaterialShare{Material: material, Intensity: intensity})
}

// Strained reports whether a part of a recipe is strained out of it: spices, herbs and peels
// steep, and are none of its volume. Common practice, no source.
func Strained(p *flavor.Profile, u flavor.Unit) bool {
	peel := strings.HasSuffix(p.Name, " zest") || strings.HasSuffix(p.Name, " peel")
	return u != flavor.Millilitre && (peel || p.Class == flavor.ClassSpice || p.Class == flavor.ClassFreshHerb)
}

// StrainedProfiles are what steeps in a recipe, as things to pour of which nothing is left but
// what they carry, for lists of allergens.
func (m Made) StrainedProfiles() (out []*flavor.Profile) {
	for _, x := range m.Steeped {
		p := &flavor.Profile{ID: Slug(x.Name), Name: fmt.Sprintf("%s, steeped", x.Name), AllergensKnown: true}
		p.AllergenMarks, p.Animal = withCarried(nil, nil, x.Name)
		out = append(out, p)
	}
	return out
}
