package serving

import (
	"slices"

	"counterpour/flavor/measure/draft/words/token"
)

// Words for the size of a piece of ice, and for the piece itself.
var (
	sizeUnits = token.Words(`in inch inches cm mm`)
	icePieces = token.Words(`cube cubes sphere rock block`)
	iceBehind = token.Words(`with w w/ over on upon`)
)

// WithIceSizes reads the size of a piece of ice as that the piece is large, "2x2 cube",
// "2 inch cube", where nothing stands behind it: a "1 cm cube of ginger" is no ice.
func WithIceSizes(toks []token.Token) []token.Token {
	for i := range toks {
		if countsIce(toks, i) {
			one := toks[i]
			one.Kind, one.Text = token.Word, "single"
			return WithIceSizes(slices.Concat(toks[:i], []token.Token{one}, toks[i+1:]))
		}
		n := iceSize(toks[i:])
		if n == 0 {
			continue
		}
		large := token.Token{Kind: token.Word, Start: toks[i].Start, End: toks[i+n-1].End, Text: "large", Glued: toks[i].Glued}
		return WithIceSizes(slices.Concat(toks[:i], []token.Token{large}, toks[i+n:]))
	}
	return toks
}

// countsIce reports whether what stands at i counts the one piece of ice that a drink is
// made with or poured over: "stir w/ 1 cube", "strain over a cube". Alone, a cube may be one of sugar.
func countsIce(toks []token.Token, i int) bool {
	one := toks[i].Kind == token.Numeral && toks[i].Value == 1 || toks[i].Text == "a" || toks[i].Text == "one"
	if !one || i < 1 || !iceBehind[toks[i-1].Text] || i+1 >= len(toks) || toks[i+1].Text != "cube" {
		return false
	}
	for _, t := range toks[:i] {
		if t.Text == "muddle" || t.Text == "sugar" {
			return false
		}
	}
	return i+2 == len(toks) || toks[i+2].Kind == token.Mark
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
