package parting

import (
	"maps"
	"slices"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// place is a place amid a line, where the entry before it may end. What rules ask of it again
// and again is worked out once, and only if one asks.
type place struct {
	toks            []token.Token
	i               int          // of the token that stands there, above zero
	from            int          // of the first token of the entry that may end before it
	t, before, next *token.Token // what stands there, and its neighbours
	amount, whole   answer
}

// answer is the answer to a question that is costly to answer.
type answer uint8

const (
	unasked answer = iota
	no
	yes
)

// answered is an answer to be kept.
func answered(is bool) answer {
	if is {
		return yes
	}
	return no
}

// entry returns what stands between the start of the entry and the place.
func (p *place) entry() []token.Token { return p.toks[p.from:p.i] }

// ahead returns what stands at the place and behind it, up to the next sign.
func (p *place) ahead() []token.Token { return upToMark(p.toks[p.i:]) }

// behindNext returns what stands behind the token at the place.
func (p *place) behindNext() []token.Token { return p.toks[p.i+1:] }

// startsAmount reports whether the entry before the place starts with an amount.
func (p *place) startsAmount() bool {
	if p.amount == unasked {
		p.amount = answered(entry.StartsAmount(p.toks[p.from:]))
	}
	return p.amount == yes
}

// behindPour reports whether what stands before the place is a whole pour: an amount and its name.
func (p *place) behindPour() bool {
	if p.whole == unasked {
		p.whole = answered(p.i > p.from+1 && Named(p.entry()) && p.startsAmount())
	}
	return p.whole == yes
}

// endsName reports whether the word before the place may be the last of a name.
func (p *place) endsName() bool {
	return p.before.Kind == token.Word && !entry.IsUnit(p.before) && !token.Joins[p.before.Text]
}

// upToMark returns the tokens before the first sign.
func upToMark(toks []token.Token) []token.Token {
	if at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind == token.Mark }); at >= 0 {
		return toks[:at]
	}
	return toks
}

// tokenAt returns the token at i, a sign that is none behind the last.
func tokenAt(toks []token.Token, i int) *token.Token {
	if i < len(toks) {
		return &toks[i]
	}
	return &token.Token{Kind: token.Mark}
}

// Wide reports whether there is more than one blank before the token at i.
func Wide(toks []token.Token, i int) bool { return toks[i].Start-toks[i-1].End > 1 }

// Named reports whether tokens after an amount hold a name beside a unit.
func Named(toks []token.Token) bool {
	for i := range toks {
		if t := &toks[i]; t.Kind == token.Word && !besideName.Has(t.Text) && !entry.IsUnit(t) {
			return true
		}
	}
	return false
}

// besideName are the words, but for units, that say how much of something there is, and are
// no name: numbers, measures, and what stands before them.
var besideName = vocabulary.SetOf(slices.Concat([]string{"of", "a", "an"}, words(token.NumberWords), words(token.FractionWords),
	words(token.LooseWords), words(token.BiasWords), words(gauge.Measures))...)

// words are the keys of a table.
func words[V any](of map[string]V) []string { return slices.Collect(maps.Keys(of)) }
