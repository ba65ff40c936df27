package flavor

import (
	"fmt"
	"strings"
)

// Allergen is one of the substances that Regulation (EU) No 1169/2011,
// Annex II, requires to be declared. The nine major allergens of United States
// law (FALCPA 2004, FASTER Act 2021) are among them, under the same names
// but for wheat, which counts here as gluten.
type Allergen string

// The fourteen allergens of the Annex, in its order.
const (
	Gluten      Allergen = "gluten"
	Crustaceans Allergen = "crustaceans"
	Eggs        Allergen = "eggs"
	Fish        Allergen = "fish"
	Peanuts     Allergen = "peanuts"
	Soybeans    Allergen = "soybeans"
	Milk        Allergen = "milk"
	TreeNuts    Allergen = "tree nuts"
	Celery      Allergen = "celery"
	Mustard     Allergen = "mustard"
	Sesame      Allergen = "sesame"
	Sulphites   Allergen = "sulphites"
	Lupin       Allergen = "lupin"
	Molluscs    Allergen = "molluscs"
)

// Allergens lists all fourteen, in the order of the Annex.
func Allergens() []Allergen {
	return []Allergen{Gluten, Crustaceans, Eggs, Fish, Peanuts, Soybeans, Milk,
		TreeNuts, Celery, Mustard, Sesame, Sulphites, Lupin, Molluscs}
}

// allergenWords are other words that a guest or a bartender may use.
var allergenWords = map[string]Allergen{
	"wheat": Gluten, "cereals": Gluten, "cereals containing gluten": Gluten,
	"shellfish": Crustaceans, "egg": Eggs, "peanut": Peanuts, "soy": Soybeans, "soya": Soybeans,
	"soybean": Soybeans, "dairy": Milk, "lactose": Milk, "nuts": TreeNuts, "nut": TreeNuts,
	"tree nut": TreeNuts, "almond": TreeNuts, "almonds": TreeNuts, "sesame seeds": Sesame,
	"sulfites": Sulphites, "sulphite": Sulphites, "sulfite": Sulphites,
	"sulphur dioxide": Sulphites, "sulfur dioxide": Sulphites, "lupine": Lupin, "mollusc": Molluscs, "mollusks": Molluscs,
}

// ParseAllergen returns the allergen that a word names, case and plural aside.
// An unknown word is an error that lists the known ones, since a word that is
// passed over would be a guest unprotected.
func ParseAllergen(word string) (Allergen, error) {
	w := strings.ToLower(strings.Join(strings.Fields(strings.NewReplacer("-", " ", "_", " ").Replace(word)), " "))
	for _, a := range Allergens() {
		if w == string(a) {
			return a, nil
		}
	}
	if a, ok := allergenWords[w]; ok {
		return a, nil
	}
	names := make([]string, 0, len(Allergens()))
	for _, a := range Allergens() {
		names = append(names, string(a))
	}
	return "", fmt.Errorf("%q is not an allergen known here; use one of: %s", word, strings.Join(names, ", "))
}

// Certainty says how sure it is that an ingredient carries an allergen.
type Certainty string

// An ingredient contains an allergen, or may contain it: by its style, or
// because nobody has said that it does not.
const (
	Contains   Certainty = "contains"
	MayContain Certainty = "may contain"
)

// AllergenMark is one allergen of one ingredient.
type AllergenMark struct {
	Allergen  Allergen
	Certainty Certainty
}
