package everyday

import (
	"slices"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// makes are verbs by which a recipe tells what goes where, after it listed the amounts, beside those
// that pour.
var makes = vocabulary.Words(`add combine measure place put start build pour mix shake stir throw blend give bring warm heat
	muddle press squeeze lay set stack swirl roll charge`)

// joins stand between things that are named one after another.
var joins = vocabulary.Words(`and the your then with plus of a all both & also next`)

// again takes what a step of a recipe names once more of what is poured already: the names if it
// tells how the drink is made, and else all of it. It is false if the step holds a number, a measure,
// or anything that is not poured.
func (s *search) again(n int, toks []token.Token) bool {
	if n == 1 || !wordsOnly(toks) || measures(toks) || !slices.ContainsFunc(toks[:min(len(toks), mostLead)], func(t token.Token) bool { return makes.Has(t.Text) }) && !inOrder(toks) {
		return false
	}
	var runs []entry.Span
	var rest []token.Token
	last := -1 // the token behind the run that is open
	for i := 0; i < len(toks); {
		t := &toks[i]
		k, poured := 0, false
		if t.Kind == token.Word && !makes.Has(t.Text) && !joins.Has(t.Text) {
			k, poured = s.nameAt(toks, i)
		}
		switch {
		case k > 0 && !poured, k == 0 && !stepWord(t):
			return false
		case k > 0:
			at := entry.Span{Start: t.Start, End: toks[i+k-1].End}
			if last >= 0 && joined(toks[last:i]) {
				runs[len(runs)-1].End = at.End
			} else {
				runs = append(runs, at)
			}
			i += k
			last = i
			continue
		}
		rest = append(rest, *t)
		i++
	}
	if len(runs) == 0 {
		return false
	}
	if said := serving.Read(rest); !said.States() {
		runs = []entry.Span{{Start: toks[0].Start, End: toks[len(toks)-1].End}}
	}
	for _, at := range runs {
		s.found = append(s.found, Clause{At: at, Line: n, Spoken: true})
	}
	return true
}

// inOrder reports whether tokens end by saying that what they name goes in in that order.
func inOrder(toks []token.Token) bool {
	n := len(toks)
	return n > 2 && toks[n-1].Text == "order" && (toks[n-2].Text == "in" || toks[n-2].Text == "that" || toks[n-2].Text == "this")
}

// mostLead is the most words before the verb of a step: "in a cocktail shaker filled with ice, combine".
const mostLead = 9

// joined reports whether tokens do no more than stand between two names.
func joined(toks []token.Token) bool {
	return !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Word && !joins.Has(t.Text) })
}

// stepWord reports whether a token is a sign, or a word of steps that names nothing.
func stepWord(t *token.Token) bool {
	return t.Kind == token.Mark || joins.Has(t.Text) || makes.Has(t.Text) || serving.Known(t.Text) || serving.Fillers[t.Text] || pouring.AfterVerb(t.Text) || vessels.Has(t.Text) || Word(t.Text)
}

// vessels are what a recipe mixes in.
var vessels = vocabulary.Words(`shaker tin tins jug pitcher mixing glass bowl blender pan saucepan pot cup mug ingredients ingredient contents remaining rest everything`)
