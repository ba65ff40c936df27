package evening

import (
	"strings"

	"counterpour/flavor"
)

// Words is what a drink is found under: its name and the names of its pours, as
// [flavor.NormaliseName] writes them.
func Words(s *flavor.Spec) string {
	names := []string{flavor.NormaliseName(s.Name)}
	for i := range s.Pours {
		names = append(names, flavor.NormaliseName(s.Pours[i].Profile.Name))
	}
	return strings.Join(names, " ")
}

// Holds reports whether a drink has all the words of a text in its [Words], each whole or
// in part, so that it is found while it is typed; or in those and what else its pours are
// called, such as by the label of a bottle that the house pours. An empty text finds every
// drink.
func Holds(s *flavor.Spec, text string) bool {
	return HasWords(Words(s), text) || HasWords(Words(s)+" "+otherNames(s), text)
}

// otherNames is what the pours of a drink are called beside their names.
func otherNames(s *flavor.Spec) string {
	var names []string
	for i := range s.Pours {
		for _, a := range s.Pours[i].Profile.Aliases {
			names = append(names, flavor.NormaliseName(a))
		}
	}
	return strings.Join(names, " ")
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
