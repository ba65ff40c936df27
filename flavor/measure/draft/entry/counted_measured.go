package entry

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/token"
)

// measuredCount reads a count with its measure in brackets behind it, "juice of half a lemon
// (20 ml)", "white of 1 egg (about 1 oz)": the measure says more exactly how much is poured.
func (p *Written) measuredCount(text string, toks []token.Token) bool {
	last := len(toks) - 1
	if last < 4 || !toks[last].Is(")") {
		return false
	}
	open := opening(toks)
	if open < 2 {
		return false
	}
	inside := toks[open+1 : last]
	for len(inside) > 1 && LooseWords[inside[0].Text] {
		inside = inside[1:]
	}
	var o Written
	rest, ok := o.takeAmount(inside)
	if !ok || o.Fault != nil {
		return false
	}
	if rest = o.takeUnit(rest); len(rest) > 0 || !o.Unit.Jigger() {
		return false
	}
	head := Read(text, toks[:open])
	if head.Shape != ShapePour && head.Shape != ShapeImplied || head.Fault != nil || head.Unit != flavor.Piece && !head.Squeezed {
		return false
	}
	of := p.Of
	*p = head
	p.Of, p.Shape, p.Stated, p.NoAmount, p.Times = of, ShapePour, true, false, 0
	p.Amount, p.Unit, p.AmountAt, p.UnitAt, p.Figures = o.Amount, o.Unit, o.AmountAt, o.UnitAt, o.Figures
	return true
}
