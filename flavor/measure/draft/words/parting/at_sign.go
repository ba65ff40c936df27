package parting

import (
	"slices"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// atSign is Separator for a sign.
func (p *place) atSign() (string, int) {
	switch p.t.Text {
	case "(":
		if p.beginsBracketed() {
			return ";", 0 // "(1 oz) gin (3/4 oz) lime"
		}
	case ",", ";":
		if p.partsUnit() {
			return "", 0 // "gin,45,ml"
		}
		return p.t.Text, 1
	case ">", ":", "=":
		return p.t.Text, 1
	case "|", "•", "]", "[":
		return ";", 1 // "[shake, coupe] 60 gin"
	case "!":
		return ".", 1
	case "~":
		if !p.t.Glued && !p.next.Glued && p.next.Kind == token.Word {
			return ";", 1 // "1/4 honey ~ dbl strain"
		}
	case "+":
		if !rimAhead(p.toks, p.i, p.from) && !(p.before.Text == "half" && p.next.Text == "half") {
			return "+", 1
		}
	case "/":
		if !p.joinsWords() {
			return "/", 1
		}
	case "&":
		if p.next.Kind == token.Numeral || p.next.Kind == token.Word && serving.StepVerbs[p.next.Text] {
			return "and", 1
		}
	case "-":
		if p.dashParts() {
			return "-", 1
		}
	case ".":
		return p.atStop()
	case "?":
		if p.next.Kind == token.Numeral && Named(p.entry()) {
			return ";", 1 // "1 maraschino? 1 lime"
		}
	}
	return "", 0
}

// beginsBracketed reports whether a bracket begins a pour with its amount in brackets, as another
// pour of the line does.
func (p *place) beginsBracketed() bool {
	return p.i > p.from+1 && p.toks[p.from].Is("(") && amountInBrackets(p.toks[p.i:])
}

// amountInBrackets reports whether tokens begin with an amount in brackets.
func amountInBrackets(toks []token.Token) bool {
	end := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is(")") })
	return end > 1 && toks[1].Kind == token.Numeral && (end == 2 || entry.UnitWordsAt(toks[2:end]))
}

// amountCloses reports whether words are a name with its amount in brackets behind it.
func amountCloses(toks []token.Token) bool {
	open := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind != token.Word })
	if open < 1 || !toks[open].Is("(") || !Named(toks[:open]) || toks[open+1].Kind != token.Numeral || toks[open+1].Wrong != "" {
		return false
	}
	inside := toks[open+1 : len(toks)-1]
	_, n := entry.UnitAt(inside[1:])
	return n > 0 && n == len(inside)-1
}

// partsUnit reports whether a sign without spaces stands between an amount and its unit.
func (p *place) partsUnit() bool {
	return p.t.Glued && p.before.Kind == token.Numeral && p.next.Kind == token.Word && p.next.Glued && entry.UnitWordsAt(p.behindNext())
}

// joinsWords reports whether a slash without spaces stands between two words of one name,
// "half/half", in a line whose pours no slash parts.
func (p *place) joinsWords() bool {
	if p.before.Kind != token.Word || p.next.Kind != token.Word || !p.t.Glued || !p.next.Glued {
		return false
	}
	return !serving.StartsMethod(p.toks[p.i-1:]) && !entry.UnitWordsAt(p.behindNext()) && !slashed(p.toks)
}

// slashed reports whether slashes part the pours of a line.
func slashed(toks []token.Token) bool {
	for i := range toks[1:] {
		if toks[i].Is("/") && toks[i+1].Kind == token.Numeral {
			return true
		}
	}
	return false
}

// dashParts reports whether a dash parts two entries: it belongs neither to a word, nor to how cold
// something becomes, nor to how strong or old a bottle is.
func (p *place) dashParts() bool {
	if p.next.Kind == token.Numeral {
		switch {
		case p.next.Glued && !p.t.Glued && reaches.Has(p.before.Text):
			return false // "churn to -6"
		case entry.AgeWords[tokenAt(p.toks, p.i+2).Text]:
			return false // "rye - 100 proof"
		case p.before.Kind == token.Word:
			return true // "gin -45"
		}
	}
	return !p.t.Glued
}

// reaches are words before how cold something becomes.
var reaches = vocabulary.Words(`to at below until till`)

// atStop is Separator for a stop.
func (p *place) atStop() (string, int) {
	switch {
	case p.next.Is(".") || p.before.Is("."):
		if p.startsAmount() && Named(p.entry()) {
			return ".", 1 // "45 dark rum.. any is ok"
		}
		return "-", 1 // dots that lead to an amount
	case p.next.Kind == token.Numeral && p.next.Glued && p.t.Glued && p.before.Kind == token.Word:
		return ";", 1 // "6cl gin.3cl lemon"
	case !p.next.Glued && p.endsSentence():
		return ".", 1
	}
	return "", 0
}
