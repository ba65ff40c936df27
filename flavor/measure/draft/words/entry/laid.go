package entry

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/token"
)

// mostLaid is the most things that are laid on one drink; common practice.
const mostLaid = 4

// Laid reports whether a pour that follows the service is a few of what is laid on
// a drink: "3 coffee beans", "1 lime wedge".
func (p *Written) Laid(toks []token.Token) bool {
	if !p.Figures && !p.words || p.Amount > mostLaid || p.Amount != math.Trunc(p.Amount) && p.Amount != 0.5 || p.Muddled || p.Squeezed || p.Each || p.Fault != nil {
		return false
	}
	name := p.NameTokens()
	if len(name) > 2 && name[len(name)-2].Text == "on" { // "half passionfruit on top"
		name = name[:len(name)-2]
	}
	if p.Amount == 0.5 && p.UnitAt.Empty() && len(name) > 0 && laid.ByHalf(name[len(name)-1].Text) {
		return true
	}
	if p.After {
		return false
	}
	return p.UnitAt.Empty() && (laid.Word(laid.LastWord(toks)) || p.AmountAt.Start > p.NameAt.Start && laid.Word(laid.LastWord(p.NameTokens()))) ||
		p.Unit == flavor.Slice || p.Unit == flavor.Wedge || p.Unit == flavor.Sprig || p.Unit == flavor.Leaf
}
