package serving

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// husks are what is left of a fruit, or lies on a drink: who shakes with one pours nothing.
var husks = vocabulary.Words(`peel peels zest twist twists shell shells husk husks hull hulls skin skins rind half halves wedge wedges spring ball ice swath disc coin`)

// MixedWith returns where what a step tells to shake or to blend with begins, behind "with"; 0 if it tells no
// such thing. What is stirred with may be a stick.
func MixedWith(toks []token.Token) int {
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Text == "with" })
	if at < 1 || at+1 == len(toks) {
		return 0
	}
	if m := Read(toks[:at]).Method; m != flavor.Shake && m != flavor.DryShake && m != flavor.Blend {
		return 0
	}
	if last := toks[len(toks)-1].Text; husks.Has(last) {
		return 0
	}
	return at + 1
}
