package everyday

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/token"
)

// Clause is a stretch of a text that pours nothing.
type Clause struct {
	At     entry.Span
	Line   int  // of the text, from 1
	Alone  bool // nothing else stands on its line
	Spoken bool // it is a sentence, and no name of a drink
}

// mostText is how long a text is at most, in bytes: a longer one is no note of one drink.
const mostText = 2000

// Clauses returns the stretches of a text that pour nothing, in order; pours are what could be read
// of it.
func Clauses(text string, pours []flavor.Pour, b *naming.Book) []Clause {
	if len(text) > mostText {
		return nil
	}
	s := &search{text: text, book: b, poured: pouredWords(pours)}
	at, n := 0, 0
	for line := range strings.Lines(text) {
		n++
		toks := token.Lex(nil, text, at, at+len(strings.TrimRight(line, "\r\n")))
		if !(len(toks) > 0 && text[toks[0].Start] == '#') {
			s.line(n, toks)
		}
		at += len(line)
	}
	return s.found
}

// search gathers the clauses of a text.
type search struct {
	text   string
	book   *naming.Book
	poured map[string]bool // words of the names of what is poured with an amount
	found  []Clause
}

// line parts a line into sentences and takes of each what pours nothing.
func (s *search) line(n int, toks []token.Token) {
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
		return
	}
	for start := from; start < end; {
		stop := start
		for stop < end && !toks[stop].Is(",") {
			stop++
		}
		if start > from || stop < end {
			s.take(n, toks, start, stop, true)
		}
		start = stop + 1
	}
}

// take takes the tokens from one to another as a clause, if they pour nothing; listed says that a
// comma parts them from others.
func (s *search) take(n int, all []token.Token, from, end int, listed bool) bool {
	for from < end && bullet(&all[from]) {
		from++
	}
	for end > from && all[end-1].Is(",") {
		end--
	}
	if from >= end || end < len(all) && (all[end].Is(":") || all[end].Is("?")) { // a label; a question may ask for something else
		return false
	}
	toks := all[from:end]
	spoken, ok := s.pass(toks, listed)
	if !ok {
		return false
	}
	s.found = append(s.found, Clause{At: entry.Span{Start: toks[0].Start, End: s.endOf(all, end)}, Line: n, Alone: s.alone(all, from, end), Spoken: spoken})
	return true
}

// endOf is where a clause ends that ends before a token: with the stop behind it.
func (s *search) endOf(all []token.Token, end int) int {
	for end < len(all) && (all[end].Is(".") || all[end].Is("!")) {
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
