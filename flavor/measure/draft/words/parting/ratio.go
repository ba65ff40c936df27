package parting

import (
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// Ratio returns the numbers that begin a line of names, and their unit: parts for
// "3:2:1", none for "50/25/20".
func Ratio(toks []token.Token) ([]float64, flavor.Unit) {
	if len(toks) == 0 || toks[0].Kind != token.Ratio && !(toks[0].Kind == token.Numeral && toks[0].Wrong != "") {
		return nil, ""
	}
	sep, unit := ":", flavor.PartUnit
	if toks[0].Kind == token.Numeral {
		sep, unit = "/", ""
	}
	var out []float64
	for _, s := range strings.Split(strings.Trim(strings.TrimSuffix(toks[0].Text, "."), sep), sep) {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil || !(v > 0) {
			return nil, ""
		}
		out = append(out, v)
	}
	if len(out) < 2 || len(out) < 3 && unit != "" {
		return nil, ""
	}
	return out, unit
}

// RatioNames parts the names behind a ratio, as many as it has numbers, and returns
// what follows them; nil if there are not so many.
func RatioNames(toks []token.Token, want int) (names [][]token.Token, rest []token.Token) {
	for len(toks) > 0 && toks[0].Kind == token.Mark {
		toks = toks[1:]
	}
	if at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is(":") }); at > 0 && !slices.ContainsFunc(toks[:at], func(t token.Token) bool { return t.Kind != token.Word }) { // "2:1:1 negroni: ..."
		if names, rest := RatioNames(toks[at+1:], want); names != nil {
			return names, rest
		}
	}
	from := 0
	for i := 0; i <= len(toks); i++ {
		if i < len(toks) && !(toks[i].Is(":") || toks[i].Is("/") || toks[i].Is(",") || toks[i].Is("+") || toks[i].Is("-") && !toks[i].Glued || toks[i].Is("&") || len(names)+1 == want && toks[i].Is(".") && (i+1 == len(toks) || !toks[i+1].Glued)) {
			if toks[i].Kind == token.Numeral {
				return nil, nil
			}
			continue
		}
		if i > from {
			names = append(names, toks[from:i])
		}
		from = i + 1
		if len(names) == want {
			break
		}
	}
	if len(names) != want {
		return nil, nil
	}
	last := names[want-1]
	for i := 1; i < len(last); i++ { // "honey shake up"
		if s := serving.Read(last[i:]); s.Method != "" && len(s.Unknown) == 0 {
			names[want-1] = last[:i]
			return names, append(last[i:len(last):len(last)], toks[min(from, len(toks)):]...)
		}
	}
	return names, toks[min(from, len(toks)):]
}

// topEnd ends a list of numbers whose last name fills the glass up.
const topEnd = "/top"

// leastUnparted is the fewest numbers that part names without signs between them.
const leastUnparted = 3

// RatioFirst reads names with their numbers before them, "60/30/2 dashes rye, sweet vermouth, bitters", and
// returns the unit of each; no names if toks are none of that. What is no jigger measures the last of them.
func RatioFirst(toks []token.Token) (names [][]token.Token, amounts []float64, units []flavor.Unit, rest []token.Token) {
	amounts, u := Ratio(toks)
	if amounts == nil {
		return nil, nil, nil, nil
	}
	behind := toks[1:]
	last, n := entry.UnitAt(behind)
	if n == 0 || last.Jigger() { // each name is read with it
		last, n = u, 0
	}
	names, rest = RatioNames(behind[n:], len(amounts))
	return names, amounts, inUnits(len(amounts), u, last), rest
}

// inUnits are so many units, the last of which may be another.
func inUnits(n int, u, last flavor.Unit) []flavor.Unit {
	out := slices.Repeat([]flavor.Unit{u}, n)
	out[n-1] = last
	return out
}

// RatioLast reads names with their numbers behind them, "rye, lemon, maple 60/20/15
// ml", and returns the place of the numbers, with their units as [RatioFirst] does; no names if toks are none of
// that. The amount 0 is that of the last, which fills the glass up: "vodka lime soda: 50/20/top".
func RatioLast(toks []token.Token) (at int, names [][]token.Token, amounts []float64, units []flavor.Unit, rest []token.Token) {
	for at = 1; at < len(toks); at++ {
		var u flavor.Unit
		amounts, u = ratioWithTop(toks[at:])
		if amounts == nil {
			if toks[at].Kind == token.Numeral {
				break
			}
			continue
		}
		list, left := RatioNames(toks[:at], len(amounts))
		if list == nil || len(left) > 0 {
			if list = wordByWord(toks[:at], len(amounts)); list == nil {
				break
			}
		}
		rest = toks[at+1:]
		last := u
		if unit, n := entry.UnitAt(rest); n > 0 {
			if last, rest = unit, rest[n:]; last.Jigger() {
				u = last
			}
		}
		return at, list, amounts, inUnits(len(amounts), u, last), rest
	}
	return 0, nil, nil, nil, nil
}

// ratioWithTop is [Ratio], with 0 for a "top" at its end.
func ratioWithTop(toks []token.Token) ([]float64, flavor.Unit) {
	numbers, topped := strings.CutSuffix(strings.TrimSuffix(toks[0].Text, "."), topEnd)
	if !topped || toks[0].Kind != token.Numeral {
		return Ratio(toks)
	}
	t := toks[0]
	t.Text = numbers
	amounts, unit := Ratio([]token.Token{t})
	if amounts == nil {
		return nil, ""
	}
	return append(amounts, 0), unit
}

// wordByWord returns names of a word each before a colon, if there are as many as numbers
// follow it: "vodka lime soda: 50/20/top".
func wordByWord(toks []token.Token, want int) [][]token.Token {
	last := len(toks) - 1
	if want < leastUnparted || last != want || !toks[last].Is(":") {
		return nil
	}
	var out [][]token.Token
	for i := range toks[:last] {
		if toks[i].Kind != token.Word {
			return nil
		}
		out = append(out, toks[i:i+1])
	}
	return out
}
