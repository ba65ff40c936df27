package paired

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
)

// mostText is the most bytes of a text that is looked at: a longer one is no note of one drink.
const mostText = 1000

// leastPours is the fewest pours of a text that is set anew.
const leastPours = 2

// Of returns a text with each amount before its name, each pair on a line of its own; false if the text
// is written neither as a ratio nor as a chain, or may be read in two ways. What it took for granted of the
// amounts is told.
func Of(text string, b *naming.Resolver) (out string, told []string, ok bool) {
	if len(text) > mostText {
		return "", nil, false
	}
	s := newScript(text, b)
	if out, ok := s.ratio(false); ok {
		return out, s.told, b.Err() == nil
	}
	if out, ok := s.each(); ok {
		return out, nil, b.Err() == nil
	}
	out, ok = s.chain()
	return out, nil, ok && b.Err() == nil
}

// Scaled returns a text in a ratio with the amounts that what the whole drink comes to makes of it; false
// if it says nothing of that.
func Scaled(text string, b *naming.Resolver) (string, bool) {
	if len(text) > mostText || !saysTotal(text) {
		return "", false
	}
	out, ok := newScript(text, b).ratio(true)
	return out, ok && b.Err() == nil
}

// script is a text while its amounts are paired.
type script struct {
	text     string
	toks     []token.Token // with a mark "\n" between the lines
	resolver *naming.Resolver
	told     []string
}

// newScript parts a text into tokens, with its numbers in figures.
func newScript(text string, b *naming.Resolver) *script {
	s := &script{text: text, resolver: b}
	at := 0
	for line := range strings.SplitSeq(text, "\n") {
		if at > 0 {
			s.toks = append(s.toks, token.Token{Kind: token.Mark, Start: at - 1, End: at, Text: "\n"})
		}
		s.toks = append(s.toks, speech.InFigures(token.Lex(nil, text, at, at+len(line)))...)
		at += len(line) + 1
	}
	return s
}

// amount is an amount with its unit, which may be empty.
type amount struct {
	value float64
	unit  flavor.Unit
	to    int // token where it ends
}

// written is an amount as a list has it.
func (a *amount) written() string {
	return strings.TrimSpace(token.Decimals(a.value) + " " + string(a.unit))
}

// amountAt reads the amount at i; false if none stands there.
func (s *script) amountAt(i int) (amount, bool) {
	value, n := entry.AmountOf(s.line(i))
	if n == 0 || !(value > 0) {
		return amount{}, false
	}
	a := amount{value: value, to: i + n}
	if s.toks[a.to-1].Is(".") { // ends the entry
		a.to--
	}
	article := n == 1 && s.word(i) && (s.toks[i].Text == "a" || s.toks[i].Text == "an")
	for s.word(a.to) && (s.toks[a.to].Text == "of" || s.toks[a.to].Text == "an" || s.toks[a.to].Text == "a") && entry.UnitWordsAt(s.line(a.to+1)) {
		a.to++
	}
	if u, k := entry.UnitAt(s.line(a.to)); k > 0 {
		a.unit, a.to = u, a.to+k
		if last := &s.toks[a.to-1]; last.Kind == token.Mark { // a stop that ends the entry
			a.to--
		}
	}
	glued := a.unit == "" && s.word(a.to) && s.toks[a.to].Glued // "6O gin"
	return a, !glued && !(article && a.unit == "")
}

// line are the tokens from i to the end of their line.
func (s *script) line(i int) []token.Token {
	end := i
	for end < len(s.toks) && s.toks[end].Text != "\n" {
		end++
	}
	return s.toks[min(i, end):end]
}

func (s *script) word(i int) bool { return i < len(s.toks) && s.toks[i].Kind == token.Word }

// mostName is the most words of a name.
const mostName = 5

// nameAt is where the longest name ends that starts at i and that an amount may be of; i if none does.
func (s *script) nameAt(i int, u flavor.Unit) int {
	for to := min(i+mostName, len(s.toks)); to > i; to-- {
		if s.named(i, to, u) {
			return to
		}
	}
	return i
}

// named reports whether tokens are the name of something that is poured in a unit.
func (s *script) named(from, to int, u flavor.Unit) bool {
	for k := from; k < to; k++ {
		if !s.word(k) && !(k > from && k+1 < to && (s.toks[k].Is("'") || s.toks[k].Is("&"))) {
			return false
		}
	}
	if u == "" {
		u = flavor.Ounce
	}
	if s.goesOn(from, to) {
		return false
	}
	f := s.resolver.Find(s.written(from, to), naming.Place{Unit: u, Amount: 1})
	return f.Firm() && f.Dropped == "" && f.Infusion == "" || f.Fault != nil && f.Fault.Kind == flavor.ErrInvalid && len(f.Fault.Suggest) > 1
}

// goesOn reports whether a name begins words of making that go on behind it: "1 dry shake".
func (s *script) goesOn(from, to int) bool {
	var words []string
	for k := from; s.word(k) && k-from < serving.LongestTerm; k++ {
		words = append(words, s.toks[k].Text)
	}
	_, n := serving.TermAt(words)
	return n > to-from
}

// written are tokens as they are written.
func (s *script) written(from, to int) string {
	if from >= to {
		return ""
	}
	return token.OneLine(s.text[s.toks[from].Start:s.toks[to-1].End])
}
