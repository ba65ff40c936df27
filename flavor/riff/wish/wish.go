// Package wish reads what a guest or a bartender asks of a drink, in the words of
// the trade: "drier", "less boozy", "not so sweet", "smokier and longer", "with
// mezcal", "no nuts", "below 12 %", "on the rocks".
//
// A wish for more or less is met by a noticeable step. The others are limits and
// are never broken.
package wish

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

// Kind is what a wish is about.
type Kind string

// The kinds of wishes.
const (
	Sense  Kind = "sense"  // more or less of what the mouth tells
	Aroma  Kind = "aroma"  // more or less of one or several aroma families
	Poured Kind = "poured" // more or less of some ingredients

	Without  Kind = "without"  // none of an aroma family that can be told
	Allergen Kind = "allergen" // none of an allergen, the unknown counting as present
	Animal   Kind = "animal"   // nothing that comes from it
	Class    Kind = "class"    // no ingredient of a class
	Bar      Kind = "bar"      // none of some ingredients
	With     Kind = "with"     // at least one of some ingredients
	Below    Kind = "below"    // at most so strong
	Above    Kind = "above"    // at least so strong
	Served   Kind = "served"   // mixed or served in a way
	Cold     Kind = "cold"     // served cold, where the drink is hot
	HotDay   Kind = "hot day"  // cold, and no stronger than the drink: what a hot day asks for
	Fewer    Kind = "fewer"    // fewer pours
	Cheaper  Kind = "cheaper"  // costs less
)

// Wish is one thing that is asked of a drink.
type Wish struct {
	Kind     Kind
	More     bool                 // Sense, Aroma, Poured: more of it, else less
	Sense    sense.Sense          // Sense
	Families []flavor.AromaFamily // Aroma, taken together; Without
	Or       []sense.Sense        // Aroma: more or less of any of these meets it as well
	IDs      []string             // Poured, Bar, With: ids of ingredients
	Allergen flavor.Allergen      // Allergen
	Animal   string               // Animal
	Class    flavor.Class         // Class
	Spared   []string             // Class: ids of the class that the wish leaves be
	ABV      float64              // Below, Above: % vol of the finished drink
	Method   flavor.Method        // Served; empty: any
	Service  flavor.Service       // Served; empty: any
	Of       string               // Sense, Aroma: the plain word of the trade that it is made of, such as "nutty"
	Word     string               // as it was written
}

// Limit reports whether the wish is a limit, which needs no drink to be more or
// less than.
func (w *Wish) Limit() bool {
	switch w.Kind {
	case Sense, Aroma, Poured, Fewer, Cheaper:
		return false
	}
	return true
}

// Names returns the ids of the ingredients that a name may mean, none if it means
// none.
type Names func(name string) []string

// NamesIn returns names over a list of ingredients: an ingredient answers to every
// run of words in its name or one of its aliases, so that "rum" means each rum
// and "egg white" the egg white.
func NamesIn(profiles []*flavor.Profile) Names {
	return func(name string) []string {
		key := flavor.NormaliseName(name)
		if len(key) < minName {
			return nil
		}
		var out []string
		for _, p := range profiles {
			if answers(p, key) {
				out = append(out, p.ID)
			}
		}
		return out
	}
}

// minName is the length of the shortest name that is looked for.
const minName = 3

func answers(p *flavor.Profile, key string) bool {
	for _, n := range append([]string{p.Name}, p.Aliases...) {
		if strings.Contains(" "+flavor.NormaliseName(n)+" ", " "+key+" ") {
			return true
		}
	}
	return false
}

// Parse reads wishes, one a string; one string may hold several, joined by "and"
// or a comma. Names may be nil: then ingredients cannot be named. It fails with
// [flavor.DataFaults], one for each that cannot be read or contradicts an earlier one.
func Parse(written []string, names Names) ([]Wish, error) {
	var out []Wish
	var faults flavor.DataFaults
	for i, w := range written {
		wishes, fault := parseAll(w, names)
		if fault == nil {
			fault = contradiction(out, wishes)
		}
		if fault != nil {
			fault.Location = flavor.At("toward", i)
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

// parseAll reads a string as one wish, else as several that are joined.
func parseAll(written string, names Names) ([]Wish, *flavor.DataFault) {
	word := tidy(written)
	out, fault := parseOne(word, names)
	if fault == nil || word == "" {
		return worded(out, word), at(fault, written)
	}
	parts := joints.Split(word, -1)
	if len(parts) < 2 || idle(word) {
		return nil, at(fault, written)
	}
	out = nil
	for _, part := range parts {
		if idle(part) {
			continue
		}
		wishes, wrong := parseOne(part, names)
		if wrong == nil {
			wrong = contradiction(out, wishes)
		}
		if wrong != nil {
			return nil, at(wrong, part)
		}
		out = append(out, worded(wishes, part)...)
	}
	return out, nil
}

// idle reports whether words ask for nothing: "please".
func idle(words string) bool {
	for _, w := range strings.Fields(joints.ReplaceAllString(words, " ")) {
		if !fillers.MatchString(w) {
			return false
		}
	}
	return true
}

func worded(wishes []Wish, word string) []Wish {
	for i := range wishes {
		wishes[i].Word = word
	}
	return wishes
}

// at sets the value of a fault.
func at(f *flavor.DataFault, written string) *flavor.DataFault {
	if f != nil && f.Value == "" {
		f.Value = written
	}
	return f
}

// contradiction finds a wish that asks for the opposite of an earlier one.
func contradiction(earlier, wishes []Wish) *flavor.DataFault {
	for _, w := range wishes {
		for _, e := range earlier {
			if w.opposes(&e) || e.opposes(&w) {
				return flavor.Invalid("", w.Word, "%q and %q cannot both be met; keep one", e.Word, w.Word)
			}
		}
	}
	return nil
}
