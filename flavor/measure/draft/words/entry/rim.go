package entry

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// rim reads what the rim of the glass is dressed with.
func (p *Written) rim(toks []token.Token) bool {
	if last := len(toks) - 1; last > 1 && toks[last-1].Text == "with" && dresses(&toks[last]) {
		if s := serving.Read(toks[:last-1]); s.Service != "" && len(s.Unknown) == 0 { // "rocks with salt"
			p.Shape, p.Remark = ShapeRim, toks[last].Text
			return true
		}
	}
	half := len(toks) == 2 && toks[0].Text == "half" && dresses(&toks[1]) // "half salt"
	if !half && !slices.ContainsFunc(toks, func(t token.Token) bool { return ofRim(t.Text) }) {
		return false // as most lines
	}
	if n, t := pouring.TailAt(toks); n > 1 && t.Unit == flavor.Top { // "cola to the rim"
		return false
	}
	kept := onRim(toks)
	p.Shape, p.Remark = ShapeRim, strings.Join(kept, " ")
	if w := pouredAtRim(toks); w != "" {
		p.Shape, p.Fault = ShapePour, measure.Invalid("amount", w, "%q stands in the note on the rim; write it on a line of its own", w)
	} else if len(kept) > 0 && (kept[0] == "no" || kept[0] == "without") { // "no salt rim"
		p.Shape, p.Remark = ShapeServing, ""
	}
	return true
}

// dresses reports whether a token is what a rim is dressed with where nothing else is said.
func dresses(t *token.Token) bool { return t.Text == "salt" || t.Text == "sugar" }

// onRim is what a rim is dressed with, in the words that say it.
func onRim(toks []token.Token) []string {
	var kept []string
	for i := range toks {
		switch w := toks[i].Text; {
		case (toks[i].Is("+") || toks[i].Is("&")) && i > 0 && i+1 < len(toks):
			kept = append(kept, w)
		case ofRim(w):
			if name, ok := strings.CutSuffix(w, "-rimmed"); ok {
				kept = append(kept, name)
			} else if dress := dressedWith(w); dress != "" {
				kept = append(kept, dress)
			}
		case toks[i].Kind == token.Mark || w == "with" || w == "the" || w == "glass" || w == "a" || w == "of":
		default:
			kept = append(kept, w)
		}
	}
	return kept
}

// pouredAtRim is the amount that a note on the rim holds, which dresses none; empty if there is none.
func pouredAtRim(toks []token.Token) string {
	if w := PouredIn(toks); w != "" {
		return w
	}
	if at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral }); at > 0 { // "agave 15 salt rim"
		return toks[at-1].Text + " " + toks[at].Text
	}
	if UnitWordsAt(toks) && serving.Read(toks).Method != "" { // "pinch of salt shake it chilli rim"
		return toks[0].Text
	}
	return ""
}

// dressedWith is what a rim is dressed with, where one word says both: "Salzrand".
func dressedWith(w string) string {
	for _, rim := range []string{"rand", "kant"} {
		if dress, ok := strings.CutSuffix(w, rim); ok {
			return dress
		}
	}
	return ""
}

// ofRim reports whether a word speaks of the rim.
func ofRim(w string) bool {
	return rims.Has(w) || w == "rimmed" || w == "rimming" || strings.HasSuffix(w, "-rimmed")
}

// rims are the word for a rim in the tongues of the trade.
var rims = vocabulary.Words(`rim orilla escarchado escarchada borde orlo salzrand zuckerrand rand bord givré crusta kant bordo borda escarcha zoutrand suikerrand saltkant sockerkant saltrand sukkerrand`)
