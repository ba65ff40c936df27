package serving

import (
	"slices"

	"counterpour/flavor/measure/draft/token"
)

// Words for the size of a piece of ice, and for the piece itself.
var (
	sizeUnits = token.Words(`in inch inches cm mm`)
	icePieces = token.Words(`cube cubes sphere rock block`)
)

// WithIceSizes reads the size of a piece of ice as that the piece is large, "2x2 cube",
// "2 inch cube", where nothing stands behind it: a "1 cm cube of ginger" is no ice.
func WithIceSizes(toks []token.Token) []token.Token {
	for i := range toks {
		n := iceSize(toks[i:])
		if n == 0 {
			continue
		}
		large := token.Token{Kind: token.Word, Start: toks[i].Start, End: toks[i+n-1].End, Text: "large", Glued: toks[i].Glued}
		return WithIceSizes(slices.Concat(toks[:i], []token.Token{large}, toks[i+n:]))
	}
	return toks
}

// iceSize returns how many tokens of the size of a piece of ice toks begin with, 0 if none.
func iceSize(toks []token.Token) int {
	if toks[0].Kind != token.Numeral || toks[0].Wrong != "" {
		return 0
	}
	n := 1
	for n+1 < len(toks) && (toks[n].Text == "x" || toks[n].Text == "×") && toks[n+1].Kind == token.Numeral {
		n += 2
	}
	if n < len(toks) && (sizeUnits[toks[n].Text] || toks[n].Is("\"") || toks[n].Is("”")) {
		n++
	}
	at := n
	if at < len(toks) && toks[at].Text == "ice" {
		at++
	}
	if n == 1 || at >= len(toks) || !icePieces[toks[at].Text] || at+1 < len(toks) && toks[at+1].Kind != token.Mark {
		return 0
	}
	return n
}
