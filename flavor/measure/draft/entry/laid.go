package entry

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/vocabulary"
)

// laidFruit is what bars write after the service for the peel or the slice of it;
// common practice.
var laidFruit = vocabulary.Words(`lemon lime orange grapefruit pineapple cucumber apple nutmeg celery anise clove cloves cinnamon arancia limone naranja limón zitrone limette citron sitron appelsin apelsin lem org orng gf cuke toronja pomelo pepino gurke minze piña manzana menta fruit fruits berries`)

// EndsLaid reports whether words end in what is laid on a drink.
func EndsLaid(toks []token.Token) bool {
	last := &toks[len(toks)-1]
	return last.Kind == token.Word && (LaidNoun(last.Text) || laidFruit.Has(last.Text))
}

// halfFruit is laid on a drink by the half, cut side up; common practice.
var halfFruit = vocabulary.Words(`passionfruit passion maracuja maracuyá fig physalis`)

// mostLaid is the most things that are laid on one drink; common practice.
const mostLaid = 4

// herbs are leaves that are as often mixed in as laid on a drink.
var herbs = vocabulary.Words(`mint basil sage thyme rosemary dill cilantro coriander tarragon shiso parsley verbena marjoram oregano lovage chervil
minze basilikum salbei thymian rosmarin menta basilico salvia timo rosmarino albahaca hierbabuena romero tomillo menthe basilic sauge thym romarin hortelã manjericão alecrim munt mynte mynta basilika`)

// loosely are words before a herb that say that there is much of it, or some.
var loosely = vocabulary.Words(`lots lot plenty loads some of a bit fresh`)

// Loosely returns toks without the words before a herb that say that there is much of it, or some.
func Loosely(toks []token.Token) []token.Token {
	for len(toks) > 1 && loosely.Has(toks[0].Text) {
		toks = toks[1:]
	}
	return toks
}

// HerbAlone reports whether words name a fresh herb and nothing else, "basil", "lots of mint".
func HerbAlone(toks []token.Token) bool {
	toks = Loosely(TrimMarks(toks))
	return len(toks) == 1 && toks[0].Kind == token.Word && herbs.Has(toks[0].Text)
}

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
	if p.Amount == 0.5 && p.UnitAt.Empty() && len(name) > 0 && halfFruit.Has(name[len(name)-1].Text) {
		return true
	}
	if p.After {
		return false
	}
	return p.UnitAt.Empty() && (garnishNouns.Has(withoutRemark(toks)) || p.AmountAt.Start > p.NameAt.Start && garnishNouns.Has(withoutRemark(p.NameTokens()))) ||
		p.Unit == flavor.Slice || p.Unit == flavor.Wedge || p.Unit == flavor.Sprig || p.Unit == flavor.Leaf
}

// GarnishAfter returns where, after the service, what is laid on the drink begins,
// as in "stir up cherry" or "shake up 3 beans"; 0 if nothing does.
func GarnishAfter(toks []token.Token) int {
	if n := len(toks); n > 2 && toks[n-2].Text == "on" && (toks[n-1].Text == "top" || toks[n-1].Text == "pick" || toks[n-1].Text == "it") { // "nutmeg on top"
		toks = toks[:n-2]
	}
	if len(toks) < 2 || !EndsLaid(toks) {
		return 0
	}
	cut := len(toks)
	for cut > 0 && saysNothing(&toks[cut-1]) {
		cut--
	}
	if cut == 0 || cut == len(toks) || Joins[toks[cut-1].Text] {
		return 0
	}
	s := serving.Read(toks[:cut])
	if s.Service == "" && s.Glass == "" && (s.Method != flavor.Shake && s.Method != flavor.Stir) || len(s.Unknown) > 0 {
		return 0
	}
	return cut
}

// saysNothing reports whether a token says nothing of method, service or glass.
func saysNothing(t *token.Token) bool {
	if t.Kind == token.Numeral {
		return true
	}
	if t.Kind != token.Word || serving.Fillers[t.Text] || serving.StepVerbs[t.Text] || serving.OtherMeasures[t.Text] || serving.DegreeWords[t.Text] {
		return false
	}
	_, n := serving.TermAt([]string{t.Text})
	_, unit := measure.ParseUnit(t.Text)
	return n == 0 && (!unit || garnishNouns.Has(t.Text))
}
