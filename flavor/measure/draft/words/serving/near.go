package serving

import (
	"cmp"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"counterpour/flavor/measure"
)

// NearestMethods returns up to three methods or services whose words a slip of
// the pen could have turned into word, the nearest first; nil if there are none.
func NearestMethods(word string) []string { return measure.Nearest(word, servingSpellings) }

var servingSpellings = func() []measure.Spelling {
	var out []measure.Spelling
	for _, w := range singles {
		t, _ := TermAt([]string{w})
		if means := cmp.Or(string(t.Method), string(t.Service)); means != "" && !t.Ice {
			out = append(out, measure.Spelling{Written: w, Means: means})
		}
	}
	slices.SortFunc(out, func(a, b measure.Spelling) int {
		return cmp.Or(cmp.Compare(a.Means, b.Means), cmp.Compare(a.Written, b.Written))
	})
	return out
}()

// singles are the phrases of one word, clipped ones too, but for those of other tongues; in order.
var singles = func() []string {
	all := map[string]bool{}
	for first, list := range terms.All() {
		if !slices.ContainsFunc(list, func(p phrase) bool { return p.words == 0 }) {
			continue
		}
		all[first] = true
		for _, c := range clippings[first] {
			all[c] = true
		}
	}
	maps.DeleteFunc(all, func(w string, _ bool) bool { return foreignWords[w] })
	return slices.Sorted(maps.Keys(all))
}()

// leastSlipped is the letters of a word of making or serving in which a slip of the pen
// is forgiven: shorter ones have too many neighbours.
const leastSlipped = 5

// Slip returns the word of making or serving of which a word is a slip of one letter. It
// is false for a word that says something itself, and for one that is as near to a word
// of another meaning.
func Slip(word string) (meant string, ok bool) {
	if utf8.RuneCountInString(word) < leastSlipped || Known(word) || StepVerbs[word] || Fillers[word] {
		return "", false
	}
	var of term
	for _, w := range slippable {
		if !measure.OneSlip(word, w) {
			continue
		}
		t, _ := TermAt([]string{w})
		if meant != "" && (t.Method != of.Method || t.Service != of.Service || t.Glass != of.Glass) {
			return "", false
		}
		if meant == "" {
			meant, of = w, t
		}
	}
	return meant, meant != ""
}

// slippable are the single words of making and serving that are long enough to be known
// in spite of a slip, in order.
var slippable = slices.DeleteFunc(slices.Clone(singles), func(w string) bool {
	return utf8.RuneCountInString(w) < leastSlipped || strings.Contains(w, "&")
})
