package sheet

import (
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
)

// leastColumn is the fewest lines that prove a column of amounts for a batch.
const leastColumn = 2

// BatchColumn reports whether the second amounts in the lines of a text are for a batch,
// "Armagnac 40 (400)", "45 ml / 900 ml gin": each is the same whole multiple of the amount before
// it. Bare amounts have to be so large that they are millilitres, or the multiple to be none
// between two units: "4 (40)" may be centilitres and millilitres of one drink.
func BatchColumn(text string) bool {
	var times float64
	lines, bare, most := 0, false, 0.0
	var toks []token.Token
	for line := range strings.Lines(text) {
		toks = token.Lex(toks[:0], line, 0, len(line))
		two, ok := twoAmounts(toks)
		if !ok {
			continue
		}
		k, unit := two.times()
		if k == 0 {
			continue
		}
		if math.Round(k) < 2 || math.Abs(k-math.Round(k)) > rounded*k || lines > 0 && math.Round(k) != times {
			return false
		}
		times, lines, bare, most = math.Round(k), lines+1, bare || !unit, max(most, two.one.Value)
	}
	between := times == 10 || times >= 25 && times <= 33 // centilitres and ounces, in millilitres
	return lines >= leastColumn && !(bare && most < leastBareColumn && between)
}

// leastBareColumn is the number from which on an amount without a unit is millilitres; common practice.
const leastBareColumn = 15

// rounded is how far the amount of a batch may lie off the multiple, as a share: it is rounded.
const rounded = 0.02

// two are the amounts of a line that states one behind another.
type two struct {
	one, many token.Token
	of, ofAll flavor.Unit // empty where none is written
	from, to  int         // the tokens of the second, with the sign before it
}

// times is how many times the first amount the second is, 0 if they cannot be compared; unit
// tells whether the first has one.
func (w *two) times() (k float64, unit bool) {
	k = w.many.Value / w.one.Value
	switch {
	case w.ofAll == "" || w.of == w.ofAll:
		return k, w.of != ""
	case !w.of.Jigger() || !w.ofAll.Jigger():
		return 0, true
	}
	a, _ := measure.MLPerUnit(w.of, nil)
	b, _ := measure.MLPerUnit(w.ofAll, nil)
	return k * b / a, true
}

// betweenAmounts are signs between the amount for one drink and that for a batch.
const betweenAmounts = "(/|,;=→>"

// twoAmounts finds the two amounts of a line that names one pour, before them or behind.
func twoAmounts(toks []token.Token) (two, bool) {
	for len(toks) > 0 && toks[len(toks)-1].Kind == token.Mark && !toks[len(toks)-1].Is(")") {
		toks = toks[:len(toks)-1]
	}
	for i := 0; i+1 < len(toks); i++ {
		if !stated(&toks[i]) {
			continue
		}
		w := two{one: toks[i]}
		k := i + 1
		u, n := entry.UnitAt(toks[k:])
		w.of, k = u, k+n
		w.from = k
		for k < len(toks) && toks[k].Kind == token.Mark && strings.Contains(betweenAmounts, toks[k].Text) {
			k++
		}
		if k >= len(toks) || !stated(&toks[k]) || k == w.from && n == 0 {
			continue
		}
		w.many = toks[k]
		u, n = entry.UnitAt(toks[k+1:])
		w.ofAll, k = u, k+1+n
		if k < len(toks) && toks[w.from].Is("(") && toks[k].Is(")") {
			k++
		}
		w.to = k
		before, behind := named(toks[:i]), named(toks[k:])
		return w, before != behind
	}
	return two{}, false
}

// named reports whether tokens are words and nothing that counts.
func named(toks []token.Token) bool {
	words := false
	for i := range toks {
		if toks[i].Kind == token.Numeral {
			return false
		}
		words = words || toks[i].Kind == token.Word
	}
	return words
}

// stated reports whether a token is an amount.
func stated(t *token.Token) bool { return t.Kind == token.Numeral && t.Wrong == "" && t.Value > 0 }

// WithoutBatch drops the amount of a batch from a line of a text with a column for one, and
// returns where that stands; an empty stretch if it states none.
func WithoutBatch(toks []token.Token) ([]token.Token, entry.Span) {
	w, ok := twoAmounts(toks)
	if !ok {
		return toks, entry.Span{}
	}
	out := append(toks[:w.from:w.from], toks[w.to:]...)
	return out, entry.Span{Start: toks[w.from].Start, End: toks[w.to-1].End}
}
