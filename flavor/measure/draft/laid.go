package draft

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// laidFruit is what bars write after the service for the peel or the slice of it;
// common practice.
var laidFruit = set(`lemon lime orange grapefruit pineapple cucumber apple nutmeg celery anise clove cloves cinnamon`)

// endsLaid reports whether words end in what is laid on a drink.
func endsLaid(toks []token) bool {
	last := &toks[len(toks)-1]
	return last.kind == word && (garnishNouns[last.text] || laidFruit[last.text])
}

// laidOn reports whether an entry that follows the service on its line is a fruit
// laid on the drink: "stir, up, lemon".
func laidOn(p *piece) bool {
	toks := trimMarks(p.toks)
	return p.pour.shape == shapeName && len(toks) > 0 && len(toks) <= 2 && endsLaid(toks)
}

// dressed reports whether an entry that follows the service on its line is what the
// rim is dressed with: "rocks, salt".
func dressed(before, p *piece) bool {
	toks := trimMarks(p.toks)
	if p.pour.shape != shapeName || len(toks) != 1 || toks[0].text != "salt" && toks[0].text != "sugar" || before.pour.shape != shapeServing {
		return false
	}
	s := readServing(before.toks)
	return s.service != "" || s.glass != ""
}

// mostLaid is the most things that are laid on one drink; common practice.
const mostLaid = 4

// laid reports whether a pour that follows the service is a few of what is laid on
// a drink: "3 coffee beans", "1 lime wedge".
func (p *pour) laid(toks []token) bool {
	if !p.figures || p.Amount > mostLaid || p.Amount != math.Trunc(p.Amount) || p.muddled || p.squeezed || p.After || p.each || p.fault != nil {
		return false
	}
	return p.UnitAt.Empty() && garnishNouns[withoutRemark(toks)] ||
		p.Unit == flavor.Slice || p.Unit == flavor.Wedge || p.Unit == flavor.Sprig || p.Unit == flavor.Leaf
}

// garnishAfter returns where, after the service, what is laid on the drink begins,
// as in "stir up cherry" or "shake up 3 beans"; 0 if nothing does.
func garnishAfter(toks []token) int {
	if len(toks) < 2 || !endsLaid(toks) {
		return 0
	}
	cut := len(toks)
	for cut > 0 && saysNothing(&toks[cut-1]) {
		cut--
	}
	if cut == 0 || cut == len(toks) || joins[toks[cut-1].text] {
		return 0
	}
	s := readServing(toks[:cut])
	if s.service == "" && s.glass == "" || len(s.unknown) > 0 {
		return 0
	}
	return cut
}

// saysNothing reports whether a token says nothing of method, service or glass.
func saysNothing(t *token) bool {
	if t.kind == numeral {
		return true
	}
	if t.kind != word || fillers[t.text] || stepVerbs[t.text] || otherMeasures[t.text] || degreeWords[t.text] {
		return false
	}
	_, n := termAt([]string{t.text})
	_, unit := measure.ParseUnit(t.text)
	return n == 0 && (!unit || garnishNouns[t.text])
}

// laid keeps what is laid on a drink, and says so: it might have been meant to be
// poured.
func (r *reader) laid(n int, toks []token) {
	at := Span{toks[0].start, toks[len(toks)-1].end}
	r.garnish(n, at)
	r.said.notes = append(r.said.notes, lineLocation(n)+": “"+oneLine(r.text[at.Start:at.End])+"” is kept as garnish; write it on a line of its own, with an amount, to have it poured")
}
