package gauge

import (
	"strings"

	"counterpour/flavor/measure/vocabulary"
)

// A measure, a shot or a jigger holds what that of the bar does.

// own lists such measures with the mL that bars' own hold, from the least to the most. Common practice,
// no source.
var own = map[string]struct{ least, most float64 }{
	"measure": {20, 45}, "shot": {20, 45}, "jigger": {25, 60}, "pony": {20, 35}, "nip": {20, 35}, "tot": {20, 35},
	"wineglass": {40, 80}, "gill": {100, 150}, "cup": {180, 260}, "pint": {400, 600},
}

// ownOf is the first word of every such measure by all of its words: "measures" is a "measure".
var ownOf = func() *vocabulary.Table[string] {
	m := map[string]string{}
	for _, row := range measured {
		words := strings.Fields(row.words)
		if _, ok := own[words[0]]; !ok {
			continue
		}
		for _, w := range words {
			m[w] = words[0]
		}
	}
	return vocabulary.TableOf(m)
}()

// Own is the measure that a word names, in the singular, if it holds what the bar's own does;
// empty if it is none of these.
func Own(w string) string {
	one, _ := ownOf.Find(w)
	return one
}

// Holds reports whether one of such a measure may hold so many mL.
func Holds(one string, ml float64) bool { return ml >= own[one].least && ml <= own[one].most }
