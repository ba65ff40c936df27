package entry

import (
	"slices"

	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// behindWords begin what is said of a pour behind its name: where it comes from, where and
// when it goes in, and on which condition. What they begin is no part of a name, save where
// an ingredient has all of it for its name, as "amaro on grape spirit" has: who knows the
// ingredients looks for that first.
var behindWords = vocabulary.Words(`off from inside in into onto on over under round around through at before after during till until already again while
if when whenever because since though although unless provided depending`)

// takeEnd takes the words behind a name that say how it goes in, and those that are told
// beside it.
func (p *Written) takeEnd(text string, toks []token.Token) []token.Token {
	toks = p.takeTails(text, toks)
	if name := p.takeBehind(text, toks); len(name) < len(toks) {
		return p.takeTails(text, name) // "mint leaves muddled in the bottom"
	}
	return toks
}

// takeBehind takes what is told behind a name off the end of a pour, and returns the rest.
func (p *Written) takeBehind(text string, toks []token.Token) []token.Token {
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind == token.Word && behindWords.Has(t.Text) })
	if at < 1 || toks[at-1].Kind != token.Word && !toks[at-1].Is(",") || slices.ContainsFunc(toks[at:], func(t token.Token) bool {
		return t.Kind != token.Word && t.Kind != token.Mark || t.Is("(") || t.Is(")")
	}) {
		return toks
	}
	p.Behind = token.OneLine(text[toks[at].Start:toks[len(toks)-1].End])
	if s := serving.Read(toks[at:]); s.States() && s.Conflict == nil { // "gin over crushed ice"
		p.Beside.Merge(&s, true)
	}
	return TrimMarks(toks[:at])
}
