package everyday

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Clause is a stretch of a text that pours nothing.
type Clause struct {
	At     entry.Span
	Line   int  // of the text, from 1
	Alone  bool // nothing else stands on its line
	Spoken bool // it is a sentence, and no name of a drink
	Laid   bool // it is laid on the drink
	Refers bool // its numbers refer or date, as those of no name do, or it is a number alone
}

// mostText is how long a text is at most, in bytes: a longer one is no note of one drink.
const mostText = 2000

// Clauses returns the stretches of a text that pour nothing, in order; pours are what could be read
// of it.
func Clauses(text string, pours []flavor.Pour, b *naming.Resolver) []Clause {
	if len(text) > mostText {
		return nil
	}
	s := &search{text: text, resolver: b, poured: pouredWords(pours)}
	var lines [][]token.Token
	at := 0
	for line := range strings.Lines(text) {
		toks := token.Lex(nil, text, at, at+len(strings.TrimRight(line, "\r\n")))
		if len(toks) > 0 && text[toks[0].Start] == '#' {
			toks = nil
		}
		lines = append(lines, toks)
		s.amountsEnd(toks)
		at += len(line)
	}
	for i, toks := range lines {
		s.line(i+1, toks)
	}
	return s.found
}

// search gathers the clauses of a text.
type search struct {
	text     string
	resolver *naming.Resolver
	poured   map[string]bool // words of the names of what is poured with an amount
	found    []Clause
	amount   int  // byte at which the last number stands that may be an amount
	served   bool // a clause above says how the drink is made or served
	shared   bool // one amount of this line may be that of each name
}

// amountsEnd notes where the last number of a line stands that may be an amount.
func (s *search) amountsEnd(toks []token.Token) {
	for i := 0; i < len(toks); i++ {
		switch n := numberAt(toks, i); {
		case n > 0:
			i += n - 1
		case figures(&toks[i]):
			s.amount = toks[i].Start
		}
	}
}

// line parts a line into sentences and takes of each what pours nothing.
func (s *search) line(n int, toks []token.Token) {
	s.shared = slices.ContainsFunc(toks, func(t token.Token) bool { return sharing.Has(t.Text) })
	for from := 0; from < len(toks); {
		end := from
		for end < len(toks) && !endsSentence(toks, end) {
			end++
		}
		s.sentence(n, toks, from, end)
		from = end + 1
	}
}

// sentence takes a sentence as a whole, if it pours nothing, and else those clauses of it that do
// not, between its commas.
func (s *search) sentence(n int, toks []token.Token, from, end int) {
	if s.take(n, toks, from, end, false) || s.again(n, toks[from:end]) {
		s.serve(toks[from:end])
		return
	}
	if cut := beforeTop(toks, from, end); cut > from && s.again(n, toks[from:cut]) {
		s.serve(toks[from:cut])
		from = cut + 1
	}
	for start := from; start < end; {
		stop := start
		for stop < end && !toks[stop].Is(",") {
			stop++
		}
		if start > from || stop < end {
			s.take(n, toks, start, stop, true)
		}
		s.serve(toks[start:stop])
		start = stop + 1
	}
}

// beforeTop is the comma before the clause that says what the drink is filled up with; from if there is
// none: "shake gin, lemon and syrup, strain, top with soda".
func beforeTop(toks []token.Token, from, end int) int {
	for i := from + 1; i+1 < end; i++ {
		if toks[i].Is(",") && pouring.AfterVerb(toks[i+1].Text) {
			return i
		}
	}
	return from
}

// sharing are words of an amount that is poured of each name of a list.
var sharing = vocabulary.Words(`each ea apiece equal equals`)

// take takes the tokens from one to another as a clause, if they pour nothing; listed says that a
// comma parts them from others.
func (s *search) take(n int, all []token.Token, from, end int, listed bool) bool {
	for from < end && bullet(&all[from]) {
		from++
	}
	for end > from && all[end-1].Is(",") {
		end--
	}
	if from >= end || end < len(all) && all[end].Is("?") { // a question may ask for something else
		return false
	}
	toks := all[from:end]
	if s.laidOn(toks) {
		s.found = append(s.found, Clause{At: entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}, Line: n, Laid: true})
		return true
	}
	if s.shared && from > 0 && !s.served && len(toks) < leastTold { // "25 each gin / window / lemon"
		return false
	}
	spoken, ok := s.pass(toks, listed)
	if !ok && inventory(toks, besideAmount(all, from, end)) {
		spoken, ok = true, true
	}
	if !ok || end < len(all) && all[end].Is(":") && !(spoken && s.tells(toks)) { // a label
		return false
	}
	s.found = append(s.found, Clause{At: entry.Span{Start: toks[0].Start, End: s.endOf(all, end)}, Line: n, Alone: s.alone(all, from, end), Spoken: spoken, Refers: references(toks)})
	return true
}

// serve notes that tokens say how the drink is made or served.
func (s *search) serve(toks []token.Token) {
	if !s.served {
		said := serving.Read(toks)
		s.served = said.States()
	}
}

// laidOn reports whether tokens behind the service and behind every amount name a few of what is laid on
// the drink.
func (s *search) laidOn(toks []token.Token) bool {
	if !s.served || toks[0].Start < s.amount {
		return false
	}
	if said := serving.Read(toks); said.States() {
		return false
	}
	return laid.Phrase(toks, func(w string) bool { return Word(w) || len(s.resolver.Mentioned(w)) > 0 })
}

// leastHeading is the fewest words of a sentence that leads up to what stands behind a colon.
const leastHeading = 4

// tells reports whether tokens before a colon are a sentence, and no label: "this is the one table 12 asked
// for:".
func (s *search) tells(toks []token.Token) bool {
	grammar, words := 0, 0
	for i := range toks {
		if toks[i].Kind != token.Word {
			continue
		}
		words++
		if spoken.Has(toks[i].Text) {
			grammar++
		}
	}
	return words >= leastHeading && grammar > 1
}

// endOf is where a clause ends that ends before a token: with the stop behind it.
func (s *search) endOf(all []token.Token, end int) int {
	for end < len(all) && (all[end].Is(".") || all[end].Is("!") || all[end].Is(":")) {
		end++
	}
	return all[end-1].End
}

// alone reports whether nothing but signs stands beside some tokens.
func (s *search) alone(all []token.Token, from, end int) bool {
	for i := range all {
		if (i < from || i >= end) && all[i].Kind != token.Mark {
			return false
		}
	}
	return true
}

// bullet reports whether a token stands before an entry of a list.
func bullet(t *token.Token) bool {
	return t.Is("-") || t.Is("•") || t.Is("+") || t.Is(">") || t.Is(",")
}

// endsSentence reports whether the sign at i parts two sentences: a dash does with a space before it.
func endsSentence(toks []token.Token, i int) bool {
	t := &toks[i]
	if t.Kind != token.Mark {
		return false
	}
	switch {
	case t.Is(".") && i > 0 && i+1 < len(toks) && toks[i+1].Kind == token.Numeral && pages.Has(toks[i-1].Text): // "p. 8"
		return false
	case strings.Contains(".-/", t.Text):
		return !t.Glued || i+1 == len(toks) || !toks[i+1].Glued
	case t.Is(":"):
		return i == 0 || !credits.Has(toks[i-1].Text)
	}
	return strings.Contains("!?;()[]|•·=>\"“”", t.Text)
}
