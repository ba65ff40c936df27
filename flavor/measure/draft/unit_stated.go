package draft

import (
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/token"
)

// statingWords stand before the unit of all numbers of a draft: "(all in cl)", "tutto in cl".
var statingWords = token.Words(`all everything amounts amount measures measurements units numbers values in en tutto tutti todo todas todos tout alles allt alt mengen cantidades quantità quantités`)

// unitsStated reads what says the unit of numbers that have none, keeps it for the draft
// or puts it behind its number, "gin 4 (cl)", and returns the rest of the line.
func (r *reader) unitsStated(toks []token.Token) []token.Token {
	out := toks[:0:0]
	for i := 0; i < len(toks); {
		u, n := unitStatedAt(toks, i)
		switch {
		case n == 0:
			out = append(out, toks[i])
			i++
			continue
		case n == tokensOfBracket && i > 0 && toks[i-1].Kind == token.Numeral:
			out = append(out, toks[i+1])
		default:
			r.d.Headed = u
		}
		i += n
	}
	if len(out) == len(toks) {
		return toks
	}
	return entry.TrimMarks(out)
}

// tokensOfBracket is how many tokens a unit in brackets takes.
const tokensOfBracket = 3

// unitStatedAt returns the unit that a stretch at i states, with how many tokens it takes: a
// unit in brackets, one behind words such as "all in", or one before a colon that begins the
// line. It is 0 if there is none.
func unitStatedAt(toks []token.Token, i int) (flavor.Unit, int) {
	k := i
	bracket := toks[k].Is("(")
	if bracket {
		k++
	}
	words := 0
	for k < len(toks) && statingWords[toks[k].Text] {
		k++
		words++
	}
	if k == len(toks) || toks[k].Kind != token.Word || i > 0 && !bracket && toks[i-1].Kind != token.Mark {
		return "", 0
	}
	u, ok := measure.ParseUnit(toks[k].Text)
	if !ok || !u.Jigger() {
		return "", 0
	}
	k++
	ends := k == len(toks) || toks[k].Kind == token.Mark
	switch {
	case bracket && k < len(toks) && toks[k].Is(")"):
		return u, k + 1 - i
	case !bracket && words > 1 && ends, !bracket && words == 1 && toks[i].Text != "in" && toks[i].Text != "en" && ends:
		return u, k - i
	case i == 0 && words == 0 && k < len(toks) && toks[k].Is(":"):
		return u, k + 1 - i
	}
	return "", 0
}
