package draft

import "strings"

// firstLine reads the name of the drink, and is false if the line states a
// pour.
func (r *reader) firstLine(n int, span Span, l label, rest, toks []token) bool {
	if l == labelName && !(toks[0].text != "name" && r.pours(rest)) {
		at := span
		if len(rest) > 0 {
			at.Start = rest[0].start
			r.setName(n, at)
			r.d.labelled = true
		}
		return true
	}
	if toks[0].is("(") && toks[len(toks)-1].is(")") { // "(makes 2)"
		r.first = true
		r.entry(KindRemark, n, span)
		return true
	}
	if len(toks) == 1 && toks[0].kind == numeral { // "50/50"
		r.setName(n, span)
		return true
	}
	if l == labelPours && len(rest) == 0 {
		r.entry(KindRemark, n, span)
		return true
	}
	if l == labelName {
		toks = rest // "spec: 2 oz gin, ..."
	}
	if amounts, _ := ratioOf(toks); amounts != nil {
		if names, _ := ratioNames(toks[1:], len(amounts)); names != nil {
			return false
		}
	}
	in := r.spread(r.gather(r.pieces(toks)))
	if l == noLabel && r.oneLiner(n, span, in) {
		return true
	}
	for i := range in {
		if p := &in[i].pour; p.states(r) {
			return false
		}
	}
	if pouredIn(toks) != "" {
		return false
	}
	at := span
	at.Start = toks[0].start
	r.setName(n, at)
	if len(in) == 1 && in[0].pour.shape == shapeImplied && in[0].pour.fault == nil {
		line := r.lineOf(n, &in[0].pour)
		r.d.perhapsPour = &line
	}
	if s := readServing(toks); s.method != "" && len(s.unknown) == 0 && s.conflict == nil && s.words > 1 {
		r.d.servingName = &s
	}
	return true
}

// pours reports whether tokens state more than one pour, so that they are no name.
func (r *reader) pours(toks []token) bool {
	n := 0
	in := r.spread(r.gather(r.pieces(toks)))
	for i := range in {
		if in[i].pour.states(r) {
			n++
		}
	}
	return n > 1
}

// states reports whether a stretch of the first line is a pour and no part of a
// name.
func (p *pour) states(r *reader) bool {
	if p.shape != shapePour && !(p.shape == shapeAmount && p.Unit != "" && !p.words) {
		return p.fault != nil && p.shape == shapePour
	}
	if p.fault != nil {
		return !p.words && !p.gluedName()
	}
	written := r.text[p.AmountAt.Start:p.AmountAt.End]
	switch {
	case p.words && (written == "a" || written == "A" || strings.EqualFold(written, "an")):
		return p.Unit != "" && !p.UnitAt.Empty() && !p.Unit.Counted()
	case !p.UnitAt.Empty() && p.UnitAt.Start < p.NameAt.Start:
		return true
	case p.Unit == "" && p.Amount > mostBare:
		return false
	}
	return !p.gluedName()
}

// oneLiner reads a name and its pours on one line: "Halyard: 2 oz gin, ...".
func (r *reader) oneLiner(n int, span Span, in []piece) bool {
	if len(in) < 2 || in[0].pour.shape != shapeName && in[0].pour.shape != shapeServing && in[0].pour.shape != shapeGarnish {
		return false
	}
	pours := 0
	for i := range in[1:] {
		if in[1+i].pour.states(r) {
			pours++
		}
	}
	sep := in[1].sep
	if pours == 0 || sep != ":" && sep != "-" && sep != "," && sep != ";" && sep != "." && sep != "/" || in[0].pour.shape != shapeName && sep != ":" && sep != "-" {
		return false
	}
	if in[0].pour.shape == shapeServing && labels[in[0].toks[0].text] == noLabel && sep == ":" && methodWord(in[0].toks) && len(in[0].toks) == 1 {
		return false // "shake: 2 oz gin, ..."
	}
	toks := in[0].toks
	r.setName(n, Span{toks[0].start, toks[len(toks)-1].end})
	r.takeAll(n, span, in[1:], false)
	return true
}

func (r *reader) setName(n int, at Span) {
	r.d.Name, r.d.nameAt = oneLine(r.text[at.Start:at.End]), at
	r.entry(KindName, n, at)
}
