package parting

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// The rules for a word that may begin an entry, in the order in which they are asked.

// weighsParts reports whether "to" stands between the parts of two things.
func (p *place) weighsParts() bool {
	return p.t.Text == "to" && p.next.Kind != token.Mark && partsFrom(p.behindNext()) && p.behindPour()
}

// partsFrom reports whether tokens start with a number of parts.
func partsFrom(toks []token.Token) bool {
	return len(toks) > 2 && (toks[0].Kind == token.Numeral || token.NumberWords[toks[0].Text] > 0) && (toks[1].Text == "part" || toks[1].Text == "parts")
}

// beginsGarnish reports whether a word behind a pour tells that what follows is laid on the drink.
func (p *place) beginsGarnish() bool {
	return garnishBegins.Has(p.t.Text) && p.next.Kind != token.Mark &&
		p.before.Kind == token.Word && !token.Joins[p.before.Text] && p.before.Text != "as" && p.behindPour()
}

// garnishBegins are words that begin a garnish behind the pours of a line.
var garnishBegins = vocabulary.Words(`garnish garnished express expressed candied`)

// beginsEgg reports whether a part of an egg follows a pour, without a number.
func (p *place) beginsEgg() bool {
	if p.t.Text != "egg" || p.next.Text != "white" && p.next.Text != "yolk" && p.next.Text != "wht" {
		return false
	}
	return p.endsName() && !eggKinds.Has(p.before.Text) && p.behindPour()
}

// eggKinds say which egg it is.
var eggKinds = vocabulary.Words(`carton bottled frozen dehydrated dried pasteurised pasteurized fresh whole liquid powdered large medium small organic raw beaten free-range ea each one half chicken hen hens`)

// beginsTop reports whether a pour is followed by what the drink is topped with, and "top" is
// neither a shelf nor a word of service.
func (p *place) beginsTop() bool {
	return p.t.Text == "top" && p.next.Kind == token.Word && p.next.Text != "shelf" &&
		(!serving.Starts(p.behindNext()) || entry.Lengtheners[p.next.Text]) && p.behindPour()
}

// gapEndsPour reports whether a wide gap follows a pour.
func (p *place) gapEndsPour() bool {
	return Wide(p.toks, p.i) && p.before.Kind != token.Mark && p.behindPour()
}

// gapEndsCell reports whether a wide gap parts cells that hold a name and its amount each.
func (p *place) gapEndsCell() bool {
	return Wide(p.toks, p.i) && p.before.Kind != token.Mark && gapped(p.toks, p.i, p.from)
}

// fillsBehindService reports whether what fills the glass follows how the drink is served.
func (p *place) fillsBehindService() bool {
	return toppingAt(p.toks, p.i) && servedOnly(p.entry())
}

// topsBehindOrders reports whether what fills the glass follows how the drink is mixed.
func (p *place) topsBehindOrders() bool {
	return topsFrom(p.toks, p.i) && serving.Starts(p.toks[p.from:]) && mixes(p.entry())
}

// leavesOut reports whether what is left out follows a pour, or how the drink is made.
func (p *place) leavesOut() bool {
	return leftOutAt(p.toks, p.i) && (p.behindPour() || mixes(p.entry()) || servedOnly(p.entry()))
}

// whites are words for the white of an egg, which are poured one at a time without a number.
var whites = vocabulary.Words(`ew eggwhite eggwht`)

// eggEnds reports whether an egg without an amount ends before the place, and what follows up to
// the next sign says how the drink is made.
func (p *place) eggEnds() bool {
	first := p.toks[p.from].Text
	one := p.i == p.from+1 && whites.Has(first)
	two := p.i == p.from+2 && first == "egg" && strings.HasPrefix(p.before.Text, "wh")
	return (one || two) && serving.Known(p.t.Text) && servedOnly(p.ahead())
}

// pouredUncounted reports whether a pour is followed by what nobody counts: the white of an egg in
// one word, or nutmeg at the end, "15 sugar nutmeg".
func (p *place) pouredUncounted() bool {
	last := p.next.Kind == token.Mark || p.i+1 == len(p.toks)
	nutmeg := p.t.Text == "nutmeg" && last && !ground.Has(p.before.Text)
	return (nutmeg || whites.Has(p.t.Text)) && p.endsName() && p.behindPour()
}

// ground say how a spice is cut, and begin its name.
var ground = vocabulary.Words(`ground grated fresh freshly whole powdered dried`)

// laidBehindTop reports whether the place stands behind what tops the drink, and before what is
// laid on it.
func (p *place) laidBehindTop() bool {
	return p.i > p.from+1 && pouring.Verbs[p.toks[p.from].Text] == flavor.Top && lengthAt(p.toks[p.from+1:]) == p.i-p.from-1 && laidOnly(p.ahead())
}

// leastBracketed is the fewest tokens of a name and an amount in brackets behind it, without its unit.
const leastBracketed = 4

// behindBracket reports whether the entry is a name with its amount in brackets behind it.
func (p *place) behindBracket() bool {
	return p.i >= p.from+leastBracketed && p.before.Is(")") && !p.startsAmount() && amountCloses(p.entry())
}

// soaksIn reports whether what something is soaked in follows.
func (p *place) soaksIn() bool {
	return soakedIn.Has(p.t.Text) && (p.next.Text == "in" || p.next.Text == "with") && p.i+2 < len(p.toks)
}

var soakedIn = vocabulary.Words(`soaked doused drenched dashed`)

// mixesWith reports whether "with" stands between how to mix and what is counted into the shaker.
func (p *place) mixesWith() bool {
	return p.t.Text == "with" && p.next.Kind == token.Numeral && p.next.Wrong == "" && counts(p.toks, p.i+1) && mixes(p.entry())
}

// beginsFloat reports whether a pour is followed by one with a verb and no amount.
func (p *place) beginsFloat() bool {
	if pouring.Verbs[p.t.Text] == "" {
		return false
	}
	with := p.next.Text == "with" || p.next.Text == "up" || p.next.Text == "off"
	return (with || entry.Lengtheners[p.next.Text]) && p.behindPour()
}

// endsUnsigned reports whether an entry ends here without a sign: amounts behind their names, what
// fills the glass, dresses the rim, seasons the drink or is laid on it.
func (p *place) endsUnsigned() bool {
	toks, i, from := p.toks, p.i, p.from
	if i > from+1 && (p.amountsLast() || toppedFrom(toks, i, from) || madeFrom(toks, i, from) || followsAmount(toks, i, from) || seasonedFrom(toks, i, from)) {
		return true
	}
	return rimFrom(toks, i, from) || lengthEnds(toks, i, from) || laidEnds(toks, i, from)
}

// conjunctions go on with another entry, or with the name of this one.
var conjunctions = vocabulary.Words(`and then n`)

// atConjunction is Separator for a word that goes on with another entry if an amount follows it, or
// how the drink is made.
func (p *place) atConjunction() (string, int) {
	if p.endsMeasured() && p.next.Kind == token.Word && !p.startsAmount() && Named(p.entry()) {
		return "and", 1 // "brandy 40 ml and ginger ale, top"
	}
	n := fillersAt(p.behindNext())
	if amount := tokenAt(p.toks, p.i+1+n); n > 0 && amount.Kind == token.Numeral && amount.Wrong == "" {
		return "and", 1 + n // "and then 15 of the syrup"
	}
	switch {
	case p.next.Kind == token.Numeral && p.next.Wrong == "":
		return "and", 1 // "2 gin and 1 lime"
	case p.next.Kind == token.Word && p.goesOn():
		return "and", 1 // "2 gin then shake"
	}
	return "", 0
}

// endsMeasured reports whether the entry ends with an amount, and holds more than that.
func (p *place) endsMeasured() bool {
	if p.i <= p.from+1 {
		return false
	}
	return p.before.Kind == token.Numeral || p.toks[p.i-2].Kind == token.Numeral && entry.IsUnit(p.before)
}

// goesOn reports whether a step follows the next word, or behind a pour another pour.
func (p *place) goesOn() bool {
	if serving.StepVerbs[p.next.Text] || serving.StartsMethod(p.behindNext()) {
		return true
	}
	return entry.StartsMeasure(p.behindNext()) && p.startsAmount() && Named(p.entry())
}

// fillersAt returns how many words are said between "and" and an amount.
func fillersAt(toks []token.Token) int {
	n := 0
	for n < len(toks) && toks[n].Kind == token.Word && fillers.Has(toks[n].Text) {
		n++
	}
	return n
}

var fillers = vocabulary.Words(`then also like maybe about around plus just another um uh`)

// addsMeasure reports whether "with" or "to" stands between two pours, and the second is not ice.
func (p *place) addsMeasure() bool {
	if p.t.Text != "with" && p.t.Text != "to" || p.i <= p.from+1 || !entry.StartsMeasure(p.behindNext()) {
		return false
	}
	added := upToMark(p.behindNext())
	return Named(added) && !serving.IceOnly(added) && entry.StartsAmount(poured(p.toks[p.from:])) && Named(p.entry())
}

// poured returns an entry without the verb that it begins with: "add 2 oz rum".
func poured(toks []token.Token) []token.Token {
	for len(toks) > 1 && toks[0].Kind == token.Word && entry.PouringVerb(toks[0].Text) {
		toks = toks[1:]
	}
	return toks
}

// measuredInWords reports whether an amount in words and its unit begin another pour.
func (p *place) measuredInWords() bool {
	return p.endsName() && p.behindPour() && !speech.Article(p.before.Text) && entry.StartsMeasure(p.toks[p.i:])
}
