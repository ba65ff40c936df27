package paired

import (
	"strings"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// One amount may be that of each name of a list, whether its word stands behind it or before: ".75 ea: gin, lemon,
// honey", "everything 3/4. gin, lemon, honey", "1 oz x3: ...".

var (
	// apiece are words beside an amount that is each of the pours' that follow.
	apiece = vocabulary.Words(`each ea everything all apiece`)
	// alike are words before an amount that say so, with the word behind them or by themselves.
	alike = vocabulary.Words(`everything equally equal equals eqp eql eq each all`)
	// shares may stand behind such a word.
	shares = vocabulary.Words(`parts part pts pt measures at is of`)
)

// leastEach is the fewest pours that one amount is of, where no sign parts it from them; leastTold is it where one
// does.
const leastEach, leastTold = 3, 2

// toEach is an amount that is each of the pours' that follow, and where it stands.
type toEach struct {
	amount   amount
	from, to int // tokens
	times    int // how many pours it is said to be of; 0 if it is not said
	signed   bool
}

// each reads such an amount with the names of its list, each on a line of its own.
func (s *script) each() (string, bool) {
	for i := range s.toks {
		e, ok := s.toEachAt(i)
		if !ok {
			continue
		}
		names, end := s.list(e.to, e.amount)
		least := leastEach
		if e.signed {
			least = leastTold
		}
		if len(names) < least || e.times > 0 && len(names) != e.times || !s.endsList(end) {
			return "", false
		}
		var out strings.Builder
		out.WriteString(strings.TrimRight(s.text[:s.toks[e.from].Start], " \t,:-–—"))
		for _, name := range names {
			out.WriteString("\n" + e.amount.written() + " " + name)
		}
		if end < len(s.toks) {
			out.WriteString("\n" + strings.TrimLeft(s.text[s.toks[end].Start:], " \t,;/"))
		}
		return strings.TrimLeft(out.String(), "\n"), true
	}
	return "", false
}

// toEachAt reads an amount that is each of the pours' at i, with what says so and the sign behind it.
func (s *script) toEachAt(i int) (toEach, bool) {
	e := toEach{from: i}
	for s.word(i) && (i == e.from && alike.Has(s.toks[i].Text) || i > e.from && shares.Has(s.toks[i].Text)) {
		i++
	}
	before := i > e.from
	bracket := before && i < len(s.toks) && s.toks[i].Is("(")
	if bracket {
		i++
	}
	a, ok := s.amountAt(i)
	if !ok {
		return e, false
	}
	e.amount, e.to = a, a.to
	behind := s.word(e.to) && apiece.Has(s.toks[e.to].Text)
	if behind {
		e.to++
	} else if n, ok := s.timesAt(e.to); ok {
		e.times, e.to, behind = n, e.to+2, true
	}
	if bracket {
		if e.to >= len(s.toks) || !s.toks[e.to].Is(")") {
			return e, false
		}
		e.to++
	}
	if e.to < len(s.toks) {
		t := &s.toks[e.to]
		e.signed = t.Is(":") || t.Is(".") || t.Is("-") || t.Is("–") || t.Is("—") || t.Is("=")
	}
	return e, behind || before && e.signed
}

// timesAt reads how many pours an amount is of: "x3".
func (s *script) timesAt(i int) (int, bool) {
	if i+1 < len(s.toks) && (s.toks[i].Text == "x" || s.toks[i].Is("×")) && s.toks[i+1].Kind == token.Numeral && s.toks[i+1].Glued {
		n := int(s.toks[i+1].Value)
		return n, n > 1
	}
	return 0, false
}

// list returns the names that stand one behind another from a token on, all with signs between them or all without,
// and where they end.
func (s *script) list(i int, a amount) (names []string, end int) {
	for i < len(s.toks) && s.toks[i].Text != "\n" && (s.toks[i].Text == "of" || s.toks[i].Kind == token.Mark && !s.toks[i].Is("(")) {
		i++
	}
	parted := false
	for {
		to := s.nameAt(i, a.unit)
		if to == i {
			return names, end
		}
		names, end = append(names, s.written(i, to)), to
		for i = to; i < len(s.toks) && s.separates(i) && s.toks[i].Text != "\n"; i++ {
		}
		if len(names) == 1 {
			parted = i > to
		} else if parted != (i > to) {
			return names, end
		}
	}
}

// endsList reports whether a list may end before a token: at a sign, with the text, or before words that say how the
// drink is made. What stands behind a name without a sign may be part of it, or its amount.
func (s *script) endsList(i int) bool {
	return i >= len(s.toks) || s.toks[i].Kind == token.Mark || s.made(i, len(s.toks))
}
