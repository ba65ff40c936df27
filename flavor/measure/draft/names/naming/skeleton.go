package naming

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/carrier"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/lexicon"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/draft/words/serving"
)

// What a written word costs that stands for a longer one; common practice, no source. Hands leave out vowels first,
// then the end of a word, and consonants amid it last.
const (
	skippedConsonant = 1.0
	cutConsonant     = 0.5 // one behind all that is written
	skippedVowel     = 0.05
	clearlyAhead     = 0.75 // how much more the next candidate has to cost than the one that is taken
	mostAsked        = 5    // candidates that a question lists
)

// candidate is what a skeleton may stand for, and what that costs.
type candidate struct {
	found Found
	cost  float64
}

// skeletal returns the ingredient for whose name words stand that begin as its words do and hold some of their
// letters in order: "prsc", "rd wine", "rsmry syr". What the place does not allow is none. The one that leaves out
// least is taken if it is clearly ahead; else all that are as near are asked for. It spares words that are spelt
// right: they are no clippings.
func (b *Resolver) skeletal(name string, pl Place) (Found, bool) {
	f, _, ok := b.skeletonAt(name, pl)
	return f, ok
}

// consonantal is [Resolver.skeletal] of words that lack vowels only, and of those that are sure.
func (b *Resolver) consonantal(name string, pl Place) (Found, bool) {
	for w := range strings.FieldsSeq(flavor.NormaliseName(name)) {
		if !lexicon.Written(w) && strings.ContainsAny(w[1:], "aeiou") { // a slip of the pen as likely
			return Found{}, false
		}
	}
	f, cost, ok := b.skeletonAt(name, pl)
	return f, ok && f.Fault == nil && cost < cutConsonant
}

// skeletonAt is [Resolver.skeletal] with what the nearest name costs.
func (b *Resolver) skeletonAt(name string, pl Place) (Found, float64, bool) {
	lister, ok := b.placer.(Lister)
	full, _ := jargon.Lengthen(flavor.NormaliseName(name))
	words := strings.Fields(full)
	if !ok || len(words) == 0 || len(words) > LongestName || !skeleton(words) || drinks.Known(name) || Poisons(name) {
		return Found{}, 0, false
	}
	keys := map[string]float64{}
	take := func(known string) {
		if key, cost, ok := fleshed(words, strings.Fields(known)); ok {
			if least, seen := keys[key]; !seen || cost < least {
				keys[key] = cost
			}
		}
	}
	if len(words) > 1 || len(words[0]) > leastClipped { // three letters by themselves fit too many names: "gyn" is no rum of Guyana
		for known := range lister.Initialled(words) {
			take(known)
		}
	}
	if len(words) == 1 {
		for _, w := range jargon.VolumeWords() {
			take(w)
		}
	}
	return b.nearestOf(name, keys, pl)
}

// nearestOf is what the cheapest of some names means in a place, or the fault that asks between those that cost as little.
func (b *Resolver) nearestOf(name string, keys map[string]float64, pl Place) (Found, float64, bool) {
	var found []candidate
	for key, cost := range keys {
		f, ok := b.meaning(key, pl)
		if ok && (f.Fault != nil || f.Profile.Class != flavor.ClassAlcoholFree && pl.allows(f.Profile) && Loses(name, f.Profile) == "") {
			found = append(found, candidate{f, cost})
		}
	}
	if len(found) == 0 {
		return Found{}, 0, false
	}
	slices.SortFunc(found, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(len(a.means()), len(b.means())), slices.Compare(a.means(), b.means()))
	})
	var means []string
	for _, c := range found {
		if c.cost-found[0].cost >= clearlyAhead {
			break
		}
		for _, m := range c.means() {
			if !slices.Contains(means, m) {
				means = append(means, m)
			}
		}
	}
	if len(means) == 1 && found[0].found.Fault == nil {
		f := found[0].found
		f.How, f.Inferred = flavor.MatchFuzzy, true
		return f, found[0].cost, true
	}
	return Found{Fault: b.Asks(flavor.NormaliseName(name), means[:min(len(means), mostAsked)], pl)}, found[0].cost, true
}

// means lists the ingredients that a candidate may be.
func (c *candidate) means() []string {
	if c.found.Fault != nil {
		return c.found.Fault.Suggest
	}
	return []string{c.found.Profile.Name}
}

// meaning is what a name at full length means in a place, by itself or with the head that the place adds.
func (b *Resolver) meaning(key string, pl Place) (Found, bool) {
	f, ok := b.asWritten(key, []string{key}, pl)
	if !ok || f.Profile != nil && !pl.allows(f.Profile) {
		f, ok = b.Short(key, pl, true)
	}
	return f, ok && (f.Profile != nil || len(f.Fault.Suggest) > 0)
}

// skeleton reports whether some word is one that no language spells so, and long enough to stand for another.
func skeleton(words []string) bool {
	clipped := false
	for _, w := range words {
		if strings.ContainsFunc(w, func(c rune) bool { return c < 'a' || c > 'z' }) {
			return false
		}
		clipped = clipped || len(w) >= leastClipped && !stands(w)
	}
	return clipped
}

// stands reports whether a word stands for itself: it is spelt right, or is one of making and serving, or names an allergen.
func stands(w string) bool {
	if lexicon.Written(w) || mixed[w] || joiningWords[w] || serving.Known(w) {
		return true
	}
	c := carrier.Of(w)
	return !c.None()
}

// fleshed returns the words of a name that written ones stand for, in the same order, and what that costs. A word that
// is spelt right stands for itself alone.
func fleshed(written, name []string) (key string, cost float64, ok bool) {
	var taken []string
	at := 0
	for _, w := range written {
		for ; at < len(name); at++ {
			c, ok := skips(w, name[at])
			if w == name[at] || ok && !stands(w) && !slices.Contains(heads, w) {
				cost += c
				taken = append(taken, name[at])
				break
			}
		}
		if at == len(name) {
			return "", 0, false
		}
		at++
	}
	return strings.Join(taken, " "), cost, true
}

// skips returns what a word costs that stands for a longer one. It is false where the two begin otherwise, where a letter
// is not in the longer one in order, and where less than half of the consonants are left. Whoever writes the vowels skips no
// consonant before them.
func skips(w, full string) (cost float64, ok bool) {
	if w == full {
		return 0, true
	}
	if len(w) < leastClipped || len(w) >= len(full) || w[0] != full[0] {
		return 0, false
	}
	at, kept, lost := 0, 0, 0
	voiced := strings.ContainsAny(w[1:], "aeiou")
	for i := range len(full) {
		vowel := strings.IndexByte("aeiou", full[i]) >= 0
		switch {
		case at < len(w) && w[at] == full[i]:
			at++
			if !vowel {
				kept++
			}
		case vowel:
			cost += skippedVowel
		case i > 0 && full[i] == full[i-1]: // a doubled letter
			cost += skippedVowel
		case at == len(w):
			cost, lost = cost+cutConsonant, lost+1
		case voiced:
			return 0, false
		default:
			cost, lost = cost+skippedConsonant, lost+1
		}
	}
	return cost, at == len(w) && kept >= lost && kept > 1
}
