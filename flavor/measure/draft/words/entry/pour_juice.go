package entry

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// What is taken of a fruit or an egg, and the words of other tongues for the juice of a fruit, what stands
// before and behind them.
var (
	fruitParts      = vocabulary.Words(`juice squeeze squirt white yolk`)
	foreignArticles = vocabulary.Words(`le el il lo o der den het`)
	foreignJuices   = vocabulary.Words(`jus zumo jugo succo suco sumo saft sap sok sokiem šťáva сок χυμός χυμό`)
	foreignOf       = vocabulary.Words(`d'un d'une de di du da einer eines von van av af z ze ze из από`)
)

// juiceOf reads what behind "juice of" says how much of a fruit is pressed. A name without an
// amount is that of a juice.
func (p *Written) juiceOf(text string, of []token.Token) bool {
	rest, ok := p.takeAmount(of)
	if !ok || len(rest) == 0 || p.Unit != "" {
		*p = Written{Of: p.Of}
		return false
	}
	p.takeName(text, rest)
	p.Squeezed, p.Shape = true, ShapePour
	return true
}

// squeezeSizes say how much a squeeze is, which no bar measures.
var squeezeSizes = vocabulary.Words(`small little good big fresh generous light quick`)

// squeezes reads squeezes that are counted, behind their number: "1 squeeze of lime", "2 small squeezes lemon juice".
func (p *Written) squeezes(text string, toks []token.Token) bool {
	if len(toks) > 1 && squeezeSizes.Has(toks[0].Text) {
		toks = toks[1:]
	}
	if len(toks) < 2 || toks[0].Text != "squeeze" && toks[0].Text != "squeezes" {
		return false
	}
	if toks = toks[1:]; toks[0].Text == "of" {
		toks = toks[1:]
	}
	if last := len(toks) - 1; last > 0 && toks[last].Text == "juice" {
		toks = toks[:last]
	}
	if len(toks) == 0 {
		return false
	}
	p.takeName(text, toks)
	p.Unit, p.Squeezed, p.Shape = flavor.Wedge, true, ShapePour
	p.AddNote("a squeeze is taken as a wedge")
	return true
}
