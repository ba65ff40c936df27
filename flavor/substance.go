package flavor

import (
	"fmt"
	"slices"
	"strings"
)

// Substances that a guest may have to avoid though no law lists them among the allergens, for an
// allergy, a medicine or sleep. A guest avoids them as allergens are avoided: what may hold one, or
// whose maker keeps the recipe, counts as holding it. A label lists none of them among its
// allergens. Each is named as the caution that its ingredients bear, see [Profile.Cautions].
const (
	Caffeine   Allergen = "caffeine"
	Coconut    Allergen = "coconut"
	Grapefruit Allergen = "grapefruit"
	Liquorice  Allergen = "liquorice"
	Quinine    Allergen = "quinine"
)

// Substances lists them by name.
func Substances() []Allergen { return []Allergen{Caffeine, Coconut, Grapefruit, Liquorice, Quinine} }

// substanceWords are other words for them: whoever is told to avoid grapefruit is told of its kin.
var substanceWords = map[string]Allergen{
	"coconuts": Coconut, "grapefruits": Grapefruit, "grapefruit juice": Grapefruit, "pomelo": Grapefruit, "licorice": Liquorice,
	"glycyrrhizin": Liquorice, "glycyrrhizic acid": Liquorice, "cinchona": Quinine, "cinchona bark": Quinine, "quinin": Quinine,
}

// ParseSubstance returns the substance that a word names, false if it names none.
func ParseSubstance(word string) (Allergen, bool) {
	w := allergenKey(word)
	if slices.Contains(Substances(), Allergen(w)) {
		return Allergen(w), true
	}
	a, ok := substanceWords[w]
	return a, ok
}

// AvoidanceMeant returns what a guest may mean by a word who must avoid it: allergens, see
// [AllergensMeant], or a substance. An unknown word is an error that lists the known ones.
func AvoidanceMeant(word string) ([]Allergen, error) {
	if s, ok := ParseSubstance(word); ok {
		return []Allergen{s}, nil
	}
	meant, err := AllergensMeant(word)
	if err != nil {
		names := make([]string, len(Substances()))
		for i, s := range Substances() {
			names[i] = string(s)
		}
		return nil, fmt.Errorf("%w; or of what else a guest may have to avoid: %s", err, strings.Join(names, ", "))
	}
	return meant, nil
}

// substance returns whether the ingredient holds a substance, and how sure that is.
func (p *Profile) substance(a Allergen) (Certainty, bool) {
	switch {
	case slices.Contains(p.Cautions, string(a)):
		return Contains, true
	case p.Undisclosed || p.Unread, a == Liquorice && p.drawnOnAnise(), a == Caffeine && holdsCacao(p):
		return Unstated, true
	}
	return "", false
}

// holdsCacao reports whether an ingredient smells of cacao, which holds some caffeine: how much of it
// is left in a liqueur or a bitter nobody states.
var holdsCacao = smellsOf("cacao")

// drawnOnAnise reports whether an ingredient is a spirit or a liqueur that smells of anise most:
// many are drawn on liquorice root as well, and no label has to name it where it sweetens nothing.
// Common practice, no source.
func (p *Profile) drawnOnAnise() bool {
	if p.ABV.Value <= NoAlcoholABV || p.Aroma[Anise] <= 0 {
		return false
	}
	return !slices.ContainsFunc(p.Aroma[:], func(x float64) bool { return x > p.Aroma[Anise] })
}
