package title

import (
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// headed takes the name from a line that says how the drink is served besides, "AMARETTO SOUR | rocks
// | cubed", "Negroni (rocks, big cube)", or that it has no alcohol, "0.0 | NOGRONI". It is false if the
// line says more: what stands behind a bar and the service may be laid on the drink, though.
func (f *First) headed() (Named, bool) {
	var n Named
	named, served := false, false
	for from := 0; from < len(f.Toks); {
		to := from
		for to < len(f.Toks) && !partsHead(f.Toks, to) {
			to++
		}
		cell := entry.TrimMarks(f.Toks[from:to])
		s := serving.Read(cell)
		switch {
		case len(cell) == 0:
		case !named && len(cell) == 1 && cell[0].Kind != token.Word && cell[0].Value == 0:
			n.Before = cell
		case numbered(cell):
			return Named{}, false
		case named && s.States() && len(s.Unknown) == 0 && s.Conflict == nil, served && f.Toks[from-1].Is("|"):
			if served = true; n.Pours == nil {
				n.Pours = f.Toks[from:]
			}
		case !named && cell[0].Kind == token.Word && len(s.Unknown) > 0:
			n.At, named = entry.Span{Start: cell[0].Start, End: cell[len(cell)-1].End}, true
		default:
			return Named{}, false
		}
		from = to + 1
	}
	return n, named && (served || n.Before != nil)
}

// partsHead reports whether a sign parts the cells of such a line.
func partsHead(toks []token.Token, i int) bool {
	switch t := &toks[i]; t.Text {
	case "|", "/", "•", "·", ",", "(", ")", "[", "]":
		return t.Kind == token.Mark
	case "-":
		return t.Kind == token.Mark && !t.Glued && i+1 < len(toks) && !toks[i+1].Glued
	}
	return false
}
