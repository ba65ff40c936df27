package pattern

import (
	"regexp/syntax"
	"strings"
	"unicode"
	"unicode/utf8"
)

// need is several strings in lower case of which each match holds one.
type need []string

// fewRunes is how many runes a class may list to be a need: one of many is in most texts.
const fewRunes = 4

// needsOf returns what each match of an expression holds, as far as its tree tells.
func needsOf(t *syntax.Regexp) []need {
	switch t.Op {
	case syntax.OpLiteral:
		return literal(t)
	case syntax.OpCharClass:
		return class(t)
	case syntax.OpCapture, syntax.OpPlus:
		return needsOf(t.Sub[0])
	case syntax.OpRepeat:
		if t.Min > 0 {
			return needsOf(t.Sub[0])
		}
	case syntax.OpConcat:
		var out []need
		for _, s := range t.Sub {
			out = append(out, needsOf(s)...)
		}
		return out
	case syntax.OpAlternate:
		return alternate(t)
	}
	return nil
}

// literal returns the pieces of a literal that are written in one way but for the case of
// Latin letters.
func literal(t *syntax.Regexp) (out []need) {
	folds := t.Flags&syntax.FoldCase != 0
	var piece strings.Builder
	end := func() {
		if piece.Len() > 0 {
			out = append(out, need{piece.String()})
		}
		piece.Reset()
	}
	for _, r := range t.Rune {
		switch {
		case r < utf8.RuneSelf:
			piece.WriteRune(unicode.ToLower(r))
		case folds && unicode.SimpleFold(r) != r, r == utf8.RuneError: // which stands for a byte that is no rune
			end()
		default:
			piece.WriteRune(r)
		}
	}
	end()
	return out
}

// class returns the runes of a class that lists few.
func class(t *syntax.Regexp) []need {
	var n need
	for i := 0; i < len(t.Rune); i += 2 {
		for r := t.Rune[i]; r <= t.Rune[i+1]; r++ {
			if len(n) == fewRunes {
				return nil
			}
			if r == utf8.RuneError {
				return nil
			}
			if r < utf8.RuneSelf {
				n = append(n, string(unicode.ToLower(r)))
			} else {
				n = append(n, string(r))
			}
		}
	}
	if len(n) == 0 {
		return nil
	}
	return []need{n}
}

// alternate returns one need of each way that an expression can match, in one.
func alternate(t *syntax.Regexp) []need {
	var out need
	for _, s := range t.Sub {
		best := need(nil)
		for _, n := range needsOf(s) {
			if best == nil || n.before(best) {
				best = n
			}
		}
		if best == nil {
			return nil
		}
		out = append(out, best...)
	}
	return []need{out}
}

// before reports whether a need tells more texts than another: its strings are longer, or
// as long and fewer.
func (n need) before(o need) bool {
	a, b := n.shortest(), o.shortest()
	return a > b || a == b && len(n) < len(o)
}

// shortest returns the bytes of the shortest string of a need.
func (n need) shortest() int {
	least := len(n[0])
	for _, s := range n {
		least = min(least, len(s))
	}
	return least
}

// metBy reports whether a text with these letters may hold one of the strings.
func (n need) metBy(l *letters) bool {
	for _, s := range n {
		if l.mayHold(s) {
			return true
		}
	}
	return false
}

// letters are the bytes that a text holds, and which of them stand beside each other by the
// five low bits of both, Latin letters in lower case.
type letters struct {
	bytes [4]uint64
	pairs [16]uint64
}

// read notes the bytes of a text. It is false if one of them folds to a Latin letter that it
// is not: the long s and the sign of the kelvin.
func (l *letters) read(text string) bool {
	before := byte(0)
	for i := range len(text) {
		c := text[i]
		if 'A' <= c && c <= 'Z' {
			c += 'a' - 'A'
		}
		if before == 0xc5 && c == 0xbf || before == 0x84 && c == 0xaa {
			return false
		}
		l.bytes[c>>6] |= 1 << (c & 63)
		p := pair(before, c)
		l.pairs[p>>6] |= 1 << (p & 63)
		before = c
	}
	return true
}

// pair is the place of two bytes beside each other.
func pair(a, b byte) uint { return uint(a&31)<<5 | uint(b&31) }

// mayHold reports whether the text may hold a string in lower case.
func (l *letters) mayHold(s string) bool {
	for i := range len(s) {
		if c := s[i]; l.bytes[c>>6]&(1<<(c&63)) == 0 {
			return false
		}
		if i == 0 {
			continue
		}
		if p := pair(s[i-1], s[i]); l.pairs[p>>6]&(1<<(p&63)) == 0 {
			return false
		}
	}
	return true
}
