package speech

import (
	"slices"
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Who tells of a change says between a name and its amount what becomes of it: "lemon stays at
// 20", "rye goes 60 to 55", "lime 25 not 20".
var (
	stays = vocabulary.Words(`stays stay remains remain keeps`)
	goes  = vocabulary.Words(`goes went going drops dropped moves moved comes changes changed`)
	ways  = vocabulary.Words(`down up from back`)
)

// Changed leaves of what tells of a change the amount that counts, and returns what was left
// out, as written.
func Changed(text string, toks []token.Token) (out []token.Token, was []string) {
	out = toks
	for i := 1; i+1 < len(out); i++ {
		if from, to, ranged := strings.Cut(out[i+1].Text, " to "); ranged && goes.Has(out[i].Text) && out[i].Kind == token.Word { // "goes 15 to 20" is no range
			was = append(was, out[i].Text+" "+from+" to")
			out = slices.Concat(out[:i], token.Lex(nil, text, out[i+1].End-len(to), out[i+1].End), out[i+2:])
			continue
		}
		from, to := changeAt(out, i)
		if to == 0 {
			continue
		}
		was = append(was, text[out[from].Start:out[to-1].End])
		out = slices.Concat(out[:from], out[to:])
	}
	return out, was
}

// changeAt returns the tokens at i that leave another amount, or none, behind them or before
// them; 0 and 0 if there are none.
func changeAt(toks []token.Token, i int) (from, to int) {
	switch t, named := &toks[i], toks[i-1].Kind == token.Word; {
	case named && stays.Has(t.Text):
		to = staysTo(toks, i)
	case named && goes.Has(t.Text):
		to = goesTo(toks, i)
	case t.Text == "not" && i > 2 && toks[i-1].Is("(") && toks[i+1].Kind == token.Numeral:
		return notInBrackets(toks, i)
	case t.Text == "not" && i > 1 && toks[i-1].Kind != token.Mark && toks[i+1].Kind == token.Numeral:
		return notAmount(toks, i)
	}
	if to == 0 || to >= len(toks) || toks[to].Kind != token.Numeral {
		return 0, 0
	}
	return i, to
}

// staysTo is where the amount begins that something stays at: "stays at 20".
func staysTo(toks []token.Token, i int) int {
	if toks[i+1].Text == "at" {
		return i + 2
	}
	return i + 1
}

// goesTo is where the amount begins that something goes to, "goes 60 to 55", "drops down to 20"; 0 if
// there is none.
func goesTo(toks []token.Token, i int) int {
	to := i + 1
	for to < len(toks) && ways.Has(toks[to].Text) {
		to++
	}
	if to < len(toks) && toks[to].Kind == token.Numeral {
		to += entry.AmountAt(toks[to:])
	}
	if to >= len(toks) || toks[to].Text != "to" {
		return 0
	}
	return to + 1
}

// notInBrackets are the tokens of brackets that deny an amount, "50 (not 60!!)"; 0 and 0 if they hold
// more than it.
func notInBrackets(toks []token.Token, i int) (from, to int) {
	for to = i + 2; to < len(toks); to++ {
		switch {
		case toks[to].Is(")"):
			return i - 1, to + 1
		case toks[to].Kind == token.Word && !entry.IsUnit(&toks[to]):
			return 0, 0
		}
	}
	return 0, 0
}

// notAmount are the tokens that deny an amount behind another, "25 not 20"; 0 and 0 if they go on.
func notAmount(toks []token.Token, i int) (from, to int) {
	to = i + 2
	_, n := entry.UnitAt(toks[to:])
	if to += n; to < len(toks) && toks[to].Kind != token.Mark {
		return 0, 0
	}
	return i, to
}
