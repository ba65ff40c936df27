package wish

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/template"
)

// Kind is what a wish is about.
type Kind string

// The kinds of wishes. Toward and away are met by a noticeable step; the others
// are limits, and are never broken.
const (
	Axis     Kind = "axis"     // more or less of an axis
	Aroma    Kind = "aroma"    // more or less of an aroma family
	Without  Kind = "without"  // none of an aroma family that can be told
	Allergen Kind = "allergen" // none of an allergen, the unknown counting as present
	Animal   Kind = "animal"   // nothing that comes from it
	Class    Kind = "class"    // no ingredient of a class
	Below    Kind = "below"    // at most so strong
	Above    Kind = "above"    // at least so strong
)

// Wish is one thing that a guest asks of a drink.
type Wish struct {
	Kind     Kind
	Axis     template.Axis   // Axis
	Family   flavor.Family   // Aroma, Without
	More     bool            // Axis, Aroma: more of it, else less
	Allergen flavor.Allergen // Allergen
	Animal   string          // Animal
	Class    flavor.Class    // Class
	ABV      float64         // Below, Above: % vol of the finished drink
	Word     string          // as it was written
}

// Parse reads wishes, one a string. It fails with [flavor.Faults], one for
// each that cannot be read or contradicts an earlier one.
func Parse(written []string) ([]Wish, error) {
	var out []Wish
	var faults flavor.Faults
	for i, w := range written {
		wishes, fault := parseWish(w)
		if fault == nil {
			fault = contradiction(out, wishes)
		}
		if fault != nil {
			fault.Location = fmt.Sprintf("toward[%d]", i)
			faults = append(faults, fault)
			continue
		}
		out = append(out, wishes...)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return out, nil
}

// parseWish reads one wish, which may stand for several: no nuts means neither
// tree nuts nor peanuts.
func parseWish(written string) ([]Wish, *flavor.Fault) {
	word := strings.ToLower(strings.Join(strings.Fields(written), " "))
	wishes, fault := readLimit(word)
	if wishes == nil && fault == nil {
		wishes = readDirection(word)
	}
	if fault != nil {
		fault.Value = written
		return nil, fault
	}
	if wishes == nil {
		return nil, unknownWish(written, word)
	}
	for i := range wishes {
		wishes[i].Word = word
	}
	return wishes, nil
}

var strength = regexp.MustCompile(`^(below|under|at most|max|maximum|less than|above|over|at least|more than) ?([0-9]+(?:[.,][0-9]+)?) ?(?:%|percent|per cent)?(?: ?(?:vol|abv|alcohol))?$`)

// readLimit reads what must not be broken; nil if the word is no limit.
func readLimit(word string) ([]Wish, *flavor.Fault) {
	if m := strength.FindStringSubmatch(word); m != nil {
		abv, err := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64)
		if err != nil || abv > 100 {
			return nil, &flavor.Fault{Kind: flavor.ErrInvalid, Message: m[2] + " % vol is no strength; use 0 to 100"}
		}
		kind := Below
		if slices.Contains([]string{"above", "over", "at least", "more than"}, m[1]) {
			kind = Above
		}
		return []Wish{{Kind: kind, ABV: abv}}, nil
	}
	for _, prefix := range []string{"no ", "without ", "free of ", "avoid "} {
		if rest, ok := strings.CutPrefix(word, prefix); ok {
			return readWithout(strings.TrimPrefix(rest, "any "), word)
		}
	}
	switch word {
	case "alcohol-free", "alcohol free", "non-alcoholic", "zero proof":
		return []Wish{{Kind: Below, ABV: cover.NoAlcoholABV}}, nil
	}
	return nil, nil
}

// readWithout reads what follows "no". An allergen comes before an aroma of the
// same name: the guest who says "no nuts" may mean the allergy.
func readWithout(what, word string) ([]Wish, *flavor.Fault) {
	switch what {
	case "alcohol":
		return []Wish{{Kind: Below, ABV: cover.NoAlcoholABV}}, nil
	case "nut", "nuts":
		return []Wish{{Kind: Allergen, Allergen: flavor.TreeNuts}, {Kind: Allergen, Allergen: flavor.Peanuts}}, nil
	case "honey", "insect", "insects", "meat":
		return []Wish{{Kind: Animal, Animal: strings.TrimSuffix(what, "s")}}, nil
	}
	if a, err := flavor.ParseAllergen(what); err == nil {
		return []Wish{{Kind: Allergen, Allergen: a}}, nil
	}
	if f, ok := familyWord(what); ok {
		return []Wish{{Kind: Without, Family: f}}, nil
	}
	for _, c := range []string{what, strings.TrimSuffix(what, "s")} {
		if flavor.Class(c).Valid() {
			return []Wish{{Kind: Class, Class: flavor.Class(c)}}, nil
		}
	}
	return nil, &flavor.Fault{Kind: flavor.ErrUnknown, Value: word,
		Message: fmt.Sprintf("%q names no allergen, aroma family or class of ingredient; write one, such as \"no nuts\", \"no smoke\" or \"no rum\"", what)}
}

// readDirection reads "more bitter", "less sweet", "nuttier", "bitter"; nil if
// the word is no direction.
func readDirection(word string) []Wish {
	more, rest := true, word
	if r, ok := strings.CutPrefix(word, "more "); ok {
		rest = r
	} else if r, ok := strings.CutPrefix(word, "less "); ok {
		more, rest = false, r
	}
	if c, ok := comparatives[rest]; ok && rest == word {
		return []Wish{{Kind: Axis, Axis: c.axis, More: c.more}}
	}
	if a, ok := axisWord(rest); ok {
		return []Wish{{Kind: Axis, Axis: a, More: more}}
	}
	if f, ok := familyWord(rest); ok {
		return []Wish{{Kind: Aroma, Family: f, More: more}}
	}
	return nil
}

// contradiction finds a wish that asks for the opposite of an earlier one.
func contradiction(earlier, wishes []Wish) *flavor.Fault {
	for _, w := range wishes {
		for _, e := range earlier {
			if !w.opposes(&e) && !e.opposes(&w) {
				continue
			}
			return &flavor.Fault{Kind: flavor.ErrInvalid, Value: w.Word,
				Message: fmt.Sprintf("%q and %q cannot both be met; keep one", e.Word, w.Word)}
		}
	}
	return nil
}

func (w *Wish) opposes(e *Wish) bool {
	switch {
	case w.Kind == Axis && e.Kind == Axis:
		return w.Axis == e.Axis && w.More != e.More
	case w.Kind == Aroma && e.Kind == Aroma:
		return w.Family == e.Family && w.More != e.More
	case w.Kind == Aroma && e.Kind == Without:
		return w.Family == e.Family && w.More
	case w.Kind == Below && e.Kind == Above:
		return e.ABV > w.ABV
	}
	return false
}
