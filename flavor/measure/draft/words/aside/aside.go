// Package aside tells what a draft says beside its pours, to colleagues: what a drink costs,
// what stock to order, what it comes to, how the last one was, and what it has none of.
package aside

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// marginWords stand before the share of a price that a bar keeps.
var marginWords = vocabulary.Words(`gp margin markup`)

// Price returns the tokens of the price whose sign, number or word stands at i, 0 and 0
// if none does.
func Price(toks []token.Token, i int) (from, to int) {
	t := &toks[i]
	numeral := func(k int) bool { return k >= 0 && k < len(toks) && toks[k].Kind == token.Numeral }
	switch {
	case money(t) && numeral(i+1):
		from, to = i, i+2
		if i > 0 && t.Glued && toks[i-1].Kind == token.Word && toks[i-1].End-toks[i-1].Start <= 3 { // "HK$118"
			from--
		}
		return from, to
	case money(t) && numeral(i-1):
		return i - 1, i + 1
	case (marginWords.Has(t.Text) || costWords.Has(t.Text) && alone(toks, i, 2)) && i+1 < len(toks) && (toks[i+1].Kind == token.Percent || numeral(i+1)):
		return i, i + 2
	case i > 0 && toks[i-1].Text == "total" && costWords.Has(t.Text) && alone(toks, i-1, 3) && numeral(i+1): // "total cost 1.59"
		return i - 1, i + 2
	}
	return 0, 0
}

// priceAlone is an amount of money without its sign: "9,50".
var priceAlone = pattern.Of(`^\d{1,3}[.,]\d{2}[.]?$`)

// PriceAlone reports whether a stretch is what a drink costs, without a sign of money.
func PriceAlone(written string) bool { return priceAlone.MatchString(written) }

// alone reports whether so many tokens from i stand between signs.
func alone(toks []token.Token, i, many int) bool {
	return (i == 0 || toks[i-1].Kind == token.Mark) && (i+many >= len(toks) || toks[i+many].Kind == token.Mark)
}

// money reports whether a token is the sign of a currency.
func money(t *token.Token) bool {
	c, _ := utf8.DecodeRuneInString(t.Text)
	return t.Kind == token.Mark && unicode.Is(unicode.Sc, c)
}

// What speaks of stock, of what the whole comes to, or of how a drink was, as sentences
// of their own do.
var (
	stockUnits = vocabulary.Words(`bottle bottles btl btls case cases keg kegs crate crates box boxes pax guests covers heads ppl people`)
	stockWords = vocabulary.Words(`order need needs make makes it so stock buy par left total pls please for have enough about roughly`)
	wholeWords = vocabulary.Words(`total totals volume yield wet washline dilution`)
	costWords  = vocabulary.Words(`cost costs costing price priced sell sells charge charged`)
	conditions = vocabulary.Words(`if when once until unless after`)
	// opinionBegins begin what somebody thought: "25 lemon (30 was too sour)" is a pour.
	opinionBegins = vocabulary.Words(`the it that this last was i we they a my yesterday`)
	articles      = vocabulary.Words(`the all our that those these`)
	pastWords     = vocabulary.Words(`was were had used`)
	tastedAs      = vocabulary.Words(`is was are were tastes tasted seems feels comes came be it's`)
	tastedWords   = vocabulary.Words(`sweet sour strong weak dry bitter thin hot cold long short boozy sharp tart flat watery much little big`)
)

// Costs reports whether a word says that what follows is a price.
func Costs(w string) bool { return costWords.Has(w) }

// Commentary reports whether a sentence holds numbers and pours nothing: "so 14 bottles
// of fizz pls", "total 90 ml before dilution", "the 2 was too sweet".
func Commentary(toks []token.Token) bool {
	if opensCommentary(toks) {
		return true
	}
	stock, ordered, whole, after := false, false, false, false
	for i := range toks {
		w := toks[i].Text
		if countsThem(toks, i) || sinceYear(toks, i) || w == "too" && i > 0 && tastedAt(toks, i) {
			return true
		}
		stock = stock || i > 0 && toks[i-1].Kind == token.Numeral && stockUnits.Has(w)
		ordered = ordered || stockWords.Has(w)
		whole = whole || i < 2 && wholeWords.Has(w)
		after = after || w == "dilution"
	}
	return stock && ordered || whole && after
}

// opensCommentary reports whether the first words of a sentence tell that it pours nothing.
func opensCommentary(toks []token.Token) bool {
	if len(toks) < 2 {
		return false
	}
	first, second := &toks[0], &toks[1]
	switch {
	case costWords.Has(first.Text) && second.Kind == token.Numeral: // "costs 2.10 a pop"
	case first.Kind == token.Numeral && conditions.Has(second.Text): // "86 if we run out"
	case len(toks) > 2 && first.Text == "86" && articles.Has(second.Text): // "86 the crisps": there are none left
	case opinionBegins.Has(first.Text) && pastWords.Has(second.Text): // "we were at 2 oz"
	default:
		return false
	}
	return true
}

// countsThem reports whether a number of the drinks themselves ends at i: "sold 20 of these".
func countsThem(toks []token.Token, i int) bool {
	w := toks[i].Text
	return (w == "these" || w == "them" || w == "those") && i > 1 && toks[i-1].Text == "of" && toks[i-2].Kind == token.Numeral
}

// sinceYear reports whether a year stands at i: "since '81".
func sinceYear(toks []token.Token, i int) bool {
	return toks[i].Kind == token.Numeral && i > 1 && !toks[i-1].Glued && toks[i-1].Is("'") && toks[i-2].Text == "since"
}

// tastedAt reports whether the "too" at i, above zero, says how something tasted: "the 2 was too
// sweet".
func tastedAt(toks []token.Token, i int) bool {
	if i+1 >= len(toks) || !tastedWords.Has(toks[i+1].Text) {
		return false
	}
	if opinionBegins.Has(toks[0].Text) && toks[i-1].Kind == token.Word {
		return true
	}
	return tastedAs.Has(toks[i-1].Text) && !slices.ContainsFunc(toks[:i], func(t token.Token) bool { return t.Kind == token.Mark })
}

// SentenceEnd returns where the sentence ends that starts at from, its stop included.
func SentenceEnd(toks []token.Token, from int) int {
	for i := from; i < len(toks); i++ {
		if t := &toks[i]; (t.Is(".") || t.Is("!") || t.Is("?") || t.Is(",") && Commentary(toks[i+1:])) && (i+1 == len(toks) || !toks[i+1].Glued) {
			return i + 1
		}
	}
	return len(toks)
}

// noneWords stand behind a label of which the drink has nothing.
var noneWords = vocabulary.Words(`none nothing nil na nada keine kein niente rien`)

// mostNone is the most tokens of such a line.
const mostNone = 6

// None reports whether a line says that there is none of something: "Top: none".
func None(toks []token.Token) bool {
	n := len(toks)
	return n > 2 && n <= mostNone && noneWords.Has(toks[n-1].Text) && toks[n-2].Kind == token.Mark && !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral })
}

var (
	// factUnits say what a figure of a card is that pours nothing, and factWords stand beside it.
	factUnits = vocabulary.Words(`abv alc vol kcal cal cals calories kj units gp margin`)
	factWords = vocabulary.Words(`approx approximately about around ca circa c est final total by volume in the glass served alcohol strength energy per serve drink of roughly is`)
)

// Facts reports whether a line states how strong the drink is, what it feeds or what it earns, and
// nothing else: "ABV ~12%", "180 kcal | 2.1 units".
func Facts(toks []token.Token) bool {
	figure, unit := false, false
	for i := range toks {
		t := &toks[i]
		switch {
		case t.Kind == token.Numeral, t.Kind == token.Percent:
			figure = true
		case factUnits.Has(t.Text):
			unit = true
		case t.Kind != token.Mark && !factWords.Has(t.Text):
			return false
		}
	}
	return figure && unit
}

var (
	// opinions begin what somebody thinks of a drink: "needs acid", and "bit of sugar" is a pour.
	opinions = vocabulary.Words(`needs need too bit cheers thanks maybe tasty`)
	// speechWords begin what is said to somebody: no pour begins with one.
	speechWords = vocabulary.Words(`if don't dont trust tell ask remember careful we we'll we've i'll i'd they you he she`)
	// praise says how a drink was, in a word of its own: "better!!".
	praise = vocabulary.Words(`better best nice great good delicious yum yummy lovely love solid banger winner works approved done final keeper wow yes ok okay meh`)
)

// Said reports whether words without an amount are an opinion, praise, or said to somebody.
func Said(toks []token.Token) bool {
	if !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind != token.Mark && !praise.Has(t.Text) }) {
		return true
	}
	if len(toks) < 2 || slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral }) {
		return false
	}
	return speechWords.Has(toks[0].Text) || opinions.Has(toks[0].Text) && !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Text == "of" })
}

// sentenceWords are words of sentences: who lists what is poured uses none of them.
var sentenceWords = vocabulary.Words(`i we you they he she i'm we've we're it's that's there's isn't don't dont can't if so because too please pls but when while until was is are were has have had should would let's
wants wanted likes liked asks asked says said prefers somebody someone everybody everyone nobody people ppl keeps request requests`)

// Spoken reports whether words hold one that only sentences do.
func Spoken(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return sentenceWords.Has(strings.Trim(strings.ToLower(w), ",;.!?")) })
}

// leave ends words that say what is allowed: "kids ok".
var leave = vocabulary.Words(`ok okay`)

// Allows reports whether words end in what gives leave.
func Allows(words []string) bool {
	return len(words) > 1 && leave.Has(words[len(words)-1])
}

// Multiplies reports whether a number stands with the sign of a multiple, and before nothing
// that is poured: "x10", "2x".
func Multiplies(toks []token.Token, i int) bool {
	times := func(k int) bool { return toks[k].Text == "x" || toks[k].Text == "×" }
	ends := func(k int) bool { return k == len(toks) || toks[k].Kind == token.Mark }
	return i > 0 && times(i-1) && toks[i].Glued && ends(i+1) || i+1 < len(toks) && times(i+1) && toks[i+1].Glued && ends(i+2)
}
