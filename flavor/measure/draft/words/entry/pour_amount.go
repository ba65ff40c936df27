package entry

import (
	"maps"
	"slices"
	"strings"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// takeAmount reads an amount at the start of toks and returns what follows it.
func (p *Written) takeAmount(toks []token.Token) ([]token.Token, bool) {
	i := p.skipLoose(toks, 0)
	if i >= len(toks) {
		return nil, false
	}
	t := &toks[i]
	if t.Is("-") && i+1 < len(toks) && toks[i+1].Glued && toks[i+1].Kind == token.Numeral {
		w := "-" + toks[i+1].Text
		p.Fault = measure.Invalid("amount", w, "%q is below zero; write an amount above zero, such as \"2 oz\"", w)
		return nil, false
	}
	switch {
	case t.Kind == token.Numeral:
		if t.Wrong != "" {
			p.Fault = measure.Invalid("amount", t.Text, "%q %s", t.Text, t.Wrong)
			return nil, false
		}
		p.Amount, p.Stated = t.Value, true
		if t.Note != "" {
			p.AddNote(t.Note)
		}
		p.AmountAt = Span{t.Start, t.End}
		p.Guessed = t.Guessed
		p.Figures, p.Comma, p.Point = true, strings.Contains(t.Text, ","), strings.Contains(t.Text, ".")
		i++
		if n := p.andAHalf(toks[i:]); n > 0 {
			i += n
		}
		i += p.fractionsOf(toks[i:])
	case t.Kind == token.Word:
		n := p.takeWords(toks[i:])
		if n == 0 {
			return nil, false
		}
		p.Stated, p.words = true, true
		p.AmountAt = Span{t.Start, toks[i+n-1].End}
		i += n
	default:
		return nil, false
	}
	if i < len(toks) && times(&toks[i]) {
		i++ // "2 x"
		if i+1 < len(toks) && toks[i].Kind == token.Numeral && toks[i].Wrong == "" && toks[i].Note == "" && UnitWordsAt(toks[i+1:]) {
			p.Amount *= toks[i].Value // "2 x 25 ml"
			p.AmountAt.End = toks[i].End
			i++
		}
	}
	return toks[p.skipLoose(toks, i):], true
}

// skipLoose passes over words such as "about" and "scant" that stand before an
// amount or a unit. Those that change it are noted.
func (p *Written) skipLoose(toks []token.Token, i int) int {
	for i+1 < len(toks) {
		t, next := &toks[i], &toks[i+1]
		if t.Kind == token.Numeral || t.Kind == token.Word && !beforeAmount.Has(t.Text) {
			break // as nearly always
		}
		if t.Kind == token.Word && token.BiasWords[t.Text] && next.Kind == token.Word && token.BiasWords[next.Text] && i+2 < len(toks) && toks[i+2].Kind == token.Numeral { // "just under"
			p.AddNote("“" + t.Text + " " + next.Text + "” is no measure; the amount is taken as written")
			i += 2
			continue
		}
		if (t.Kind == token.Word || t.Is("~")) && token.LooseWords[t.Text] && (next.Kind == token.Numeral || IsUnit(next)) {
			i++
			continue
		}
		if t.Is(".") && t.Glued { // "approx."
			i++
			continue
		}
		if t.Kind == token.Word && token.BiasWords[t.Text] && (next.Kind == token.Numeral || IsUnit(next) || UnitWordsAt(toks[i+1:]) || serving.OtherMeasures[next.Text]) {
			p.AddNote("“" + t.Text + "” is no measure; the amount is taken as written")
			i++
			continue
		}
		break
	}
	return i
}

// beforeAmount are token.LooseWords and token.BiasWords.
var beforeAmount = vocabulary.SetOf(slices.Concat(slices.Collect(maps.Keys(token.LooseWords)), slices.Collect(maps.Keys(token.BiasWords)))...)

// times reports whether a token multiplies: "2 x", "gin x 2 oz".
func times(t *token.Token) bool { return t.Text == "x" || t.Text == "×" }

// andAHalf adds "and a half" where it follows, and says how many tokens it takes.
func (p *Written) andAHalf(toks []token.Token) int {
	if len(toks) >= 3 && toks[0].Text == "and" && toks[1].Text == "a" && token.FractionWords[toks[2].Text] > 0 {
		p.Amount += token.FractionWords[toks[2].Text]
		p.AmountAt.End = toks[2].End
		return 3
	}
	return 0
}

// fractionsOf reads "quarters of an" before a unit, after a number of them, and says
// how many tokens it takes.
func (p *Written) fractionsOf(toks []token.Token) int {
	if len(toks) > 2 && p.Amount < 1 && toks[0].Text == "of" && (toks[1].Text == "a" || toks[1].Text == "an") && UnitWordsAt(toks[2:]) {
		p.AmountAt.End = toks[1].End // "3/4 of an ounce"
		return 2
	}
	if len(toks) < 4 || toks[1].Text != "of" || toks[2].Text != "a" && toks[2].Text != "an" || !UnitWordsAt(toks[3:]) {
		return 0
	}
	f := token.FractionWords[strings.TrimSuffix(toks[0].Text, "s")]
	if f == 0 {
		return 0
	}
	p.Amount *= f
	p.AmountAt.End = toks[2].End
	return 3
}

// takeWords reads an amount in words: "two", "half an", "a", "three quarters of
// an". It returns how many tokens it takes.
func (p *Written) takeWords(toks []token.Token) int {
	at := func(i int) string {
		if i < len(toks) && toks[i].Kind == token.Word {
			return toks[i].Text
		}
		return ""
	}
	first := at(0)
	switch {
	case first == "a" || first == "an":
		if n, v := countWords(at(1)), token.NumberWords[at(1)]; n && v > 0 {
			p.Amount = v
			return p.said(1+1, at(1), at)
		}
		if f := token.FractionWords[at(1)]; f > 0 {
			p.Amount = f
			return skipOf(at, 2)
		}
		p.Amount = 1
		return 1
	case token.FractionWords[first] > 0:
		if at(1) == "and" || len(toks) > 1 && toks[1].Is("&") {
			return 0 // half and half
		}
		p.Amount = token.FractionWords[first]
		return skipOf(at, 1)
	case token.NumberWords[first] > 0:
		p.Amount = token.NumberWords[first]
		next := at(1)
		single := strings.TrimSuffix(next, "s")
		if f := token.FractionWords[single]; f > 0 && next != "halves" {
			p.Amount *= f
			return skipOf(at, 2)
		}
		if next == "and" && at(2) == "a" && token.FractionWords[at(3)] > 0 {
			p.Amount += token.FractionWords[at(3)]
			return 4
		}
		return p.said(1, first, at)
	}
	return 0
}

func countWords(w string) bool { return w == "couple" || w == "few" || w == "dozen" }

// said notes an amount that is only roughly one, and drops an "of" after it.
func (p *Written) said(n int, w string, at func(int) string) int {
	if countWords(w) {
		p.AddNote("“a " + w + "” is taken as " + token.Number(p.Amount))
		if at(n) == "of" {
			n++
		}
	}
	return n
}

// skipOf drops "of a", "an" and the like after half or quarter.
func skipOf(at func(int) string, n int) int {
	if at(n) == "of" && (at(n+1) == "a" || at(n+1) == "an") {
		return n + 2
	}
	if at(n) == "a" || at(n) == "an" {
		return n + 1
	}
	return n
}
