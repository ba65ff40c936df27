package likeliest

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/declared"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Headings: what stands above pours, or begins a line, and is none of them.

// heads reports whether a line begins at i, or the number of a card stands before it there.
func (s *script) heads(i int) bool {
	return s.starts(i) || i >= codeTokens && s.codeAt(i-codeTokens) == i
}

// capitals reports whether some words, more than one, are all written with a capital.
func (s *script) capitals(from, to int) bool {
	for i := from; i < to; i++ {
		if !s.word(i) || !s.capital(i) {
			return false
		}
	}
	return to-from > 1
}

// later reports whether a sign stands again on the line behind i.
func (s *script) later(i int, sign string) bool {
	for k := i + 1; !s.ends(k); k++ {
		if s.sign(k, sign) {
			return true
		}
	}
	return false
}

// headings are what stands above the pours on a card and is no name: "BAR CARD rev 3", "Sheet 2 /
// aperitivo", "Per 150 ml portion:", "#7".
func (s *script) headings(i int) []stretch {
	if out, sure := s.numberedOrSpoken(i); sure {
		return out
	}
	if s.toks[i].Kind == token.Percent && declared.NoStrength(s.toks[i].Text) {
		return []stretch{{kind: aHeading, from: i, to: i + 1, cost: costLabel, free: true}}
	}
	if s.toks[i].Kind == token.Mark || !s.starts(i) && !s.sign(i-1, partingSigns) {
		return nil
	}
	if out, sure := s.sureHeading(i); sure {
		return out
	}
	return append(s.cardHeadings(i), s.lineHeading(i)...)
}

// numberedOrSpoken is a heading that its form tells, on any line: the number of a drink, "#7", the
// hour at which somebody wrote, "0 proof:". It is false if none stands at i.
func (s *script) numberedOrSpoken(i int) ([]stretch, bool) {
	clocked := func(k int) bool { return s.toks[k].Kind == token.Ratio && clock.MatchString(s.toks[k].Text) }
	switch {
	case s.sign(i, "#") && s.toks[i].Kind == token.Mark && i+1 < len(s.toks) && s.toks[i+1].Kind == token.Numeral && s.toks[i+1].Glued:
		return []stretch{{kind: aHeading, from: i, to: i + 2, cost: costSpeaker}}, true
	case s.sign(i, "[(") && i+2 < len(s.toks) && clocked(i+1): // "[22:41] Mo:"
		return s.spoken(i, i+2), true
	case clocked(i) && s.starts(i):
		return s.spoken(i, i+1), true
	case s.starts(i) && s.sign(i+2, ":-/|") && declared.NoAlcohol(s.written(i, i+2)): // "0 proof:"
		return []stretch{{kind: aHeading, from: i, to: i + 2, cost: costHeading}}, true
	}
	return nil, false
}

// sureHeading is a heading that is no other thing: that the drink is free of alcohol, in brackets,
// for how much of it the amounts are, the number of its card, the head of a table.
func (s *script) sureHeading(i int) ([]stretch, bool) {
	for k := i + 1; k <= min(i+3, len(s.toks)) && s.sign(i-1, "(["); k++ { // "(alcohol free)"
		if declared.NoAlcohol(s.written(i, k)) && s.sign(k, ")]") {
			return []stretch{{kind: aHeading, from: i, to: k, cost: costLabel, free: true}}, true
		}
	}
	if s.word(i, "per") {
		return s.perPortion(i), true
	}
	if k := s.codeAt(i); k > i {
		return []stretch{{kind: aHeading, from: i, to: k, cost: costSpeaker}}, true
	}
	if end := s.wordsTo(i); s.starts(i) && s.ends(end) && s.tableHead(i, end) {
		return []stretch{{kind: aHeading, from: i, to: end, cost: costLabel}}, true
	}
	return nil, false
}

// cardHeadings are the words from i on that number a card, up to every place where they may end:
// "BAR CARD rev 3".
func (s *script) cardHeadings(i int) []stretch {
	var out []stretch
	carded := false
	for k := i; k < len(s.toks) && k-i < mostTitle+2 && s.wordsGoOn(k, headingSigns) && !entry.TellsToPour(s.toks[i:k+1]); k++ {
		t := &s.toks[k]
		carded = carded || t.Kind == token.Word && numbering(t.Text) || t.Kind == token.Numeral
		ends := s.ends(k+1) || s.starts(i) && s.sign(k+1, ":/>-;,.")
		if carded && ends && s.toks[i].Kind == token.Word {
			out = append(out, stretch{kind: aHeading, from: i, to: k + 1, cost: costHeading + costTalkWord*float64(k-i)})
		}
	}
	return out
}

// The signs that may stand within a heading, and within what is said to colleagues.
const (
	headingSigns = ".#'’-&/>()"
	talkSigns    = "'’\"“”!?"
)

// wordsGoOn reports whether words that pour nothing may go on at k, with some signs between them.
func (s *script) wordsGoOn(k int, signs string) bool {
	t := &s.toks[k]
	switch {
	case s.ends(k):
		return false
	case t.Kind == token.Mark:
		return s.sign(k, signs)
	}
	return s.explained(k) && !(t.Kind == token.Word && thoughts.Has(t.Text))
}

// lineHeading is a whole line without an amount above the name of the drink, or what stands behind a
// sign at its end: "Sheet 2 / aperitivo".
func (s *script) lineHeading(i int) []stretch {
	if end := s.end(i); s.starts(i) && s.unmeasured(i, end) && end-i <= mostTitle && end < len(s.toks) && !entry.TellsToPour(s.toks[i:end]) {
		n := s.nameAt(i, end, flavor.Millilitre, mostWritten)
		return []stretch{{kind: aHeading, from: i, to: end, cost: costHeading + costOwnLine, named: n.ok, plain: true}}
	}
	if end := s.wordsTo(i); !s.starts(i) && s.sign(i-1, "/>-") && s.ends(end) {
		return []stretch{{kind: aHeading, from: i, to: end, cost: costHeading}}
	}
	return nil
}

// codeAt is where the number of a card ends that starts at i, "HB-21", and i if none does.
func (s *script) codeAt(i int) int {
	if !s.starts(i) || !s.word(i) || !s.capital(i) || len(s.toks[i].Text) > mostCode || s.ends(i+codeTokens) {
		return i
	}
	if s.sign(i+1, "-.#") && s.toks[i+1].Glued && s.toks[i+2].Kind == token.Numeral && s.toks[i+2].Glued && s.word(i+codeTokens) && !s.toks[i+codeTokens].Glued {
		return i + codeTokens
	}
	return i
}

// codeTokens are a word, a sign and a number.
const codeTokens = 3

// mostCode is the most letters of the number of a card.
const mostCode = 3

// tableWords stand above the columns of a table.
var tableWords = vocabulary.Words(`ingredient ingredients qty quantity quantities amount amounts measure measures item items oz ml cl unit units product products vol volume cost price menge zutat zutaten dosis cantidad ingrediente ingredienti ingredientes dose quantité quantità quantidade`)

// tableHead reports whether words are the head of a table and nothing else.
func (s *script) tableHead(i, end int) bool {
	for k := i; k < end; k++ {
		if !tableWords.Has(s.toks[k].Text) {
			return false
		}
	}
	return end-i >= leastPours
}

// wordsTo is where words end that start at i.
func (s *script) wordsTo(i int) int {
	for s.word(i) && !thoughts.Has(s.toks[i].Text) {
		i++
	}
	return i
}
