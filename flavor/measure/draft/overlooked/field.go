package overlooked

import (
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/token"
)

// What stands behind the label of a garnish, a top note, a rim or a glass is kept as that: a mist of rose
// water on top is no pour. What is measured by the millilitre there is one, and is asked for.

// laidOn reports whether what stands from one token of a line up to another is kept as what dresses the
// drink: it stands behind a label that says so, and is misted or dropped on rather than measured.
func laidOn(text string, toks []token.Token, from, to int) bool {
	for i := from; i < to; i++ {
		u, n := entry.UnitAt(toks[i:to])
		if n > 0 && u.Jigger() {
			return false
		}
		if n > 0 {
			return dresses(fieldAt(text, toks, from))
		}
	}
	return false
}

// dresses reports whether a label says of what follows it that it is laid on the drink, its rim or its glass.
func dresses(l label.Kind) bool { return l == label.Garnish || l == label.Rim || l == label.Glass }

// fieldAt is the label behind which a token of a line stands, up to the end of a sentence.
func fieldAt(text string, toks []token.Token, at int) label.Kind {
	in := label.None
	for i := 0; i <= at; i++ {
		if i > 0 && !parts(&toks[i-1]) {
			continue
		}
		if i > 0 && (toks[i-1].Is(".") || toks[i-1].Is(";") || toks[i-1].Is("/") || toks[i-1].Is("|")) {
			in = label.None
		}
		if l, _ := parting.Header(text, toks[i:]); l != label.None {
			in = l
		}
	}
	return in
}

// garnishPours is the fault of a garnish that pours by the jigger, in the first thing that its label names:
// "garnish: float 15 ml red wine".
func garnishPours(text string, toks []token.Token) *flavor.DataFault {
	for i := range toks {
		if i > 0 && !parts(&toks[i-1]) {
			continue
		}
		l, rest := parting.Header(text, toks[i:])
		if l != label.Garnish {
			continue
		}
		end := 0
		for end < len(rest) && !parts(&rest[end]) {
			end++
		}
		for k := range end {
			if u, n := entry.UnitAt(rest[k:end]); n > 0 && u.Jigger() && k > 0 && rest[k-1].Kind == token.Numeral {
				said := token.OneLine(text[rest[0].Start:rest[end-1].End])
				return measure.Invalid("amount", said, "%q is measured, and stands where the garnish is told; write it on a line of its own to have it poured", said)
			}
		}
	}
	return nil
}
