package entry

import (
	"counterpour/flavor/measure/draft/token"
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
