package correcting

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// arrow points from an amount at the one that counts.
const arrow = ">"

// arrowAt returns how many tokens at i are an arrow, 0 if none is.
func arrowAt(toks []token.Token, i int) int {
	n := i
	for n < len(toks) && (toks[n].Is("-") || toks[n].Is("=")) && (n == i || toks[n].Glued) {
		n++
	}
	if n < len(toks) && toks[n].Is(arrow) && (n == i || toks[n].Glued) {
		return n + 1 - i
	}
	return 0
}

// gone say behind an arrow that nothing is poured of what stands before it.
var gone = vocabulary.Words(`out gone cut none no nothing removed dropped drop scrapped skip zero 86`)

// pointed is the fault of a text in which an arrow points from one pour at another, where other signs
// part the rest: the second may be poured in place of the first, or behind it.
func pointed(text string, pours []flavor.Pour) *flavor.DataFault {
	arrows, said := 0, ""
	for line := range strings.SplitSeq(text, "\n") {
		toks := token.Lex(nil, line, 0, len(line))
		from := 0
		for i := 0; i < len(toks); i++ {
			if parts(line, toks, i) && arrowAt(toks, i) == 0 {
				from = i + 1
			}
			n := arrowAt(toks, i)
			if n == 0 || n == 1 && line[toks[i].Start] == '>' || i+n >= len(toks) {
				continue
			}
			before, behind := toks[from:i], toks[i+n:]
			from = i + n
			i = from - 1
			switch {
			case len(amountsIn(before)) == 0 || batched(before):
			case gone.Has(behind[0].Text):
				said = line
				arrows = -len(toks) // however many there are
			case len(poursOf(&clause{toks: untilSign(line, behind)}, 0)) > 0:
				arrows++
				said = line
			}
		}
	}
	if said == "" || arrows >= len(pours)-1 {
		return nil
	}
	said = token.OneLine(said)
	return measure.Invalid("text", said, "%q points from one pour at what may stand in its place; write only what is poured", said)
}

// holders are what holds many drinks.
var holders = vocabulary.Words(`bottle btl jug pitcher keg batch carafe bowl growler decanter`)

// batched reports whether what stands before an arrow is what a batch is made in, and how much that holds, and no
// pour: "for a 700 ml bottle -> 250 rum".
func batched(toks []token.Token) bool {
	n := 0
	for i := range toks {
		if toks[i].Kind == token.Numeral {
			n++
		}
	}
	return n == 1 && slices.ContainsFunc(toks, func(t token.Token) bool { return holders.Has(t.Text) })
}

// untilSign are the tokens before the first sign that parts two clauses.
func untilSign(line string, toks []token.Token) []token.Token {
	for i := range toks {
		if parts(line, toks, i) || toks[i].Is(".") || arrowAt(toks, i) > 0 {
			return toks[:i]
		}
	}
	return toks
}
