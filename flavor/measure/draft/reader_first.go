package draft

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/joining"
	"counterpour/flavor/measure/draft/label"
	"counterpour/flavor/measure/draft/laid"
	"counterpour/flavor/measure/draft/parting"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/speech"
	"counterpour/flavor/measure/draft/title"
	"counterpour/flavor/measure/draft/token"
)

// opening is the first line of a draft.
type opening struct {
	n     int
	span  entry.Span
	label label.Kind    // NoLabel if it has none
	rest  []token.Token // behind the label
	toks  []token.Token
}

// bare reports whether a line has no label.
func (o *opening) bare() bool { return o.label == label.None }

// until is the stretch from the first token of a line to the last of so many.
func (o *opening) until(end int) entry.Span {
	return entry.Span{Start: o.toks[0].Start, End: o.toks[end-1].End}
}

// firstLine reads the name of the drink, and is false if the line states a pour. The first kind of
// line that it is decides.
func (r *reader) firstLine(n int, span entry.Span, l label.Kind, rest, toks []token.Token) bool {
	o := &opening{n, span, l, rest, toks}
	if r.labelledName(o) {
		return true
	}
	if l == label.Remark && numerals(rest) > 0 && !r.pours(rest) && !r.poursOne(rest) { // "station: bar 2"
		r.first = true
		return r.labelled(n, span, l, rest)
	}
	if r.besideName(o) || r.namedFirst(o) {
		return true
	}
	if l == label.Name {
		o.toks = rest // "spec: 2 oz gin, ..."
	}
	switch {
	case r.namedBeforeSquare(o):
		return true
	case r.inRatio(o.toks):
		return false
	case o.bare() && r.leads(n, span, o.toks):
		return true
	}
	in := r.join.Entries(o.toks)
	if o.bare() && r.oneLiner(n, span, in) {
		return true
	}
	if r.poursFirst(o.toks, in) {
		return false
	}
	r.nameOf(o, in)
	return true
}

// labelledName takes what stands behind the label of a name, unless it is pours: "name: Halyard".
func (r *reader) labelledName(o *opening) bool {
	if o.label != label.Name || o.toks[0].Text != "name" && (r.pours(o.rest) || r.poursOne(o.rest)) {
		return false
	}
	if len(o.rest) > 0 {
		r.setLabelled(o.n, entry.Span{Start: o.rest[0].Start, End: o.span.End})
	}
	return true
}

// besideName takes a line that stands above the name, and is false if it is none: the name
// follows it.
func (r *reader) besideName(o *opening) bool {
	switch {
	case o.toks[0].Is("(") && o.toks[len(o.toks)-1].Is(")"): // "(makes 2)"
		r.first = true
		r.entry(KindRemark, o.n, o.span)
	case o.laysOut(): // "glass: coupe", above the pours
		r.first = true
		r.says(o.n, o.label, o.rest)
	case o.label == label.Pours && len(o.rest) == 0: // "spec:"
		r.entry(KindRemark, o.n, o.span)
	default:
		return false
	}
	return true
}

// namedFirst takes the name from a line that holds nothing else but what its signs or its words
// part from it, in the order in which they are told apart.
func (r *reader) namedFirst(o *opening) bool {
	switch {
	case r.quotedName(o.n, o.span, o.toks):
	case o.bare() && title.WithRemark(o.toks): // "Skull Bowl (serves 1, limit 2)"
		r.setName(o.n, o.span)
	case r.squared(o): // "[sour no. 7]"
		r.setName(o.n, o.until(len(o.toks)-1))
	case r.headsPunch(o): // "House punch, by the glass (ladle 4 oz):"
		r.setName(o.n, o.span)
	case o.bare() && r.titleBeforeColon(o.n, o.span, o.toks):
	case o.bare() && title.OfCard(r.text, o.toks):
		r.setName(o.n, o.span)
	case len(o.toks) == 1 && o.toks[0].Kind == token.Numeral: // "50/50"
		r.setName(o.n, o.span)
	case r.numberFirst(o): // "50/50: gin 1.5, ..."
		r.setName(o.n, o.until(1))
		r.entries(o.n, o.span, o.toks[2:], false)
	default:
		return false
	}
	return true
}

// squared reports whether a line stands in square brackets and pours nothing.
func (r *reader) squared(o *opening) bool {
	return r.text[o.span.Start] == '[' && o.toks[len(o.toks)-1].Is("]") && !unitIn(o.toks) && !r.pours(o.toks)
}

// headsPunch reports whether a line ends in a colon and pours nothing, though it may say in
// brackets how much a glass is.
func (r *reader) headsPunch(o *opening) bool {
	last := len(o.toks) - 1
	if !o.bare() || last < 2 || !o.toks[last].Is(":") || o.toks[0].Kind != token.Word || r.pours(o.toks) || unitIn(withoutBracketed(o.toks)) {
		return false
	}
	return len(serving.Read(o.toks).Unknown) > 0
}

// numberFirst reports whether a number that is no amount stands before pours as their name.
func (r *reader) numberFirst(o *opening) bool {
	toks := o.toks
	return len(toks) > 2 && toks[0].Kind == token.Numeral && toks[0].Wrong != "" && (toks[1].Is(":") || toks[1].Is("-")) && r.pours(toks[2:])
}

// namedBeforeSquare takes a name from a line with pours behind it, where square brackets stand
// around the name or around the pours: "[carrot] aquavit 40 / ...", "RUM+COLA [2 oz dark rum][4 oz
// cola]".
func (r *reader) namedBeforeSquare(o *opening) bool {
	toks := o.toks
	at := title.InSquare(toks)
	if at == 0 || r.text[o.span.Start] != '[' || !r.pours(toks[at+1:]) {
		at = slices.IndexFunc(toks, func(t token.Token) bool { return t.Is("[") })
		if at <= 0 || at+2 >= len(toks) || !r.pours(toks[at:]) {
			return false
		}
	}
	r.setName(o.n, o.until(at))
	r.d.Titled = true
	r.entries(o.n, entry.Span{Start: toks[at].Start, End: o.span.End}, toks[at+1:], false)
	return true
}

// inRatio reports whether a line gives the amounts of its pours as a ratio.
func (r *reader) inRatio(toks []token.Token) bool {
	if ratioFirst(toks) {
		return true
	}
	_, names, _, _, _ := parting.RatioLast(toks)
	return names != nil
}

// ratioFirst reports whether a ratio stands before as many names.
func ratioFirst(toks []token.Token) bool {
	amounts, _ := parting.Ratio(toks)
	if amounts == nil {
		return false
	}
	names, _ := parting.RatioNames(toks[1:], len(amounts))
	return names != nil
}

// poursFirst reports whether the entries of a line state pours. "Equal parts digestif" does not:
// of one thing there are no parts.
func (r *reader) poursFirst(toks []token.Token, in []joining.Piece) bool {
	glued := 0
	for i := range in {
		p := &in[i].Pour
		if len(in) == 1 && toks[0].Text == "equal" {
			continue
		}
		if p.States(r.text) {
			return true
		}
		if p.Shape == entry.ShapePour && p.Fault == nil && p.Figures && p.UnitAt.Empty() {
			glued++
		}
	}
	return glued > 1 || entry.PouredIn(toks) != "" // "60gin 30lemon"
}

// nameOf takes a line as the name, and keeps what else it may be: a pour whose amount goes without
// saying, or a method.
func (r *reader) nameOf(o *opening, in []joining.Piece) {
	r.setName(o.n, entry.Span{Start: o.toks[0].Start, End: o.span.End})
	pour := r.dresses(o.toks)
	if pour == nil && len(in) == 1 && in[0].Pour.Shape == entry.ShapeImplied && in[0].Pour.Fault == nil && !r.titled(&in[0].Pour) {
		pour = &in[0].Pour
	}
	if pour != nil {
		line := r.lineOf(o.n, pour)
		r.d.PerhapsPour = &line
		r.said.Merge(&pour.Beside, true)
	}
	if s := serving.Read(o.toks); s.Method != "" && len(s.Unknown) == 0 && s.Conflict == nil && s.Words > 1 {
		r.d.ServingName = &s
	}
}

// dresses returns the pour of a line that says what dresses the glass, and which glass:
// "absinthe rinse, rocks glass"; nil if it says more, or less.
func (r *reader) dresses(toks []token.Token) *entry.Written {
	for at := len(toks) - 1; at > 1; at-- {
		glass := serving.Read(toks[at:])
		if glass.Words == 0 || len(glass.Unknown) > 0 {
			continue
		}
		p := entry.Read(r.text, slices.Clone(entry.TrimMarks(toks[:at])))
		if p.Shape == entry.ShapeImplied && p.Fault == nil && (p.Unit == flavor.Rinse || p.Unit == flavor.Spritz) {
			p.Beside.Merge(&glass, true)
			return &p
		}
	}
	return nil
}

// laysOut reports whether a label and what follows it say how the drink is served
// and pour nothing: the text names the drink further below, or not at all.
func (o *opening) laysOut() bool {
	if o.label != label.Glass && o.label != label.Serving && o.label != label.Garnish && o.label != label.Rim || len(o.rest) == 0 {
		return false
	}
	s := serving.Read(o.rest)
	return s.States() && len(s.Unknown) == 0 || numerals(o.rest) == 0 && laid.Ends(o.rest)
}

// titled reports whether a pour whose unit is its last word is written as a name is,
// with a capital: "Lavender Drop".
func (r *reader) titled(p *entry.Written) bool {
	first, _ := utf8.DecodeRuneInString(r.text[p.Of[0].Start:])
	return unicode.IsUpper(first) && !p.After && !p.NoAmount && p.UnitAt.Start > p.NameAt.Start
}

// closings are the signs that close what is quoted, by those that open it.
var closings = map[string]string{"\"": "\"", "“": "”", "”": "”", "„": "“", "«": "»"}

// quotedName takes what stands in quotes before the pours of the line as the name, and
// is false if nothing does: "“Low Tide” 45 gin, ...". What leads up to it is skipped.
func (r *reader) quotedName(n int, span entry.Span, toks []token.Token) bool {
	open := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind == token.Mark && closings[t.Text] != "" })
	if open < 0 || slices.ContainsFunc(toks[:open], func(t token.Token) bool { return t.Kind == token.Numeral }) {
		return false
	}
	end := open + 2
	for end < len(toks) && !toks[end].Is(closings[toks[open].Text]) {
		end++
	}
	if end+1 >= len(toks) || !r.pours(toks[end+1:]) {
		return false
	}
	if open > 0 {
		r.skips(n, toks[:open])
	}
	r.setName(n, entry.Span{Start: toks[open+1].Start, End: toks[end-1].End})
	rest := entry.TrimMarks(toks[end+1:])
	for len(rest) > 1 && (rest[0].Kind == token.Mark || rest[0].Kind == token.Word && speech.Chatter(rest[0].Text) && !entry.StartsMeasure(rest)) { // "“Dock” - it's 45 rum"
		rest = rest[1:]
	}
	r.entries(n, span, rest, false)
	return true
}

// withoutBracketed returns tokens without those in brackets.
func withoutBracketed(toks []token.Token) []token.Token {
	out := make([]token.Token, 0, len(toks))
	depth := 0
	for _, t := range toks {
		switch {
		case t.Is("("):
			depth++
		case t.Is(")"):
			depth--
		case depth == 0:
			out = append(out, t)
		}
	}
	return out
}

// unitIn reports whether tokens hold a number with its unit.
func unitIn(toks []token.Token) bool {
	for i := range toks[:len(toks)-1] {
		if toks[i].Kind == token.Numeral && entry.UnitWordsAt(toks[i+1:]) {
			return true
		}
	}
	return false
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

// pours reports whether tokens state more than one pour, so that they are no name.
func (r *reader) pours(toks []token.Token) bool {
	if ratioFirst(toks) {
		return true
	}
	n := 0
	in := r.join.Entries(toks)
	for i := range in {
		if in[i].Pour.States(r.text) {
			n++
		}
	}
	return n > 1
}

// titleBeforeColon takes the words before a colon as the name where several pours follow it on
// the line, "mint julep: 60 bourbon, 10 simple", and is false for any other line. A single word
// of method says how they are mixed.
func (r *reader) titleBeforeColon(n int, span entry.Span, toks []token.Token) bool {
	colon := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind != token.Word })
	if colon < 2 || colon > mostLead || !toks[colon].Is(":") || colon+2 >= len(toks) || serving.StartsMethod(toks) || entry.PouringVerb(toks[0].Text) || !entry.StartsAmount(toks[colon+1:]) {
		return false
	}
	s := serving.Read(toks[:colon])
	if in := r.join.Entries(toks[colon+1:]); len(in) < 2 || !in[0].Pour.States(r.text) || in[0].Pour.Name == "" || !s.States() { // what no glass is named in, others tell
		return false
	}
	r.setName(n, entry.Span{Start: toks[0].Start, End: toks[colon-1].End})
	r.d.Titled = true
	r.entries(n, span, toks[colon+1:], false)
	return true
}

// poursOne reports whether tokens are one pour with its unit, as a line behind "spec:" may be.
func (r *reader) poursOne(toks []token.Token) bool {
	p := entry.Read(r.text, toks)
	return p.Shape == entry.ShapePour && p.Fault == nil && p.Figures && !p.UnitAt.Empty()
}

// oneLiner reads a name and its pours on one line: "Halyard: 2 oz gin, ...".
func (r *reader) oneLiner(n int, span entry.Span, in []joining.Piece) bool {
	k, sure := title.Before(r.text, in)
	if k == 0 {
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
