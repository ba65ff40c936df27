package parting

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// amountsLast reports whether a new pour starts at a word of a line that writes its
// amounts after the names, as in "gin 45 ml lemon 20 ml".
func (p *place) amountsLast() bool {
	if p.startsAmount() || serving.StepVerbs[p.toks[p.from].Text] || entry.IsUnit(p.t) && p.before.Kind == token.Numeral || token.Joins[p.t.Text] {
		return false
	}
	if !endsMeasured(p.toks[:p.i]) {
		return false
	}
	end := p.lastOf()
	last := &p.toks[end-1]
	measured := Measured(last) && p.toks[end-2].Kind == token.Numeral
	if last.Kind == token.Word && end == len(p.toks) && !measured {
		return p.endsWithoutAmount()
	}
	return end > p.i+1 && (last.Kind == token.Numeral || measured)
}

// lastOf returns where the pours end that begin at the place and have their amounts last, without
// what is done with the last: "cucumber 4 slices muddled".
func (p *place) lastOf() int {
	end := p.i
	for end < len(p.toks) && p.toks[end].Kind != token.Mark && !(end > p.i+1 && madeFrom(p.toks, end, p.from)) {
		end++
	}
	if n, t := pouring.TailAt(p.toks[p.i:end]); n > 0 && p.i+n+1 < end && !t.Garnish && endsMeasured(p.toks[:end-n]) {
		end -= n
	}
	return end
}

// endsWithoutAmount reports whether the words that begin at the place and end the line are other
// entries, the last of which has no amount: "soda 100 thyme sprig".
func (p *place) endsWithoutAmount() bool {
	rest := p.toks[p.i:]
	amounts := 0
	for k := range rest[1:] {
		if rest[1+k].Kind == token.Numeral {
			amounts++
		}
	}
	switch {
	case amounts > 1:
		return true
	case amounts == 1:
		return p.from > 0 || topsLast(rest) // "lime .5 ginger beer top copper mug"
	}
	return p.from > 0 && (laid.Ends(rest) || topsLast(rest))
}

// topsLast reports whether words behind the last number tell what tops the drink.
func topsLast(toks []token.Token) bool {
	for i := len(toks) - 1; i >= 0 && toks[i].Kind == token.Word; i-- {
		if toks[i].Text == "top" && i > 1 && toks[i-1].Kind == token.Word {
			return true
		}
	}
	return false
}

// endsMeasured reports whether tokens end with a number, or a number and its unit.
func endsMeasured(toks []token.Token) bool {
	n := len(toks)
	return n > 1 && (toks[n-1].Kind == token.Numeral || Measured(&toks[n-1]) && toks[n-2].Kind == token.Numeral)
}

// madeFrom reports whether an amount behind its name ends before i and a method
// follows: "sugar 15 shake".
func madeFrom(toks []token.Token, i, from int) bool {
	amount := toks[i-1].Kind == token.Numeral || Measured(&toks[i-1]) && i > 1 && toks[i-2].Kind == token.Numeral
	return amount && toks[i].Kind == token.Word && serving.StartsMethod(toks[i:]) && !entry.StartsAmount(toks[from:])
}

// toppedFrom reports whether what follows a pour without a sign is what the drink is
// topped with: "1 oz simple cola top".
func toppedFrom(toks []token.Token, i, from int) bool {
	end := i
	for end < len(toks) && toks[end].Kind == token.Word {
		end++
	}
	for end > i+1 && serving.Known(toks[end-1].Text) && pouring.Verbs[toks[end-1].Text] == "" { // "soda top tall"
		end--
	}
	n, t := pouring.TailAt(toks[i:end])
	started := entry.StartsAmount(toks[from:]) || toks[from].Text == "pinch"
	if t.Unit == flavor.Rinse && n+1 == end-i && toks[i-1].Kind == token.Word && !entry.IsUnit(&toks[i-1]) && entry.StartsAmount(toks[from:]) && Named(toks[from:i]) {
		return true // "20 lemon absinthe rinse"
	}
	if t.Unit != flavor.Top || n == end-i || !started || !Named(toks[from:i]) {
		return false
	}
	words := make([]string, 0, 2)
	for k := i; k < end-n; k++ {
		words = append(words, toks[k].Text)
	}
	return entry.Lengtheners[strings.Join(words, " ")]
}

// Measured reports whether a token is a unit or another measure.
func Measured(t *token.Token) bool {
	_, other := gauge.Measures[t.Text]
	return entry.IsUnit(t) || t.Kind == token.Word && other
}

// rimWords stand before "rim" and say what it is dressed with.
var rimWords = vocabulary.Words(`fine coarse salt sugar half salted sugared smoked sea kosher flaky celery chilli chili chile spiced spicy cocoa cinnamon pink black caster chocolate coconut full sweet side`)

// DressesRim reports whether a word stands before "rim" and says what it is dressed with.
func DressesRim(w string) bool { return rimWords.Has(w) }

// rimFrom reports whether what follows a pour without a sign is its rim, or follows
// a rim: "1/2 oz lime salt rim highball".
func rimFrom(toks []token.Token, i, from int) bool {
	if i < from+2 || !entry.StartsAmount(toks[from:]) && toks[i-1].Text != "rim" {
		return false
	}
	if toks[i-1].Text == "rim" {
		return serving.Known(toks[i].Text)
	}
	if !rimWords.Has(toks[i].Text) || rimWords.Has(toks[i-1].Text) || !Named(toks[from:i]) {
		return false
	}
	for ; i < len(toks) && rimWords.Has(toks[i].Text); i++ {
	}
	return i < len(toks) && (toks[i].Text == "rim" || toks[i].Text == "rimmed")
}

// plainMethods may end a pour alone: other words for methods end names, as in "rum
// blend".
var plainMethods = vocabulary.Words(`shake shaken shk stir stirred`)

// servedFrom reports whether what follows a pour without a sign says how the drink
// is made or served, up to the next sign: "3/4 oz simple syrup shake up". In a line
// of several pours it may say the service alone: "2 gin 1 lemon .75 simple rocks".
func servedFrom(toks []token.Token, i, from int) bool {
	switch {
	case iceEnds(toks, i, from):
		return true // "1 scoop ice blend"
	case i > from+1 && toks[i-2].Kind == token.Numeral && serving.DegreeWords[toks[i-1].Text]:
		return false // "30 sec stir"
	case toks[i-1].Text == "sugar" && (toks[i].Text == "cubes" || toks[i].Text == "cube"):
		return false // which are no ice
	case i < from+2 || !serving.Known(toks[i].Text) || toks[i-1].Kind != token.Word || token.Joins[toks[i-1].Text] || phraseBefore(toks, i):
		return false
	case !Named(toks[from:i]) || !poursBefore(toks, i, from):
		return false
	}
	return saysService(toks, i, from)
}

// iceEnds reports whether an amount of ice ends before i, and a method follows.
func iceEnds(toks []token.Token, i, from int) bool {
	return toks[from].Kind == token.Numeral && i > from+1 && serving.StartsMethod(toks[i:]) && strings.HasPrefix(toks[i-1].Text, "ice") && entry.IceFollows(toks[from+1:i])
}

// poursBefore reports whether the entry before i pours something, or leaves something out.
func poursBefore(toks []token.Token, i, from int) bool {
	first := toks[from].Text
	if first == "top" || entry.LeavesOut(first) || entry.StartsAmount(toks[from:]) || entry.UnitWordsAt(toks[from:]) {
		return true
	}
	return toks[i-1].Text == "top" && entry.Lengtheners[first] && toks[i].Text != "up" // "soda top"
}

// saysService reports whether the words from i on say how the drink is made, or behind another
// entry how it is served, and nothing else but what is laid on it.
func saysService(toks []token.Token, i, from int) bool {
	end := i
	for end < len(toks) && (toks[end].Kind == token.Word || toks[end].Is("&")) && !(end > i && (topsFrom(toks, end) || leftOutAt(toks, end))) {
		end++
	}
	words := make([]string, 0, serving.LongestTerm)
	for k := i; k < min(end, i+serving.LongestTerm); k++ {
		words = append(words, toks[k].Text)
	}
	t, n := serving.TermAt(words)
	s := serving.Read(toks[i:end])
	switch {
	case n == 0 || s.Conflict != nil:
		return false
	case len(s.Unknown) > 0 && laid.Served(toks[i:end]) == 0:
		return false
	case end < len(toks) && toks[end].Kind == token.Numeral && laid.Served(toks[i:]) == 0:
		return false
	case t.Method != "":
		return s.Words > 1 && s.Words > n-1 || plainMethods.Has(toks[i].Text)
	}
	return from > 0 && (s.Method != "" || t.Service != "" && !t.Ice || t.Glass != "" || t.Service == flavor.Rocks)
}

// topsFrom reports whether what fills the glass follows at i: "top soda".
func topsFrom(toks []token.Token, i int) bool {
	return pouring.Verbs[toks[i].Text] == flavor.Top && i+1 < len(toks) && (entry.Lengtheners[toks[i+1].Text] || toks[i+1].Text == "with" || toks[i+1].Text == "up")
}

// leftOutAt reports whether what stands at i says that something is left out, and not only how
// the drink is served: "no salt", but not "no ice". What a bottle is made without is in its
// name: "bitters without alcohol", "Worcestershire-style sauce no fish".
func leftOutAt(toks []token.Token, i int) bool {
	if !entry.LeavesOut(toks[i].Text) || i+1 >= len(toks) || toks[i+1].Kind != token.Word || madeWithout.Has(toks[i+1].Text) || toks[i].Text == "without" {
		return false
	}
	_, n := serving.TermAt([]string{toks[i].Text, toks[i+1].Text})
	return n < 2
}

// madeWithout is what bottles are made and sold without; common practice, no source.
var madeWithout = vocabulary.Words(`alcohol abv fish nuts nut peanuts almond almonds sugar sugars dairy milk lactose gluten wheat soy tobacco caffeine sulphites sulfites preservatives colour color added`)

// phraseBefore reports whether the word at i goes on with a phrase that starts
// before it, as "shake" does in "dry shake".
func phraseBefore(toks []token.Token, i int) bool {
	_, n := serving.TermAt([]string{toks[i-1].Text, toks[i].Text})
	return n > 1
}

// dosedFrom reports whether a pour by the spoon or the dash, without a number, follows
// another without a sign: "1/2 maraschino bsp violette".
func dosedFrom(toks []token.Token, i, from int) bool {
	if i < from+2 || i+1 >= len(toks) || toks[i-1].Kind != token.Word || toks[i+1].Kind != token.Word || entry.IsUnit(&toks[i-1]) || token.Joins[toks[i-1].Text] || token.BiasWords[toks[i-1].Text] {
		return false
	}
	u, n := entry.UnitAt(toks[i:])
	return n == 1 && (u == flavor.Barspoon || u == flavor.Dash || u == flavor.Splash || u == flavor.Pinch) && toks[i].Text != "ds" && (!token.Joins[toks[i+1].Text] || toks[i+1].Text == "of" && i+2 < len(toks)) &&
		toks[from].Kind == token.Numeral && Named(toks[from:i])
}

// rimAhead reports whether a plus sign stands between two things that dress a rim:
// "salt + chilli rim".
func rimAhead(toks []token.Token, i, from int) bool {
	if i == from || !rimWords.Has(toks[i-1].Text) {
		return false
	}
	for i++; i < len(toks) && (rimWords.Has(toks[i].Text) || toks[i].Is("&") || toks[i].Is("+")); i++ {
	}
	return i < len(toks) && (toks[i].Text == "rim" || toks[i].Text == "rimmed")
}
