package speech

import (
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
)

// LeastSpoken is the smallest number in words that is hardly ever anything but an amount.
const LeastSpoken = 13

// tens and teens are numbers in words that only a text that is spoken writes.
var (
	teens = map[string]float64{"thirteen": LeastSpoken, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19}
	tens  = map[string]float64{"twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}
)

// InFigures makes numerals of numbers in words: whole ones from one to ninety-nine, and
// the fractions that an amount is said in.
func InFigures(toks []token.Token) []token.Token {
	out := make([]token.Token, 0, len(toks))
	for i := 0; i < len(toks); i++ {
		if a, ok := spokenAt(toks, i); ok && a.sure && (toks[i].Kind == token.Word || a.unit >= 0) && tens[toks[i].Text] == 0 {
			out = a.inFigures(out, toks[i:])
			i += a.takes - 1
			continue
		}
		value, n := hundredsAt(toks, i)
		if n == 0 {
			value, n = wholeAt(toks[i:])
		}
		if n == 0 {
			out = append(out, toks[i])
			continue
		}
		out = append(out, token.Token{Kind: token.Numeral, Start: toks[i].Start, End: toks[i+n-1].End, Value: value, Text: token.Decimals(value)})
		i += n - 1
	}
	return out
}

// wholeAt reads a whole number in words and how many tokens it takes, 0 if none stands
// there. "Five maraschino" is an amount, but "one" without a unit may stand for a drink.
func wholeAt(toks []token.Token) (value float64, n int) {
	if toks[0].Kind != token.Word {
		return 0, 0
	}
	if v, n := foreignAt(toks); n > 0 {
		return v, n
	}
	next, united := "", false
	if len(toks) > 1 && toks[1].Kind == token.Word {
		next, united = toks[1].Text, entry.UnitWordsAt(toks[1:2])
	}
	first, second, hyphened := strings.Cut(toks[0].Text, "-")
	ten, small := tens[first], token.NumberWords[first]
	switch {
	case hyphened && ten > 0 && ones(second) > 0:
		return ten + ones(second), 1
	case hyphened:
		return 0, 0
	case ten > 0 && ones(next) > 0:
		return ten + ones(next), 2
	case ten > 0:
		return ten, 1
	case teens[first] > 0:
		return teens[first], 1
	case small > 1 && next != "", small == 1 && united:
		return small, 1
	}
	return 0, 0
}

// hundredsAt reads "a hundred", "one hundred and twenty" and, behind a word that leads in an
// amount, "say one fifty", at i; and how many tokens that takes, 0 if none stands there. In "the
// patio one thirty mil vodka" the first word is no part of a number.
func hundredsAt(toks []token.Token, i int) (value float64, n int) {
	word := func(k int) string {
		if k >= 0 && k < len(toks) && toks[k].Kind == token.Word {
			return toks[k].Text
		}
		return ""
	}
	hundreds := ones(word(i))
	if word(i) == "a" {
		hundreds = 1
	}
	ten := tens[word(i+1)]
	switch {
	case hundreds == 0:
		return 0, 0
	case ten > 0 && word(i) != "a" && (word(i-1) == "say" || token.LooseWords[word(i-1)]):
		return 100*hundreds + ten, 2
	case word(i+1) != "hundred":
		return 0, 0
	}
	rest := 2
	if word(i+rest) == "and" {
		rest++
	}
	if i+rest < len(toks) {
		if v, n := wholeAt(toks[i+rest:]); n > 0 && v >= 10 {
			return 100*hundreds + v, rest + n
		}
	}
	return 100 * hundreds, 2
}

// spokenLarge reports whether a word is a number from thirteen up, or begins one: "thirty-five".
func spokenLarge(w string) bool {
	ten, second, hyphened := strings.Cut(w, "-")
	return teens[w] > 0 || foreignNumbers[w] >= LeastSpoken || tens[ten] > 0 && (!hyphened || ones(second) > 0)
}

// ones is a word for a number below ten, 0 for any other.
func ones(w string) float64 {
	if v := token.NumberWords[w]; v < 10 {
		return v
	}
	return 0
}
