package entry

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// takeTails takes the words after a name that say how it goes in.
func (p *Written) takeTails(text string, toks []token.Token) []token.Token {
	for len(toks) > 0 {
		last := len(toks) - 1
		if toks[last].Is(",") || toks[last].Is(".") || toks[last].Is("-") || toks[last].Is(":") || toks[last].Is("!") || last > 1 && toks[last].Is("&") {
			toks = toks[:last]
			continue
		}
		if toks[last].Is(")") {
			open := token.Opening(toks)
			if open >= 0 && p.takeBrackets(text, toks[open+1:last]) {
				toks = toks[:open]
				continue
			}
			if open < 0 {
				return toks
			}
			if n, t := pouring.TailAt(toks[:open]); n > 0 && n < open && t.Unit != "" && !t.Garnish { // "vermouth rinse (dry)"
				p.apply(t)
				return append(append([]token.Token(nil), toks[:open-n]...), toks[open:]...)
			}
			return toks
		}
		if n := p.takeServed(toks); n > 0 {
			toks = toks[:len(toks)-n]
			continue
		}
		n, t := pouring.TailAt(toks)
		if n == 0 || n == len(toks) && !(t.Garnish || t.Each) {
			return toks
		}
		if t.Garnish && len(toks) > n && toks[len(toks)-n-1].Text == "bitters" {
			t = pouring.Tail{Unit: flavor.Top, After: true, Remark: "bitters named as garnish are poured on top"} // "bitters to garnish"
		}
		p.apply(t)
		toks = toks[:len(toks)-n]
	}
	return toks
}

// takeBrackets takes what stands in brackets behind a name, if it is no part of the name: what
// the amount was or is now, how it goes in, how it is cut, another measure of the same.
func (p *Written) takeBrackets(text string, inside []token.Token) bool {
	if len(inside) > 1 && pouring.WasWords.Has(inside[0].Text) { // "1.5 (was 2)"
		p.AddNote("“" + token.OneLine(text[inside[0].Start:inside[len(inside)-1].End]) + "” is skipped")
		return true
	}
	if told := pouring.TailsOf(inside); told != nil {
		for _, t := range told {
			p.apply(t)
		}
		return true
	}
	if len(inside) > 0 && pouring.CutVerb(inside[0].Text) { // "1 lime (cut in 8)"
		p.Cut = true
		return true
	}
	if !p.Stated {
		return false
	}
	if v, ok := nowAmount(inside); ok { // "1 espresso (2 now)"
		p.AddNote(measure.FormatAmount(p.Amount, p.Unit) + " is now " + measure.FormatAmount(v, p.Unit))
		p.Amount = v
		return true
	}
	if p.Unit == "" && len(inside) == 1 && inside[0].Kind == token.Numeral && inside[0].Wrong == "" && inside[0].Value > mostDoses*p.Amount { // "1 espresso (30)"
		p.Amount, p.AmountAt = inside[0].Value, Span{inside[0].Start, inside[0].End}
		return true
	}
	return p.otherMeasure(text, inside)
}

// takeServed takes what stands behind a name of the ice, the glass or how fruit is cut, and
// returns how many tokens that is.
func (p *Written) takeServed(toks []token.Token) int {
	last := len(toks) - 1
	if last > 0 && toks[last].Text == "ice" && toks[last-1].Kind == token.Word && !token.Joins[toks[last-1].Text] && !serving.Known(toks[last-1].Text) && !PouringVerb(toks[0].Text) { // "1/2 amaretto ice"
		s := serving.Read(toks[last:])
		p.Beside.Merge(&s, true)
		return 1
	}
	if last > 0 && p.Stated && toks[last].Text == "frozen" && strings.HasSuffix(toks[last-1].Text, "s") { // "3 grapes frozen" are no frozen drink
		return 1
	}
	if last > 0 && toks[last].Text == "up" && pouring.FillsUp(&toks[last-1]) && !p.Stated { // "soda up"
		p.apply(pouring.Tail{Unit: flavor.Top, After: true})
		return 1
	}
	if n := pouring.CutAt(toks); n > 0 {
		p.Cut = true
		return n
	}
	if gauge.Behind(toks) {
		return 0
	}
	n := pouring.VesselAt(toks)
	if n > 0 && n < len(toks) && serving.StartsMethod(toks) { // "shake with crushed ice" is read as a whole
		return 0
	}
	if n > 0 {
		s := serving.Read(toks[len(toks)-n:])
		p.Beside.Merge(&s, true)
	}
	return n
}

// nowAmount reads what stands in brackets for what an amount has become: "2 now".
func nowAmount(toks []token.Token) (float64, bool) {
	if len(toks) != 2 || toks[0].Text != "now" && toks[1].Text != "now" {
		return 0, false
	}
	for i := range toks {
		if toks[i].Kind == token.Numeral && toks[i].Wrong == "" {
			return toks[i].Value, true
		}
	}
	return 0, false
}

// mostDoses is the number by which what stands in brackets is so much more than what it
// stands behind that it is no count, but a volume.
const mostDoses = 4

func (p *Written) apply(t pouring.Tail) {
	p.After = p.After || t.After
	p.Muddled = p.Muddled || t.Muddled
	p.Squeezed = p.Squeezed || t.Squeezed || t.Unit == flavor.Wedge && !p.Stated
	p.Each = p.Each || t.Each
	p.refuse = p.refuse || t.Refuse
	if t.Garnish {
		p.Remark = "garnish"
	}
	if t.Remark != "" {
		p.AddNote(t.Remark)
	}
	if t.Unit != "" && !p.Stated && p.Unit == "" {
		p.Unit = t.Unit
	}
}

func (p *Written) garnishAsked() bool { return p.Remark == "garnish" }
