package serving

import "counterpour/flavor/measure/draft/words/token"

// IceOnly reports whether toks name ice and nothing else; a bracket behind says of it what it may.
func IceOnly(toks []token.Token) bool {
	ice := false
	words := make([]string, 0, 6)
	for i := range toks {
		if i > 0 && toks[i].Is("(") {
			break
		}
		if toks[i].Kind == token.Word {
			words = append(words, toks[i].Text)
		}
	}
	for i := 0; i < len(words); {
		t, n := TermAt(words[i:min(len(words), i+LongestTerm)])
		switch {
		case n > 0 && t.Ice:
			ice = true
			i += n
		case Fillers[words[i]] || OtherMeasures[words[i]] || token.BiasWords[words[i]] || words[i] == "scoop" || words[i] == "little" || words[i] == "some" || words[i] == "clear" || words[i] == "fresh":
			i++
		default:
			return false
		}
	}
	return ice
}
