package naming

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/words/drinks"
)

// leastClipped is the letters that are left of a word that is shortened.
const leastClipped = 3

// clipped returns the one ingredient of whose name the words are beginnings, or what is
// left without the vowels: "dry cur", "grn herbal". Where several are, the one with the
// fewest other words is meant; if that leaves more than one, none is. The name of a drink is no
// clipping: "old fashioned: 2 oz" names no bottle. Ice is ice, and no wine of it.
func (b *Resolver) clipped(name string, pl Place) (Found, bool) {
	words := strings.Fields(flavor.NormaliseName(name))
	if len(words) == 0 || len(words) > LongestName || prose(name) || words[0] == "ice" && len(words) == 1 || drinks.Known(name) || !slices.ContainsFunc(words, func(w string) bool { return utf8.RuneCountInString(w) >= leastClipped }) {
		return Found{}, false
	}
	whole := make([]bool, len(words)) // the word is a name by itself, and no beginning of another
	for i, w := range words {
		_, _, whole[i] = b.Named(w)
	}
	full := wholes[words[len(words)-1]] || joined.MatchString(name)
	most := LongestName          // other words of the name
	if len(words) == 1 || full { // too little to go by, or nothing is lacking
		most = 0
	}
	if !b.mayClip(words, whole, most) {
		return Found{}, false
	}
	var hit *flavor.Profile
	least, tied := LongestName, false
	for _, near := range b.suggest(name, pl) {
		p, _, ok := b.Named(near)
		if !ok || !pl.allows(p) || p.Class == flavor.ClassAlcoholFree { // that has to be said
			continue
		}
		over := LongestName
		for _, n := range append([]string{p.Name}, p.Aliases...) {
			if k, ok := clips(words, whole, strings.Fields(flavor.NormaliseName(n))); ok {
				over = min(over, k)
			}
		}
		if over > most {
			continue
		}
		switch {
		case over < least:
			hit, least, tied = p, over, false
		case over == least:
			tied = true
		}
	}
	if hit == nil || tied || len(words) == 1 && begunOtherwise(words[0], hit) || b.clippedCloser(words, whole, least, hit, pl) {
		return Found{}, false
	}
	return Found{Profile: hit, How: flavor.MatchAlias, As: hit.Name, Inferred: true}, true
}

// mayClip reports whether there may be a name that the words shorten, with so many other words
// at most. It spares most names a search for what is nearest to them.
func (b *Resolver) mayClip(words []string, whole []bool, most int) bool {
	lister, ok := b.placer.(Lister)
	if !ok {
		return true
	}
	for name := range lister.Initialled(words) {
		if over, ok := clips(words, whole, strings.Fields(name)); ok && over <= most {
			return true
		}
	}
	return false
}

// clippedCloser reports whether the words leave fewer other words of a name of the place that is none of p, and was
// not among the nearest: "str ans" is star anise, and no tincture of it.
func (b *Resolver) clippedCloser(words []string, whole []bool, least int, p *flavor.Profile, pl Place) bool {
	lister, ok := b.placer.(Lister)
	if !ok {
		return false
	}
	for name := range lister.Initialled(words) {
		if over, ok := clips(words, whole, strings.Fields(name)); ok && over < least {
			if q, _, ok := b.Named(name); ok && q.ID != p.ID && pl.allows(q) {
				return true
			}
		}
	}
	return false
}

// initials are what one letter stands for behind a name, and before one; common practice.
var (
	lastInitials = map[string][]string{
		"r": {"rum"}, "l": {"liqueur"}, "s": {"syrup", "soda", "shrub"}, "j": {"juice"}, "v": {"vermouth", "vodka", "vinegar"}, "b": {"bitters", "beer", "brandy", "blanco"}, "w": {"whiskey", "wine", "water"}, "p": {"port", "puree"},
	}
	firstInitials = map[string][]string{
		"w": {"white"}, "d": {"dry", "dark", "demerara"}, "g": {"green", "gold", "ginger", "grapefruit"}, "y": {"yellow"}, "o": {"orange"}, "r": {"red", "rich", "raspberry", "rye"}, "l": {"light", "lemon", "lime"},
		"s": {"sweet", "spiced", "strawberry"}, "b": {"blanco", "black", "blue", "banana"}, "c": {"coffee", "cherry", "cold"}, "p": {"peach", "pineapple", "pomegranate", "pink"}, "t": {"triple", "tomato"},
	}
)

// initialled returns what a name means of whose words the last or the first is one letter:
// "white r", "g beer". Of several that are known, each may be meant.
func (b *Resolver) initialled(name string, pl Place) (Found, bool) {
	words := strings.Fields(flavor.NormaliseName(name))
	last := len(words) - 1
	if last < 1 {
		return Found{}, false
	}
	var hit Found
	var means []string
	try := func(words []string) {
		n, _ := jargon.Lengthen(strings.Join(words, " "))
		n = cmp.Or(jargon.Short(n), jargon.Usual(n), n)
		if p, _, ok := b.Named(n); ok && pl.allows(p) && !slices.Contains(means, p.Name) {
			means = append(means, p.Name)
			hit = Found{Profile: p, How: flavor.MatchAlias, As: n, Inferred: true}
		}
	}
	for _, full := range lastInitials[words[last]] {
		try(append(slices.Clone(words[:last]), full))
	}
	for _, full := range firstInitials[words[0]] {
		try(append([]string{full}, words[1:]...))
	}
	if len(means) > 1 {
		return Found{Fault: b.Asks(flavor.NormaliseName(name), means, pl)}, true
	}
	return hit, len(means) == 1
}

// clips reports whether each written word shortens a word of a name, in the same order,
// and how many words of the name are left over.
func clips(written []string, whole []bool, name []string) (over int, ok bool) {
	at := 0
	if last := written[len(written)-1]; slices.Contains(heads, last) && name[len(name)-1] != last { // "caribbean rum" is no cream of it
		return 0, false
	}
	for i, w := range written {
		for at < len(name) && !(w == name[at] || !whole[i] && shortens(w, name[at]) || w == "j" && i > 0 && name[at] == "juice") {
			at++
			over++
		}
		if at == len(name) {
			return 0, false
		}
		at++
	}
	return over + len(name) - at, true
}

// shortens reports whether a word is the beginning of another, or that without vowels.
func shortens(w, full string) bool {
	if len(w) < leastClipped || len(w) >= len(full) || w[0] != full[0] {
		return false
	}
	if strings.HasPrefix(full, w) || vowelless(w, full) {
		return true
	}
	at := 1
	most := len(w) >= 6 && 2*len(w) >= len(full)+2 // "elderflwr": so much is left that its vowels may be too
	for _, c := range w[1:] {
		if strings.ContainsRune("aeiou", c) && !most {
			return false
		}
		k := strings.IndexRune(full[at:], c)
		if k < 0 {
			return false
		}
		at += k + 1
	}
	return true
}

// vowelless reports whether a word is another of which some vowels amid it are left out,
// and nothing else: "lemn", "lme".
func vowelless(w, full string) bool {
	if len(w) < leastClipped || len(w) >= len(full) || w[len(w)-1] != full[len(full)-1] {
		return false
	}
	at := 0
	for i := range len(full) {
		switch {
		case at < len(w) && w[at] == full[i]:
			at++
		case i == 0 || !strings.ContainsRune("aeiou", rune(full[i])):
			return false
		}
	}
	return at == len(w)
}

// begunOtherwise reports whether a clipped word begins a word of the place as well that is
// none of p: "pas" is pastis, and passion fruit.
func begunOtherwise(clip string, p *flavor.Profile) bool {
	return slices.ContainsFunc(jargon.VolumeWords(), func(w string) bool {
		return strings.HasPrefix(w, clip) && !slices.ContainsFunc(append([]string{p.Name}, p.Aliases...), func(n string) bool { return strings.Contains(flavor.NormaliseName(n), w) })
	})
}
