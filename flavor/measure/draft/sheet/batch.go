package sheet

import (
	"strings"

	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/token"
)

// leastColumn is the fewest lines that prove a column of amounts for a batch.
const leastColumn = 2

// BatchColumn reports whether the numbers in brackets at the ends of the lines of a text are
// for a batch, "Armagnac 40 (400)": each is the same whole multiple of the amount before it, in
// the same unit. Bare amounts have to be so large that they are millilitres, since "4 (40)" may
// be centilitres and millilitres of one drink.
func BatchColumn(text string) bool {
	var times float64
	lines, bare, most := 0, false, 0.0
	for line := range strings.Lines(text) {
		if !strings.HasSuffix(strings.TrimSpace(line), ")") {
			continue
		}
		one, many, unit, ok := oneAndMany(token.Lex(nil, line, 0, len(line)))
		if !ok {
			continue
		}
		k := many / one
		if k < 2 || k != float64(int(k)) || lines > 0 && k != times {
			return false
		}
		times, lines, bare, most = k, lines+1, bare || !unit, max(most, one)
	}
	return lines >= leastColumn && !(bare && most < leastBareColumn)
}

// leastBareColumn is the number from which on an amount without a unit is millilitres; common practice.
const leastBareColumn = 15

// oneAndMany returns the amounts of a line that ends in "40 (400)", "40 ml (400)" or "40 ml (400 ml)",
// and whether the first has a unit.
func oneAndMany(toks []token.Token) (one, many float64, unit, ok bool) {
	open := AmountInBrackets(toks)
	if open < 2 {
		return 0, 0, false, false
	}
	inside := toks[open+1 : len(toks)-1]
	u, n := entry.UnitAt(inside[1:])
	at := open - 1
	if toks[at].Kind != token.Numeral {
		at--
	}
	if at < 1 || toks[at].Kind != token.Numeral || toks[at].Wrong != "" || !(toks[at].Value > 0) || n != len(inside)-1 {
		return 0, 0, false, false
	}
	v, m := entry.UnitAt(toks[at+1 : open])
	if m != open-at-1 || n > 0 && u != v || m > 0 && !v.Jigger() {
		return 0, 0, false, false
	}
	return toks[at].Value, inside[0].Value, m > 0, true
}

// AmountInBrackets returns where the brackets open in which a line ends in an amount, 0 if it does not.
func AmountInBrackets(toks []token.Token) int {
	last := len(toks) - 1
	if last < 3 || !toks[last].Is(")") {
		return 0
	}
	for i := last - 1; i > 0; i-- {
		if toks[i].Is("(") {
			if toks[i+1].Kind != token.Numeral || toks[i+1].Wrong != "" {
				return 0
			}
			if _, n := entry.UnitAt(toks[i+2 : last]); n != last-i-2 {
				return 0
			}
			return i
		}
	}
	return 0
}
