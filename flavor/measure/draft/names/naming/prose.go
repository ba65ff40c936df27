package naming

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/lexicon"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// Words of prose that are nobody's name: what is nearly the name of an ingredient, or begins one, and is
// such a word, was meant as it stands. "1 tbsp per mug" pours no perry.

// joiningWords join others, point at them or ask for them: none of them is what is left of a name.
var joiningWords = token.Words(`per with from into onto over under above below about after before behind beside between by down up during except inside like near of off on out outside past since through till to toward towards until upon via within without
the this that these those mine yours your our his her hers its their them they it he she we you who what when where why how which whose
was were is are be been being had has have having not and but or nor so as at in for too also just only very quite rather then than now here there again almost
more less most least much many some any all both each every either neither few several other another own same such next last first new old one two
mix mixture blend batch base stuff thing things pinch bit lot rest`)

// prose reports whether every word of a name is a common one of English, or names a glass.
func prose(name string) bool {
	return everyWord(name, func(w string) bool { return lexicon.Of(w)&lexicon.Common != 0 })
}

// speltRight reports whether every word of a name is one of English that names nothing that is poured.
func speltRight(name string) bool {
	return everyWord(name, func(w string) bool { return lexicon.Of(w) != 0 || mixed[w] })
}

// mixed are drinks and mixes of the trade that no bottle holds, spelt right: "sangrita" is no slip of
// sangria. Common practice, no source.
var mixed = token.Words(`sangrita verdita michelada tepache`)

// everyWord reports whether each word of a name joins others, names a glass or is of a kind.
func everyWord(name string, of func(word string) bool) bool {
	words := strings.Fields(flavor.NormaliseName(name))
	for _, w := range words {
		if !joiningWords[w] && serving.Of(w).Glass == "" && !of(w) {
			return false
		}
	}
	return len(words) > 0
}
