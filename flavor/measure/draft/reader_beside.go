package draft

import (
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/token"
)

// What an entry is by what stands beside it.

// tellsRole reports whether an entry says what the pour before it does in the drink: behind a
// semicolon, or in the last column of a row whose amounts stand behind the names.
func tellsRole(in []joining.Piece, i int, role string) bool {
	if i == 0 || role == "" || in[i-1].Pour.Shape != entry.ShapePour {
		return false
	}
	before := &in[i-1].Pour
	inColumn := i == len(in)-1 && in[i].Sep == "," && joining.InColumn(role) && before.AmountAt.Start > before.NameAt.Start
	return inColumn || in[i].Sep == ";" && !in[i].Pour.Shared
}

// takeRole keeps what a pour does in the drink as a remark; a float and a top go in afterwards.
func (r *reader) takeRole(n int, p *joining.Piece, role string) {
	r.entry(KindRemark, n, entry.Span{Start: p.Toks[0].Start, End: p.Toks[len(p.Toks)-1].End})
	if k := len(r.d.Lines) - 1; k >= 0 && (role == "float" || role == "top") {
		r.d.Lines[k].After = true
	}
}

// dress keeps what dresses the rim, and says so.
func (r *reader) dress(n int, p *joining.Piece) {
	toks := entry.TrimMarks(p.Toks)
	at := entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}
	r.d.Rim = token.OneLine(r.text[at.Start:at.End])
	r.entry(KindRim, n, at)
	r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+r.d.Rim+"” is kept as the rim; write it with an amount to have it poured")
	p.Pour.Shape = entry.ShapeRim
}

// timesStep reports whether an entry says how long the step before it takes: "one scoop ice. 20 sec." Behind a
// pour "sec" is dry vermouth, which nobody writes as several.
func timesStep(in []joining.Piece, i int) bool {
	toks := entry.TrimMarks(in[i].Toks)
	if i == 0 || len(toks) != 2 || toks[0].Kind != token.Numeral || toks[0].Value < 2 {
		return false
	}
	return toks[1].Text == "secs" || toks[1].Text == "sec" && in[i-1].Pour.Shape == entry.ShapeServing
}

// laidBeside reports whether what stands beside an entry says that it is laid on the drink: the
// service or the rim before it, or a garnish on either side of a plus, "orange + lemon zest".
func laidBeside(in []joining.Piece, i int) bool {
	p := &in[i]
	named := p.Pour.Shape == entry.ShapeName
	if i > 0 {
		switch in[i-1].Pour.Shape {
		case entry.ShapeServing, entry.ShapeRim:
			if p.LaidOn() {
				return true
			}
		case entry.ShapeGarnish:
			if p.Sep == "+" && named {
				return true
			}
		}
	}
	return i+1 < len(in) && in[i+1].Sep == "+" && named && p.LaidOn() && in[i+1].Pour.Shape == entry.ShapeGarnish
}
