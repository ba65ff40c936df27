package entry

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/vocabulary"
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
			open := opening(toks)
			if open >= 0 && p.takeBrackets(text, toks[open+1:last]) {
				toks = toks[:open]
				continue
			}
			if open < 0 {
				return toks
			}
			if n, t := TailAt(toks[:open]); n > 0 && n < open && t.Unit != "" && !t.Garnish { // "vermouth rinse (dry)"
				p.apply(t)
				return append(append([]token.Token(nil), toks[:open-n]...), toks[open:]...)
			}
			return toks
		}
		if n := p.takeServed(toks); n > 0 {
			toks = toks[:len(toks)-n]
			continue
		}
		n, t := TailAt(toks)
		if n == 0 || n == len(toks) && !(t.Garnish || t.each) {
			return toks
		}
		if t.Garnish && len(toks) > n && toks[len(toks)-n-1].Text == "bitters" {
			t = tail{Unit: flavor.Top, after: true} // "bitters to garnish"
		}
		p.apply(t)
		toks = toks[:len(toks)-n]
	}
	return toks
}

// takeBrackets takes what stands in brackets behind a name, if it is no part of the name: what
// the amount was or is now, how it goes in, how it is cut, another measure of the same.
func (p *Written) takeBrackets(text string, inside []token.Token) bool {
	if len(inside) > 1 && WasWords.Has(inside[0].Text) { // "1.5 (was 2)"
		p.AddNote("“" + token.OneLine(text[inside[0].Start:inside[len(inside)-1].End]) + "” is skipped")
		return true
	}
	if told := tailsOf(inside); told != nil {
		for _, t := range told {
			p.apply(t)
		}
		return true
	}
	if len(inside) > 0 && cutVerbs.Has(inside[0].Text) { // "1 lime (cut in 8)"
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
	if last > 0 && toks[last].Text == "ice" && toks[last-1].Kind == token.Word && !Joins[toks[last-1].Text] && !serving.Known(toks[last-1].Text) && !PouringVerb(toks[0].Text) { // "1/2 amaretto ice"
		s := serving.Read(toks[last:])
		p.Beside.Merge(&s, true)
		return 1
	}
	if last > 0 && p.Stated && toks[last].Text == "frozen" && strings.HasSuffix(toks[last-1].Text, "s") { // "3 grapes frozen" are no frozen drink
		return 1
	}
	if last > 0 && toks[last].Text == "up" && FillsUp(&toks[last-1]) && !p.Stated { // "soda up"
		p.apply(tail{Unit: flavor.Top, after: true})
		return 1
	}
	if n := cutAt(toks); n > 0 {
		p.Cut = true
		return n
	}
	n := vesselAt(toks)
	if n > 0 {
		s := serving.Read(toks[len(toks)-n:])
		p.Beside.Merge(&s, true)
	}
	return n
}

// FillsUp reports whether a word ends the name of what fills a glass up and is not served up
// itself: "soda up".
func FillsUp(t *token.Token) bool { return t.Kind == token.Word && fillers.Has(t.Text) }

var fillers = vocabulary.Words(`soda tonic cola ale beer lemonade ginger`)

// tailsOf returns what words say that are nothing but tails, as "float on top" is; nil if
// they say more.
func tailsOf(toks []token.Token) []tail {
	var out []tail
	for len(toks) > 0 {
		n, t := TailAt(toks)
		if n == 0 {
			return nil
		}
		out, toks = append(out, t), toks[:len(toks)-n]
	}
	return out
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

func (p *Written) apply(t tail) {
	p.After = p.After || t.after
	p.Muddled = p.Muddled || t.muddled
	p.Squeezed = p.Squeezed || t.squeezed || t.Unit == flavor.Wedge && !p.Stated
	p.Each = p.Each || t.each
	p.refuse = p.refuse || t.refuse
	if t.Garnish {
		p.Remark = "garnish"
	}
	if t.remark != "" {
		p.AddNote(t.remark)
	}
	if t.Unit != "" && !p.Stated && p.Unit == "" {
		p.Unit = t.Unit
	}
}

func (p *Written) garnishAsked() bool { return p.Remark == "garnish" }

func opening(toks []token.Token) int {
	for i := len(toks) - 2; i >= 0; i-- {
		if toks[i].Is("(") {
			return i
		}
	}
	return -1
}

// without are words behind which "the float" is what another line pours.
var without = vocabulary.Words(`without w/o before except but then with`)

// TailAt returns the longest tail at the end of toks.
func TailAt(toks []token.Token) (int, tail) {
	best, found := 0, tail{}
	if n := len(toks); n > 2 && toks[n-2].Text == "the" && without.Has(toks[n-3].Text) && PourVerbs[toks[n-1].Text] != "" { // "shake without the float"
		return 0, tail{}
	}
	if len(toks) == 0 {
		return 0, tail{}
	}
	for _, i := range tailsByLast[toks[len(toks)-1].Text] {
		w := tails[i].words
		if len(w) <= best || len(w) > len(toks) {
			continue
		}
		if slices.EqualFunc(w, toks[len(toks)-len(w):], func(a string, t token.Token) bool { return t.Kind == token.Word && t.Text == a }) {
			best, found = len(w), tails[i].tail
		}
	}
	return best, found
}
