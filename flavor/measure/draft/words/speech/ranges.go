package speech

import (
	"math"

	"counterpour/flavor/measure/draft/words/token"
)

// mostApart is by how much the two numbers of "five or six" may differ, where nothing else is a range
// of them; "1 or 10" is a choice.
const mostApart = 2

// Ranges makes one numeral, the middle, of two numbers with a word between them that makes a range of
// them: "5 or 6 basil leaves", "two to three dashes", "between 20 and 25 ml". Text is what toks were
// read from.
func Ranges(text string, toks []token.Token) []token.Token {
	for i := 0; i+1 < len(toks); i++ {
		if n := token.BoundAt(toks[:i]); n > 0 && toks[i].Kind == token.Numeral && toks[i].Wrong == "" { // "up to 1 oz lime"
			one := toks[i]
			i -= n
			one.Start = toks[i].Start
			toks = append(append(toks[:i:i], one), toks[i+n+1:]...)
			continue
		}
		if one, n := rangeAt(text, toks[i:]); n > 0 {
			toks = append(append(toks[:i:i], one), toks[i+n:]...)
		}
	}
	return toks
}

// rangeAt returns the range that toks begin with as one numeral, and how many tokens it takes; 0 if they
// begin with none.
func rangeAt(text string, toks []token.Token) (token.Token, int) {
	n := 0
	if toks[0].Text == "between" {
		n = 1
	}
	if n+3 >= len(toks) || toks[n+1].Kind != token.Word || toks[n+3].Kind != token.Word {
		return token.Token{}, 0
	}
	low, high, w := number(&toks[n]), number(&toks[n+2]), toks[n+1].Text
	switch {
	case low == 0 || high <= low, w != "and" && !token.RangeWord(w), w == "and" && n == 0:
		return token.Token{}, 0
	case w == "or" && n == 0 && (high-low > mostApart || low != math.Trunc(low) || high != math.Trunc(high)):
		return token.Token{}, 0
	}
	one := token.Token{Kind: token.Numeral, Start: toks[0].Start, End: toks[n+2].End, Value: (low + high) / 2}
	one.Text = token.Decimals(one.Value)
	one.Note = token.OneLine(text[one.Start:one.End]) + " read as " + one.Text + ", the middle"
	return one, n + 3
}

// number is the number that a token writes in figures or in words, 0 if none.
func number(t *token.Token) float64 {
	switch {
	case t.Kind == token.Word:
		return token.NumberWords[t.Text]
	case t.Kind == token.Numeral && t.Wrong == "" && t.Note == "":
		return t.Value
	}
	return 0
}
