package aside

import (
	"strings"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// denials stand before what is not to be poured: "not ginger beer", "no soda".
var denials = vocabulary.Words(`no not never without dont don't instead skip avoid stop`)

var (
	// strikes say behind a pour that it is no longer poured, and strikeWords what stands beside them.
	strikes     = vocabulary.Words(`cut removed deleted dropped scrapped struck omitted omit axed gone nixed scratched scratch lost out 86 86'd 86ed not no`)
	strikeWords = vocabulary.Words(`was is in the final version spec recipe now from this that d ed ' taken left longer used using use it anymore any more menu build drink of all together altogether poured out`)
)

// strikesBehind are the signs behind which they stand.
var strikesBehind = map[string]bool{"-": true, "(": true, "[": true, ",": true, "<": true, ">": true}

// StruckOut reports whether a line of one pour says behind a sign that it is no longer poured:
// "chamomile tincture 2 dashes -- CUT, not in final".
func StruckOut(toks []token.Token) bool {
	if len(toks) > 2 && strikes.Has(toks[0].Text) && toks[0].Text != "no" && toks[0].Text != "not" && toks[1].Is(":") { // "cut: 5 ml absinthe"
		return true
	}
	amounts, at := 0, -1
	for i := range toks {
		switch {
		case at < 0 && i > 1 && i+1 < len(toks) && strikesBehind[toks[i].Text] && toks[i].Kind == token.Mark && (strikes.Has(toks[i+1].Text) || toks[i+1].Kind == token.Mark):
			at = i
		case at < 0 && toks[i].Kind == token.Numeral:
			amounts++
		}
	}
	if at < 0 || amounts != 1 {
		return false
	}
	struck := false
	for _, t := range toks[at:] {
		if t.Kind == token.Mark {
			continue
		}
		if !strikes.Has(t.Text) && !strikeWords.Has(t.Text) {
			return false
		}
		struck = struck || strikes.Has(t.Text) && t.Text != "not" && t.Text != "no" && t.Text != "out"
	}
	return struck
}

// mostDenied is the most words behind a denial that it speaks of.
const mostDenied = 3

// Denials parts words into those that follow a denial and the others.
func Denials(words string) (kept, denied string) {
	left := 0
	for w := range strings.FieldsSeq(words) {
		switch bare := strings.ToLower(strings.Trim(w, ",;.()!")); {
		case denials.Has(bare):
			left = mostDenied
		case left > 0:
			denied += " " + w
			left--
		default:
			kept += " " + w
		}
		if strings.ContainsAny(w, ",;.") {
			left = 0
		}
	}
	return strings.TrimSpace(kept), strings.TrimSpace(denied)
}
