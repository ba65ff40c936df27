package token

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// widest is how many times the lower number of a range the higher is at most, where there
// are spaces around the dash.
const widest = 4

// Between returns the two numbers of an amount that is a range, as they are written: of "3/4-1", "20 to 25",
// "two or three" and "between 20 and 25". It is false for one amount.
func Between(amount string) (low, high string, ok bool) {
	if v, end, number := readNumber(amount, 0); number {
		if from, _ := rangeEnd(amount, end); from > 0 {
			w, to, read := readNumber(amount, from)
			return amount[:end], amount[from:], read && to == len(amount) && w > v
		}
	}
	if !strings.ContainsAny(amount, " \t") {
		return "", "", false
	}
	words := strings.Fields(amount)
	if len(words) == 4 && strings.EqualFold(words[0], "between") {
		words = words[1:]
	}
	if len(words) != 3 || !RangeWord(strings.ToLower(words[1])) && !strings.EqualFold(words[1], "and") {
		return "", "", false
	}
	return words[0], words[2], numeric(words[0]) && numeric(words[2])
}

// numeric reports whether a word is a number, in figures or spelt out.
func numeric(w string) bool {
	_, ok := Value(w)
	return ok
}

// Value returns the number that a word is, in figures or spelt out; ok is false for any other word.
func Value(w string) (v float64, ok bool) {
	if v, end, number := readNumber(w, 0); number && end == len(w) {
		return v, true
	}
	v, ok = NumberWords[strings.ToLower(w)]
	return v, ok && v > 0
}

// bounds are what is written before an amount that is only the end of a range, by their last word.
var bounds = map[string][]string{
	"to": {"up"}, "least": {"at"}, "most": {"at"}, "than": {"more", "less", "fewer"}, "max": {""}, "min": {""}, "maximum": {"", "a"}, "minimum": {"", "a"}, "of": {"maximum", "minimum", "max", "min"},
}

// BoundAt returns how many of some words, at their end, say that the amount behind them is only the end of
// a range, "up to"; 0 if none do.
func BoundAt(toks []Token) int {
	last := len(toks) - 1
	if last < 0 || toks[last].Kind != Word {
		return 0
	}
	for _, before := range bounds[toks[last].Text] {
		switch {
		case before == "" && (last == 0 || toks[last-1].Kind == Mark):
			return 1
		case before != "" && last > 0 && toks[last-1].Text == before:
			return 2
		}
	}
	return 0
}

// Bounded returns the number of an amount that is only the end of a range, "up to 1"; false if it is not.
func Bounded(amount string) (number string, ok bool) {
	if amount == "" || startsNumber(amount, 0) {
		return "", false
	}
	toks := Lex(nil, amount, 0, len(amount))
	last := len(toks) - 1
	return toks[last].Text, toks[last].Kind == Numeral && BoundAt(toks[:last]) == last
}

// RangeWord reports whether a word stands between the numbers of a range.
func RangeWord(w string) bool { return w == "or" || w == "to" }

// titleNumber reports whether the number from i to end closes a title, and a long dash
// parts it from the pours: "Dock No. 3 — 4cl gin". The amount of a range that stands
// behind its name ends the entry: "bitters 2 – 3 dashes".
func titleNumber(s string, i, end, from int) bool {
	before := strings.TrimRight(s[:i], " .#")
	if c, _ := utf8.DecodeLastRuneInString(before); !unicode.IsLetter(c) || !strings.ContainsAny(s[end:from], "—–") || s[end] != ' ' {
		return false
	}
	_, at, ok := readNumber(s, from)
	rest := strings.TrimLeft(s[at:], " ")
	unit := strings.TrimLeftFunc(rest, unicode.IsLetter)
	next, _ := utf8.DecodeRuneInString(strings.TrimLeft(unit, " "))
	return ok && unit != rest && unicode.IsLetter(next)
}

// rangeEnd returns where the second number of a range starts, 0 if none does,
// and whether it follows without a space.
func rangeEnd(s string, i int) (from int, tight bool) {
	if from = slashed(s, i); from > 0 {
		return from, true
	}
	at := skipSpaces(s, i)
	if at > i && strings.HasPrefix(s[at:], "to ") {
		at += len("to ")
		if at < len(s) && startsNumber(s, at) {
			return at, false
		}
		return 0, false
	}
	c, n := utf8.DecodeRuneInString(s[at:])
	if signOf(string(c)) != "-" || n == 0 {
		return 0, false
	}
	from = skipSpaces(s, at+n)
	if from >= len(s) || !startsNumber(s, from) {
		return 0, false
	}
	spaces := at > i || from > at+n
	if at > i && from == at+n {
		return 0, false // "2 -3"
	}
	return from, !spaces
}

// slashed returns where the second of two amounts starts that dots part, or a slash before a decimal without
// its nought: "20..25", ".5/.75"; 0 if none does. A third behind them makes them a list: "2/.75/.5".
func slashed(s string, i int) int {
	from := i + 2
	switch {
	case strings.HasPrefix(s[i:], "/."):
		from = i + 1
	case !strings.HasPrefix(s[i:], ".."):
		return 0
	}
	if from >= len(s) || s[from] != '.' && !Digit(s[from]) {
		return 0
	}
	_, end, ok := readNumber(s, from)
	if !ok || end < len(s) && s[end] == '/' {
		return 0
	}
	return from
}
