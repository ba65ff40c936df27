package flavor

import (
	"fmt"
	"slices"
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
	"shellfish": Crustaceans, "crustacea": Crustaceans, "crustacean": Crustaceans, "egg": Eggs, "peanut": Peanuts, "soy": Soybeans, "soya": Soybeans,
	"soybean": Soybeans, "dairy": Milk, "lactose": Milk, "nuts": TreeNuts, "nut": TreeNuts,
	"tree nut": TreeNuts, "almond": TreeNuts, "almonds": TreeNuts, "sesame seeds": Sesame,
	"sulfites": Sulphites, "sulphite": Sulphites, "sulfite": Sulphites,
	"sulphur dioxide": Sulphites, "sulfur dioxide": Sulphites, "lupine": Lupin, "mollusc": Molluscs, "mollusks": Molluscs,
}

// guestWords are words by which a guest means more than a label does: whoever says "no nuts"
// may mean peanuts, and "no shellfish" mussels; a coeliac names the disease. Common practice, no
// source.
var guestWords = map[string][]Allergen{
	"nut": {TreeNuts, Peanuts}, "nuts": {TreeNuts, Peanuts},
	"shellfish": {Crustaceans, Molluscs}, "seafood": {Crustaceans, Fish, Molluscs},
	"coeliac": {Gluten}, "celiac": {Gluten}, "coeliac disease": {Gluten}, "celiac disease": {Gluten},
}

// AllergensMeant returns all allergens that a guest may mean by a word who must avoid it, in
// the order of the law. An unknown word is an error, as of [ParseAllergen].
func AllergensMeant(word string) ([]Allergen, error) {
	if meant, ok := guestWords[allergenKey(word)]; ok {
		return slices.Clone(meant), nil
	}
	a, err := ParseAllergen(word)
	if err != nil {
		return nil, err
	}
	return []Allergen{a}, nil
}

// allergenKey is a word as the tables of allergens have it.
func allergenKey(word string) string {
	return strings.ToLower(strings.Join(strings.Fields(strings.NewReplacer("-", " ", "_", " ").Replace(word)), " "))
}

// ParseAllergen returns the allergen that a word names on a label or in a recipe, case and
// plural aside. What a guest means by it may be more: see [AllergensMeant]. An unknown word is
// an error that lists the known ones, since a word that is passed over would be a guest
// unprotected.
func ParseAllergen(word string) (Allergen, error) {
	w := allergenKey(word)
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

// An ingredient contains an allergen, may contain it by its style, or carries
// a recipe that nobody has stated. Unstated counts as present for a guest who
// avoids the allergen; the label of the bottle may say otherwise.
const (
	Contains   Certainty = "contains"
	MayContain Certainty = "may contain"
	Unstated   Certainty = "unstated"
)

// Certainties lists them, the surest first.
func Certainties() []Certainty { return []Certainty{Contains, MayContain, Unstated} }

// surer returns the surer of two certainties; the empty one, for an allergen
// known to be absent, gives way to any.
func surer(a, b Certainty) Certainty {
	for _, c := range Certainties() {
		if a == c || b == c {
			return c
		}
	}
	return ""
}

// AllergenMark is one allergen of one ingredient or drink.
type AllergenMark struct {
	Allergen  Allergen
	Certainty Certainty
}

// Clearance says what a guest who avoids allergens may be told of an ingredient
// or a drink.
type Clearance int

// The clearances, the best first. Only Free may be served.
const (
	Free         Clearance = iota // known to carry none of them
	NotStated                     // none is known to be there, but nobody has said that all are absent: read the label
	MayBePresent                  // one may be there
	Present                       // one is there
)

// clearanceOf is what one allergen of a certainty comes to.
func clearanceOf(c Certainty) Clearance {
	switch c {
	case Contains:
		return Present
	case MayContain:
		return MayBePresent
	case Unstated:
		return NotStated
	}
	return Free
}

// Allergen returns whether the ingredient carries a, and how sure that is. An
// ingredient whose allergens nobody has stated may carry any that is not
// marked: then the certainty is [Unstated].
func (p *Profile) Allergen(a Allergen) (Certainty, bool) {
	if slices.Contains(Substances(), a) {
		return p.substance(a)
	}
	for _, m := range p.AllergenMarks {
		if m.Allergen == a {
			return m.Certainty, true
		}
	}
	if !p.AllergensKnown && !slices.Contains(p.FreeOf, a) {
		return Unstated, true
	}
	return "", false
}

// Clear says what is known of an ingredient for a guest who avoids allergens:
// the worst of what each of them comes to.
func (p *Profile) Clear(avoid []Allergen) Clearance {
	worst := Free
	for _, a := range avoid {
		c, _ := p.Allergen(a)
		worst = max(worst, clearanceOf(c))
	}
	return worst
}

// Avoids reports whether the ingredient is known to be free of every allergen
// in avoid: a possible and an unstated allergen count as present.
func (p *Profile) Avoids(avoid []Allergen) bool { return p.Clear(avoid) == Free }

// Clear says what is known of a drink for a guest who avoids allergens: the
// worst that a pour, or what is laid on the drink, comes to.
func (s *Spec) Clear(avoid []Allergen) Clearance {
	worst := Free
	for _, p := range s.Held() {
		worst = max(worst, p.Clear(avoid))
	}
	return worst
}

// Allergens lists the allergens of a drink in the order of the law, each with
// the greatest certainty that any pour, or what is laid on the drink, gives it.
func (s *Spec) Allergens() []AllergenMark {
	var out []AllergenMark
	held := s.Held()
	for _, a := range Allergens() {
		var certainty Certainty
		for _, p := range held {
			c, _ := p.Allergen(a)
			certainty = surer(certainty, c)
		}
		if certainty != "" {
			out = append(out, AllergenMark{Allergen: a, Certainty: certainty})
		}
	}
	return out
}

// NewAllergens lists, in the order of the law, the allergens that the drink
// contains or may contain and that the one before it neither contains nor may
// contain.
func (s *Spec) NewAllergens(before *Spec) []Allergen {
	had := map[Allergen]bool{}
	for _, m := range before.Allergens() {
		had[m.Allergen] = m.Certainty != Unstated
	}
	var out []Allergen
	for _, m := range s.Allergens() {
		if m.Certainty != Unstated && !had[m.Allergen] {
			out = append(out, m.Allergen)
		}
	}
	return out
}
