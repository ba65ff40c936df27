package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/carrier"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"
)

// Uncarried looks for words of a text that name what carries an allergen or comes from an animal,
// which nothing poured or laid on the drink does. In brackets on a line that is poured it is a fault:
// it may say what was done to the bottle. Any line that is not poured and has such a word is
// returned, to be kept with the drink.
func Uncarried(text string, s *flavor.Spec, poured map[int]bool) (faults flavor.DataFaults, kept []string) {
	first := true
	for i, line := range strings.Split(text, "\n") {
		line, _, _ = strings.Cut(line, "#")
		said := strings.TrimSpace(line)
		title := first && !poured[i+1]
		first = first && said == ""
		if said == "" || title {
			continue
		}
		if s.Name != "" {
			said = strings.ReplaceAll(said, s.Name, " ")
		}
		if poured[i+1] { // what else a line tells is told of other things: "forget the egg"
			var inside []string
			for _, m := range bracketed.FindAllStringSubmatch(said, -1) {
				inside = append(inside, m[1])
			}
			said = strings.Join(inside, "; ")
		}
		said = undenied(said)
		word := uncarried(said, s, poured[i+1])
		switch {
		case word == "":
		case poured[i+1]:
			f := measure.Invalid("ingredient", word, "%q names what nothing poured here is known to carry; name the bottle in your stock, or write what brings it on a line of its own", word)
			f.Location = measure.LineLocation(i + 1)
			faults = append(faults, f)
		default:
			kept = append(kept, strings.TrimSpace(line))
		}
	}
	return faults, kept
}

// Carries reports whether words that are passed over name what carries an allergen, or comes from an animal,
// which nothing poured or laid on the drink does: they are to be kept with it.
func Carries(words string, s *flavor.Spec) bool { return uncarried(undenied(words), s, false) != "" }

// undenied is what is said without the clauses in which something is denied.
func undenied(said string) string {
	if !denies.MatchString(said) {
		return said
	}
	clauses := strings.FieldsFunc(said, func(c rune) bool { return strings.ContainsRune(",;.", c) }) // "crushed almonds, no salt"
	return strings.Join(slices.DeleteFunc(clauses, denies.MatchString), "; ")
}

// denies are words beside which something is denied, or told of a guest.
var denies = pattern.Of(`(?i)\b(no|not|never|without|w/o|free|non|vegan|allerg\w*|avoids?|sub|subs|swap|instead|name)\b`)

// uncarried returns the first word of a line that names what nothing held by the drink carries;
// empty if there is none. A pour may be named by what it tastes of: the names of its ingredient
// are left to the record, and what is only possible is not asked about.
func uncarried(line string, s *flavor.Spec, poured bool) string {
	words := carrier.Words(line)
	held := s.Held()
	for i := 0; i < len(words); {
		c, n := carrier.At(words[i:])
		if n == 0 {
			i++
			continue
		}
		word := strings.Join(words[i:i+n], " ")
		i += n
		if calledSo(word, s) {
			continue
		}
		lost := slices.ContainsFunc(c.Marks, func(m flavor.AllergenMark) bool {
			if m.Certainty != flavor.Contains || m.Allergen == flavor.Sulphites || c.Grain && poured {
				return false
			}
			return !slices.ContainsFunc(held, func(p *flavor.Profile) bool {
				return slices.ContainsFunc(p.AllergenMarks, func(o flavor.AllergenMark) bool { return o.Allergen == m.Allergen })
			})
		}) || slices.ContainsFunc(c.Animal, func(a string) bool {
			return !slices.ContainsFunc(held, func(p *flavor.Profile) bool { return slices.Contains(p.Animal, a) })
		})
		if lost {
			return word
		}
	}
	return ""
}

// calledSo reports whether a word stands in a name of something poured.
func calledSo(word string, s *flavor.Spec) bool {
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool {
		return carrier.Named(word, p.Profile)
	})
}
