package parting

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// Lists are lettered or numbered line by line: "A gin 50", "B lemon 25"; "1.0 gin 50 ml",
// "2.0 lemon 25 ml". One line does not tell its label from an amount; lines in a row do.

// leastLabelled is how many lines in a row bear labels at least.
const leastLabelled = 3

// romans are the numbers of a list in Roman figures, in their order.
var romans = strings.Fields(`i ii iii iv v vi vii viii ix x xi xii`)

// ranked is the place in its list that the label of a line gives it, in one way to count.
type ranked struct {
	way  byte // 'a' letters, 'i' Roman figures, '1' figures
	rank int
}

// WithoutLabels moves the starts of lines that bear labels in a row behind them. Lines are
// spans of the text, in its order, and are changed where they lie.
func WithoutLabels(text string, lines []entry.Span) {
	if len(lines) < leastLabelled {
		return
	}
	for _, way := range []byte("a1i") {
		if !mayLabel(text, lines, way) {
			continue
		}
		run := 0
		for i := 0; i <= len(lines); i++ {
			if i < len(lines) && strings.TrimSpace(text[lines[i].Start:lines[i].End]) == "" {
				continue
			}
			if i < len(lines) {
				if rest := afterLabel(text, lines[i], ranked{way, run + 1}); rest > 0 {
					run++
					continue
				}
			}
			if run >= leastLabelled {
				dropLabels(text, lines[:i], way, run)
			}
			run = 0
		}
	}
}

// mayLabel reports whether so many lines in a row may bear labels by their first sign
// alone. Most drafts bear none, and are not to be lexed once more to learn that.
func mayLabel(text string, lines []entry.Span, way byte) bool {
	var begun [leastLabelled + 1]bool // whether the lines so far end in that many of the list
	begun[0] = true
	for i := range lines {
		sign := firstSign(text[lines[i].Start:lines[i].End])
		if sign == "" {
			continue
		}
		for rank := leastLabelled; rank > 0; rank-- {
			begun[rank] = begun[rank-1] && mayBear(sign, ranked{way, rank})
		}
		if begun[leastLabelled] {
			return true
		}
	}
	return false
}

// firstSign returns a line from its first letter or figure on.
func firstSign(line string) string {
	return strings.TrimLeftFunc(line, func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsNumber(c) })
}

// mayBear reports whether what begins with a letter or a figure may be the label of that
// rank, up to nine: it may whenever [bears] says so, and now and then besides.
func mayBear(sign string, want ranked) bool {
	first, size := utf8.DecodeRuneInString(sign)
	switch {
	case first >= utf8.RuneSelf:
		return true
	case want.way == '1':
		return first == '0' || int(first-'0') == want.rank
	case want.way == 'a':
		next, _ := utf8.DecodeRuneInString(sign[size:])
		return int(first|0x20)-'a'+1 == want.rank && !unicode.IsLetter(next)
	}
	return strings.IndexByte("ivxIVX", sign[0]) >= 0
}

// dropLabels moves the start of the last lines behind their labels, so many of those that
// hold anything.
func dropLabels(text string, lines []entry.Span, way byte, run int) {
	for i := len(lines) - 1; run > 0; i-- {
		if rest := afterLabel(text, lines[i], ranked{way, run}); rest > 0 {
			lines[i].Start = rest
			run--
		}
	}
}

// mostLabel is the most bytes of a label with the signs around it.
const mostLabel = 8

// afterLabel returns where what follows the label of a line begins, 0 if the line does not
// bear that label. What follows states an amount of its own, or how the drink is made.
func afterLabel(text string, at entry.Span, want ranked) int {
	toks := token.Lex(nil, text, at.Start, at.End)
	i := 0
	for i < len(toks) && (toks[i].Is("(") || toks[i].Is("#") || toks[i].Is("[") || toks[i].Is("*") || toks[i].Is("-")) {
		i++
	}
	if i+1 >= len(toks) || !bears(&toks[i], want) {
		return 0
	}
	i++
	for i < len(toks) && toks[i].Kind == token.Mark && toks[i].Start < at.Start+mostLabel && !toks[i].Is("(") {
		i++
	}
	rest := toks[i:]
	if len(rest) == 0 || entry.UnitWordsAt(rest) || rest[0].Glued && rest[0].Start == toks[i-1].End && toks[i-1].Kind != token.Mark {
		return 0
	}
	for k := range rest {
		if rest[k].Kind == token.Numeral {
			return rest[0].Start
		}
	}
	if entry.StartsAmount(rest) || pouring.Verbs[rest[0].Text] != "" || serving.Starts(rest) {
		return rest[0].Start
	}
	return 0
}

// bears reports whether a token is the label of that rank.
func bears(t *token.Token, want ranked) bool {
	switch want.way {
	case 'a':
		return t.Kind == token.Word && len(t.Text) == 1 && int(t.Text[0])-'a'+1 == want.rank
	case 'i':
		return t.Kind == token.Word && want.rank <= len(romans) && t.Text == romans[want.rank-1]
	}
	return t.Kind == token.Numeral && t.Wrong == "" && t.Value == float64(want.rank)
}
