package entry

import (
	"slices"

	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// begun drops words that lead from one pour to the next: "then top it with soda", "of lime
// half an ounce".
func begun(toks []token.Token) []token.Token {
	for len(toks) > 2 && toks[1].Kind == token.Word && (toks[0].Text == "of" || (toks[0].Text == "then" || toks[0].Text == "and") && (pouring.Verbs[toks[1].Text] != "" || toks[1].Text == "then")) {
		toks = toks[1:]
	}
	return toks
}

// portionWords lead to how much of a mix one drink is.
var portionWords = vocabulary.Words(`to serve pour dispense portion then and`)

// Portioned reports whether tokens, up to the first sign, say how much of the mix is poured for one drink, and over
// what, which pours nothing anew: "to serve pour 90 ml over ice".
func Portioned(toks []token.Token) bool {
	at := slices.IndexFunc(toks, func(t token.Token) bool { return !portionWords.Has(t.Text) })
	if at < 1 || toks[at].Kind != token.Numeral || toks[at].Wrong != "" || toks[at-1].Text == "to" || toks[at-1].Text == "and" || toks[at-1].Text == "then" {
		return false
	}
	u, n := UnitAt(toks[at+1:])
	if behind := toks[at+1:]; !u.Jigger() || n+1 >= len(behind) || !overWords.Has(behind[n].Text) {
		return false
	}
	over := toks[at+1+n:]
	if end := slices.IndexFunc(over, func(t token.Token) bool { return t.Kind == token.Mark }); end > 0 {
		over = over[:end]
	}
	s := serving.Read(over)
	return s.States() && len(s.Unknown) == 0 && s.Conflict == nil
}

// overWords stand before what a drink is poured over or into.
var overWords = vocabulary.Words(`over into on in onto`)

// intoGlass reports whether words of making and serving hold the size of a glass, which is
// no amount: "fine strain into a 5 oz coupe".
func intoGlass(toks []token.Token) bool {
	for i := 1; i < len(toks); i++ {
		if serving.SizeOfGlass(toks[i:]) {
			s := serving.Read(toks)
			return s.Begins && len(s.Unknown) == 0
		}
	}
	return false
}
