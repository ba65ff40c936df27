package likeliest

import (
	"math"
	"slices"
	"strings"

	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// standIns are bottles that everybody knows in their place, the last of them without alcohol.
var standIns = []string{"vodka", "gin", "apple juice"}

// mostLead is the most words that lead the pours of a line and may be one of them.
const mostLead = 3

// MayPour reports whether what leads the pours of a line and names nothing known may be poured as
// well: "zq 2 gf soda 4 lime .5 pinch salt" is a drink called zq, or its amounts stand behind the
// names. With a bottle in its place the text holds more pours then, or what would have the last
// amount is laid on the drink: nobody pours 120 of lemon peel.
func MayPour(text string, name entry.Span, pours int, b *naming.Resolver) bool {
	words := strings.Fields(text[name.Start:name.End])
	if len(words) > mostLead || strings.Contains(text[name.Start:name.End], "\n") {
		return false
	}
	known := len(words) > 1 || len(b.Mentioned(words[0])) > 0
	sentence, _, _ := strings.Cut(text[name.End:], ". ") // what follows may not be known to be said
	for _, behind := range slices.Compact([]string{text[name.End:], sentence}) {
		for _, bottle := range standIns {
			list, ok := parted(text[:name.Start]+bottle+behind, b)
			if ok && list.title == "" && (len(list.pours) > pours && !known || len(list.pours) == pours && list.laidLast()) {
				return true
			}
		}
	}
	return false
}

// The most of what is laid on a drink that bars count for one; common practice.
const (
	mostTwists = 2  // twists and wedges
	mostLeaves = 20 // leaves and berries
)

// cuts are words for what is cut from a fruit.
var cuts = vocabulary.Words(`twist twists peel peels wedge wedges zest zests wheel wheels slice slices`)

// laidLast reports whether the last amount stands before what is laid on the drink, and nobody
// lays so much of it.
func (r *reading) laidLast() bool {
	toks := r.script.toks
	last := len(toks) - 1
	for last > 0 && toks[last].Kind != token.Numeral {
		last--
	}
	if len(r.laid) == 0 || last <= 0 || !r.script.word(last+1) {
		return false
	}
	most := float64(mostLeaves)
	if slices.ContainsFunc(strings.Fields(strings.ToLower(r.laid[0])), cuts.Has) {
		most = mostTwists
	}
	return toks[last].Value > most || toks[last].Value != math.Trunc(toks[last].Value)
}

// led is where the name of the drink stands if it leads the pours of its line without a sign.
func (s *script) led(r *reading) (entry.Span, bool) {
	t := r.titled
	if t == nil || s.ends(t.to) || s.toks[t.to].Kind == token.Mark || s.sign(t.from-1, "\"“„«") {
		return entry.Span{}, false
	}
	return s.at(t.from, t.to), true
}
