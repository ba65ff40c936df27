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

// rim reads what the rim of the glass is dressed with.
func (p *Written) rim(toks []token.Token) bool {
	found := len(toks) == 2 && toks[0].Text == "half" && (toks[1].Text == "salt" || toks[1].Text == "sugar") // "half salt"
	if last := len(toks) - 1; last > 1 && toks[last-1].Text == "with" && (toks[last].Text == "salt" || toks[last].Text == "sugar") {
		if s := serving.Read(toks[:last-1]); s.Service != "" && len(s.Unknown) == 0 { // "rocks with salt"
			p.Shape, p.Remark = ShapeRim, toks[last].Text
			return true
		}
	}
	if !found && !slices.ContainsFunc(toks, func(t token.Token) bool { return ofRim(t.Text) }) {
		return false // as most lines
	}
	if n, t := TailAt(toks); n > 1 && t.Unit == flavor.Top { // "cola to the rim"
		return false
	}
	var kept []string
	for i := range toks {
		switch w := toks[i].Text; {
		case len(toks) > 1 && (toks[i].Is("+") || toks[i].Is("&")) && i > 0 && i+1 < len(toks):
			kept = append(kept, toks[i].Text)
		case ofRim(w):
			found = true
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
	if found {
		p.Shape, p.Remark = ShapeRim, strings.Join(kept, " ")
		w := PouredIn(toks)
		if at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral }); w == "" && at > 0 { // "agave 15 salt rim"
			w = toks[at-1].Text + " " + toks[at].Text
		}
		if w == "" && UnitWordsAt(toks) && serving.Read(toks).Method != "" { // "pinch of salt shake it chilli rim"
			w = toks[0].Text
		}
		if w != "" {
			p.Shape, p.Fault = ShapePour, measure.Invalid("amount", w, "%q stands in the note on the rim; write it on a line of its own", w)
		} else if len(kept) > 0 && (kept[0] == "no" || kept[0] == "without") { // "no salt rim"
			p.Shape, p.Remark = ShapeServing, ""
		}
	}
	return found
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
