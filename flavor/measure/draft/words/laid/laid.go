package laid

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// fruits are what bars write after the service for the peel or the slice of them; common practice.
var fruits = vocabulary.Words(`lemon lime orange grapefruit pineapple cucumber apple nutmeg celery anise clove cloves cinnamon arancia limone naranja limón zitrone limette citron sitron appelsin apelsin lem org orng gf cuke toronja pomelo pepino gurke minze piña manzana menta fruit fruits berries`)

// Ends reports whether words end in what is laid on a drink.
func Ends(toks []token.Token) bool {
	last := &toks[len(toks)-1]
	return last.Kind == token.Word && (Noun(last.Text) || fruits.Has(last.Text))
}

// halves are laid on a drink by the half, cut side up; common practice.
var halves = vocabulary.Words(`passionfruit passion maracuja maracuyá fig physalis`)

// halved are other fruits of which half a one lies on a drink, where a bar says so: common practice.
var halved = vocabulary.Words(`fruit lemon lime orange strawberry apricot plum peach cherry date kumquat lychee tomato olive egg`)

// Halved reports whether half of what a word names lies on a drink where a bar says that it is on top.
func Halved(w string) bool { return halves.Has(w) || halved.Has(w) }

// herbs are leaves that are as often mixed in as laid on a drink.
var herbs = vocabulary.Words(`mint basil sage thyme rosemary dill cilantro coriander tarragon shiso parsley verbena marjoram oregano lovage chervil
minze basilikum salbei thymian rosmarin menta basilico salvia timo rosmarino albahaca hierbabuena romero tomillo menthe basilic sauge thym romarin hortelã manjericão alecrim munt mynte mynta basilika`)

// loosely are words before a herb that say that there is much of it, or some.
var loosely = vocabulary.Words(`lots lot plenty loads some of a bit fresh`)

// Loosely returns toks without the words before a herb that say that there is much of it, or some.
func Loosely(toks []token.Token) []token.Token {
	for len(toks) > 1 && loosely.Has(toks[0].Text) {
		toks = toks[1:]
	}
	return toks
}

// HerbAlone reports whether words name a fresh herb and nothing else, "basil", "lots of mint".
func HerbAlone(toks []token.Token) bool {
	toks = Loosely(toks)
	return len(toks) == 1 && toks[0].Kind == token.Word && herbs.Has(toks[0].Text)
}

// Served returns where, after the service, what is laid on the drink begins,
// as in "stir up cherry" or "shake up 3 beans"; 0 if nothing does.
func Served(toks []token.Token) int {
	if n := len(toks); n > 2 && toks[n-2].Text == "on" && (toks[n-1].Text == "top" || toks[n-1].Text == "pick" || toks[n-1].Text == "it") { // "nutmeg on top"
		toks = toks[:n-2]
	}
	if len(toks) < 2 || !Ends(toks) || serving.MixedWith(toks) > 0 {
		return 0
	}
	cut := len(toks)
	for cut > 0 && saysNothing(&toks[cut-1]) {
		cut--
	}
	if cut == 0 || cut == len(toks) || token.Joins[toks[cut-1].Text] || fills.Has(toks[cut-1].Text) {
		return 0
	}
	s := serving.Read(toks[:cut])
	if s.Service == "" && s.Glass == "" && (s.Method != flavor.Shake && s.Method != flavor.Stir) || len(s.Unknown) > 0 {
		return 0
	}
	return cut
}

// fills stand before what fills a glass or floats on it: "tall ice fill cola lime".
var fills = vocabulary.Words(`fill top topped float`)

// saysNothing reports whether a token says nothing of method, service or glass.
func saysNothing(t *token.Token) bool {
	if t.Kind == token.Numeral {
		return true
	}
	if t.Kind != token.Word || serving.Fillers[t.Text] || serving.StepVerbs[t.Text] || serving.OtherMeasures[t.Text] || serving.DegreeWords[t.Text] {
		return false
	}
	_, n := serving.TermAt([]string{t.Text})
	_, unit := measure.ParseUnit(t.Text)
	return n == 0 && (!unit || nouns.Has(t.Text))
}

// LastWord returns the last word of a name but for what stands in brackets
// behind it, or says what is done to it: "lemon peel (discard)", "nutmeg grated".
func LastWord(toks []token.Token) string {
	last := len(toks) - 1
	if toks[last].Is(")") {
		if open := token.Opening(toks); open > 0 {
			last = open - 1
		}
	}
	if at := slices.IndexFunc(toks[:last], func(t token.Token) bool { return remarkWords.Has(t.Text) }); at > 0 && !slices.ContainsFunc(toks[at:], func(t token.Token) bool { return t.Kind == token.Numeral }) {
		last = at - 1 // "lemon slice with cloves"
	}
	for last > 0 && (doneTo.Has(toks[last].Text) || toks[last].Kind == token.Mark) {
		last--
	}
	return toks[last].Text
}

// doneTo are words behind a garnish that say what is done to it.
var doneTo = vocabulary.Words(`discard discarded expressed flamed grated spanked slapped torched burnt charred dehydrated optional over skewered speared`)

// remarkWords begin what is told of a garnish: "lemon slice with cloves", "mint sprig if
// there is any".
var remarkWords = vocabulary.Words(`with w if when unless please pls`)
