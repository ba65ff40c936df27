package parting

import (
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/token"
)

// What stands at the start of a line and is no entry: a bullet, a number of a list, a label.

// Unlist drops bullets and the numbers of a list.
func Unlist(toks []token.Token) []token.Token {
	for n := bulletAt(toks); n > 0; n = bulletAt(toks) {
		toks = toks[n:]
	}
	return toks
}

// bulletAt returns how many tokens at the start of a line are a bullet or the number of a list, 0 if
// none are. A dash is a bullet only before a space: "-2 oz" is a negative amount.
func bulletAt(toks []token.Token) int {
	if len(toks) == 0 {
		return 0
	}
	t := &toks[0]
	switch {
	case t.Is("•") || t.Is(">") || t.Is("|") || t.Is("[") || t.Is("]"):
		return 1
	case t.Is("-") && (len(toks) == 1 || !toks[1].Glued):
		return 1
	case lettersItem(toks) || countsItem(toks):
		return 2
	case t.Text == "step" && len(toks) > 3 && toks[1].Kind == token.Numeral && toks[2].Kind == token.Mark && toks[3].Kind == token.Word:
		return 3 // "Step 1: shake"
	}
	return 0
}

// itemSign reports whether the second token is the sign behind a letter or number of a list, and
// something follows it behind a space.
func itemSign(toks []token.Token) bool {
	return len(toks) > 2 && toks[1].Glued && (toks[1].Is(")") || toks[1].Is(".")) && !toks[2].Glued
}

// lettersItem reports whether a line begins with the letter of a list: "A. 2 oz gin".
func lettersItem(toks []token.Token) bool {
	t := &toks[0]
	return t.Kind == token.Word && t.End-t.Start == 1 && itemSign(toks) && toks[2].Kind == token.Numeral
}

// countsItem reports whether a line begins with the number of a list: "2) lemon 20".
func countsItem(toks []token.Token) bool {
	t := &toks[0]
	return t.Kind == token.Numeral && itemSign(toks) && t.Wrong == "" && t.Value == float64(int(t.Value)) && !entry.UnitWordsAt(toks[2:])
}

// Header reads a label before a colon at the start of a line, and returns what
// follows it.
func Header(text string, toks []token.Token) (label.Kind, []token.Token) {
	var words []string
	for i := range toks {
		switch {
		case toks[i].Kind == token.Word && i < 3 && (i == 0 || !Apart(text, toks, i)):
			words = append(words, toks[i].Text)
		case i > 0 && toks[i].Kind == token.Word && cellLabel(text, toks, i, strings.Join(words, " ")): // "Glass      coupe"
			return label.Words[strings.Join(words, " ")], toks[i:]
		case toks[i].Is(":") && i > 0:
			if l := label.Words[strings.Join(words, " ")]; l != label.None {
				return l, toks[i+1:]
			}
			if l := label.Words[words[0]]; l != label.None && len(words) > 1 && (words[1] == "per" || words[1] == "for") { // "spec per litre"
				return l, toks[i+1:]
			}
			return label.None, toks
		case i > 0 && headSign(toks[i:]) > 0:
			rest := toks[i+headSign(toks[i:]):]
			if l := label.Words[strings.Join(words, " ")]; l != label.None && len(rest) > 0 && !AmountAlone(rest) {
				return l, rest
			}
			return label.None, toks
		default:
			return label.None, toks
		}
	}
	return label.None, toks
}

// headSign returns how many tokens, beside a colon, part a label from the rest of its line:
// "Spirit - aged rum 2 oz", "Sweet // 10 ml honey"; 0 if none do.
func headSign(toks []token.Token) int {
	switch {
	case len(toks) > 2 && toks[0].Is("/") && toks[1].Is("/"):
		return 2
	case len(toks) > 1 && (toks[0].Is("-") && !toks[1].Glued || toks[0].Is("=")):
		return 1
	}
	return 0
}

// cellLabel reports whether words before a wide gap are the label of what is said of
// glass, method, ice or garnish.
func cellLabel(text string, toks []token.Token, i int, words string) bool {
	switch label.Words[words] {
	case label.Glass, label.Serving, label.Garnish, label.Rim:
		return Apart(text, toks, i)
	}
	return false
}

// Apart reports whether a gap or a tab parts the token at i from the cell before it.
func Apart(text string, toks []token.Token, i int) bool {
	return Wide(toks, i) || strings.Contains(text[toks[i-1].End:max(toks[i-1].End, toks[i].Start)], "\t")
}

// AmountAlone reports whether tokens are an amount and name nothing.
func AmountAlone(toks []token.Token) bool {
	return entry.StartsAmount(toks) && !Named(toks)
}
