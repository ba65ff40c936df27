package evening

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/riff/wish"
)

// Words is what a drink is found under: its name, the names of its pours and what its family is
// called, as [flavor.NormaliseName] writes them.
func Words(s *flavor.Spec, family string) string {
	names := []string{flavor.NormaliseName(s.Name)}
	for i := range s.Pours {
		names = append(names, flavor.NormaliseName(s.Pours[i].Profile.Name))
	}
	return strings.Join(append(names, flavor.NormaliseName(family)), " ")
}

// AllWords is what a drink is found under, and what else its pours are called, such as by the
// label of a bottle that the house pours.
func AllWords(s *flavor.Spec, family string) string {
	names := []string{Words(s, family)}
	for i := range s.Pours {
		for _, a := range s.Pours[i].Profile.Aliases {
			names = append(names, flavor.NormaliseName(a))
		}
	}
	return strings.Join(names, " ")
}

// Holds reports whether a drink has all the words of a text in its [Words], each whole or
// in part, so that it is found while it is typed; or in [AllWords]. An empty text finds every
// drink.
func Holds(s *flavor.Spec, family, text string) bool {
	return HasWords(Words(s, family), text) || HasWords(AllWords(s, family), text)
}

// HoldsWhole is Holds by whole words alone: what is asked for is in the drink, and no more begins
// like it, as ginger does like gin.
func HoldsWhole(s *flavor.Spec, family, text string) bool {
	return HasWhole(AllWords(s, family), text)
}

// plainly is how strong an aroma is in a drink that is called by it, before ice, on the scale of
// [flavor.AromaFamilies]: a tenth of the leading note of a neat bottle. Common practice, no source.
const plainly = 1.0

// Tastes reports whether each word of a text is what a drink is found under, or what a bartender
// calls an aroma that it plainly has, such as smoky; of the last one at least.
func Tastes(s *flavor.Spec, family, text string) bool {
	in, tastes := AllWords(s, family), false
	var aroma flavor.Aroma
	for word := range strings.FieldsSeq(flavor.NormaliseName(text)) {
		if strings.Contains(in, word) {
			continue
		}
		if aroma == (flavor.Aroma{}) {
			aroma = aromaOf(s)
		}
		if !slices.ContainsFunc(wish.Smells(word), func(f flavor.AromaFamily) bool { return aroma[f] >= plainly }) {
			return false
		}
		tastes = true
	}
	return tastes
}

// NamesTaste reports whether a text is what a bartender calls an aroma.
func NamesTaste(text string) bool { return wish.Smells(strings.TrimSpace(text)) != nil }

// aromaOf is the aroma of what a drink pours, before ice.
func aromaOf(s *flavor.Spec) (sum flavor.Aroma) {
	ml := 0.0
	for i := range s.Pours {
		ml += s.Pours[i].ML
	}
	for i := range s.Pours {
		for f, v := range s.Pours[i].Profile.Aroma {
			sum[f] += v * s.Pours[i].ML / max(ml, 1)
		}
	}
	return sum
}

// HasWhole reports whether what something is found under, as [flavor.NormaliseName] writes it, has
// each word of a text whole; false for an empty text.
func HasWhole(in, text string) bool {
	words, asked := strings.Fields(in), strings.Fields(flavor.NormaliseName(text))
	return len(asked) > 0 && !slices.ContainsFunc(asked, func(w string) bool { return !slices.Contains(words, w) })
}

// HasWords reports whether what something is found under, as [flavor.NormaliseName] writes
// it, has all the words of a text, each whole or in part.
func HasWords(in, text string) bool {
	for word := range strings.FieldsSeq(flavor.NormaliseName(text)) {
		if !strings.Contains(in, word) {
			return false
		}
	}
	return true
}
