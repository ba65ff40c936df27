package correcting

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// clause is a stretch of a text between two signs.
type clause struct {
	toks          []token.Token
	before, after string // the signs around it; "\n" for the end of a line, "" where words alone part it
}

func (c *clause) start() int { return c.toks[0].Start }
func (c *clause) end() int   { return c.toks[len(c.toks)-1].End }

// clausesOf parts a text at its signs, and around words that take something back.
func clausesOf(text string) []clause {
	var out []clause
	at := 0
	for line := range strings.SplitSeq(text, "\n") {
		sign := "\n"
		var toks []token.Token
		flush := func(next string) {
			if len(toks) > 0 {
				out = append(out, clause{toks: toks, before: sign, after: next})
				toks, sign = nil, ""
			}
			if next != "" || sign == "" {
				sign = strings.TrimSpace(sign + next)
			}
		}
		all := speech.InFigures(token.Lex(nil, text, at, at+len(line)))
		for i := 0; i < len(all); i++ {
			t := all[i]
			if n := arrowAt(all, i); n > 0 && i+n < len(all) && all[i+n].Kind == token.Numeral && len(amountsIn(toks)) > 0 { // "3 cl --> 2 cl"
				flush(arrow)
				i += n - 1
				continue
			}
			if parts(text, all, i) || t.Is(".") && len(toks) > 1 && toks[0].Kind == token.Word { // "lemon 20 ml. Rocks?"
				flush(t.Text)
				continue
			}
			if n := speech.TakenBackAt(all, i); n > 0 {
				flush("")
				for n > 1 && all[i+n-1].Kind == token.Mark { // the pause behind them
					n--
				}
				toks = append(toks, all[i:i+n]...)
				i += n - 1
				if i+1 < len(all) && !parts(text, all, i+1) {
					flush("")
				}
				continue
			}
			if len(toks) > 0 && (t.Text == "but" || thinksAgain(all, i, toks) || breaksOff(all, i, toks) || t.Text == "not" && (len(amountsIn(toks)) == 0 || i+1 < len(all) && all[i+1].Kind == token.Numeral)) {
				flush("")
			}
			toks = append(toks, t)
		}
		flush("\n")
		at += len(line) + 1
	}
	return out
}

// thinksAgain reports whether a word at i, with an amount behind it, takes back that of the tokens
// before it: "2 dashes bitters hmm 4".
func thinksAgain(all []token.Token, i int, before []token.Token) bool {
	return sure.Has(all[i].Text) && i+1 < len(all) && all[i+1].Kind == token.Numeral && len(amountsIn(before)) > 0
}

// breaksOff reports whether a word at i, with a sign behind it, takes back the amount of the tokens before it:
// "60 lager no... use 180 lager".
func breaksOff(all []token.Token, i int, before []token.Token) bool {
	return sure.Has(all[i].Text) && i+1 < len(all) && all[i+1].Kind == token.Mark && len(amountsIn(before)) > 0
}

// shortened are units that a stop may stand behind.
var shortened = vocabulary.Words(`oz ml cl tsp tbsp bsp fl pt ds dr`)

// parts reports whether a sign parts two clauses.
func parts(text string, toks []token.Token, i int) bool {
	t := &toks[i]
	if t.Kind != token.Mark {
		return false
	}
	switch t.Text {
	case ",", ";", ":", "(", ")", "[", "]", "?", "!", "…", "|", "+", "•", "/":
		return true
	case ".": // "2 oz. gin"
		return !(t.Glued && i > 0 && shortened.Has(toks[i-1].Text) && i+1 < len(toks) && toks[i+1].Kind == token.Word)
	case "-":
		return !t.Glued || text[t.Start:t.End] != "-"
	}
	return false
}

// pour is an amount and what stands beside it in its clause.
type pour struct {
	clause     int
	amount     entry.Span // of the number alone
	unitAt     entry.Span // empty if it has none
	value      float64
	unit       flavor.Unit
	name       []token.Token
	start, end int
	alone      bool // no other pour stands in its clause
}

// leastClipped is the fewest letters of a word that is clipped: "dem" of demerara.
const leastClipped = 3

// has reports whether every word is one of the name of a pour.
func (p *pour) has(words []token.Token) bool {
	for i := range words {
		found := false
		for k := range p.name {
			found = found || p.name[k].Text == words[i].Text || len(words[i].Text) >= leastClipped && strings.HasPrefix(p.name[k].Text, words[i].Text)
		}
		if !found {
			return false
		}
	}
	return len(words) > 0
}

// amountOf is an amount among tokens.
type amountOf struct {
	from, to   int // tokens
	at, unitAt entry.Span
	value      float64
	unit       flavor.Unit
}

// amountsIn lists the amounts among tokens, in order.
func amountsIn(toks []token.Token) []amountOf {
	var out []amountOf
	for i := 0; i < len(toks); i++ {
		if toks[i].Kind != token.Numeral || toks[i].Wrong != "" {
			continue
		}
		value, n := entry.AmountOf(toks[i:])
		if n == 0 {
			continue
		}
		a := amountOf{from: i, to: i + n, value: value, at: entry.Span{Start: toks[i].Start, End: toks[i+n-1].End}}
		if u, k := entry.UnitAt(toks[a.to:]); k > 0 {
			a.unit, a.unitAt = u, entry.Span{Start: toks[a.to].Start, End: toks[a.to+k-1].End}
			a.to += k
		}
		if a.to < len(toks) && toks[a.to].Text == "of" {
			a.to++
		}
		out = append(out, a)
		i = a.to - 1
	}
	return out
}

// poursOf lists the pours of a clause, whose number is n; none if it cannot be told whether the names
// stand before their amounts or behind them.
func poursOf(c *clause, n int) []pour {
	all := amountsIn(c.toks)
	if len(all) > 1 && all[0].from > 0 && all[len(all)-1].to < len(c.toks) {
		return nil
	}
	var out []pour
	for i, a := range all {
		p := pour{clause: n, amount: a.at, unitAt: a.unitAt, value: a.value, unit: a.unit, alone: len(all) == 1}
		from, to := 0, len(c.toks)
		if i > 0 {
			from = all[i-1].to
		}
		if i+1 < len(all) {
			to = all[i+1].from
		}
		switch first := all[0].from == 0; {
		case len(all) == 1 && a.to == len(c.toks):
			p.name = c.toks[:a.from]
		case len(all) == 1 && a.from == 0, len(all) > 1 && first:
			p.name = c.toks[a.to:to]
		case len(all) == 1: // "I first had honey 5 in it"
			p.name = c.toks[:a.from]
		default:
			p.name = c.toks[from:a.from]
		}
		if len(p.name) == 0 || before.Has(p.name[0].Text) {
			continue
		}
		p.start = min(a.at.Start, p.name[0].Start)
		p.end = max(c.toks[a.to-1].End, p.name[len(p.name)-1].End)
		out = append(out, p)
	}
	return out
}

// wordsIn is how many words clauses hold.
func wordsIn(clauses []clause) int {
	n := 0
	for _, c := range clauses {
		for i := range c.toks {
			if c.toks[i].Kind == token.Word {
				n++
			}
		}
	}
	return n
}
