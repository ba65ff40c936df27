package entry

import (
	"math"
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// eggs are poured one at a time where no amount is written.
var eggs = vocabulary.Words(`ew egg eggs white whites wht whts yolk yolks eggwhite egg-white eiweiß eiweiss albume clara äggvita æggehvide eiwit eiklar eiklara albúmina`)

// eggOf and eggParts name a part of an egg in other tongues.
var (
	eggOf    = vocabulary.Words(`d'oeuf d'œuf oeuf œuf huevo ovo uovo d'uovo`)
	eggParts = vocabulary.Words(`blanc clara jaune yema bianco tuorlo gema`)
)

// readWithoutAmount reads tokens that state no amount.
func (p *Written) readWithoutAmount(text string, toks []token.Token) {
	if p.garnishAsked() {
		p.Shape = ShapeGarnish
		return
	}
	if at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Text == "soaked" }); at > 0 && at+1 < len(toks) {
		w := token.OneLine(text[toks[0].Start:toks[len(toks)-1].End])
		p.Shape = ShapePour
		p.Fault = measure.Invalid("amount", w, "%q states no amounts; write two pours, such as \"1 sugar cube\" and \"3 dashes aromatic bitters\"", w)
		return
	}
	if p.readByTail(text, toks) || p.unitLast(text, toks) || p.squeezedPart(text, toks) {
		return
	}
	whole := TrimMarks(p.Of)
	if n, t := pouring.TailAt(whole); n > 0 && n == len(whole) {
		if p.Shape = ShapeTail; t == (pouring.Tail{}) { // "v cold"
			p.Shape = ShapeServing
		}
		return
	}
	if serving.Known(whole[0].Text) {
		if s := serving.Read(whole); len(s.Unknown) == 0 && (s.Method != "" || s.Service != "") { // "DS/WS up" are no dashes
			p.Shape = ShapeServing
			return
		}
	}
	if p.impliedUnit(text, toks) || p.rinsedGlass(text, whole) {
		return
	}
	switch {
	case unlike(toks) || tellsServing(whole):
		p.Shape = ShapeServing
	case len(toks) == 0:
	case !slices.ContainsFunc(toks, func(t token.Token) bool { return !vesselWords.Has(t.Text) }): // "50 gin -> tin"
		p.Shape = ShapeServing
	default:
		p.takeName(text, toks)
		p.impliedByName(text, toks)
	}
}

// readByTail reads tokens without an amount by the unit that their tail implies, "absinthe
// rinse", or as what is laid on the drink or said of serving it; false if they do neither.
func (p *Written) readByTail(text string, toks []token.Token) bool {
	if len(toks) > 2 && toks[0].Text == "side" && toks[1].Text == "of" || p.Unit == flavor.Top && len(toks) > 0 && laid.Word(toks[len(toks)-1].Text) && !p.Muddled {
		p.Shape = ShapeGarnish // "side of prosecco", "nutmeg on top"
		return true
	}
	if serving.IceOnly(toks) { // "crushed ice on top"
		p.Shape = ShapeServing
		return true
	}
	s := serving.Read(toks)
	poured := p.Unit == flavor.Top && s.Method != ""        // "shake, pour over ice, grapefruit on top"
	rinsed := p.Unit == flavor.Rinse && len(s.Unknown) == 0 // "strain into rinsed"
	if len(toks) > 1 && s.Begins && (poured || rinsed) {
		p.Shape = ShapeServing
		return true
	}
	if p.Unit == "" || len(toks) == 0 {
		return false
	}
	if len(toks) > 1 && withWords.Has(toks[0].Text) { // "mit Soda auffüllen"
		toks = toks[1:]
	}
	if last := len(toks) - 1; last > 0 && p.Unit == flavor.Top { // "soda dash on top"
		if u, n := UnitAt(toks[last:]); n > 0 && (u == flavor.Dash || u == flavor.Drop || u == flavor.Splash) {
			p.Unit, p.UnitAt, toks = u, Span{toks[last].Start, toks[last].End}, toks[:last]
		}
	}
	p.Amount, p.NoAmount, p.Shape = 1, false, ShapeImplied
	p.takeName(text, toks)
	return true
}

// tellsServing reports whether words speak of making, serving or ice, and of nothing that is poured.
func tellsServing(whole []token.Token) bool {
	s := serving.Read(whole)
	begins := s.Begins && (len(s.Unknown) == 0 || serving.StepVerbs[whole[0].Text] || s.Method != "" || s.Glass != "" || laid.Served(whole) > 0)
	return begins || len(s.Unknown) == 0 && (s.States() || s.Cold || len(whole) == 1 && serving.Fillers[whole[0].Text]) || serving.IceOnly(whole)
}

// impliedByName reads a name that says by itself how much is poured, "egg white", "soda", or
// that it is laid on the drink.
func (p *Written) impliedByName(text string, toks []token.Token) {
	if Lengtheners[strings.ToLower(p.Name)] { // "soda q.b." too
		p.refuse = false
		p.Amount, p.Unit, p.After, p.NoAmount, p.Shape = 1, flavor.Top, true, true, ShapeImplied
		return
	}
	p.Shape = ShapeName
	last := laid.LastWord(toks)
	switch {
	case oneEgg(toks, last):
		p.Amount, p.Unit, p.NoAmount, p.Shape = 1, flavor.Piece, true, ShapeImplied
	case last == "cube" && len(toks) > 1:
		p.Amount, p.NoAmount, p.Shape = 1, true, ShapeImplied
		p.Name = token.OneLine(text[p.NameAt.Start:toks[len(toks)-2].End])
		p.Unit = flavor.Cube
	case laid.ByNoun(toks, last) && !p.Muddled && !measuredAmid(toks):
		p.Shape, p.ByNoun = ShapeGarnish, true
	}
}

// oneEgg reports whether words name an egg or a part of one: "egg (whole)", "clara de huevo".
func oneEgg(toks []token.Token, last string) bool {
	if len(toks) == 4 && strings.HasPrefix(toks[0].Text, "egg") && toks[1].Is("(") && (toks[2].Text == "whole" || eggs.Has(toks[2].Text)) {
		return true
	}
	if len(toks) > 3 {
		return false
	}
	white := strings.HasPrefix(last, "wh") // of a wine too
	return eggs.Has(last) && (!white || len(toks) == 1 || strings.HasPrefix(toks[len(toks)-2].Text, "egg")) || eggOf.Has(last) && eggParts.Has(toks[0].Text)
}

// gluedAmount reports whether a word runs into a number: "ss20".
func gluedAmount(w string) bool {
	return unicode.IsLetter(rune(w[0])) && strings.ContainsAny(w[len(w)-1:], "0123456789")
}

// measuredAmid reports whether a part of one stands amid words, as in "simple .5 dill", or a number runs
// into a word: what stands before it is poured.
func measuredAmid(toks []token.Token) bool {
	return slices.ContainsFunc(toks[1:], func(t token.Token) bool {
		return t.Kind == token.Numeral && t.Value != math.Trunc(t.Value)
	}) || slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Word && gluedAmount(t.Text) })
}

// squeezedPart reads a part of a fruit that is squeezed into the drink: "lime wedge squeezed
// in", "squeezed orange wedge".
func (p *Written) squeezedPart(text string, toks []token.Token) bool {
	if len(toks) > 2 && (toks[0].Text == "squeezed" || toks[0].Text == "squeeze") {
		toks, p.Squeezed = toks[1:], true
		if toks[0].Text == "a" || toks[0].Text == "the" || toks[0].Text == "one" {
			toks = toks[1:]
		}
		if at := slices.IndexFunc(toks, func(t token.Token) bool { return wedges.Has(t.Text) }); at > 0 && saysVessel(toks[at+1:]) { // "squeeze a lime wedge in"
			toks = toks[:at+1]
		}
	}
	last := len(toks) - 1
	if !p.Squeezed || last < 1 || len(toks) > 3 || !wedges.Has(toks[last].Text) || !laid.Fruit(toks[last-1].Text) {
		return false
	}
	p.takeName(text, toks[last-1:last])
	p.Amount, p.Unit, p.UnitAt, p.Shape = 1, flavor.Wedge, Span{toks[last].Start, toks[last].End}, ShapeImplied
	p.AddNote("a squeeze is taken as a wedge")
	return true
}

// wedges are the parts of a fruit that are squeezed.
var wedges = vocabulary.Words(`wedge slice quarter eighth cheek chunk disc disk coin wheel half hull shell`)

// withWords are "with" in the tongues that a top is written in.
var withWords = vocabulary.Words(`with mit con avec met med`)

// saysVessel reports whether words tell no more than what a pour goes into.
func saysVessel(toks []token.Token) bool {
	return !slices.ContainsFunc(toks, func(t token.Token) bool { return !vesselWords.Has(t.Text) })
}

// vesselWords name what a pour goes into, and nothing else of it.
var vesselWords = vocabulary.Words(`tin tins shaker glass mixing in into the a`)
