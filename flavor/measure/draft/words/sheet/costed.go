package sheet

import (
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// costHead is what a column of costs is called that nobody has headed.
const costHead = "cost"

// cost is a sum of money with its cents.
var cost = pattern.Of(`^\p{Sc}? ?\d*[.,]\d\d ?\p{Sc}?$`)

// ofCosts are words of which a sheet of costs has one.
var ofCosts = token.Words(`cost costs costing price sell sells gp margin`)

// Costed returns the table of a sheet of costs without a head, "gin;50;1.20", and is false if a
// text is none: it speaks of costs, and two lines at least hold a name, its amount and a sum.
func Costed(text string) (*Table, bool) {
	if !strings.ContainsAny(text, tab+stroke+semi) || !speaksOfCosts(text) {
		return nil, false
	}
	sign, rows, from := "", 0, 0
	for line := range strings.SplitSeq(text, "\n") {
		at := entry.Span{Start: from, End: from + len(line)}
		from = at.End + 1
		s := signOf(line)
		if s != tab && s != stroke && s != semi {
			continue
		}
		in := cells(text, at, s)
		if len(in) != costedColumns || !costed(text, in) {
			continue
		}
		if sign != "" && s != sign {
			return nil, false
		}
		sign = s
		rows++
	}
	if rows < leastColumn {
		return nil, false
	}
	t := &Table{sign: sign, even: true, columns: []column{{role: name}, {role: amount}, {role: apart, head: costHead}}}
	t.pair()
	return t, true
}

// costedColumns are those of a sheet of costs: the name, the amount and the cost.
const costedColumns = 3

// costed reports whether three cells are a name, its amount and a sum.
func costed(text string, in []entry.Span) bool {
	amount := token.Lex(nil, text, in[1].Start, in[1].End)
	named := token.Lex(nil, text, in[0].Start, in[0].End)
	return len(named) > 0 && !entry.StartsAmount(named) && len(amount) > 0 && entry.AmountAt(amount) == len(amount) &&
		cost.MatchString(text[in[2].Start:in[2].End])
}

func speaksOfCosts(text string) bool {
	for _, w := range wordsOfHead(text) {
		if ofCosts[w] {
			return true
		}
	}
	return false
}
