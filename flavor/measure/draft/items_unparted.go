package draft

import (
	"strings"

	"counterpour/flavor"
)

// amountsLast reports whether a new pour starts at a word of a line that writes its
// amounts after the names, as in "gin 45 ml lemon 20 ml".
func amountsLast(toks []token, i, from int) bool {
	if startsAmount(toks[from:]) || stepVerbs[toks[from].text] || isUnit(&toks[i]) && toks[i-1].kind == numeral || joins[toks[i].text] {
		return false
	}
	amount := toks[i-1].kind == numeral || toks[i-1].kind == word && toks[i-2].kind == numeral && measured(&toks[i-1])
	if !amount {
		return false
	}
	end := i
	for end < len(toks) && toks[end].kind != mark && !(end > i+1 && madeFrom(toks, end, from)) {
		end++
	}
	last := &toks[end-1]
	return end > i+1 && (last.kind == numeral || measured(last) && toks[end-2].kind == numeral)
}

// madeFrom reports whether an amount behind its name ends before i and a method
// follows: "sugar 15 shake".
func madeFrom(toks []token, i, from int) bool {
	amount := toks[i-1].kind == numeral || measured(&toks[i-1]) && i > 1 && toks[i-2].kind == numeral
	return amount && toks[i].kind == word && methodWord(toks[i:]) && !startsAmount(toks[from:])
}

// toppedFrom reports whether what follows a pour without a sign is what the drink is
// topped with: "1 oz simple cola top".
func toppedFrom(toks []token, i, from int) bool {
	end := i
	for end < len(toks) && toks[end].kind == word {
		end++
	}
	n, t := tailAt(toks[i:end])
	if t.unit != flavor.Top || n == end-i || !startsAmount(toks[from:]) || !named(toks[from:i]) {
		return false
	}
	words := make([]string, 0, 2)
	for k := i; k < end-n; k++ {
		words = append(words, toks[k].text)
	}
	return lengtheners[strings.Join(words, " ")]
}

// measured reports whether a token is a unit or another measure.
func measured(t *token) bool {
	_, other := measures[t.text]
	return isUnit(t) || t.kind == word && other
}

// rimWords stand before "rim" and say what it is dressed with.
var rimWords = set(`salt sugar half salted sugared smoked sea kosher flaky celery chilli chili chile spiced spicy cocoa cinnamon pink black caster chocolate coconut full sweet side`)

// rimFrom reports whether what follows a pour without a sign is its rim, or follows
// a rim: "1/2 oz lime salt rim highball".
func rimFrom(toks []token, i, from int) bool {
	if i < from+2 || !startsAmount(toks[from:]) && toks[i-1].text != "rim" {
		return false
	}
	if toks[i-1].text == "rim" {
		return len(terms[toks[i].text]) > 0
	}
	if !rimWords[toks[i].text] || rimWords[toks[i-1].text] || !named(toks[from:i]) {
		return false
	}
	for ; i < len(toks) && rimWords[toks[i].text]; i++ {
	}
	return i < len(toks) && (toks[i].text == "rim" || toks[i].text == "rimmed")
}

// plainMethods may end a pour alone: other words for methods end names, as in "rum
// blend".
var plainMethods = set(`shake shaken shk stir stirred`)

// servedFrom reports whether what follows a pour without a sign says how the drink
// is made or served, up to the next sign: "3/4 oz simple syrup shake up". In a line
// of several pours it may say the service alone: "2 gin 1 lemon .75 simple rocks".
func servedFrom(toks []token, i, from int) bool {
	first := &toks[i]
	if i < from+2 || toks[i-1].kind != word || phraseBefore(toks, i) || len(terms[first.text]) == 0 || !named(toks[from:i]) || !startsAmount(toks[from:]) && !unitWordsAt(toks[from:]) {
		return false
	}
	end := i
	for end < len(toks) && (toks[end].kind == word || toks[end].is("&")) {
		end++
	}
	words := make([]string, 0, longestTerm)
	for k := i; k < min(end, i+longestTerm); k++ {
		words = append(words, toks[k].text)
	}
	t, n := termAt(words)
	s := readServing(toks[i:end])
	switch {
	case n == 0 || len(s.unknown) > 0 && garnishAfter(toks[i:end]) == 0 || s.conflict != nil || end < len(toks) && toks[end].kind == numeral && garnishAfter(toks[i:]) == 0:
		return false
	case t.method != "":
		return s.words > 1 && s.words > n-1 || plainMethods[first.text]
	}
	return from > 0 && (t.service != "" && !t.ice || t.glass != "" || t.service == flavor.Rocks)
}

// phraseBefore reports whether the word at i goes on with a phrase that starts
// before it, as "shake" does in "dry shake".
func phraseBefore(toks []token, i int) bool {
	_, n := termAt([]string{toks[i-1].text, toks[i].text})
	return n > 1
}
