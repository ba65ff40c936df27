package correcting

import (
	"slices"
	"strings"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

var (
	// leads begin what is said, and say nothing by themselves.
	leads = vocabulary.Words(`ok okay so and but then yeah yes yep well hm um uh er like let's lets just please pls oh ah right though tho`)
	// signals say that what stands before them does not count.
	signals = vocabulary.Words(`no nope nah naah wait hmm hmmm actually sorry oops rather scratch strike correction edit hang on that`)
	// sure are those of them that are never said of anything else.
	sure = vocabulary.Words(`no nope nah naah wait hmm hmmm actually sorry oops correction edit`)
	// denies is a word that denies what stands right behind it.
	denies = vocabulary.Words(`no nope nah naah not never without`)
)

// phrases parts lines into words, the longest line first.
func phrases(text string) [][]string {
	var out [][]string
	for line := range strings.SplitSeq(text, "\n") {
		out = append(out, strings.Fields(line))
	}
	slices.SortStableFunc(out, func(a, b []string) int { return len(b) - len(a) })
	return out
}

var (
	// sets stand before the amount that counts, and settled behind it.
	sets = phrases("go with\ngo for\ngo\nmake it\nmake that\ncall it\ncall that\nuse\nsay\ni mean\ni meant\nshould be\nmust be\nit's\nits\nit is\nthat's\nthat is\nlet's do\nlet's say\nlet's go\nscratch that\nscratch that make it\nno make it")
	// settled say behind an amount that it counts.
	settled = phrases("now\ninstead\nthen\nis better\nwas better\nworks better\ntastes better\nis nicer\nis plenty\nis enough\nis right\nis fine\nis good\nis correct\nis perfect\nwas perfect\nwill do\nis the spec\ni mean\ni meant\nrather\nfrom now on\nthese days")
	// rejected say behind an amount that it does not count.
	rejected = vocabulary.Words(`was were is tastes tasted felt feels seems seemed came made makes`)
	// before say the same before one.
	before = vocabulary.Words(`not was were from instead`)
	// resets begin what sets the amount of something named: "make the vodka 40".
	resets = vocabulary.Words(`make bump bring cut drop push raise lower take knock pull put up`)
	ways   = vocabulary.Words(`down up back to at`)
	theirs = vocabulary.Words(`the that this your my our of`)
	// same say that the amount stays.
	same = phrases("same amount\nsame again\nsame measure\nsame pour\nsame volume\nsame\nlikewise\nstill the same")
	// pronouns speak of the pour before.
	pronouns = vocabulary.Words(`it that this`)
	// tells are words of a sentence on how something was.
	tells = vocabulary.Words(`was were is tastes tasted felt feels seems seemed too way made makes drowned killed`)
)

// beginsWith returns how many tokens are the first phrase of a list that they begin with, 0 if none.
func beginsWith(toks []token.Token, list [][]string) int {
	for _, p := range list {
		if len(p) <= len(toks) && slices.EqualFunc(p, toks[:len(p)], func(w string, t token.Token) bool { return t.Text == w }) {
			return len(p)
		}
	}
	return 0
}

// endsIn returns how many tokens are the first phrase of a list that they end in, 0 if none.
func endsIn(toks []token.Token, list [][]string) int {
	for _, p := range list {
		if n := len(toks) - len(p); n >= 0 && beginsWith(toks[n:], [][]string{p}) > 0 {
			return len(p)
		}
	}
	return 0
}

// is reports whether tokens are exactly one of some phrases.
func is(toks []token.Token, list [][]string) bool {
	n := beginsWith(toks, list)
	return n > 0 && n == len(toks)
}

// factors are what doubles or halves a pour.
var factors = map[string]float64{"double": 2, "doubled": 2, "twice": 2, "triple": 3, "half": 0.5, "halve": 0.5, "halved": 0.5}

// removals take a whole pour out; what they take out stands where the star is.
var removals = phrases("took * out\ntook * out again\ntaken * out\ntake * out\npulled * out\ncut * out\nleft * out\nleft * out in the end\ntook out *\npulled out *\nleft out *\nscratch *\nscrap *\nscrapped *\nditch *\nditched *\nremoved *\nremove *")

// degrees are words for how much too much something was.
var degrees = vocabulary.Words(`a bit little tad touch much too way`)

// thinks are words with which a comment would say more than how something was.
var thinks = vocabulary.Words(`if unless or until except without skip add instead back again next maybe try`)
