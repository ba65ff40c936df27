package naming

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/tongue"
	"counterpour/flavor/measure/draft/words/token"
)

// alike reports whether an ingredient is worth suggesting for a written name: a word that
// is more than a kind begins one of its names' words, or is a slip of it. What only looks
// alike as a whole, or is of the same kind, is not what was meant.
func (b *Resolver) alike(written, name string) bool {
	p, _, ok := b.Named(name)
	if !ok {
		return true // a finder that cannot be asked for exactly that name
	}
	key := flavor.NormaliseName(written)
	full, _ := jargon.Lengthen(key)
	words := strings.Fields(full)
	if english, foreign := tongue.English(key); foreign {
		words = append(words, strings.Fields(english)...)
	}
	var known []string
	for _, n := range append([]string{p.Name}, p.Aliases...) {
		known = append(known, strings.Fields(flavor.NormaliseName(n))...)
	}
	return slices.ContainsFunc(words, func(w string) bool {
		return !broad[w] && !tongue.Linking(w) && !styleWord[w] && slices.ContainsFunc(known, func(k string) bool { return likeWord(w, k) })
	})
}

// styleWord are words in the names of many kinds that say little of them.
var styleWord = token.Names(`style, type, like, ish, kind, brand, free, alcohol, and, with, old, aged, dry, sweet`)

// leastAlike is the letters of a word that a clipped or a longer one has to share.
const leastAlike = 3

// mostEnding is how many letters an ending has at most: a longer word than that is another, "Germaine" none
// of "German".
const mostEnding = 1

// likeWord reports whether a written word is, clips or slips a known one of about its length:
// what shares a few letters with a much longer or shorter word is another thing.
func likeWord(w, known string) bool {
	short, long := min(len(w), len(known)), max(len(w), len(known))
	switch {
	case w == known:
		return true
	case short < leastAlike || w[0] != known[0]:
		return false
	case len(known) > leastAlike && strings.HasPrefix(w, known):
		return long-short <= mostEnding
	case vowelless(w, known):
		return true
	case strings.HasPrefix(known, w):
		return 2*short >= long
	case long < leastTwice:
		return measure.OneSlip(w, known)
	}
	return long-short <= mostEnding && len(measure.Nearest(w, []measure.Spelling{{Written: known, Means: known}})) > 0
}

// SlipOf reports whether a written name is an ingredient's own but for slips of the pen: word by
// word, or with the gaps between the words left out, each as it stands or with one edit, or with
// two in a word of five letters or more. A name that shares a word with it, clips it or begins
// alike is another name.
func SlipOf(written string, p *flavor.Profile) bool {
	said := strings.Fields(flavor.NormaliseName(written))
	return slices.ContainsFunc(append([]string{p.Name}, p.Aliases...), func(name string) bool {
		known := strings.Fields(flavor.NormaliseName(name))
		return slices.EqualFunc(said, known, slipped) || slipped(strings.Join(said, ""), strings.Join(known, ""))
	})
}

// slipped reports whether a written word is a known one, or at most two edits from it.
func slipped(w, known string) bool {
	if w == known {
		return true
	}
	return min(len(w), len(known)) >= leastAlike && (w[0] == known[0] || swapped(w, known)) && len(measure.Nearest(w, []measure.Spelling{{Written: known, Means: known}})) > 0
}
