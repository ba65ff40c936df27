package part

import (
	"net/url"
	"slices"
	"strings"

	"counterpour/api/service/evening"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/webui/form"
)

// Meant is a text that may have been meant where another found nothing, and the address of
// what it finds.
type Meant struct{ Text, Address string }

// mostMeant is how many texts are offered.
const mostMeant = 3

// MeantBy offers what may have been meant by a text, for a page that looks for it in a field
// of its query. Each entry of in is what one thing is found under; what is offered finds one
// of them at least.
func MeantBy(text string, in []string, path, field string, q url.Values) []Meant {
	var out []Meant
	for _, meant := range corrected(text, in) {
		v := url.Values{}
		for key, values := range q {
			v[key] = values
		}
		v.Set(field, meant)
		out = append(out, Meant{meant, form.Link(path, v)})
	}
	return out
}

// corrected replaces the words of a text that nothing is found under by known ones that they
// may be slips of, the likeliest first; none if no such text finds anything.
func corrected(text string, in []string) (out []string) {
	known := spellingsOf(in)
	ways := []string{""}
	for word := range strings.FieldsSeq(flavor.NormaliseName(text)) {
		meant := []string{word}
		if !slices.ContainsFunc(in, func(s string) bool { return strings.Contains(s, word) }) {
			meant = slices.Concat(slipsOf(word, known), parted(word, known))
		}
		var longer []string
		for _, so := range ways {
			for _, m := range meant {
				longer = append(longer, strings.TrimSpace(so+" "+m))
			}
		}
		if ways = longer; len(ways) == 0 || len(ways) > mostWays {
			return nil
		}
	}
	for _, way := range ways {
		if way != "" && len(out) < mostMeant && !slices.Contains(out, way) && slices.ContainsFunc(in, func(s string) bool { return evening.HasWords(s, way) }) {
			out = append(out, way)
		}
	}
	return out
}

// shortWord is how many letters a word has whose first nobody mistypes unnoticed: "sour" is no slip
// of "four". Common practice, no source.
const shortWord = 5

// slipsOf lists the known words that a word may be a slip of, the likeliest first.
func slipsOf(word string, known []measure.Spelling) []string {
	return slices.DeleteFunc(measure.Nearest(word, known), func(of string) bool {
		return len(word) <= shortWord && of[0] != word[0]
	})
}

// SlipOf reports whether a text may be a slip of a name, word by word, none of them in its first
// letter: what is said to be meant is nothing that anybody chose to look for.
func SlipOf(text, name string) bool {
	words, of := strings.Fields(flavor.NormaliseName(text)), strings.Fields(flavor.NormaliseName(name))
	if len(words) != len(of) {
		return false
	}
	for i, w := range words {
		if w != of[i] && (w[0] != of[i][0] || len(slipsOf(w, []measure.Spelling{{Written: of[i], Means: of[i]}})) == 0) {
			return false
		}
	}
	return true
}

// mostWays bounds how many texts are tried.
const mostWays = 100

// spellingsOf lists the words that things are found under, each once, in alphabetical order.
func spellingsOf(in []string) []measure.Spelling {
	var all []string
	for _, s := range in {
		all = append(all, strings.Fields(s)...)
	}
	slices.Sort(all)
	var out []measure.Spelling
	for _, w := range slices.Compact(all) {
		out = append(out, measure.Spelling{Written: w, Means: w})
	}
	return out
}

// parted returns a word as two known ones that were written together; none if it is not two.
func parted(word string, known []measure.Spelling) (out []string) {
	has := func(w string) bool {
		return slices.ContainsFunc(known, func(s measure.Spelling) bool { return s.Written == w })
	}
	for i := range word {
		if i > 0 && has(word[:i]) && has(word[i:]) {
			out = append(out, word[:i]+" "+word[i:])
		}
	}
	return out
}
