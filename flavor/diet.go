package flavor

import (
	"fmt"
	"slices"
	"strings"
)

// NoAlcoholABV is the strength, in % vol, up to which an ingredient counts as
// free of alcohol; many laws draw the line there.
const NoAlcoholABV = 0.5

// StatesNoAlcohol reports whether an ingredient is stated to hold none, as 0.0 on a label or
// water in a table. What is said to hold none, give or take a little, as a kind of bottle is
// by the middle of its market, states nothing about the one on the shelf.
func (p *Profile) StatesNoAlcohol() bool { return p.ABV.Value == 0 && p.ABV.Spread == 0 }

// seasonedShare is the most of a drink that seasonings are while they season it: some
// dashes of bitters make no alcoholic drink of soda water. Common practice, no source.
const seasonedShare = 0.1

// leastFreeML is the least that a drink without alcohol is poured of, half a small coupe:
// lemon juice and syrup for a sour are half a drink, whose spirit was forgotten. Common
// practice, no source.
const leastFreeML = 75.0

// AlcoholFree reports whether a drink is meant without alcohol: it holds no more than
// NoAlcoholABV before ice, or nothing but its seasonings holds more, and it is a drink
// without a spirit: what stands for one is in it, or it fills a glass. To such a drink
// nothing with alcohol is ever suggested.
func (s *Spec) AlcoholFree() bool {
	all, ethanol, seasoned, other, stead := 0.0, 0.0, 0.0, false, false
	for i := range s.Pours {
		p := &s.Pours[i]
		all += p.ML
		ethanol += p.ML * p.Profile.ABV.Value
		stead = stead || p.Profile.Class == ClassAlcoholFree
		switch {
		case p.Profile.ABV.Value <= NoAlcoholABV:
		case p.Profile.Class.Part() == PartSeasoning:
			seasoned += p.ML
		default:
			other = true
		}
	}
	without := ethanol <= NoAlcoholABV*all || !other && seasoned <= seasonedShare*all
	return without && (stead || all >= leastFreeML)
}

// Diet is a word for what a guest eats and drinks, and what it rules out. What
// comes from animals is ruled out twice: by the tag of an ingredient, which
// says what it is made with, and by the allergen, since wine that may be fined
// with egg or milk is not made with them.
type Diet struct {
	Name      string
	NoAnimal  []string   // see Profile.Animal
	Avoid     []Allergen // possible and unstated count as present
	NoAlcohol bool       // up to 0.5 % vol is allowed: see NoAlcoholABV
	NoTrace   bool       // only what is stated to hold none: see Profile.StatesNoAlcohol
}

// CrossContact is what has to be said wherever drinks are chosen for a guest who
// avoids something: a list of pours knows nothing of the tools. Common practice, no
// source.
const CrossContact = "Before you mix for this guest, wash the tins, jiggers, strainers and blender, and use a clean knife and fresh garnish. What touched them before counts too."

// Animals lists the words for what comes from animals, as [Profile] and [Diet] use
// them. Meat is what a land animal is killed for, its stock and its gelatine too.
func Animals() []string { return []string{"milk", "egg", "honey", "fish", Insect, "meat", Finings} }

// Insect is what some red bottles are dyed with (carmine). Makers change their dyes, so that the
// record of a kind says only that it may be there; a label that says vegan clears it.
const Insect = "insect"

// MayHoldInsect reports whether what there is of insects in an ingredient is only possible, as it
// is in what is poured. What is eaten, such as a salt of worms, is made of them.
func (p *Profile) MayHoldInsect() bool { return slices.Contains(p.Animal, Insect) && !p.Class.Solid() }

// Finings are what wine, beer and cider are cleared with. They may come from fish, bones,
// eggs or milk, those of fish and bones need no word on a label, and so they count as
// present until somebody states that there are none; see [Class.Fined].
const Finings = "finings"

// fleshAllergens are the allergens that are animals themselves.
var fleshAllergens = []Allergen{Crustaceans, Fish, Molluscs}

// diets are the diets, by name.
var diets = []Diet{
	{Name: "0.0 % alcohol", NoAlcohol: true, NoTrace: true},
	{Name: "alcohol-free", NoAlcohol: true},
	{Name: "no dairy", NoAnimal: []string{"milk"}, Avoid: []Allergen{Milk}},
	{Name: "no egg", NoAnimal: []string{"egg"}, Avoid: []Allergen{Eggs}},
	{Name: "no honey", NoAnimal: []string{"honey"}},
	{Name: "vegan", NoAnimal: Animals(), Avoid: append([]Allergen{Eggs, Milk}, fleshAllergens...)},
	{Name: "vegetarian", NoAnimal: []string{"fish", Insect, "meat"}, Avoid: fleshAllergens},
}

// DietNames lists the words that [ParseDiet] knows, in order.
func DietNames() []string {
	out := make([]string, 0, len(diets))
	for _, d := range diets {
		out = append(out, d.Name)
	}
	return out
}

// ParseDiet returns the diet that a word names, case and spaces aside. An
// unknown word is a fault that lists the known ones: one that is passed over
// would be a guest served wrong.
func ParseDiet(word string) (Diet, error) {
	w := strings.ToLower(strings.Join(strings.Fields(word), " "))
	for _, d := range diets {
		if w == d.Name {
			return d, nil
		}
	}
	return Diet{}, &DataFault{Kind: ErrInvalid, Location: "diet", Value: word,
		Message: fmt.Sprintf("%q is no diet known here; use %s", word, strings.Join(DietNames(), ", ")), Suggest: DietNames()}
}
