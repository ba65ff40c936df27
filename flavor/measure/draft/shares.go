package draft

import (
	"slices"
	"strings"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
)

// One amount may stand for two pours, each half of it: "2 oz rum (half white, half
// dark)", "60 ml, half gin, half aquavit".

// totalWords stand between a total and its halves.
var totalWords = token.Words(`total split base in all altogether of`)

// kinds are words for which of a spirit is meant. Behind the name of one and a comma, a half of anything else is
// half an ounce or half a piece: "1½ gin, half lemon, half simple".
var kinds = token.Words(`white dark gold golden light silver aged old young spiced overproof dry sweet red black blanco blanc reposado añejo anejo joven jamaican cuban demerara agricole
bourbon rye scotch irish islay blended peated straight navy pink barrel-aged ruby tawny fino amontillado oloroso`)

// halved takes the two halves of a total as a pour each, and returns what else the line
// holds. Halves without a total are left alone: nobody can tell of what.
func (r *reader) halved(n int, toks []token.Token) []token.Token {
	first := r.nextHalf(toks, 1)
	if first < 0 {
		return toks
	}
	second := r.nextHalf(toks, first+2)
	if second < 0 || r.nextHalf(toks, second+2) >= 0 { // "gin, half lemon, half simple, half egg white"
		return toks
	}
	end := second + 1
	for end < len(toks) && toks[end].Kind == token.Word {
		end++
	}
	total := first
	for total > 0 && (speech.Pause(&toks[total-1]) || totalWords[toks[total-1].Text]) {
		total--
	}
	start, kind := entry.PourBefore(toks[:total])
	if start < 0 || end == second+1 || kind < total && toks[total].Is(",") && !kinds[toks[first+1].Text] && !kinds[toks[second+1].Text] {
		return toks
	}
	p := entry.Read(r.text, toks[start:kind])
	if p.Shape != entry.ShapeAmount || p.Fault != nil || p.Each {
		return toks
	}
	p.Amount /= 2
	var halves []entry.Written
	for _, name := range [][]token.Token{toks[first+1 : second], toks[second+1 : end]} {
		name = withoutAnd(entry.TrimMarks(name))
		if len(name) == 0 || slices.ContainsFunc(name, func(t token.Token) bool { return t.Kind != token.Word }) {
			return toks
		}
		q := joining.Repeated(r.text, p, name)
		if of := toks[kind:total]; len(of) > 0 && len(name) == 1 && name[0].Text != of[len(of)-1].Text { // "half white" of rum
			q.Name += " " + strings.TrimSpace(r.text[of[0].Start:of[len(of)-1].End])
		}
		q.AddNote("“" + q.Name + "” is taken as half of " + measure.FormatAmount(2*p.Amount, p.Unit))
		halves = append(halves, q)
	}
	for i := range halves {
		q := &halves[i]
		r.takePour(n, entry.Span{Start: q.Of[0].Start, End: q.Of[len(q.Of)-1].End}, q, false)
	}
	if end < len(toks) && toks[end].Is(")") {
		end++
	}
	return slices.Concat(toks[:start], toks[end:])
}

// nextHalf returns where a "half" of something stands from i on, below 0 if none does.
func (r *reader) nextHalf(toks []token.Token, i int) int {
	for ; i+1 < len(toks); i++ {
		t := &toks[i]
		if (t.Kind == token.Word || t.Kind == token.Numeral) && strings.EqualFold(r.text[t.Start:t.End], "half") && toks[i+1].Kind == token.Word && !entry.UnitWordsAt(toks[i+1:]) && !speech.Article(toks[i+1].Text) && !speech.LaidHalf(toks[i+1].Text) {
			return i
		}
	}
	return -1
}

// withoutAnd drops an "and" at the end of a name.
func withoutAnd(name []token.Token) []token.Token {
	if last := len(name) - 1; last > 0 && (name[last].Text == "and" || name[last].Text == "then") {
		return entry.TrimMarks(name[:last])
	}
	return name
}
