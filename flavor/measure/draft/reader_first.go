package draft

import (
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/title"
	"counterpour/flavor/measure/draft/words/token"
)

// firstLine reads the name of the drink, and is false if the line states a pour. The first kind of
// line that it is decides.
func (r *reader) firstLine(n int, span entry.Span, l label.Kind, rest, toks []token.Token) bool {
	o := &title.First{Text: r.text, Join: &r.join, Span: span, Label: l, Rest: rest, Toks: toks}
	if r.labelledName(n, o) {
		return true
	}
	if l == label.Remark && numerals(rest) > 0 && !title.Pours(&r.join, rest) && !r.poursOne(rest) { // "station: bar 2"
		r.first = true
		return r.labelled(n, span, l, rest)
	}
	if r.besideName(n, o) || r.namedFirst(n, o) {
		return true
	}
	if l == label.Name {
		o.Toks = rest // "spec: 2 oz gin, ..."
	}
	if named, ok := o.BeforeSquare(); ok {
		r.takeNamed(n, span, &named)
		return true
	}
	if named, ok := o.Numbered(); ok {
		r.takeNamed(n, span, &named)
		return true
	}
	switch {
	case o.InHalves():
		r.setName(n, span)
		return true
	case title.InRatio(o.Toks):
		return false
	case o.Bare() && r.leads(n, span, o.Toks):
		return true
	}
	in := r.join.Entries(o.Toks)
	if o.Bare() && r.oneLiner(n, span, in) {
		return true
	}
	if title.PoursFirst(r.text, o.Toks, in) {
		return false
	}
	r.nameOf(n, o, in)
	return true
}

// labelledName takes what stands behind the label of a name, unless it is pours: "name: Halyard".
func (r *reader) labelledName(n int, o *title.First) bool {
	if o.Label != label.Name || o.Toks[0].Text != "name" && (title.Pours(&r.join, o.Rest) || r.poursOne(o.Rest)) {
		return false
	}
	if r.fieldsBehind(n, o) {
		return true
	}
	if len(o.Rest) > 0 {
		r.setLabelled(n, entry.Span{Start: o.Rest[0].Start, End: o.Span.End})
	}
	return true
}

// fieldsBehind refuses a name behind a sign that is the first of several fields, "name=Low Tide, gin 10
// ml": an amount in it would be lost.
func (r *reader) fieldsBehind(n int, o *title.First) bool {
	if len(o.Rest) == 0 || !o.Toks[1].Is("=") {
		return false
	}
	written := token.OneLine(r.text[o.Rest[0].Start:o.Span.End])
	if _, behind, ok := strings.Cut(written, ","); !ok || !strings.ContainsFunc(behind, unicode.IsNumber) {
		return false
	}
	r.unread(n, o.Span, measure.Invalid("amount", written, "%q holds an amount; write the name of the drink on a line of its own", written))
	return true
}

// besideName takes a line that stands above the name, and is false if it is none: the name
// follows it.
func (r *reader) besideName(n int, o *title.First) bool {
	switch {
	case o.Toks[0].Is("(") && o.Toks[len(o.Toks)-1].Is(")"): // "(makes 2)"
		r.first = true
		r.entry(KindRemark, n, o.Span)
	case o.LaysOut(): // "glass: coupe", above the pours
		r.first = true
		r.says(n, o.Label, o.Rest)
	case o.Label == label.Pours && len(o.Rest) == 0: // "spec:"
		r.entry(KindRemark, n, o.Span)
	default:
		return false
	}
	return true
}

// namedFirst takes the name from a line that holds nothing else but what its signs or its words
// part from it, and is false if there is none.
func (r *reader) namedFirst(n int, o *title.First) bool {
	named, ok := o.Named()
	if ok {
		r.takeNamed(n, o.Span, &named)
	}
	return ok
}

// takeNamed takes the name from where it stands on a line, and the pours behind it. What leads up
// to it is skipped.
func (r *reader) takeNamed(n int, span entry.Span, named *title.Named) {
	r.skips(n, named.Before)
	r.setName(n, named.At)
	r.d.Titled = r.d.Titled || named.Sure
	if len(named.Pours) > 0 {
		r.entries(n, span, named.Pours, false)
	}
}

// nameOf takes a line as the name, and keeps what else it may be: a pour whose amount goes without
// saying, or a method.
func (r *reader) nameOf(n int, o *title.First, in []joining.Piece) {
	if r.servedBehind(n, o) {
		return
	}
	r.setName(n, entry.Span{Start: o.Toks[0].Start, End: o.Span.End})
	pour := title.Dressing(r.text, o.Toks)
	if pour == nil && len(in) == 1 && in[0].Pour.Shape == entry.ShapeImplied && in[0].Pour.Fault == nil && !title.Capital(r.text, &in[0].Pour) {
		pour = &in[0].Pour
	}
	if pour != nil {
		line := r.lineOf(n, pour)
		r.d.PerhapsPour = &line
		r.said.Merge(&pour.Beside, true)
	}
	if s := serving.Read(o.Toks); s.Method != "" && len(s.Unknown) == 0 && s.Conflict == nil && s.Words > 1 {
		r.d.ServingName = &s
	}
}

// servedBehind takes the name from a line that says behind it, parted by a stroke, how the drink is made
// and served, and nothing else: "Amaretto sour | rocks | cubed".
func (r *reader) servedBehind(n int, o *title.First) bool {
	at := slices.IndexFunc(o.Toks, func(t token.Token) bool { return t.Is("|") || t.Is("-") && !t.Glued })
	if at < 1 || at+1 == len(o.Toks) {
		return false
	}
	rest := o.Toks[at+1:]
	s := serving.Read(rest)
	if len(s.Unknown) > 0 || s.Conflict != nil || !s.States() && !s.Iced || len(serving.Read(o.Toks[:at]).Unknown) == 0 {
		return false
	}
	if slices.ContainsFunc(rest, func(t token.Token) bool { return t.Kind != token.Word && t.Kind != token.Mark }) {
		return false
	}
	r.setName(n, entry.Span{Start: o.Toks[0].Start, End: o.Toks[at-1].End})
	r.takeServing(n, entry.Span{Start: rest[0].Start, End: rest[len(rest)-1].End}, rest, false)
	return true
}

// namedAgain reads a line that has the name of the drink before its pours, where the
// first line was a heading of several drinks: "Station 2" above "house sour - 50 gin, ...".
func (r *reader) namedAgain(n int, span entry.Span, toks []token.Token) bool {
	d := &r.d
	numbered := d.Name == "" && len(d.Lines) == 1 && d.Lines[0].PerhapsName // "Station 2": only who knows the ingredients can tell
	if d.Labelled || len(d.Entries) != 1 || !numbered && (len(d.Lines) > 0 || d.Name == "") ||
		!slices.ContainsFunc(toks, func(t token.Token) bool { return t.Is("-") || t.Is(":") || t.Is("=") }) {
		return false
	}
	in := r.join.Entries(toks)
	if len(in) < 3 || !in[0].Untold() || in[1].Sep != "-" && in[1].Sep != ":" && in[1].Sep != "=" {
		return false
	}
	heading := d.Name
	if !r.oneLiner(n, span, in) {
		return false
	}
	if numbered {
		return true
	}
	d.Entries[0].Kind = KindRemark
	r.said.Notes = append(r.said.Notes, lineNote(d.Entries[0].Line, "“"+heading+"” is skipped: “"+d.Name+"” is read as the name of the drink"))
	d.PerhapsPour, d.ServingName = nil, nil
	return true
}

// poursOne reports whether tokens are one pour with its unit, as a line behind "spec:" may be.
func (r *reader) poursOne(toks []token.Token) bool {
	p := entry.Read(r.text, toks)
	return p.Shape == entry.ShapePour && p.Fault == nil && p.Figures && !p.UnitAt.Empty()
}

// pouredBeforeBracket reports whether the first entry has an amount behind its name and a bracket behind
// that, where the others have their amounts there too: "gin 45 (more was too much), lemon 20".
func pouredBeforeBracket(in []joining.Piece, k int) bool {
	toks := in[0].Toks
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is("(") })
	if at < 2 || toks[at-1].Kind != token.Numeral || k >= len(in) || len(in[k].Toks) < 2 {
		return false
	}
	last := in[k].Toks[len(in[k].Toks)-1]
	return last.Kind == token.Numeral
}

// oneLiner reads a name and its pours on one line: "Halyard: 2 oz gin, ...".
func (r *reader) oneLiner(n int, span entry.Span, in []joining.Piece) bool {
	k, sure := title.Before(r.text, in)
	if k == 0 || pouredBeforeBracket(in, k) {
		return false
	}
	last := in[k-1].Toks
	r.setName(n, entry.Span{Start: in[0].Toks[0].Start, End: last[len(last)-1].End})
	r.d.Titled = r.d.Titled || sure
	r.takeAll(n, span, in[k:], false)
	return true
}

// setName takes a stretch of the text as the name, but for a colon at its end.
func (r *reader) setName(n int, at entry.Span) {
	if bare := strings.TrimRight(r.text[at.Start:at.End], ": \t"); bare != "" {
		at.End = at.Start + len(bare)
	}
	r.d.Name, r.d.NameAt = token.OneLine(r.text[at.Start:at.End]), at
	r.entry(KindName, n, at)
}

// setLabelled takes what stands behind the label of a name, to the letter.
func (r *reader) setLabelled(n int, at entry.Span) {
	r.d.Name, r.d.NameAt, r.d.Labelled = token.OneLine(r.text[at.Start:at.End]), at, true
	r.entry(KindName, n, at)
}
