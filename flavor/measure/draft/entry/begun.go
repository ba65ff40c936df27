package entry

import (
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
)

// begun drops words that lead from one pour to the next: "then top it with soda", "of lime
// half an ounce".
func begun(toks []token.Token) []token.Token {
	for len(toks) > 2 && toks[1].Kind == token.Word && (toks[0].Text == "of" || (toks[0].Text == "then" || toks[0].Text == "and") && (PourVerbs[toks[1].Text] != "" || toks[1].Text == "then")) {
		toks = toks[1:]
	}
	return toks
}

// intoGlass reports whether words of making and serving hold the size of a glass, which is
// no amount: "fine strain into a 5 oz coupe".
func intoGlass(toks []token.Token) bool {
	for i := 1; i < len(toks); i++ {
		if serving.SizeOfGlass(toks[i:]) {
			s := serving.Read(toks)
			return s.Begins && len(s.Unknown) == 0
		}
	}
	return false
}
