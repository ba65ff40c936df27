package laid

import (
	"strings"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// What is laid on a drink is as often told by a phrase as by "garnish": "three caperberries on a stick",
// "shaved choc", "a green cherry sunk", "basil leaf flat on top". Its words are common practice, no source.
var (
	// clipped are clippings of what is laid on a drink and poured as often, and words for what is laid
	// on one seldom.
	clipped = vocabulary.Words(`rasp raspb raspbs strawb strawbs blackb blackbs blueb bluebs
		cornichons chilli chillies grapes blueberry blueberries redcurrants redcurrant figs physalis kumquat kumquats pansy viola violas borage rosebud rosebuds
		marigold nasturtium cornflower parasol sparkler bunch`)
	// scrapes are laid on a drink only shaved, grated or the like.
	scrapes = vocabulary.Words(`choc chocolate coconut cinnamon nutmeg tonka ginger horseradish coffee cacao cocoa lemon lime orange grapefruit apple pear peach pineapple cucumber melon watermelon mango fennel
		carrot beetroot tomato plum corn`)
	// worked are what is done to it, before its name.
	worked = vocabulary.Words(`shaved grated microplaned dehydrated dried candied charred torched burnt burned crystallised crystallized sugared salted toasted roasted pickled brandied
		drunken flamed spanked slapped bruised skewered speared stuffed studded scorched grilled frosted fanned curled twisted sliced diced smoked`)
	// sized are what else stands before it.
	sized = vocabulary.Words(`a an the one two three half single lone little tiny small big large huge long thin thick fat wide whole fresh nice proper edible baby mini green red black white dark light pink purple yellow
		maraschino cocktail amarena griotte of some few couple pair tall curly lime lemon orange grapefruit cucumber apple mint basil thyme rosemary sage olive coffee bay`)
	// placed are where it lies, and how, behind its name.
	placed = vocabulary.Words(`on top over in into at the a an it its of stick pick skewer side rim edge glass lip foam ice cube block surface bottom sunk sunken dropped floated floating flat inside across beside atop through
		discard discarded expressed torched burnt flamed spanked slapped skewered speared optional please if ok too last just clipped perched pinned hung tucked standing upright`)
	// measured are words of nouns that measure as well, or deny.
	measured = vocabulary.Words(`none dust dusting dots pod oils`)
)

// mostPieces is the most pieces of one thing that are laid on a drink.
const mostPieces = 4

// Phrase reports whether words without a measure name a few of what is laid on a drink, with what is done
// to it and where it lies. A word that is known for something else is no slip of another.
func Phrase(toks []token.Token, known func(word string) bool) bool {
	i, done := 0, false
	for ; i < len(toks) && !done; i++ {
		switch t := &toks[i]; {
		case t.Kind == token.Numeral && i == 0 && t.Wrong == "" && t.Value <= mostPieces && (t.Value == float64(int(t.Value)) || t.Value == 0.5):
		case t.Kind != token.Word:
			return false
		case piece(toks, i, known):
			done = true
		case !worked.Has(t.Text) && !sized.Has(t.Text):
			return false
		}
	}
	for ; i < len(toks); i++ {
		if t := &toks[i]; t.Kind != token.Word || !placed.Has(t.Text) && !piece(toks, i, known) && !(fruits.Has(t.Text) && toks[i-1].Text == "of") { // "slice of lemon"
			return false
		}
	}
	return done
}

// piece reports whether the word at i is one for what is laid on a drink. A fruit alone is poured as often:
// it is laid on a drink where something is done to it.
func piece(toks []token.Token, i int, known func(string) bool) bool {
	w := toks[i].Text
	switch {
	case measured.Has(w):
		return false
	case nouns.Has(w) || clipped.Has(w):
		return true
	case scrapes.Has(w):
		return i > 0 && worked.Has(toks[i-1].Text) && (i+1 == len(toks) || !nouns.Has(toks[i+1].Text))
	}
	return len(w) >= leastSlipped && !known(w) && slipped(w)
}

// leastSlipped is the fewest letters of a word in which a slip is forgiven.
const leastSlipped = 5

// slipped reports whether a word is one letter off a word for what is laid on a drink.
func slipped(w string) bool {
	for n := range strings.FieldsSeq(nounWords) {
		if len(n) >= leastSlipped && measure.OneSlip(w, n) {
			return true
		}
	}
	return false
}
