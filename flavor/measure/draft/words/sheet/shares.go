package sheet

import (
	"strconv"
	"strings"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// wholeWithin is by how many of a hundred percentages may miss it: three thirds are 99.
const wholeWithin = 3.0

// ofStrength follow a percentage that says how strong something is.
var ofStrength = vocabulary.Words(`abv vol alc alcohol proof solution acid saline off gp margin full`)

// InShares reports whether the percentages of a text come to a hundred, so that they say
// how much of all each pour is.
func InShares(text string) bool {
	if strings.Count(text, "%") < 2 {
		return false
	}
	sum, many := 0.0, 0
	for line := range strings.SplitSeq(text, "\n") {
		toks := token.Lex(nil, line, 0, len(line))
		for i := range toks {
			if toks[i].Kind != token.Percent || i+1 < len(toks) && ofStrength.Has(toks[i+1].Text) {
				continue
			}
			sum += Percent(&toks[i])
			many++
		}
	}
	return many > 1 && sum >= 100-wholeWithin && sum <= 100+wholeWithin
}

// Percent is the number of a percentage, 0 if it cannot be read.
func Percent(t *token.Token) float64 {
	v, err := strconv.ParseFloat(strings.ReplaceAll(strings.TrimRight(t.Text, " %"), ",", "."), 64)
	if err != nil {
		return 0
	}
	return v
}
