package speech

import (
	"slices"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// signs are what who dictates says for a sign, by the first word, and signsBehind what has a
// second one.
var (
	signs       = vocabulary.TableOf(map[string]string{"comma": ",", "semicolon": ";", "period": "."})
	signsBehind = vocabulary.TableOf(map[string][2]string{"full": {"stop", "."}, "new": {"line", ";"}, "next": {"line", ";"}})
)

// Signs puts a sign where who dictates says one: "lemon comma fifteen of syrup full stop".
func Signs(toks []token.Token) []token.Token {
	for i := range toks {
		sign, n := signs.Get(toks[i].Text), 1
		if two := signsBehind.Get(toks[i].Text); sign == "" && i+1 < len(toks) && two[0] != "" && toks[i+1].Text == two[0] {
			sign, n = two[1], 2
		}
		if sign == "" || toks[i].Kind != token.Word || i == 0 {
			continue
		}
		at := token.Token{Kind: token.Mark, Start: toks[i].Start, End: toks[i+n-1].End, Text: sign}
		return Signs(slices.Concat(toks[:i], []token.Token{at}, toks[i+n:]))
	}
	return toks
}
