package draft

import (
	"strconv"
	"strings"

	"counterpour/flavor"
)

// ratioOf returns the numbers that begin a line of names, and their unit: parts for
// "3:2:1", none for "50/25/20".
func ratioOf(toks []token) ([]float64, flavor.Unit) {
	if len(toks) < 2 || toks[0].kind != ratio && !(toks[0].kind == numeral && toks[0].wrong != "") {
		return nil, ""
	}
	sep, unit := ":", flavor.PartUnit
	if toks[0].kind == numeral {
		sep, unit = "/", ""
	}
	var out []float64
	for _, s := range strings.Split(strings.Trim(toks[0].text, sep), sep) {
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

// ratioNames parts the names behind a ratio, as many as it has numbers, and returns
// what follows them; nil if there are not so many.
func ratioNames(toks []token, want int) (names [][]token, rest []token) {
	for len(toks) > 0 && toks[0].kind == mark {
		toks = toks[1:]
	}
	from := 0
	for i := 0; i <= len(toks); i++ {
		if i < len(toks) && !(toks[i].is(":") || toks[i].is("/") || toks[i].is(",") || toks[i].is("+") || toks[i].is("-") && !toks[i].glued || toks[i].is("&")) {
			if toks[i].kind == numeral {
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
		if s := readServing(last[i:]); s.method != "" && len(s.unknown) == 0 {
			names[want-1] = last[:i]
			return names, append(last[i:len(last):len(last)], toks[min(from, len(toks)):]...)
		}
	}
	return names, toks[min(from, len(toks)):]
}

// ratioList takes "3:2:1 white rum, lime, simple" as a pour for each number, and
// returns what follows.
func (r *reader) ratioList(n int, toks []token) []token {
	amounts, unit := ratioOf(toks)
	if amounts == nil {
		return toks
	}
	names, rest := ratioNames(toks[1:], len(amounts))
	if names == nil {
		return toks
	}
	for i, name := range names {
		p := pour{of: name, shape: shapePour, amount: true}
		p.Amount, p.Unit, p.AmountAt, p.shared = amounts[i], unit, Span{toks[0].start, toks[0].end}, true
		p.figures = true
		p.takeNameOnly(r, name)
		r.takePour(n, Span{name[0].start, name[len(name)-1].end}, &p, false)
	}
	return trimMarks(rest)
}
