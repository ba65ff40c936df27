// Package speech reads what is said rather than written: amounts in words, the talk before
// the first pour, and words that take back those before them.
package speech

import (
	"math"
	"slices"
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// What is dictated, or typed as it is said: amounts in words without a sign between one
// pour and the next, and a few words before the first of them.

// leastSpoken is how many measures in words make a line one that is spoken.
const leastSpoken = 2

// articles stand between the words of one amount: "one and a half".
var articles = vocabulary.Words(`a an and`)

// Article reports whether a word may stand between the words of one amount, as the two in
// the middle of "one and a half".
func Article(w string) bool { return articles.Has(w) }

// Dictated writes the amounts of a line that is spoken as figures, so that the line is
// parted as one in figures is; any other line it leaves alone.
func Dictated(toks []token.Token) []token.Token {
	found, figures, counted := 0, 0, 0
	for i := 0; i < len(toks); i++ {
		switch a, ok := spokenAt(toks, i); {
		case ok && a.sure:
			found++
			if i > 0 && toks[i-1].Kind == token.Mark && i+a.takes+1 == len(toks) { // "bourbon: sixty ml"
				found++
			}
			i += a.takes - 1
		case ok && counts(toks, i, a.takes):
			counted++
		case toks[i].Kind == token.Numeral:
			figures++
		}
	}
	if found == 0 || found+min(counted, 1) < leastSpoken && figures == 0 {
		return toks
	}
	out := make([]token.Token, 0, len(toks))
	for i := 0; i < len(toks); i++ {
		a, ok := spokenAt(toks, i)
		if !ok || !a.sure && (figures > 0 || !counts(toks, i, a.takes)) {
			out = append(out, toks[i])
			continue
		}
		out = a.inFigures(out, toks[i:])
		i += a.takes - 1
	}
	return out
}

// inFigures adds the numeral of an amount in words, with which toks begin, and its unit
// where that stands amid it.
func (a *saying) inFigures(out, toks []token.Token) []token.Token {
	last := &toks[a.takes-1]
	out = append(out, token.Token{Kind: token.Numeral, Start: toks[0].Start, End: last.End, Value: a.value, Text: token.Decimals(a.value)})
	if a.unit >= 0 { // "an ounce and a half"
		unit := toks[a.unit]
		unit.Start, unit.End = last.End, last.End
		out = append(out, unit)
	}
	return out
}

// saying is an amount in words.
type saying struct {
	value float64
	takes int  // tokens
	unit  int  // which of its tokens is its unit, where that stands amid it; below 0 else
	sure  bool // it is a fraction, or a unit follows: no word of a name
}

// words gives tokens as words: empty for a sign, a number, and behind the last.
type words []token.Token

func (w words) at(k int) string {
	if k < len(w) && w[k].Kind == token.Word {
		return w[k].Text
	}
	return ""
}

// spokenAt reads an amount in words at i.
func spokenAt(toks []token.Token, i int) (saying, bool) {
	w := words(toks)
	if w.inOther(i) {
		return saying{}, false
	}
	a := saying{unit: -1}
	n := i
	if w.at(n) == "a" || w.at(n) == "an" {
		if i > 0 && toks[i-1].Text == "of" { // "3/4 of an ounce"
			return saying{}, false
		}
		n++
	}
	if a.aroundUnit(w, i, n) {
		return a, true
	}
	n, ok := w.number(&a, i, n)
	if !ok {
		return saying{}, false
	}
	for w.at(n) == "of" || w.at(n) == "the" && w.at(n-1) == "of" || (w.at(n) == "a" || w.at(n) == "an") && w.measured(n+1) {
		n++
	}
	a.sure = a.sure || w.measured(n)
	if a.value <= 0 || n >= len(toks) {
		return saying{}, false
	}
	a.takes = n - i
	return a, true
}

// aroundUnit reads an amount at i whose article ends at n and whose unit stands before its fraction: "an ounce
// and a half", "two ounces and three quarters". It is false if none stands there.
func (a *saying) aroundUnit(w words, i, n int) bool {
	whole, unit := 1.0, n
	if n == i && !entry.UnitWordsAt(w[i:i+1]) { // else "ounce and a half"
		switch t := &w[i]; {
		case token.NumberWords[w.at(i)] > 0:
			whole = token.NumberWords[w.at(i)]
		case t.Kind == token.Numeral && t.Wrong == "" && t.Value == math.Trunc(t.Value):
			whole = t.Value
		default:
			return false
		}
		unit = i + 1
	}
	if unit == i && i > 0 && (w[i-1].Kind == token.Numeral || token.NumberWords[w.at(i-1)] > 0) {
		return false
	}
	if unit+2 >= len(w) || !entry.UnitWordsAt(w[unit:unit+1]) || w.at(unit+1) != "and" {
		return false
	}
	part, end := token.FractionWords[w.at(unit+2)], unit+3
	if part == 0 {
		times := token.NumberWords[w.at(unit+2)]
		if w.at(unit+2) == "a" {
			times = 1
		}
		part, end = times*token.FractionWords[strings.TrimSuffix(w.at(unit+3), "s")], unit+4
	}
	if !(part > 0 && part < 1) || entry.UnitWordsAt(w[min(end, len(w)):]) { // "gin 2 oz and half oz lemon"
		return false
	}
	if unit > n && i > 0 && w[i-1].Kind == token.Word && w.at(end) != "" && w.at(end) != "of" { // "gin 2 oz and a half lemon" may be two pours
		return false
	}
	a.value, a.takes, a.unit, a.sure = whole+part, end-i, unit-i, true
	return true
}

// measured reports whether a unit, or a bar's own measure, stands at i.
func (w words) measured(i int) bool {
	return entry.UnitWordsAt(w[min(i, len(w)):]) || gauge.Own(w.at(i)) != ""
}

// inOther reports whether a word at i is part of what is no amount, or of one that began before it.
func (w words) inOther(i int) bool {
	if i > 1 && w[i-1].Text == "and" && w[i-2].Kind == token.Numeral || i > 0 && articles.Has(w[i-1].Text) && w[i-1].Text != "and" { // "1 and a half"
		return true
	}
	if i > 0 && w[i-1].Is("&") && token.FractionWords[w.at(i)] > 0 { // "half & half"
		return true
	}
	if w.at(i) != "one" && w.at(i) != "single" {
		return false
	}
	t, n := serving.TermAt([]string{w.at(i), w.at(i + 1)})
	return n > 1 && t.Ice // "one cube"
}

// number reads the number of an amount that begins at i, and whose article ends at n, into a;
// it returns where the number ends.
func (w words) number(a *saying, i, n int) (int, bool) {
	whole, isWhole := token.NumberWords[w.at(n)]
	isWhole = isWhole && n == i
	if value, end := w.mixed(whole, n); isWhole && end > n {
		a.value, a.sure = value, true
		return end, true
	}
	if end, ok := w.pointed(a, i, n, whole, isWhole); ok {
		return end, true
	}
	switch part := token.FractionWords[w.at(n)]; {
	case part > 0 && w.noFraction(n):
		return n, false
	case part > 0 && w.at(n+1) != "and" && !(n+1 < len(w) && w[n+1].Kind == token.Mark):
		a.value, a.sure = part, true
		return n + 1, true
	case isWhole:
		a.value = whole
		return n + 1, true
	case n == i && w[i].Kind == token.Word && spokenLarge(w.at(i)):
		return w.large(a, i)
	case n > i && entry.UnitWordsAt(w[n:]): // "a dash of"
		a.value = 1
		return n, true
	}
	return n, false
}

// pointed reads a number with a decimal point in words at n into a, "point seven five", "two point five"
// and, in a text that says points, "one five"; false if none stands there.
func (w words) pointed(a *saying, i, n int, whole float64, isWhole bool) (int, bool) {
	from := 0
	switch {
	case w.at(n) == "point" && digits[w.at(n+1)] > "":
		whole, from = 0, n+1
	case isWhole && w.at(n+1) == "point" && digits[w.at(n+2)] > "":
		from = n + 2
	case n == i && digits[w.at(n)] > "" && digits[w.at(n+1)] > "" && whole < 10 && dictates(w): // "one five bourbon point seven five lemon"
		from = n + 1
	default:
		return n, false
	}
	f, end := decimals(w.at, from)
	a.value, a.sure = whole+f, true
	return end, true
}

// large reads a number from thirteen up at i into a: "forty five of the blanco".
func (w words) large(a *saying, i int) (int, bool) {
	value, takes := wholeAt(w[i:])
	if takes == 0 {
		return i, false
	}
	end := i + takes
	a.value, a.sure = value, w.at(end) != "" && !entry.AgeWords[w.at(end)] && !serving.DegreeWords[w.at(end)]
	return end, true
}

// mixed reads a whole number in words at n with the fraction behind it, "three quarters", "one
// and a half", and returns where that ends; n if there is none.
func (w words) mixed(whole float64, n int) (float64, int) {
	switch part := token.FractionWords[strings.TrimSuffix(w.at(n+1), "s")]; {
	case part > 0 && w.at(n+1) != "halves":
		return whole * part, n + 2
	case w.at(n+1) != "and":
	case w.at(n+2) == "a" && token.FractionWords[w.at(n+3)] > 0:
		return whole + token.FractionWords[w.at(n+3)], n + 4
	case w.at(n+2) == "three" && strings.HasPrefix(w.at(n+3), "quarter"):
		return whole + 0.75, n + 4
	}
	return 0, n
}

// noFraction reports whether the word for a fraction at n is none of an amount: "half a lime",
// "half lager 150 ml", "half wheel".
func (w words) noFraction(n int) bool {
	switch next := w.at(n + 1); {
	case (next == "a" || next == "an") && !entry.UnitWordsAt(w[min(n+2, len(w)):]):
		return true
	case w.at(n) == "half" && measuredBehind(w[n+1:]):
		return true
	default:
		return laidHalf.Has(next)
	}
}

// measuredBehind reports whether words are a name with its amount and its unit behind it,
// up to a sign.
func measuredBehind(toks []token.Token) bool {
	n := 0
	for n < len(toks) && toks[n].Kind == token.Word && !entry.IsUnit(&toks[n]) {
		n++
	}
	if n == 0 || n+1 >= len(toks) || toks[n].Kind != token.Numeral {
		return false
	}
	_, unit := entry.UnitAt(toks[n+1:])
	return unit > 0 && (n+1+unit == len(toks) || toks[n+1+unit].Kind == token.Mark)
}

// LaidHalf reports whether a word is one of what is laid on a drink by halves: "half wheel".
func LaidHalf(w string) bool { return laidHalf.Has(w) }

var laidHalf = vocabulary.Words(`wheel wheels slice slices moon moons rim salt sugar`)

// dictates reports whether a line says "point" before a figure in words.
func dictates(toks []token.Token) bool {
	for i := range toks[:len(toks)-1] {
		if toks[i].Text == "point" && digits[toks[i+1].Text] > "" {
			return true
		}
	}
	return false
}

// digits are the words for the figures behind a decimal point.
var digits = map[string]string{"zero": "0", "oh": "0", "o": "0", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9"}

// decimals reads words for figures behind a point, and returns where they end.
func decimals(at func(int) string, n int) (value float64, end int) {
	place := 0.1
	for ; digits[at(n)] > ""; n++ {
		value += place * float64(digits[at(n)][0]-'0')
		place /= 10
	}
	return value, n
}

// counts reports whether a whole number in words counts what follows it, and is no word
// of a sentence: "six mint leaves", but not "this one is" nor "for two".
func counts(toks []token.Token, i, takes int) bool {
	if i > 0 && (token.Joins[toks[i-1].Text] && toks[i-1].Text != "and" && toks[i-1].Text != "with" || chatter.Has(toks[i-1].Text) && toks[i].Text == "one") {
		return false
	}
	next := i + takes
	return next < len(toks) && toks[next].Kind == token.Word && !chatter.Has(toks[next].Text) && !serving.Fillers[toks[next].Text]
}

// OneOfEach writes the one that goes without saying before a unit of each of a list: "oz
// each gin, lemon, simple". Several, "dashes each", do not say how many.
func OneOfEach(toks []token.Token) []token.Token {
	for i := 0; i+1 < len(toks); i++ {
		if toks[i+1].Text != "each" || !entry.IsUnit(&toks[i]) || strings.HasSuffix(toks[i].Text, "s") || i > 0 && toks[i-1].Kind != token.Mark {
			continue
		}
		one := token.Token{Kind: token.Numeral, Start: toks[i].Start, End: toks[i].Start, Value: 1, Text: "1"}
		return slices.Concat(toks[:i], []token.Token{one}, toks[i:])
	}
	return toks
}
