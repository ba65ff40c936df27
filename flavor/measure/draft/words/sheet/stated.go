package sheet

import (
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/token"
)

// statingWords stand before the unit of all numbers of a draft: "(all in cl)", "tutto in cl".
var statingWords = token.Words(`all everything amounts amount measures measurements units numbers values in en tutto tutti todo todas todos tout alles allt alt mengen cantidades quantità quantités`)

// TokensOfBracket is how many tokens a unit in brackets takes.
const TokensOfBracket = 3

// UnitStatedAt returns the unit that a stretch at i states, with how many tokens it takes: a
// unit in brackets, one behind words such as "all in", or one before a colon that begins the
// line. It is 0 if there is none.
func UnitStatedAt(toks []token.Token, i int) (flavor.Unit, int) {
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
	case bracket && i == 0 && k < len(toks) && toks[k].Is(","): // "(cl, highball, shake first 3)"
		return u, k + 1 - i
	case !bracket && words > 1 && ends, !bracket && words == 1 && toks[i].Text != "in" && toks[i].Text != "en" && ends:
		return u, k - i
	case i == 0 && words == 0 && k < len(toks) && toks[k].Is(":"):
		return u, k + 1 - i
	}
	return "", 0
}

// UnitOfHead is the one unit that the head of a table names, empty for none or several.
func UnitOfHead(toks []token.Token) flavor.Unit {
	var head flavor.Unit
	for i := range toks {
		u, ok := measure.ParseUnit(toks[i].Text)
		switch {
		case !ok || !u.Jigger():
		case head != "" && head != u:
			return ""
		default:
			head = u
		}
	}
	return head
}

var columnWords = token.Words(`ingredient ingredients qty quantity amount unit units ml oz cl name item measure volume pour bottle cost price notes note gp`)

// sizeWords head the column of the one size that a house pours.
var sizeWords = token.Words(`reg regular std standard`)

// Spaced reports whether a line names the columns of a table: "Ingredient,Qty,Unit".
func Spaced(toks []token.Token) bool {
	words, sizes := 0, 0
	for i := range toks {
		switch {
		case toks[i].Kind == token.Mark:
		case toks[i].Kind == token.Word && columnWords[toks[i].Text]:
			words++
		case i > 0 && toks[i].Kind == token.Word && sizeWords[toks[i].Text]:
			sizes++
		default:
			return false
		}
	}
	return words > 0 && sizes == 1 || words > 1 && (words < len(toks) || words > 2)
}
