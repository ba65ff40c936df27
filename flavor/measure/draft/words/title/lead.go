package title

import (
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// mostLead is the most words before the first amount of a line that are its name.
const mostLead = 8

// mostLeadIn is the most words of a sentence that lead up to its first amount.
const mostLeadIn = 14

// Lead returns how many tokens stand before the first amount of a line that writes its
// amounts before the names, "Basil gimlet 2 gin .75 lime": they are the name of the
// drink, or say where it is made. It is 0 if there are none.
func Lead(toks []token.Token) int {
	first, amounts, ok := amountsAhead(toks)
	if !ok || first < 1 || first > mostLead || amounts < 2 || !endsLead(toks[:first]) {
		return 0
	}
	if first+1 < len(toks) && parting.Wide(toks, first+1) && !parting.Wide(toks, first) { // "SOUR  RYE 2  LEMON 1"
		return 0
	}
	for i := range first {
		if toks[i].Kind != token.Word && !toks[i].Is("&") && !toks[i].Is("'") && !toks[i].Is("?") {
			return 0
		}
	}
	if !namedLast(toks) {
		return 0
	}
	return first
}

// amountsAhead finds where the first of the amounts of a line stands, below 0 if there are none, and
// counts them: those with a unit where one of them has a unit. It is false where an amount has no
// name behind it: "gin 60 ml, lemon 30 ml".
func amountsAhead(toks []token.Token) (first, amounts int, ok bool) {
	united := false // some amount has its unit
	for i := range toks {
		if u, n := entry.UnitAt(toks[i+1:]); n > 0 && u.Jigger() && measuredAt(toks, i) {
			united = true
		}
	}
	first = -1
	for i := range toks {
		if !measuredAt(toks, i) || united && first < 0 && !entry.UnitWordsAt(toks[i+1:]) {
			continue
		}
		if first < 0 {
			first = i
		}
		amounts++
		next := i + 1
		if _, n := entry.UnitAt(toks[next:]); n > 0 {
			next += n
		}
		if next == len(toks) || toks[next].Kind == token.Mark && !toks[next].Is("(") {
			return first, amounts, false
		}
	}
	return first, amounts, true
}

// endsLead reports whether words before an amount are no part of a pour: they do not end in a word
// that joins, or in one that tells to pour; "with" and the "spritz" that a drink is, may end them.
func endsLead(toks []token.Token) bool {
	last := toks[len(toks)-1].Text
	if len(toks) > 1 && last == "with" {
		return true
	}
	return !token.Joins[last] && (!entry.PouringVerb(last) || len(toks) == 1 && last == "spritz")
}

// namedLast reports whether a name stands behind the last number of a line: "gin 60 lemon 30 shake
// up" writes its amounts behind the names.
func namedLast(toks []token.Token) bool {
	last := 0
	for i := range toks {
		if toks[i].Kind == token.Numeral {
			last = i
		}
	}
	behind := toks[last+1:]
	if _, n := entry.UnitAt(behind); n > 0 {
		behind = behind[n:]
	}
	return len(behind) > 0 && len(serving.Read(behind).Unknown) > 0 && laid.Served(behind) == 0
}

// LeadIn finds, from a token on, what leads up to an amount in a sentence, "each one gets 30 lemon".
// What has the amount behind its name, "gin is 45 ml", leads up to nothing. It is false if there is
// none.
func LeadIn(toks []token.Token, i int) (from, to int, ok bool) {
	for ; i+1 < len(toks); i++ {
		if !LeadsUp(toks[i-1].Text) && !(toks[i-1].Text == "now" && LeadsUp(toks[i-2].Text)) || toks[i].Kind != token.Numeral || toks[i].Wrong != "" {
			continue
		}
		name := i + entry.AmountAt(toks[i:])
		from = i - 1
		for from > 0 && toks[from-1].Kind == token.Word {
			from--
		}
		if name == i || name >= len(toks) || toks[name].Kind != token.Word || i-from < 2 || i-from > mostLeadIn || serving.DegreeWords[toks[name].Text] || entry.AgeWords[toks[name].Text] {
			continue
		}
		return from, i, true
	}
	return 0, 0, false
}

// leadVerbs end what leads up to the first amount and is no name: "the new one is 45 rye".
var leadVerbs = vocabulary.Words(`is it's its are get gets do does was takes has`)

// measuredAt reports whether an amount with a word behind it stands at i.
func measuredAt(toks []token.Token, i int) bool {
	return toks[i].Kind == token.Numeral && toks[i].Wrong == "" && i+1 < len(toks) && toks[i+1].Kind == token.Word && !entry.AgeWords[toks[i+1].Text] && !serving.DegreeWords[toks[i+1].Text]
}

// LeadsUp reports whether a word ends what leads up to the first amount of a line.
func LeadsUp(word string) bool { return leadVerbs.Has(word) }
