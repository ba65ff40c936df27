package speech

import (
	"math"

	"counterpour/flavor/measure/draft/token"
)

// mostApart is by how much the two numbers of "five or six" may differ; "1 or 10" is a
// choice.
const mostApart = 2

// Ranges makes one numeral, the middle, of two whole numbers with "or" between them:
// "5 or 6 basil leaves", "two or three dashes". Text is what toks were read from.
func Ranges(text string, toks []token.Token) []token.Token {
	for i := 0; i+3 < len(toks); i++ {
		low, high := wholeNumber(&toks[i]), wholeNumber(&toks[i+2])
		if toks[i+1].Text != "or" || low == 0 || high <= low || high-low > mostApart || toks[i+3].Kind != token.Word {
			continue
		}
		middle := (low + high) / 2
		one := token.Token{Kind: token.Numeral, Start: toks[i].Start, End: toks[i+2].End, Value: middle, Text: token.Decimals(middle)}
		one.Note = token.OneLine(text[one.Start:one.End]) + " read as " + one.Text + ", the middle"
		toks = append(append(toks[:i:i], one), toks[i+3:]...)
	}
	return toks
}

// wholeNumber is the whole number that a token writes in figures or in words, 0 if none.
func wholeNumber(t *token.Token) float64 {
	switch {
	case t.Kind == token.Word:
		return token.NumberWords[t.Text]
	case t.Kind == token.Numeral && t.Wrong == "" && t.Value == math.Trunc(t.Value):
		return t.Value
	}
	return 0
}
