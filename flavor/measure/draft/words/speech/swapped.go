package speech

import (
	"slices"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// What one ingredient is put in the place of another by: "swap gin for genever", "honey syrup instead
// of simple".

// swapVerbs begin such a change.
var swapVerbs = vocabulary.Words(`swap swapped sub subbed substitute replace replaced change changed switch switched trade use using`)

// swapJoins stand between the two.
var swapJoins = vocabulary.Words(`for with w by to into`)

// Swaps reports whether a word begins such a change.
func Swaps(word string) bool { return swapVerbs.Has(word) }

// behindSwap are words behind such a change that speak of the drink below.
var behindSwap = vocabulary.Words(`in this that one here below please pls drink spec recipe the following`)

// WithoutBelow drops behind a name what speaks of the drink below.
func WithoutBelow(name []token.Token) []token.Token {
	for len(name) > 1 && behindSwap.Has(name[len(name)-1].Text) {
		name = name[:len(name)-1]
	}
	return name
}

// Swapped are the two names of a line that changes one for the other; none if it is no
// such line.
func Swapped(toks []token.Token) (one, other []token.Token) {
	if at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Text == "instead" }); at > 0 {
		begin := 0
		if swapVerbs.Has(toks[0].Text) {
			begin = 1
		}
		if at+2 < len(toks) && toks[at+1].Text == "of" {
			return WithoutThe(toks[begin:at]), WithoutThe(toks[at+2:])
		}
		return nil, nil
	}
	if !swapVerbs.Has(toks[0].Text) || toks[0].Text == "use" || toks[0].Text == "using" {
		return nil, nil
	}
	at := slices.IndexFunc(toks, func(t token.Token) bool { return swapJoins.Has(t.Text) })
	if at < 2 || at+1 >= len(toks) {
		return nil, nil
	}
	return WithoutThe(toks[1:at]), WithoutThe(toks[at+1:])
}

// WithoutThe drops what stands before a name and says nothing of it.
func WithoutThe(toks []token.Token) []token.Token {
	for len(toks) > 0 && (toks[0].Text == "the" || toks[0].Text == "in" || toks[0].Text == "out" || toks[0].Text == "a" || toks[0].Text == "some") {
		toks = toks[1:]
	}
	return toks
}
