package sheet

import (
	"slices"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// mostPortion is the most tokens of a line that says for how much of a drink its amounts are.
const mostPortion = 12

// PerPortion reports whether a line says for how much of a drink its amounts are: "per 150 ml portion:".
func PerPortion(toks []token.Token) bool {
	toks = entry.TrimMarks(toks)
	last := len(toks) - 1
	return last > 0 && last < mostPortion && (toks[0].Text == "per" || toks[0].Text == "for") && drinksWords[toks[last].Text] &&
		!slices.ContainsFunc(toks[1:last], func(t token.Token) bool {
			return t.Kind != token.Numeral && !parting.Measured(&t) && t.Text != "one" && t.Text != "each" && t.Text != "a"
		})
}

// Serves reports whether a line says no more than how many drinks its text makes: "serves 2".
func Serves(toks []token.Token) bool {
	return len(toks) < 4 && len(toks) > 1 && servesWords[toks[0].Text] && toks[1].Kind == token.Numeral
}

// About reports whether a line says of a recipe what nobody pours, by labels with what they say
// behind them: "Servings: 1 | Prep time: 5 min | Difficulty: easy".
func About(toks []token.Token) bool {
	labels, from := 0, 0
	for i := range len(toks) + 1 {
		if i < len(toks) && !(toks[i].Kind == token.Mark && slices.Contains(betweenLabels, toks[i].Text)) {
			continue
		}
		part := entry.TrimMarks(toks[from:i])
		from = i + 1
		if len(part) == 0 {
			continue
		}
		n := 0
		for n < len(part) && part[n].Kind == token.Word && aboutWords[part[n].Text] {
			n++
		}
		if n == 0 || len(part)-n > mostTold || slices.ContainsFunc(part[n:], func(t token.Token) bool { return parting.Measured(&t) }) {
			return false
		}
		labels++
	}
	return labels > 0 && slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral || t.Is(":") })
}

// mostTold is the most tokens behind such a label.
const mostTold = 4

// betweenLabels are the signs between two labels with what they say.
var betweenLabels = []string{"|", "•", "·", ",", ";", "/"}

// aboutWords are the labels of what recipes say of themselves.
var aboutWords = token.Words(`servings serves yield yields makes portions prep preparation cook cooking total active time difficulty level skill rating course cuisine calories kcal`)

// drinksWords say how many drinks a text makes, or how much of it one is.
var drinksWords = token.Words(`serves serve servings serving portions portion drinks drink cocktails guests persons people pax covers`)

// servesWords begin a line that says how many drinks the amounts are for.
var servesWords = token.Words(`serves makes yields yield serving feeds`)

// OfServes returns how many tokens say for how many drinks the amounts are, or how much
// of all one drink is; 0 if none do.
func OfServes(toks []token.Token) int {
	if len(toks) < 2 || toks[0].Kind != token.Numeral {
		return 0
	}
	at := 1
	if _, n := entry.UnitAt(toks[1:]); n > 0 && at+n+1 < len(toks) {
		at += n
	}
	if toks[at].Text == "per" || toks[at].Text == "a" || toks[at].Text == "each" {
		at++
	} else if at > 1 {
		return 0
	}
	if at < len(toks) && drinksWords[toks[at].Text] {
		return at + 1
	}
	return 0
}

// WithoutServes drops what says amid a line how many drinks it is for, "house sour (makes
// 2)", and returns where that stands; an empty stretch if nothing does.
func WithoutServes(toks []token.Token) ([]token.Token, entry.Span) {
	for i := 1; i+1 < len(toks); i++ {
		if !servesWords[toks[i].Text] || toks[i].Kind != token.Word || toks[i-1].Kind != token.Mark || toks[i+1].Kind != token.Numeral {
			continue
		}
		end := i + 2
		if end < len(toks) && (drinksWords[toks[end].Text] || parting.Measured(&toks[end]) || serving.OtherMeasures[toks[end].Text]) { // "yield 1 bottle"
			end++
		}
		if end < len(toks) && toks[end].Kind != token.Mark || toks[i-1].Is(":") {
			continue
		}
		at := entry.Span{Start: toks[i].Start, End: toks[end-1].End}
		from := i - 1
		switch {
		case end == len(toks) || !toks[from].Is("("):
		case toks[end].Is(")"):
			end++
		case toks[end].Is(","): // "(serves 1, limit 2)"
			from, end = i, end+1
		}
		return entry.TrimMarks(slices.Concat(toks[:from], toks[end:])), at
	}
	return toks, entry.Span{}
}
