package parting

import (
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// What stands behind the last amount of a line that writes its amounts after the names, or
// behind a pour of a spirit, without a sign: what fills the glass, how the drink is served,
// and what is laid on it.

// endsAmount reports whether an amount behind its name ends before i.
func endsAmount(toks []token.Token, i, from int) bool {
	if i < from+2 || entry.StartsAmount(toks[from:]) || toks[from].Kind != token.Word || serving.StepVerbs[toks[from].Text] || serving.Starts(toks[from:]) {
		return false
	}
	return toks[i-1].Kind == token.Numeral && toks[i-1].Wrong == "" || i > from+2 && toks[i-2].Kind == token.Numeral && entry.IsUnit(&toks[i-1])
}

// warmth are words of service that say of what stands before them which of its kind it is.
var warmth = token.Words(`hot warm cold iced chilled frozen`)

// followsAmount reports whether what follows an amount behind its name, up to the next sign,
// is no part of that pour: "simple .5 coupe", "rum 1.5 cola lime wedge", "simple .75 egg
// white", or behind a spirit what fills the glass: "1.5 vodka soda lime wedge".
func followsAmount(toks []token.Token, i, from int) bool {
	rest := upToMark(toks[i:])
	if len(rest) == 0 || entry.IsUnit(&rest[0]) || rest[0].Glued && Measured(&rest[0]) { // "arom 2d"
		return false
	}
	if spirits[toks[i-1].Text] && entry.StartsAmount(toks[from:]) {
		n := lengthAt(rest)
		return n > 0 && (n == len(rest) || behindLength(rest[n:]))
	}
	if !endsAmount(toks, i, from) {
		return false
	}
	if n := lengthAt(rest); n > 0 {
		return n == len(rest) || behindLength(rest[n:])
	}
	if laidBehind(rest) && !strings.HasPrefix(toks[from].Text, "juice") && toks[i-1].Kind == token.Numeral && toks[i-1].Value != math.Trunc(toks[i-1].Value) {
		return true // "simple .5 dill", but "juice of 1/2 lemon"
	}
	if whites.Has(rest[0].Text) || len(rest) > 1 && strings.HasPrefix(rest[0].Text, "egg") && strings.HasPrefix(rest[1].Text, "wh") {
		return true
	}
	s := serving.Read(rest)
	return !warmth[rest[0].Text] && s.States() && (len(s.Unknown) == 0 || laid.Served(rest) > 0)
}

// mostLaidWords is the most words of what is laid on a drink behind an amount.
const mostLaidWords = 3

// laidBehind reports whether words, perhaps with how the drink is served behind them, are what is
// laid on it and no part of what stands before them: "dill", "orange twist", but not "wheel".
func laidBehind(toks []token.Token) bool {
	n := 0
	for n < len(toks) && n < mostLaidWords && toks[n].Kind == token.Word && !serving.Known(toks[n].Text) {
		n++
	}
	return n > 0 && laid.Ends(toks[:n]) && !laid.Cut(toks[0].Text) && (n == len(toks) || servedOnly(toks[n:]))
}

// toppingAt reports whether what fills the glass stands at i, up to the next sign, and says that it
// does: "soda top".
func toppingAt(toks []token.Token, i int) bool {
	n := lengthAt(toks[i:])
	return n > 0 && i+n < len(toks) && pouring.Verbs[toks[i+n].Text] == flavor.Top && (i+n+1 == len(toks) || toks[i+n+1].Kind == token.Mark)
}

// lengthEnds reports whether what fills the glass ends before i, and what is laid on the
// drink or how it is served follows: "cola lime wedge".
func lengthEnds(toks []token.Token, i, from int) bool {
	if pouring.Verbs[toks[i].Text] == flavor.Top { // "soda top" is one entry
		return false
	}
	if n := topsBefore(toks, i); n > 0 && i > from+n { // "soda top crushed"
		return lengthAt(toks[from:]) == i-n-from && !pouring.EndsTopping(&toks[i]) && behindLength(upToMark(toks[i:]))
	}
	if from > 0 && toks[from-1].Is(",") && aGlass(upToMark(toks[from:])) { // ", champagne flute,"
		return false
	}
	return lengthAt(toks[from:]) == i-from && behindLength(upToMark(toks[i:])) && !(from == 0 && len(upToMark(toks[i:])) == 1)
}

// aGlass reports whether words name a glass, and all of them do.
func aGlass(toks []token.Token) bool {
	var words []string
	for i := range toks {
		words = append(words, toks[i].Text)
	}
	if len(words) == 0 {
		return false
	}
	t, n := serving.TermAt(words[:min(len(words), serving.LongestTerm)])
	return n > 0 && n == len(words) && t.Glass != ""
}

// topsBefore is how many words before i say that what stands before them fills the glass: "top",
// "top up".
func topsBefore(toks []token.Token, i int) int {
	switch {
	case pouring.Verbs[toks[i-1].Text] == flavor.Top:
		return 1
	case i > 1 && pouring.EndsTopping(&toks[i-1]) && pouring.Verbs[toks[i-2].Text] == flavor.Top:
		return 2
	}
	return 0
}

// mostLength is the most words of what fills a glass.
const mostLength = 2

// laidOnly reports whether tokens are what is laid on a drink, perhaps behind its glass: "collins
// lemon slice cherry".
func laidOnly(toks []token.Token) bool {
	s := serving.Read(toks)
	return len(toks) > 0 && laid.Ends(toks) && s.Method == "" && !slices.ContainsFunc(s.Unknown, func(t token.Token) bool { return t.Kind != token.Word || !laid.Ends([]token.Token{t}) })
}

// lengthAt returns how many words of tokens are what fills a glass, 0 if none are.
func lengthAt(toks []token.Token) int {
	if len(toks) == 0 || !beginsLength.Has(toks[0].Text) {
		return 0
	}
	for n := min(mostLength, len(toks)); n > 0; n-- {
		words := toks[0].Text
		if n > 1 {
			words += " " + toks[1].Text
		}
		if entry.Lengtheners[words] {
			return n
		}
	}
	return 0
}

// beginsLength are the first words of what fills a glass.
var beginsLength = func() *vocabulary.Set {
	first := words(entry.Lengtheners)
	for i, w := range first {
		first[i], _, _ = strings.Cut(w, " ")
	}
	return vocabulary.SetOf(first...)
}()

// behindLength reports whether words may stand behind what fills a glass: how the drink is
// served, what is laid on it, or that it tops the drink.
func behindLength(toks []token.Token) bool {
	toks = behindTopping(toks)
	if len(toks) == 0 {
		return false // "soda top", "soda to top up" are one entry
	}
	return servedOnly(toks) || laidThenServed(toks) || laid.Served(toks) > 0 || laid.Noun(toks[len(toks)-1].Text) || laid.Noun(toks[0].Text) ||
		len(toks) == 1 && laid.Ends(toks)
}

// behindTopping returns tokens without the words before them that say that something tops the
// drink.
func behindTopping(toks []token.Token) []token.Token {
	rest := toks
	if len(rest) > 1 && rest[0].Text == "to" {
		rest = rest[1:]
	}
	if len(rest) == 0 || pouring.Verbs[rest[0].Text] != flavor.Top {
		return toks
	}
	if rest = rest[1:]; len(rest) > 0 && pouring.EndsTopping(&rest[0]) {
		rest = rest[1:]
	}
	return rest
}

// servedOnly reports whether words say how a drink is made or served, and nothing else.
func servedOnly(toks []token.Token) bool {
	s := serving.Read(toks)
	return len(s.Unknown) == 0 && s.States() && s.Conflict == nil
}

// laidThenServed reports whether words are what is laid on a drink with how it is served
// behind it: "orange slice highball".
func laidThenServed(toks []token.Token) bool {
	for i := 1; i < len(toks); i++ {
		if laid.Noun(toks[i-1].Text) && servedOnly(toks[i:]) {
			return true
		}
	}
	return false
}

// laidEnds reports whether what is laid on the drink ends before i, and what follows up to
// the next sign says how it is served: "lemon twist coupe".
func laidEnds(toks []token.Token, i, from int) bool {
	if !laid.Noun(toks[i-1].Text) || entry.StartsAmount(toks[from:]) || !serving.Known(toks[i].Text) || serving.StepVerbs[toks[from].Text] || serving.Known(toks[from].Text) {
		return false
	}
	return servedOnly(upToMark(toks[i:]))
}

// spirits are those that bars order with what lengthens them, by both names: "gin tonic".
var spirits = token.Words(`gin vodka rum whisky whiskey bourbon rye scotch irish tequila mezcal brandy cognac pisco cachaça cachaca`)

// gapped reports whether a cell starts at i of a line whose cells hold a name and its amount
// each, or behind one that does.
func gapped(toks []token.Token, i, from int) bool {
	if endsAmount(toks, i, from) {
		return !entry.IsUnit(&toks[i])
	}
	cells := 0
	for k := i; k < len(toks); k++ {
		if k > i && !Wide(toks, k) || toks[k].Kind != token.Word {
			continue
		}
		end := k + 1
		for end < len(toks) && !Wide(toks, end) {
			end++
		}
		if last := &toks[end-1]; end > k+1 && (last.Kind == token.Numeral || last.Kind == token.Word && entry.IsUnit(last) && toks[end-2].Kind == token.Numeral) {
			cells++
		}
	}
	return cells > 1
}
