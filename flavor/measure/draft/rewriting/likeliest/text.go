package likeliest

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
)

// lineEnd is the sign that stands for the end of a line.
const lineEnd = "\n"

// script is a text while it is parted.
type script struct {
	text     string
	toks     []token.Token
	resolver *naming.Resolver
	known    map[lookup]name
}

// newScript parts a text into tokens, and those that are an amount and a name into both.
func newScript(text string, b *naming.Resolver) *script {
	s := &script{text: text, resolver: b, known: map[lookup]name{}}
	at := 0
	for line := range strings.SplitSeq(text, "\n") {
		if at > 0 {
			s.toks = append(s.toks, token.Token{Kind: token.Mark, Start: at - 1, End: at, Text: lineEnd})
		}
		var toks []token.Token
		for _, t := range token.Lex(nil, text, at, at+len(line)) {
			toks = append(toks, s.unglued(t)...)
		}
		s.toks = append(s.toks, speech.Signs(speech.InFigures(toks))...)
		at += len(line) + 1
	}
	return s
}

// unglued parts numbers from the words that they run into: "1peach", "1.5vod", "gin2lime".
func (s *script) unglued(t token.Token) []token.Token {
	written := s.text[t.Start:t.End]
	mixed := t.Kind == token.Numeral && t.Wrong != "" || t.Kind == token.Word && strings.ContainsFunc(written, numeric)
	if !mixed {
		return []token.Token{t}
	}
	var out []token.Token
	at := t.Start
	for _, run := range runs(written) {
		toks := token.Lex(nil, s.text, at, at+len(run))
		if len(toks) != 1 || toks[0].Wrong != "" || toks[0].Kind == token.Word && len(run) < leastHalf && run != "d" {
			return []token.Token{t} // "B52", "H2O", "6O gin"
		}
		toks[0].Glued = at > t.Start || t.Glued
		out = append(out, toks[0])
		at += len(run)
	}
	return out
}

// numeric reports whether a character is part of a number.
func numeric(c rune) bool { return unicode.IsNumber(c) }

// runs parts a word where its letters and its numbers meet.
func runs(word string) []string {
	var out []string
	from := 0
	inNumber := func(i int) bool {
		c, n := utf8.DecodeRuneInString(word[i:])
		next, _ := utf8.DecodeRuneInString(word[i+n:])
		before, _ := utf8.DecodeLastRuneInString(word[:i])
		return numeric(c) || strings.ContainsRune(".,/", c) && numeric(next) && (c != '/' || numeric(before))
	}
	for i := range word {
		if i > 0 && inNumber(i) != inNumber(from) {
			out, from = append(out, word[from:i]), i
		}
	}
	return append(out, word[from:])
}

// starts reports whether a line starts at a token.
func (s *script) starts(i int) bool { return i == 0 || s.toks[i-1].Is(lineEnd) }

// ends reports whether a line, or the text, ends before a token.
func (s *script) ends(i int) bool { return i >= len(s.toks) || s.toks[i].Is(lineEnd) }

// end is where the line ends that holds a token.
func (s *script) end(i int) int {
	for !s.ends(i) {
		i++
	}
	return i
}

// word reports whether a word stands at i, one of those given if there are any.
func (s *script) word(i int, of ...string) bool {
	if i < 0 || i >= len(s.toks) || s.toks[i].Kind != token.Word {
		return false
	}
	for _, w := range of {
		if s.toks[i].Text == w {
			return true
		}
	}
	return len(of) == 0
}

// sign reports whether one of some signs stands at i.
func (s *script) sign(i int, signs string) bool {
	return i >= 0 && i < len(s.toks) && s.toks[i].Kind == token.Mark && strings.Contains(signs, s.toks[i].Text)
}

// written is what tokens say, on one line.
func (s *script) written(from, to int) string {
	if from >= to {
		return ""
	}
	return token.OneLine(s.text[s.toks[from].Start:s.toks[to-1].End])
}

// words are the words of tokens, parted by single blanks.
func (s *script) words(from, to int) string {
	var out []string
	for i := from; i < to; i++ {
		if s.toks[i].Kind == token.Word {
			out = append(out, s.text[s.toks[i].Start:s.toks[i].End])
		}
	}
	return strings.Join(out, " ")
}

// at is the stretch of the text that tokens take.
func (s *script) at(from, to int) entry.Span {
	return entry.Span{Start: s.toks[from].Start, End: s.toks[to-1].End}
}

// capital reports whether a token is written with a capital.
func (s *script) capital(i int) bool {
	if i >= len(s.toks) {
		return false
	}
	c, _ := utf8.DecodeRuneInString(s.text[s.toks[i].Start:])
	return unicode.IsUpper(c)
}
