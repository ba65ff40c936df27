// Package title tells which words of a line are the name of its drink, and where they end if pours
// stand behind them.
package title

import (
	"slices"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// WithRemark reports whether a line is a name with a remark in brackets that holds numbers and no
// amount: "Skull Bowl (serves 1, limit 2)".
func WithRemark(toks []token.Token) bool {
	open := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is("(") })
	last := len(toks) - 1
	if open < 1 || !toks[last].Is(")") || slices.ContainsFunc(toks[:open], outsideName) {
		return false
	}
	counts := false
	for i := open + 1; i < last; i++ {
		if toks[i].Kind != token.Numeral {
			continue
		}
		before := &toks[i-1]
		if before.Kind != token.Word || token.LooseWords[before.Text] || token.BiasWords[before.Text] || entry.IsUnit(before) || entry.UnitWordsAt(toks[i+1:]) {
			return false
		}
		counts = true
	}
	return counts
}

// outsideName reports whether a token stands in no name.
func outsideName(t token.Token) bool {
	return t.Kind != token.Word && !t.Is("'") && !t.Is("&") && !t.Is("-")
}

// numberedWords stand before the number of a card, a table or a version, which is no
// amount: "card 7: Garden Gate", "something for table 9".
var numberedWords = token.Words(`card tkt chit chk docket table tbl week number no nr version take attempt try test draft trial round batch ticket order bar station deck page pg menu spec recipe lesson exercise drink room day item mk seat shift level machine tap dev development competitor contestant finalist candidate entry revision rev iteration prototype issue`)

// Numbered reports whether the number behind a word is one of a card, a table or a version.
func Numbered(w string) bool { return numberedWords[w] }

// OfCard reports whether a line of the text holds a number only behind words that something is
// numbered by, and no pour: "Card 7: Garden Gate".
func OfCard(text string, toks []token.Token) bool {
	found := false
	for i := range toks {
		switch {
		case toks[i].Kind == token.Percent || toks[i].Kind == token.Ratio:
			return false
		case toks[i].Kind != token.Numeral || aside.Multiplies(toks, i): // "Table 14 - 2x"
		case !numbers(toks, i) || entry.UnitWordsAt(toks[i+1:]):
			return false
		default:
			found = true
		}
	}
	if !found {
		return false
	}
	capital, _ := utf8.DecodeRuneInString(text[toks[0].Start:])
	return (len(toks) > 2 || unicode.IsUpper(capital)) && (len(toks) > 3 || toks[0].Kind == token.Word)
}

// numbers reports whether the number at i stands behind a word that something is numbered by,
// perhaps with a stop: "no. 7".
func numbers(toks []token.Token, i int) bool {
	if i > 1 && toks[i-1].Is(".") && numberedWords[toks[i-2].Text] {
		return true
	}
	return i > 0 && numberedWords[toks[i-1].Text]
}

// InSquare returns where words at the start of a line end that stand in square brackets, tell no
// method and have something behind them; 0 if none do: "[carrot] aquavit 40 / ...".
func InSquare(toks []token.Token) int {
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind != token.Word })
	if at < 1 || at+2 >= len(toks) || !toks[at].Is("]") || serving.StartsMethod(toks) {
		return 0
	}
	return at
}
