package draft

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/aside"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/joining"
	"counterpour/flavor/measure/draft/parting"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/speech"
	"counterpour/flavor/measure/draft/token"
)

// firstLine reads the name of the drink, and is false if the line states a
// pour.
func (r *reader) firstLine(n int, span entry.Span, l entry.Label, rest, toks []token.Token) bool {
	if l == entry.LabelName && !(toks[0].Text != "name" && (r.pours(rest) || r.poursOne(rest))) {
		at := span
		if len(rest) > 0 {
			at.Start = rest[0].Start
			r.setLabelled(n, at)
		}
		return true
	}
	if toks[0].Is("(") && toks[len(toks)-1].Is(")") { // "(makes 2)"
		r.first = true
		r.entry(KindRemark, n, span)
		return true
	}
	if (l == entry.LabelGlass || l == entry.LabelServing || l == entry.LabelGarnish || l == entry.LabelRim) && len(rest) > 0 && r.laidOut(rest) { // "glass: coupe", above the pours
		r.first = true
		r.says(n, l, rest)
		return true
	}
	if l == entry.LabelRemark && slices.ContainsFunc(rest, func(t token.Token) bool { return t.Kind == token.Numeral }) && !r.pours(rest) && !r.poursOne(rest) { // "station: bar 2"
		r.first = true
		return r.labelled(n, span, l, rest)
	}
	if r.quotedName(n, span, toks) || l == entry.NoLabel && r.titleWithRemark(n, span, toks) {
		return true
	}
	if last := len(toks) - 1; r.text[span.Start] == '[' && toks[last].Is("]") && !unitIn(toks) && !r.pours(toks) { // "[sour no. 7]"
		r.setName(n, entry.Span{Start: toks[0].Start, End: toks[last-1].End})
		return true
	}
	if last := len(toks) - 1; toks[last].Is(":") && l == entry.NoLabel && last > 1 && !r.pours(toks) && toks[0].Kind == token.Word && !unitIn(withoutBracketed(toks)) { // "House punch, by the glass (ladle 4 oz):"
		if s := serving.Read(toks); len(s.Unknown) > 0 {
			r.setName(n, span)
			return true
		}
	}
	if l == entry.NoLabel && r.titleBeforeColon(n, span, toks) {
		return true
	}
	if l == entry.NoLabel && r.titleOfCard(toks) {
		r.setName(n, span)
		return true
	}
	if len(toks) == 1 && toks[0].Kind == token.Numeral { // "50/50"
		r.setName(n, span)
		return true
	}
	if len(toks) > 2 && toks[0].Kind == token.Numeral && toks[0].Wrong != "" && (toks[1].Is(":") || toks[1].Is("-")) && r.pours(toks[2:]) { // "50/50: gin 1.5, ..."
		r.setName(n, entry.Span{Start: toks[0].Start, End: toks[0].End})
		r.entries(n, span, toks[2:], false)
		return true
	}
	if l == entry.LabelPours && len(rest) == 0 {
		r.entry(KindRemark, n, span)
		return true
	}
	if l == entry.LabelName {
		toks = rest // "spec: 2 oz gin, ..."
	}
	if at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is("]") }); at > 0 && at+2 < len(toks) && r.text[span.Start] == '[' && !slices.ContainsFunc(toks[:at], func(t token.Token) bool { return t.Kind != token.Word }) && !serving.StartsMethod(toks) && r.pours(toks[at+1:]) { // "[carrot] aquavit 40 / ..."
		r.setName(n, entry.Span{Start: toks[0].Start, End: toks[at-1].End})
		r.d.Titled = true
		r.entries(n, entry.Span{Start: toks[at].Start, End: span.End}, toks[at+1:], false)
		return true
	}
	if at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is("[") }); at > 0 && at+2 < len(toks) && r.pours(toks[at:]) { // "RUM+COLA [2 oz dark rum][4 oz cola]"
		r.setName(n, entry.Span{Start: toks[0].Start, End: toks[at-1].End})
		r.d.Titled = true
		r.entries(n, entry.Span{Start: toks[at].Start, End: span.End}, toks[at+1:], false)
		return true
	}
	if amounts, _ := parting.Ratio(toks); amounts != nil {
		if names, _ := parting.RatioNames(toks[1:], len(amounts)); names != nil {
			return false
		}
	}
	if _, names, _, _, _ := parting.RatioLast(toks); names != nil {
		return false
	}
	if l == entry.NoLabel && r.leads(n, span, toks) {
		return true
	}
	in := r.join.Entries(toks)
	if l == entry.NoLabel && r.oneLiner(n, span, in) {
		return true
	}
	glued := 0
	for i := range in {
		p := &in[i].Pour
		if len(in) == 1 && toks[0].Text == "equal" { // "Equal parts digestif": of one thing there are none
			continue
		}
		if p.States(r.text) {
			return false
		}
		if p.Shape == entry.ShapePour && p.Fault == nil && p.Figures && p.UnitAt.Empty() {
			glued++
		}
	}
	if glued > 1 { // "60gin 30lemon"
		return false
	}
	if entry.PouredIn(toks) != "" {
		return false
	}
	at := span
	at.Start = toks[0].Start
	r.setName(n, at)
	if p := r.dresses(toks); p != nil {
		line := r.lineOf(n, p)
		r.d.PerhapsPour = &line
		r.said.Merge(&p.Beside, true)
	} else if len(in) == 1 && in[0].Pour.Shape == entry.ShapeImplied && in[0].Pour.Fault == nil && !r.titled(&in[0].Pour) {
		line := r.lineOf(n, &in[0].Pour)
		r.d.PerhapsPour = &line
		r.said.Merge(&in[0].Pour.Beside, true)
	}
	if s := serving.Read(toks); s.Method != "" && len(s.Unknown) == 0 && s.Conflict == nil && s.Words > 1 {
		r.d.ServingName = &s
	}
	return true
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

// laidOut reports whether what follows a label on the first line says how the drink is served
// and pours nothing: the text names the drink further below, or not at all.
func (r *reader) laidOut(rest []token.Token) bool {
	s := serving.Read(rest)
	return s.States() && len(s.Unknown) == 0 || !slices.ContainsFunc(rest, func(t token.Token) bool { return t.Kind == token.Numeral }) && entry.EndsLaid(rest)
}

// titleWithRemark takes a name with a remark in brackets that holds numbers and no amount:
// "Skull Bowl (serves 1, limit 2)". It is false for any other line.
func (r *reader) titleWithRemark(n int, span entry.Span, toks []token.Token) bool {
	open := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is("(") })
	last := len(toks) - 1
	if open < 1 || !toks[last].Is(")") || slices.ContainsFunc(toks[:open], func(t token.Token) bool { return t.Kind != token.Word && !t.Is("'") && !t.Is("&") && !t.Is("-") }) {
		return false
	}
	counts := false
	for i := open + 1; i < last; i++ {
		if toks[i].Kind != token.Numeral {
			continue
		}
		before := &toks[i-1]
		if before.Kind != token.Word || entry.LooseWords[before.Text] || entry.BiasWords[before.Text] || entry.IsUnit(before) || entry.UnitWordsAt(toks[i+1:]) {
			return false
		}
		counts = true
	}
	if !counts {
		return false
	}
	r.setName(n, span)
	return true
}

// numberedWords stand before the number of a card, a table or a version, which is no
// amount: "card 7: Garden Gate", "something for table 9".
var numberedWords = token.Words(`card table week number no nr version take attempt try test draft trial round batch ticket order bar station deck page pg menu spec recipe lesson exercise drink room day item mk seat shift level machine tap`)

// Numbered reports whether the number behind a word is one of a card, a table or a version.
func Numbered(w string) bool { return numberedWords[w] }

// titleOfCard reports whether a line holds a number only behind words that something is
// numbered by, and no pour.
func (r *reader) titleOfCard(toks []token.Token) bool {
	found := false
	for i := range toks {
		switch {
		case toks[i].Kind == token.Percent || toks[i].Kind == token.Ratio:
			return false
		case toks[i].Kind != token.Numeral || aside.Multiplies(toks, i): // "Table 14 - 2x"
		case i == 0 || !numberedWords[toks[i-1].Text] && !(toks[i-1].Is(".") && i > 1 && numberedWords[toks[i-2].Text]) || i+1 < len(toks) && entry.UnitWordsAt(toks[i+1:]):
			return false
		default:
			found = true
		}
	}
	capital, _ := utf8.DecodeRuneInString(r.text[toks[0].Start:])
	return found && (len(toks) > 2 || unicode.IsUpper(capital)) && (len(toks) > 3 || toks[0].Kind == token.Word)
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
	if amounts, _ := parting.Ratio(toks); amounts != nil {
		if names, _ := parting.RatioNames(toks[1:], len(amounts)); names != nil {
			return true
		}
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
	if len(in) > 1 && numberedName(in) {
		toks := in[0].Toks
		r.setName(n, entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End})
		r.takeAll(n, span, in[1:], false)
		return true
	}
	if k := titled(r.text, in); k > 1 { // "Exercise 4. Daiquiri variation. White rum 60 ml; ..."
		last := in[k-1].Toks
		r.setName(n, entry.Span{Start: in[0].Toks[0].Start, End: last[len(last)-1].End})
		r.d.Titled = true
		r.takeAll(n, span, in[k:], false)
		return true
	}
	if len(in) > 1 && in[0].Pour.Shape == entry.ShapeImplied && (in[1].Sep == ":" || in[1].Sep == "=" || in[1].Sep == "-" && len(in) > 2) && in[1].Pour.States(r.text) { // "Vermouth spritz: 60 bianco, ..."
		toks := in[0].Toks
		r.setName(n, entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End})
		r.takeAll(n, span, in[1:], false)
		return true
	}
	for k := 1; k+1 < len(in) && k < 3; k++ { // "NA - Ginger fizz: 1 ginger syrup, ...", "soju + yuzu soda! 50 soju, ..."
		if (in[k+1].Sep == ":" || in[k+1].Sep == "." || in[k+1].Sep == "=") && (in[k].Sep == ":" || in[k].Sep == "-" || in[k].Sep == "+" || in[k].Sep == "and") && in[0].Untold() && in[k].Untold() && in[k+1].Pour.States(r.text) {
			last := in[k].Toks
			r.setName(n, entry.Span{Start: in[0].Toks[0].Start, End: last[len(last)-1].End})
			r.takeAll(n, span, in[k+1:], false)
			return true
		}
	}
	if len(in) < 2 || in[0].Pour.Shape != entry.ShapeName && in[0].Pour.Shape != entry.ShapeServing && in[0].Pour.Shape != entry.ShapeGarnish {
		return false
	}
	pours := 0
	for i := range in[1:] {
		if in[1+i].Pour.States(r.text) {
			pours++
		}
	}
	sep := in[1].Sep
	if pours == 0 || sep != ":" && sep != "=" && sep != "-" && sep != "," && sep != ";" && sep != "." && sep != "/" || in[0].Pour.Shape != entry.ShapeName && sep != ":" && sep != "-" {
		return false
	}
	if in[0].Pour.Shape == entry.ShapeServing && entry.Labels[in[0].Toks[0].Text] == entry.NoLabel && sep == ":" && serving.StartsMethod(in[0].Toks) && len(in[0].Toks) == 1 {
		return false // "shake: 2 oz gin, ..."
	}
	toks := in[0].Toks
	r.setName(n, entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End})
	r.d.Titled = sep == ":" && pours > 1
	r.takeAll(n, span, in[1:], false)
	return true
}

// numberedName reports whether what stands before a colon is a name that ends in a
// number, "service 1: 45 vodka", and no pour.
func numberedName(in []joining.Piece) bool {
	p := &in[0].Pour
	return in[1].Sep == ":" && p.Shape == entry.ShapePour && p.Whole != "" && p.Unit == "" && entry.StartsAmount(in[1].Toks)
}

// titled returns how many pieces of a line are its title: none states an amount but for a
// number, and a colon or a stop parts them from at least two pours. It is 0 if none are.
func titled(text string, in []joining.Piece) int {
	k := 0
	for k < len(in) && (in[k].Untold() || k == 0 && in[k].Pour.Shape == entry.ShapePour && in[k].Pour.Whole != "" && in[k].Pour.Unit == "") {
		k++
	}
	if k == 0 || k+1 >= len(in) || in[k].Sep != ":" && in[k].Sep != "." {
		return 0
	}
	for i := 1; i < k; i++ {
		if in[i].Sep != ":" && in[i].Sep != "." && in[i].Sep != "-" && in[i].Sep != "+" {
			return 0
		}
	}
	pours := 0
	for i := range in[k:] {
		if in[k+i].Pour.States(text) {
			pours++
		}
	}
	if pours < 2 || !in[k].Pour.States(text) {
		return 0
	}
	return k
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
