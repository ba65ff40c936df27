package title

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// First is the first line of a draft, which may hold the name of the drink.
type First struct {
	Text  string          // in which the tokens stand
	Join  *joining.Joiner // of that text
	Span  entry.Span
	Label label.Kind    // None if it has none
	Rest  []token.Token // behind the label
	Toks  []token.Token
}

// Named is where on a line the name of the drink stands.
type Named struct {
	At     entry.Span
	Before []token.Token // what leads up to it
	Pours  []token.Token // what stands behind it; none where it ends the line
	Sure   bool          // signs part it from several pours
}

// Bare reports whether the line has no label.
func (f *First) Bare() bool { return f.Label == label.None }

// until is the stretch from the first token of the line to the last of so many.
func (f *First) until(end int) entry.Span {
	return entry.Span{Start: f.Toks[0].Start, End: f.Toks[end-1].End}
}

// Named finds the name on a line that holds nothing else but what its signs or its words part from
// it, in the order in which they are told apart; false if there is none.
func (f *First) Named() (Named, bool) {
	if n, ok := f.quoted(); ok {
		return n, true
	}
	if n, ok := f.headed(); ok && f.Bare() {
		return n, true
	}
	switch {
	case f.Bare() && WithRemark(f.Toks): // "Skull Bowl (serves 1, limit 2)"
		return Named{At: f.Span}, true
	case f.squared(): // "[sour no. 7]"
		return Named{At: f.until(len(f.Toks) - 1)}, true
	case f.headsPunch(): // "House punch, by the glass (ladle 4 oz):"
		return Named{At: f.Span}, true
	}
	if n, ok := f.beforeColon(); ok && f.Bare() {
		return n, true
	}
	switch {
	case f.Bare() && OfCard(f.Text, f.Toks):
		return Named{At: f.Span}, true
	case len(f.Toks) == 1 && f.Toks[0].Kind == token.Numeral: // "50/50"
		return Named{At: f.Span}, true
	case f.numberFirst(): // "50/50: gin 1.5, ..."
		return Named{At: f.until(1), Pours: f.Toks[2:]}, true
	}
	return Named{}, false
}

// squared reports whether the line stands in square brackets and pours nothing.
func (f *First) squared() bool {
	return f.Text[f.Span.Start] == '[' && f.Toks[len(f.Toks)-1].Is("]") && !entry.UnitIn(f.Toks) && !Pours(f.Join, f.Toks)
}

// headsPunch reports whether the line ends in a colon and pours nothing, though it may say in
// brackets how much a glass is.
func (f *First) headsPunch() bool {
	last := len(f.Toks) - 1
	if !f.Bare() || last < 2 || !f.Toks[last].Is(":") || f.Toks[0].Kind != token.Word || Pours(f.Join, f.Toks) || entry.UnitIn(withoutBracketed(f.Toks)) {
		return false
	}
	return len(serving.Read(f.Toks).Unknown) > 0
}

// numberFirst reports whether a number that is no amount stands before pours as their name.
func (f *First) numberFirst() bool {
	toks := f.Toks
	return len(toks) > 2 && toks[0].Kind == token.Numeral && toks[0].Wrong != "" && (toks[1].Is(":") || toks[1].Is("-")) && Pours(f.Join, toks[2:])
}

// closings are the signs that close what is quoted, by those that open it.
var closings = map[string]string{"\"": "\"", "“": "”", "”": "”", "„": "“", "«": "»"}

// quoted takes what stands in quotes before the pours of the line as the name, and is false if
// nothing does: "“Low Tide” 45 gin, ...".
func (f *First) quoted() (Named, bool) {
	toks := f.Toks
	open := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind == token.Mark && closings[t.Text] != "" })
	if open < 0 || slices.ContainsFunc(toks[:open], func(t token.Token) bool { return t.Kind == token.Numeral }) {
		return Named{}, false
	}
	end := open + 2
	for end < len(toks) && !toks[end].Is(closings[toks[open].Text]) {
		end++
	}
	if end+1 >= len(toks) || !Pours(f.Join, toks[end+1:]) {
		return Named{}, false
	}
	rest := entry.TrimMarks(toks[end+1:])
	for len(rest) > 1 && (rest[0].Kind == token.Mark || rest[0].Kind == token.Word && speech.Chatter(rest[0].Text) && !entry.StartsMeasure(rest)) { // "“Dock” - it's 45 rum"
		rest = rest[1:]
	}
	return Named{At: entry.Span{Start: toks[open+1].Start, End: toks[end-1].End}, Before: toks[:open], Pours: rest}, true
}

// BeforeSquare finds a name with pours behind it, where square brackets stand around the name or
// around the pours: "[carrot] aquavit 40 / ...", "RUM+COLA [2 oz dark rum][4 oz cola]".
func (f *First) BeforeSquare() (Named, bool) {
	toks := f.Toks
	at := InSquare(toks)
	if at == 0 || f.Text[f.Span.Start] != '[' || !Pours(f.Join, toks[at+1:]) {
		at = slices.IndexFunc(toks, func(t token.Token) bool { return t.Is("[") })
		if at <= 0 || at+2 >= len(toks) || !Pours(f.Join, toks[at:]) || toks[at-1].Is("]") && numbered(toks[:at]) { // "[gin 45][fino 20]"
			return Named{}, false
		}
	}
	return Named{At: f.until(at), Pours: toks[at+1:], Sure: true}, true
}

// beforeColon takes the words before a colon as the name where several pours follow it on the
// line, "mint julep: 60 bourbon, 10 simple", and is false for any other line. A single word of
// method says how they are mixed.
func (f *First) beforeColon() (Named, bool) {
	toks := f.Toks
	colon := 0
	for colon < len(toks) && (toks[colon].Kind == token.Word || initial(toks, colon)) {
		colon++
	}
	if colon < 2 || colon >= len(toks) || colon > mostLead || !toks[colon].Is(":") || colon+2 >= len(toks) || serving.StartsMethod(toks) || tellsMaking(toks[:colon]) || entry.PouringVerb(toks[0].Text) || !entry.StartsAmount(toks[colon+1:]) {
		return Named{}, false
	}
	s := serving.Read(toks[:colon])
	if in := f.Join.Entries(toks[colon+1:]); len(in) < 2 || !in[0].Pour.States(f.Text) || in[0].Pour.Name == "" || !s.States() { // what no glass is named in, others tell
		return Named{}, false
	}
	return Named{At: f.until(colon), Pours: toks[colon+1:], Sure: true}, true
}

// initial reports whether the stop at i stands behind a single letter: "L.I. tea".
func initial(toks []token.Token, i int) bool {
	return i > 0 && toks[i].Is(".") && toks[i-1].Kind == token.Word && toks[i-1].End-toks[i-1].Start == 1
}

// tellsMaking reports whether words say how a drink is mixed, or how hot it is, and nothing else: "reverse
// dry shake", "hot 70C".
func tellsMaking(toks []token.Token) bool {
	s := serving.Read(toks)
	return len(s.Unknown) == 0 && s.Conflict == nil && (s.Method != "" || s.HotC > 0)
}

// LaysOut reports whether a label and what follows it say how the drink is served and pour nothing:
// the text names the drink further below, or not at all.
func (f *First) LaysOut() bool {
	if f.Label != label.Glass && f.Label != label.Serving && f.Label != label.Garnish && f.Label != label.Rim || len(f.Rest) == 0 {
		return false
	}
	if f.Label == label.Rim && !numbered(f.Rest) {
		return true
	}
	s := serving.Read(f.Rest)
	return s.States() && (len(s.Unknown) == 0 || f.Label == label.Glass && s.Glass != "") || !numbered(f.Rest) && laid.Ends(f.Rest)
}

// numbered reports whether tokens hold a number.
func numbered(toks []token.Token) bool {
	return slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral })
}

// PoursFirst reports whether the entries of a line state pours. "Equal parts digestif" does not: of
// one thing there are no parts.
func PoursFirst(text string, toks []token.Token, in []joining.Piece) bool {
	glued := 0
	for i := range in {
		p := &in[i].Pour
		if len(in) == 1 && toks[0].Text == "equal" {
			continue
		}
		if p.States(text) {
			return true
		}
		if p.Shape == entry.ShapePour && p.Fault == nil && p.Figures && p.UnitAt.Empty() {
			glued++
		}
	}
	return glued > 1 || entry.PouredIn(toks) != "" // "60gin 30lemon"
}

// Pours reports whether tokens state more than one pour, so that they are no name.
func Pours(j *joining.Joiner, toks []token.Token) bool {
	if ratioFirst(toks) {
		return true
	}
	n := 0
	in := j.Entries(toks)
	for i := range in {
		if in[i].Pour.States(j.Text) {
			n++
		}
	}
	return n > 1
}

// inHalves finds two shares of a hundred before the words of a name: "50/50 Martini".
var inHalves = pattern.Of(`^(\d{2})/(\d{2})[ \t]+(\pL[^\d,;:+&(]*)$`)

// InHalves reports whether a line is the name of a drink that everybody knows, with how its spirit
// and its wine share it before it.
func (o *First) InHalves() bool {
	m := inHalves.FindStringSubmatch(strings.TrimSpace(o.Text[o.Span.Start:o.Span.End]))
	if m == nil || !drinks.Known(m[3]) {
		return false
	}
	a, _ := strconv.Atoi(m[1])
	b, _ := strconv.Atoi(m[2])
	return a+b == 100
}

// Numbered returns the name of a drink that has a number in it, where a sign parts it from the pours: one that
// everybody knows, "French 75 | 30 ml gin", or one that ends in a kind of drink, "Gate 7 Collins, ...". ok is
// false if the line begins with none.
func (o *First) Numbered() (named Named, ok bool) {
	at := slices.IndexFunc(o.Toks, func(t token.Token) bool {
		return t.Kind == token.Mark && strings.Contains("|/-–—:,;", t.Text)
	})
	if at < 2 || at+1 == len(o.Toks) {
		return Named{}, false
	}
	span := entry.Span{Start: o.Toks[0].Start, End: o.Toks[at-1].End}
	name := o.Text[span.Start:span.End]
	if !numbered(o.Toks[:at]) || !drinks.Known(name) && !(drinks.Numbered(name) && Pours(o.Join, o.Toks[at+1:])) {
		return Named{}, false
	}
	return Named{At: span, Pours: o.Toks[at+1:], Sure: true}, true
}

// InRatio reports whether a line gives the amounts of its pours as a ratio.
func InRatio(toks []token.Token) bool {
	if ratioFirst(toks) {
		return true
	}
	_, names, _, _, _ := parting.RatioLast(toks)
	return names != nil
}

// ratioFirst reports whether a ratio stands before as many names.
func ratioFirst(toks []token.Token) bool {
	names, _, _, _ := parting.RatioFirst(toks)
	return names != nil
}

// Capital reports whether a pour whose unit is its last word, or the least that a hand pours, is
// written as a name is, with a capital: "Lavender Drop", "Kiss of Honey".
func Capital(text string, p *entry.Written) bool {
	first, _ := utf8.DecodeRuneInString(text[p.Of[0].Start:])
	return unicode.IsUpper(first) && !p.After && !p.NoAmount && (p.UnitAt.Start > p.NameAt.Start || gauge.Little(p.Measure))
}

// Dressing returns the pour of a line that says what dresses the glass, and which glass: "absinthe
// rinse, rocks glass"; nil if it says more, or less.
func Dressing(text string, toks []token.Token) *entry.Written {
	for at := len(toks) - 1; at > 1; at-- {
		glass := serving.Read(toks[at:])
		if glass.Words == 0 || len(glass.Unknown) > 0 {
			continue
		}
		p := entry.Read(text, slices.Clone(entry.TrimMarks(toks[:at])))
		if p.Shape == entry.ShapeImplied && p.Fault == nil && (p.Unit == flavor.Rinse || p.Unit == flavor.Spritz) {
			p.Beside.Merge(&glass, true)
			return &p
		}
	}
	return nil
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
