package naming

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/lexicon"
)

// slipOfWord returns what a word of the place means of which the written one is a slip
// of one letter, where it is the only one.
func (b *Resolver) slipOfWord(key string, pl Place) (Found, bool) {
	if len(key) < leastClipped || strings.Contains(key, " ") || !pl.Volume() {
		return Found{}, false
	}
	best := ""
	for _, w := range shortKinds {
		if swapped(key, w) && !lexicon.Written(key) {
			f := b.Find(w, pl)
			f.How = flavor.MatchFuzzy
			return f, f.Profile != nil && f.Fault == nil
		}
	}
	for _, w := range jargon.VolumeWords() {
		slipped := len(w) >= leastClipped && swapped(key, w) && !lexicon.Written(key) || min(len(key), len(w)) >= leastSlipped && (swapped(key, w) || oneOff(key, w) || len(key) >= leastTwice && key[0] == w[0] && len(measure.Nearest(key, []measure.Spelling{{Written: w, Means: w}})) > 0)
		if !slipped && !vowelless(key, w) && !(len(key) >= leastBegun && strings.HasPrefix(w, key)) {
			continue
		}
		if best != "" && (jargon.ByVolume(w) == "" || jargon.ByVolume(best) != jargon.ByVolume(w)) && !slices.Equal(jargon.AskVolume(best), jargon.AskVolume(w)) {
			return Found{}, false
		}
		best = w
	}
	if best == "" {
		return Found{}, false
	}
	f, ok := b.InPlace(best, pl, true)
	if ok && f.Fault == nil {
		f.How = flavor.MatchFuzzy
	}
	return f, ok
}

// shortKinds are kinds of what is poured whose words are short, and names already.
var shortKinds = strings.Fields("gin rum rye port cola soda sake milk beer")

const (
	leastSlipped = 5 // letters of a word in which a slip is forgiven
	leastTwice   = 8 // letters of a word in which two are
	leastBegun   = 4 // letters of a word that begin another
)

// swapped reports whether two neighbouring letters of a are swapped in b, and nothing
// else differs.
func swapped(a, b string) bool {
	if len(a) != len(b) || a == b {
		return false
	}
	i := 0
	for a[i] == b[i] {
		i++
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}

// oneOff reports whether one letter amid b is missing in a, doubled or another.
func oneOff(a, b string) bool {
	i, j := 0, 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	for j < len(a)-i && j < len(b)-i && a[len(a)-1-j] == b[len(b)-1-j] {
		j++
	}
	lost, over := len(a)-i-j, len(b)-i-j
	return i > 0 && j > 0 && lost <= 1 && over <= 1 && lost+over > 0
}

// begunAlike reports whether a single word begins as some word of an ingredient's names does, or differs from
// one in its first letter alone: a hand that slips twice seldom does so there, and the name of a bottle
// does, "Angevine" beside tangerine.
func begunAlike(written string, p *flavor.Profile) bool {
	w := flavor.NormaliseName(written)
	if strings.Contains(w, " ") || len(w) < leastSlipped {
		return true
	}
	for _, n := range append([]string{p.Name}, p.Aliases...) {
		name := flavor.NormaliseName(n)
		for _, k := range append(strings.Fields(name), strings.ReplaceAll(name, " ", "")) {
			if k[0] == w[0] || k[1:] == w || w[1:] == k || k[1:] == w[1:] || len(k) > 1 && len(w) > 1 && k[0] == w[1] && k[1] == w[0] {
				return true
			}
		}
	}
	return false
}
