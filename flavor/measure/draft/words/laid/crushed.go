package laid

import (
	"slices"

	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

var (
	// pieces are what is counted and crushed before it goes in; one word of a herb may stand before the ice.
	pieces = vocabulary.Words(`leaves berries raspberries strawberries blackberries blueberries cranberries cherries grapes slices wedges wheels quarters sprigs cubes pods seeds coins chunks rasps raspberry strawberry blackberry`)
	// softly say how it is crushed.
	softly = vocabulary.Words(`lightly gently softly well hard slightly roughly firmly barely`)
)

// Crushed writes "muddled" for "crushed" where it is said of counted pieces of a fruit or a herb, "4 raspberries
// lightly crushed", and not of ice. Behind a comma it is said of them if the word before it says how, or if
// nothing else stands on the line.
func Crushed(toks []token.Token) []token.Token {
	for i := 2; i < len(toks); i++ {
		if toks[i].Text != "crushed" || i+1 < len(toks) && (toks[i+1].Text == "ice" || serving.Known(toks[i+1].Text) && toks[i+1].Kind == token.Word) {
			continue
		}
		at := i - 1
		for at > 0 && softly.Has(toks[at].Text) {
			at--
		}
		if at > 0 && toks[at].Is(",") && (at < i-1 || i+1 == len(toks) && !listed(toks)) {
			at--
		}
		if !pieces.Has(toks[at].Text) {
			continue
		}
		for at > 0 && toks[at].Kind == token.Word {
			at--
		}
		if toks[at].Kind == token.Numeral {
			toks = slices.Clone(toks)
			toks[i].Text = "muddled"
		}
	}
	return toks
}

// listed reports whether tokens hold more than one number, so that what stands behind a comma is an entry of
// its own.
func listed(toks []token.Token) bool {
	n := 0
	for i := range toks {
		if toks[i].Kind == token.Numeral {
			n++
		}
	}
	return n > 1
}
