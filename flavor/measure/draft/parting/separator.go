// Package parting tells where one line of a draft holds several entries: by the signs
// between them, and by the words that end one and begin the next.
package parting

import (
	"maps"
	"slices"
	"strings"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/speech"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/vocabulary"
)

// Separator returns what parts entries at toks[i], where the entry before it starts at
// from, and how many tokens it takes; empty if nothing does.
func Separator(toks []token.Token, i, from int) (string, int) {
	t := &toks[i]
	next := tokenAt(toks, i+1)
	if t.Kind != token.Mark && i > from && entry.Portioned(toks[from:]) {
		return "", 0
	}
	switch {
	case t.Kind == token.Numeral && i > 0 && next.Is(")") && next.Glued && i+2 < len(toks) && toks[i+2].Kind == token.Numeral && !toks[i+2].Glued:
		return ";", 2 // "1) 2 oz gin 2) 1 oz lemon"
	case t.Kind == token.Numeral && i > from && stepNumber(toks, i) && len(serving.Read(toks[from:i]).Unknown) == 0:
		return ";", 2 // "1. all in tin 2. shake hard"
	case t.Text == "to" && i > from+1 && next.Kind != token.Mark && partsFrom(toks[i+1:]) && Named(toks[from:i]) && entry.StartsAmount(toks[from:]):
		return "and", 1 // "two parts gin to one part lime cordial"
	case garnishBegins.Has(t.Text) && i > from+1 && toks[i-1].Kind == token.Word && next.Kind != token.Mark && !entry.Joins[toks[i-1].Text] && toks[i-1].Text != "as" && Named(toks[from:i]) && entry.StartsAmount(toks[from:]):
		return ";", 0
	case t.Text == "top" && i > from+1 && next.Kind == token.Word && next.Text != "shelf" && (!serving.Starts(toks[i+1:]) || entry.Lengtheners[next.Text]) && Named(toks[from:i]) && entry.StartsAmount(toks[from:]):
		return "and", 0
	case t.Text == "egg" && (next.Text == "white" || next.Text == "yolk" || next.Text == "wht") && i > from+1 && toks[i-1].Kind == token.Word && !entry.IsUnit(&toks[i-1]) && !entry.Joins[toks[i-1].Text] && !eggKinds.Has(toks[i-1].Text) && Named(toks[from:i]) && entry.StartsAmount(toks[from:]):
		return ";", 0 // "3/4 simple egg white"
	case Wide(toks, i) && i > from+1 && t.Kind != token.Mark && toks[i-1].Kind != token.Mark && Named(toks[from:i]) && entry.StartsAmount(toks[from:]):
		return ",", 0 // "1 lemon   absinthe rinse"
	case Wide(toks, i) && i > from && t.Kind == token.Word && toks[i-1].Kind != token.Mark && gapped(toks, i, from):
		return ",", 0 // "WHISKEY SOUR  NO EGG  BOURBON 2  LEMON 1"
	case i > from && toppingAt(toks, i) && servedOnly(toks[from:i]):
		return ";", 0 // "shake highball soda top"
	case i > from && topsFrom(toks, i) && serving.Starts(toks[from:]) && mixes(toks[from:i]):
		return ";", 0 // "shake collins top soda"
	case i > from && leftOutAt(toks, i) && (i > from+1 && Named(toks[from:i]) && entry.StartsAmount(toks[from:]) || mixes(toks[from:i]) || servedOnly(toks[from:i])):
		return ";", 0 // "3/4 simple no egg", "shake rocks no salt"
	case eggEnds(toks, i, from):
		return ";", 0 // "ew shake up"
	case (whites.Has(t.Text) || t.Text == "nutmeg" && !ground.Has(toks[i-1].Text) && (next.Kind == token.Mark || i+1 == len(toks))) && i > from+1 && toks[i-1].Kind == token.Word && !entry.IsUnit(&toks[i-1]) && !entry.Joins[toks[i-1].Text] && Named(toks[from:i]) && entry.StartsAmount(toks[from:]):
		return ";", 0 // "20 lemon ew", "15 sugar nutmeg"
	case t.Kind == token.Word && i > from+1 && toks[from].Text == "top" && lengthAt(toks[from+1:]) == i-from-1 && laidOnly(upToMark(toks[i:])):
		return ";", 0 // "top soda lime wedge"
	case t.Kind == token.Word && i > from+3 && toks[i-1].Is(")") && !entry.StartsAmount(toks[from:]) && amountCloses(toks[from:i]):
		return ";", 0 // "gin (50 ml) lemon (25 ml)"
	case t.Is("(") && i > from+1 && toks[from].Is("(") && amountInBrackets(toks[i:]):
		return ";", 0 // "(1 oz) gin (3/4 oz) lime"
	case soakedIn.Has(t.Text) && i > from && (next.Text == "in" || next.Text == "with") && i+2 < len(toks) && entry.StartsMeasure(toks[i+2:]):
		return ";", 2 // "sugar cube soaked with 3 dashes bitters"
	case t.Text == "with" && i > from && next.Kind == token.Numeral && next.Wrong == "" && counts(toks, i+1) && mixes(toks[from:i]):
		return With, 1 // "shake with 4 thyme sprigs"
	case soakedIn.Has(t.Text) && i > from && (next.Text == "in" || next.Text == "with") && i+2 < len(toks) && toks[i+2].Kind == token.Word:
		return Soaked, 2
	case t.Kind == token.Numeral && i > from:
		return beforeNumeral(toks, i, from), 0
	case t.Kind == token.Word && i > from+1 && entry.PourVerbs[t.Text] != "" && (next.Text == "with" || next.Text == "up" || next.Text == "off" || entry.Lengtheners[next.Text]) && Named(toks[from:i]) && entry.StartsAmount(toks[from:]):
		return "and", 0 // "45 scotch top w/ ginger ale"
	case t.Kind == token.Word && i > from+1 && (amountsLast(toks, i, from) || toppedFrom(toks, i, from) || madeFrom(toks, i, from) || followsAmount(toks, i, from) || seasonedFrom(toks, i, from)), t.Kind == token.Word && (rimFrom(toks, i, from) || i > from && (lengthEnds(toks, i, from) || laidEnds(toks, i, from))):
		return ";", 0
	case t.Kind == token.Word && (t.Text == "and" || t.Text == "then" || t.Text == "n") && i > from && !servedFrom(toks, i, from):
		if ended := toks[i-1].Kind == token.Numeral || i > from+1 && toks[i-2].Kind == token.Numeral && entry.IsUnit(&toks[i-1]); ended && i > from+1 && next.Kind == token.Word && !entry.StartsAmount(toks[from:]) && Named(toks[from:i]) {
			return "and", 1 // "brandy 40 ml and ginger ale, top"
		}
		if n := fillersAt(toks, i+1); n > 0 && i+1+n < len(toks) && toks[i+1+n].Kind == token.Numeral && toks[i+1+n].Wrong == "" {
			return "and", 1 + n // "and then 15 of the syrup"
		}
		if next.Kind == token.Numeral && next.Wrong == "" || next.Kind == token.Word && (serving.StepVerbs[next.Text] || serving.StartsMethod(toks[i+1:]) || entry.StartsMeasure(toks[i+1:]) && entry.StartsAmount(toks[from:]) && Named(toks[from:i])) {
			return "and", 1
		}
		return "", 0
	case (t.Text == "with" || t.Text == "to") && i > from+1 && entry.StartsMeasure(toks[i+1:]) && Named(upToMark(toks[i+1:])) && !entry.IceOnly(upToMark(toks[i+1:])) && entry.StartsAmount(poured(toks[from:])) && Named(toks[from:i]):
		return "and", 1 // "2 oz rum with 3/4 oz lime"
	case t.Kind == token.Word && i > from+1 && toks[i-1].Kind == token.Word && entry.StartsMeasure(toks[i:]) && entry.StartsAmount(toks[from:]) && Named(toks[from:i]) && !entry.Joins[toks[i-1].Text] && !entry.IsUnit(&toks[i-1]) && !speech.Article(toks[i-1].Text):
		return "and", 0 // "two ounces of gin half an ounce of lemon"
	case t.Kind == token.Word && (servedFrom(toks, i, from) || dosedFrom(toks, i, from)):
		return ";", 0
	case t.Kind != token.Mark:
		return "", 0
	}
	return bySign(toks, i, from)
}

// bySign is Separator for a sign.
func bySign(toks []token.Token, i, from int) (string, int) {
	t, next := &toks[i], tokenAt(toks, i+1)
	if (t.Is(",") || t.Is(";")) && t.Glued && toks[i-1].Kind == token.Numeral && next.Kind == token.Word && next.Glued && entry.UnitWordsAt(toks[i+1:]) {
		return "", 0 // "gin,45,ml"
	}
	switch t.Text {
	case "~":
		if !t.Glued && !next.Glued && next.Kind == token.Word {
			return ";", 1 // "1/4 honey ~ dbl strain"
		}
	case ">":
		return ">", 1
	case ";", "|", "•":
		return ";", 1
	case "+":
		if rimAhead(toks, i, from) || toks[i-1].Text == "half" && next.Text == "half" {
			return "", 0
		}
		return "+", 1
	case ",", "=":
		return t.Text, 1
	case ":":
		return ":", 1
	case "/":
		before := &toks[i-1]
		if before.Kind == token.Word && next.Kind == token.Word && t.Glued && next.Glued && !serving.StartsMethod(toks[i-1:]) && !entry.UnitWordsAt(toks[i+1:]) && !slashed(toks) {
			return "", 0 // half/half
		}
		return "/", 1
	case "&":
		if next.Kind == token.Numeral || next.Kind == token.Word && serving.StepVerbs[next.Text] {
			return "and", 1
		}
	case "-":
		if next.Kind == token.Numeral && next.Glued && !t.Glued && reaches.Has(toks[i-1].Text) {
			return "", 0 // "churn to -6"
		}
		if i+2 < len(toks) && next.Kind == token.Numeral && entry.AgeWords[toks[i+2].Text] {
			return "", 0 // "rye - 100 proof"
		}
		if !t.Glued || i > 0 && toks[i-1].Kind == token.Word && next.Kind == token.Numeral {
			return "-", 1
		}
	case ".":
		if i+1 < len(toks) && next.Is(".") || toks[i-1].Is(".") {
			if entry.StartsAmount(toks[from:]) && Named(toks[from:i]) {
				return ".", 1 // "45 dark rum.. any is ok"
			}
			return "-", 1 // dots that lead to an amount
		}
		if next.Kind == token.Numeral && next.Glued && t.Glued && toks[i-1].Kind == token.Word {
			return ";", 1 // "6cl gin.3cl lemon"
		}
		if !next.Glued && sentenceEnds(toks, i, from) {
			return ".", 1
		}
	case "]", "[":
		return ";", 1 // "[shake, coupe] 60 gin"
	case "!":
		return ".", 1
	case "?":
		if next.Kind == token.Numeral && Named(toks[from:i]) { // "1 maraschino? 1 lime"
			return ";", 1
		}
	}
	return "", 0
}

// poured returns an entry without the verb that it begins with: "add 2 oz rum".
func poured(toks []token.Token) []token.Token {
	for len(toks) > 1 && toks[0].Kind == token.Word && entry.PouringVerb(toks[0].Text) {
		toks = toks[1:]
	}
	return toks
}

// fillersAt returns how many words at i are said between "and" and an amount.
func fillersAt(toks []token.Token, i int) int {
	n := 0
	for i+n < len(toks) && toks[i+n].Kind == token.Word && fillers.Has(toks[i+n].Text) {
		n++
	}
	return n
}

var fillers = vocabulary.Words(`then also like maybe about around plus just another um uh`)

// stepNumber reports whether the number at i counts a step of what is to be done.
func stepNumber(toks []token.Token, i int) bool {
	if i+2 >= len(toks) || toks[i].Wrong != "" || toks[i].Value != float64(int(toks[i].Value)) || !toks[i+1].Is(".") || !toks[i+1].Glued || toks[i+2].Glued || toks[i+2].Kind != token.Word {
		return false
	}
	return serving.Starts(toks[i+2:]) || serving.StepVerbs[toks[i+2].Text]
}

// upToMark returns the tokens before the first sign.
func upToMark(toks []token.Token) []token.Token {
	if at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind == token.Mark }); at >= 0 {
		return toks[:at]
	}
	return toks
}

// tokenAt returns the token at i, a sign that is none behind the last.
func tokenAt(toks []token.Token, i int) *token.Token {
	if i < len(toks) {
		return &toks[i]
	}
	return &token.Token{Kind: token.Mark}
}

// Soaked parts a sugar cube from the bitters that it is soaked in, of which nobody says
// how much.
const Soaked = "soaked"

// With parts words of mixing from what is counted into the shaker, which is not laid on the drink.
const With = "with"

var soakedIn = vocabulary.Words(`soaked doused drenched dashed`)

// Wide reports whether there is more than one blank before the token at i.
func Wide(toks []token.Token, i int) bool { return toks[i].Start-toks[i-1].End > 1 }

// amountInBrackets reports whether tokens begin with an amount in brackets.
func amountInBrackets(toks []token.Token) bool {
	end := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is(")") })
	return end > 1 && toks[1].Kind == token.Numeral && (end == 2 || entry.UnitWordsAt(toks[2:end]))
}

// reaches are words before how cold something becomes.
var reaches = vocabulary.Words(`to at below until till`)

// whites are words for the white of an egg, which are poured one at a time without a number.
var whites = vocabulary.Words(`ew eggwhite eggwht`)

// eggEnds reports whether an egg without an amount ends before i, and what follows up to the
// next sign says how the drink is made.
func eggEnds(toks []token.Token, i, from int) bool {
	one := i == from+1 && whites.Has(toks[from].Text)
	two := i == from+2 && toks[from].Text == "egg" && strings.HasPrefix(toks[from+1].Text, "wh")
	return (one || two) && serving.Known(toks[i].Text) && servedOnly(upToMark(toks[i:]))
}

// amountCloses reports whether words are a name with its amount in brackets behind it.
func amountCloses(toks []token.Token) bool {
	open := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is("(") })
	if open < 1 || !Named(toks[:open]) || slices.ContainsFunc(toks[:open], func(t token.Token) bool { return t.Kind != token.Word }) || toks[open+1].Kind != token.Numeral || toks[open+1].Wrong != "" {
		return false
	}
	inside := toks[open+1 : len(toks)-1]
	_, n := entry.UnitAt(inside[1:])
	return n > 0 && n == len(inside)-1
}

// ground say how a spice is cut, and begin its name.
var ground = vocabulary.Words(`ground grated fresh freshly whole powdered dried`)

// eggKinds say which egg it is.
var eggKinds = vocabulary.Words(`carton bottled frozen dehydrated dried pasteurised pasteurized fresh whole liquid powdered large medium small organic raw beaten free-range ea each one half chicken hen hens`)

// garnishBegins are words that begin a garnish behind the pours of a line.
var garnishBegins = vocabulary.Words(`garnish garnished express expressed candied`)

// partsFrom reports whether tokens start with a number of parts.
func partsFrom(toks []token.Token) bool {
	return len(toks) > 2 && (toks[0].Kind == token.Numeral || token.NumberWords[toks[0].Text] > 0) && (toks[1].Text == "part" || toks[1].Text == "parts")
}

// slashed reports whether slashes part the pours of a line.
func slashed(toks []token.Token) bool {
	for i := range toks[1:] {
		if toks[i].Is("/") && toks[i+1].Kind == token.Numeral {
			return true
		}
	}
	return false
}

// Named reports whether tokens after an amount hold a name beside a unit.
func Named(toks []token.Token) bool {
	for i := range toks {
		if t := &toks[i]; t.Kind == token.Word && !besideName.Has(t.Text) && !entry.IsUnit(t) {
			return true
		}
	}
	return false
}

// besideName are the words, but for units, that say how much of something there is, and are
// no name: numbers, measures, and what stands before them.
var besideName = vocabulary.SetOf(slices.Concat([]string{"of", "a", "an"}, words(token.NumberWords), words(token.FractionWords),
	words(entry.LooseWords), words(entry.BiasWords), words(entry.Measures))...)

// words are the keys of a table.
func words[V any](of map[string]V) []string { return slices.Collect(maps.Keys(of)) }

// beforeNumeral reports whether a new pour starts at a number amid a line, as in
// "60 gin 30 lemon": one has been started and named, and a name follows.
func beforeNumeral(toks []token.Token, i, from int) string {
	if i+1 < len(toks) && toks[i+1].Glued && serving.Times(toks[i+1].Text) && serving.Starts(toks[max(from, i-1):]) {
		return "" // "shake 2x", "dry shake 1st"
	}
	if toks[i].Wrong == "" && toks[i-1].Kind == token.Word && entry.UnitWordsAt(toks[i+1:]) && orders(toks[from:i]) {
		return "and" // "stir 2 oz gin"
	}
	if toks[i].Wrong == "" && toks[i-1].Kind == token.Word && orders(toks[from:i]) && poursFollow(toks[i:]) {
		return "and" // "shake 45 gin 20 lemon"
	}
	end := nameEnd(toks, i) // of what stands before
	if !entry.StartsAmount(toks[from:]) || end <= from || !Named(toks[from:end]) || toks[i].Wrong != "" || i+1 >= len(toks) || toks[end-1].Kind != token.Word {
		return ""
	}
	if entry.AgeWords[toks[i+1].Text] || entry.Joins[toks[end-1].Text] || entry.IsUnit(&toks[end-1]) && !endsName(toks[from:end]) || entry.IceOnly(toks[i+1:]) {
		return ""
	}
	if u, n := entry.UnitAt(toks[i+1:]); n > 0 && u != "" && (i+1+n >= len(toks) || toks[i+1+n].Is(",") || toks[i+1+n].Is(";")) {
		return "" // the amount once more, in another unit
	}
	for _, t := range toks[i+1:] {
		if t.Kind == token.Word {
			if _, unit := measure.ParseUnit(t.Text); !unit {
				if _, other := entry.Measures[t.Text]; !other {
					return "and"
				}
			}
		}
	}
	return ""
}

// nameEnd returns where the name ends that stands before i, without words in brackets behind
// it: "20 aquafaba (vegan!!) 2 dashes bitters".
func nameEnd(toks []token.Token, i int) int {
	if !toks[i-1].Is(")") {
		return i
	}
	for k := i - 2; k >= 0; k-- {
		switch {
		case toks[k].Is("("):
			return k
		case toks[k].Kind != token.Word && !toks[k].Is("!") && !toks[k].Is("?") && !toks[k].Is(","):
			return i
		}
	}
	return i
}

// poursFollow reports whether bare numbers with their names follow, two at least, and no
// count of turns or seconds.
func poursFollow(toks []token.Token) bool {
	n := 0
	for i := range toks {
		if i+1 < len(toks) && toks[i].Kind == token.Numeral && toks[i].Wrong == "" && toks[i+1].Kind == token.Word && !serving.DegreeWords[toks[i+1].Text] && !entry.AgeWords[toks[i+1].Text] && !entry.IceOnly(toks[i+1:]) {
			n++
		}
	}
	return n > 1 && !serving.DegreeWords[toks[1].Text]
}

// orders reports whether words say how to mix and nothing else, and begin no pour.
func orders(toks []token.Token) bool {
	return !(serving.StepVerbs[toks[0].Text] && entry.PouringVerb(toks[0].Text)) && mixes(toks)
}

// mixes reports whether words say how to mix and nothing else.
func mixes(toks []token.Token) bool {
	s := serving.Read(toks)
	return (s.Method != "" || s.Muddle) && len(s.Unknown) == 0 && s.Conflict == nil
}

// counts reports whether the number at i counts something that is named, and neither ice nor
// turns, seconds or degrees.
func counts(toks []token.Token, i int) bool {
	return i+1 < len(toks) && toks[i+1].Kind == token.Word && !serving.DegreeWords[toks[i+1].Text] && !serving.Times(toks[i+1].Text) && !entry.IceFollows(toks[i+1:]) && Named(upToMark(toks[i+1:]))
}

// endsName reports whether the words between an amount and its end hold more
// than a unit.
func endsName(toks []token.Token) bool {
	words := 0
	for i := range toks {
		if toks[i].Kind == token.Word && !numberLike(toks[i].Text) {
			words++
		}
	}
	return words > 1
}

func numberLike(w string) bool {
	return token.NumberWords[w] > 0 || token.FractionWords[w] > 0 || w == "a" || w == "an"
}
