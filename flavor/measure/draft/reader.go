package draft

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/speech"
	"counterpour/flavor/measure/draft/token"
)

// reader gathers a draft line by line.
type reader struct {
	d        Draft
	text     string
	said     serving.Said
	served   int            // pours above the line that says the service; 0: none does
	first    bool           // nothing but blanks and remarks so far
	section  entry.Label    // of a header that stands alone above
	heading  *entry.Written // the amount of the list that goes on below
	amount   *entry.Written // of the pour above
	slashes  int            // that part the entries of a line
	part     *entry.Written // how much a line says that a part is
	sentence bool           // it is one that is read: what it tells comes after what others tell
	amends   bool           // the line takes back amounts of lines above
	plainly  bool           // no name stands before the pours of the first line
	toks     []token.Token
	cut      []piece
}

func (r *reader) fail(line int, f *flavor.Fault) {
	f.Location = measure.LineLocation(line)
	r.d.Faults = append(r.d.Faults, f)
}

func (r *reader) entry(k Kind, line int, s entry.Span) {
	r.d.Entries = append(r.d.Entries, Entry{k, s, line})
}

// line reads text[from:to], and is false when reading should stop.
func (r *reader) line(n, from, to int) bool {
	at := remarkAt(r.d.text, from, to)
	more := r.content(n, from, at)
	if at < to {
		r.entry(KindRemark, n, entry.Span{Start: at, End: to})
	}
	return more
}

// content reads a line without its remark.
func (r *reader) content(n, from, to int) bool {
	r.text = r.d.text
	from, to = trimSpan(r.text, from, to)
	if from == to {
		if r.section == entry.LabelGarnish {
			r.section = entry.NoLabel
		}
		if r.heading != nil && len(r.d.Lines) > 0 && r.d.Lines[len(r.d.Lines)-1].Shared {
			r.heading = nil
		}
		return true
	}
	span := entry.Span{Start: from, End: to}
	if r.text[from] == '#' || r.footnote(from, to) {
		r.entry(KindRemark, n, span)
		return true
	}
	first := r.first
	r.first = false
	if fault := checkLine(r.text[from:to]); fault != nil {
		r.entry(KindUnread, n, span)
		r.fail(n, fault)
		return len(r.d.Faults) < MaxFaults
	}
	r.toks = token.Lex(r.toks[:0], r.text, from, to)
	toks := unlist(r.unstruck(n, r.toks))
	if len(toks) == 0 {
		r.ruled(n, span)
		return true
	}
	if columns(toks) {
		r.d.Headed = headOf(toks)
		r.first = first
		r.entry(KindRemark, n, span)
		return true
	}
	if len(toks) < 4 && len(toks) > 1 && servesWords[toks[0].Text] && toks[1].Kind == token.Numeral {
		r.first = first
		r.entry(KindRemark, n, span)
		r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+r.text[from:to]+"” is skipped: all of it is taken as one drink")
		return true
	}
	r.amends = false
	if len(toks) < 2 || toks[0].Text != "name" || !toks[1].Is(":") { // a labelled name is kept to the letter
		toks = r.pouringWords(n, toks)
	}
	if len(toks) == 0 {
		r.entry(KindRemark, n, span)
		return true
	}
	if toks = r.halved(n, toks); len(toks) == 0 {
		r.entry(KindRemark, n, span)
		return true
	}
	if r.headsList(n, span, toks) || r.amountsBelow(n, span, toks) {
		return true
	}
	if r.ditto(n, span, toks) {
		return len(r.d.Faults) < MaxFaults && len(r.d.Lines) <= MaxPours
	}
	l, rest := header(r.text, toks)
	if first {
		if r.firstLine(n, span, l, rest, toks) {
			return true
		}
	} else if l != entry.NoLabel && r.labelled(n, span, l, rest) || l == entry.NoLabel && r.namedAgain(n, span, toks) {
		return true
	}
	if l == entry.LabelPours && amountAlone(rest) { // "bitters: 2 dashes"
		l = entry.NoLabel
	}
	if l != entry.NoLabel && (l != entry.LabelName || first) {
		if toks[0].Text == "ice" && len(rest) > 0 && rest[len(rest)-1].Text != "ice" { // "ice: large"
			at := rest[len(rest)-1].End
			rest = append(rest[:len(rest):len(rest)], token.Token{Kind: token.Word, Start: at, End: at, Text: "ice"})
		}
		toks = rest
	}
	if r.section == entry.LabelGarnish && l == entry.NoLabel {
		r.garnish(n, span)
		return true
	}
	r.entries(n, span, toks, r.section == entry.LabelServing || l == entry.LabelServing)
	return len(r.d.Faults) < MaxFaults && len(r.d.Lines) <= MaxPours
}

// pouringWords drops what a line says beside its pours, such as prices, talk and words
// that are taken back, and says so.
func (r *reader) pouringWords(n int, toks []token.Token) []token.Token {
	toks = r.withoutPrices(n, r.remarkFrom(n, r.withoutRole(toks)))
	toks, r.amends = speech.Amended(toks)
	toks = r.without(n, toks, speech.StandIn(toks))
	toks = r.withoutCommentary(n, r.secondThoughts(n, speech.Dictated(toks)))
	return r.partSize(r.without(n, toks, speech.Opening(toks)))
}

// secondThoughts is [speech.SecondThoughts] of a line, and says what was taken back.
func (r *reader) secondThoughts(n int, toks []token.Token) []token.Token {
	out, back := speech.SecondThoughts(r.text, toks)
	for _, b := range back {
		r.said.Notes = append(r.said.Notes, lineNote(n, "“"+b+"” is taken back by what follows it, and skipped"))
	}
	return out
}

// drinksWords say how many drinks a text makes, or how much of it one is.
var drinksWords = token.Words(`serves serve servings serving portions portion drinks drink cocktails guests persons people pax covers`)

// ofServes returns how many tokens say for how many drinks the amounts are, or how much
// of all one drink is; 0 if none do.
func ofServes(toks []token.Token) int {
	if len(toks) < 2 || toks[0].Kind != token.Numeral {
		return 0
	}
	at := 1
	if _, n := entry.UnitAt(toks[1:]); n > 0 && at+n+1 < len(toks) {
		at += n
	}
	if toks[at].Text == "per" || toks[at].Text == "a" || toks[at].Text == "each" {
		at++
	} else if at > 1 {
		return 0
	}
	if at < len(toks) && drinksWords[toks[at].Text] {
		return at + 1
	}
	return 0
}

// lineNote is a note on a line.
func lineNote(n int, note string) string { return measure.LineLocation(n) + ": " + note }

// amountAlone reports whether tokens are an amount and name nothing.
func amountAlone(toks []token.Token) bool {
	return entry.StartsAmount(toks) && !named(toks)
}

// servesWords begin a line that says how many drinks the amounts are for.
var servesWords = token.Words(`serves makes yields yield serving`)

// labelled reads a line that says what it is, and is false if what follows the
// label is to be read like any other line.
func (r *reader) labelled(n int, span entry.Span, l entry.Label, rest []token.Token) bool {
	r.section = entry.NoLabel
	if len(rest) == 0 {
		r.section = l
		r.entry(KindRemark, n, span)
		return true
	}
	at := entry.Span{Start: rest[0].Start, End: span.End}
	text := token.OneLine(r.text[at.Start:at.End])
	switch l {
	case entry.LabelGarnish:
		r.garnish(n, at)
	case entry.LabelRim:
		r.d.Rim = text
		r.entry(KindRim, n, at)
	case entry.LabelGlass:
		s := serving.Read(rest)
		s.Glass, s.Conflict = text, nil
		s.Method = ""
		r.said.Merge(&s, true)
		r.d.Glass = text
		r.entry(KindServing, n, at)
	case entry.LabelStep:
		r.d.Steps = append(r.d.Steps, text)
		r.entry(KindStep, n, at)
	case entry.LabelRemark:
		r.entry(KindRemark, n, at)
	case entry.LabelName:
		if r.d.Name != "" {
			return false
		}
		r.setLabelled(n, at)
	default:
		return false
	}
	return true
}

func (r *reader) garnish(n int, at entry.Span) {
	text := token.OneLine(strings.Trim(r.text[at.Start:at.End], " ,;.-•*"))
	if text == "" {
		return
	}
	if r.d.Garnish != "" {
		r.d.Garnish += ", "
	}
	r.d.Garnish += text
	r.entry(KindGarnish, n, at)
}

// entries reads what one line holds.
func (r *reader) entries(n int, span entry.Span, toks []token.Token, asSteps bool) {
	toks = r.ratioList(n, toks)
	if len(toks) == 0 {
		return
	}
	r.takeAll(n, span, r.underHead(r.spread(r.gather(r.pieces(toks)))), asSteps)
}

// takeAll takes the entries of a line, each by what stands before it.
func (r *reader) takeAll(n int, span entry.Span, in []piece, asSteps bool) {
	for i := range in {
		if in[i].sep == soaked && i > 0 && listed(&in[i]) {
			r.soak(n, &in[i])
			continue
		}
		if role := roleOf(&in[i]); i > 0 && in[i].sep == ";" && role != "" && in[i-1].pour.Shape == entry.ShapePour || i > 0 && i == len(in)-1 && in[i].sep == "," && columnRoles[role] && in[i-1].pour.Shape == entry.ShapePour && in[i-1].pour.AmountAt.Start > in[i-1].pour.NameAt.Start {
			r.entry(KindRemark, n, entry.Span{Start: in[i].toks[0].Start, End: in[i].toks[len(in[i].toks)-1].End})
			if k := len(r.d.Lines) - 1; k >= 0 && (role == "float" || role == "top") {
				r.d.Lines[k].After = true
			}
			continue
		}
		if i > 0 && dressed(&in[i-1], &in[i]) || len(r.d.Lines) > 0 && saltAlone(&in[i]) {
			toks := entry.TrimMarks(in[i].toks)
			at := entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}
			r.d.Rim = token.OneLine(r.text[at.Start:at.End])
			r.entry(KindRim, n, at)
			r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+r.d.Rim+"” is kept as the rim; write it with an amount to have it poured")
			in[i].pour.Shape = entry.ShapeRim
			continue
		}
		if i > 0 && ((in[i-1].pour.Shape == entry.ShapeServing || in[i-1].pour.Shape == entry.ShapeRim) && laidOn(&in[i]) || in[i-1].pour.Shape == entry.ShapeGarnish && in[i].sep == "+" && in[i].pour.Shape == entry.ShapeName) {
			in[i].pour.Shape = entry.ShapeGarnish
			r.laid(n, in[i].toks)
			continue
		}
		if i+1 < len(in) && in[i+1].sep == "+" && in[i].pour.Shape == entry.ShapeName && laidOn(&in[i]) && in[i+1].pour.Shape == entry.ShapeGarnish {
			in[i].pour.Shape = entry.ShapeGarnish // "orange + lemon zest"
			r.laid(n, in[i].toks)
			continue
		}
		r.take(n, span, &in[i], asSteps)
	}
}

// roleWords are what a column says that a pour is in its drink.
var roleWords = token.Words(`length mod mods liq bitter bitters spirits liqueurs base sour sweet strong weak modifier float top citrus lengthener spirit mixer bitter sweetener acid split accent liqueur bitters juice syrup`)

// columnRoles are those that are no names of ingredients: a last column says them behind a
// comma too.
var columnRoles = token.Words(`sour sweet base modifier mod citrus lengthener length spirit sweetener split accent acid strong weak`)

// roleOf is the role that a piece names, and nothing else; empty if it names none.
func roleOf(p *piece) string {
	if toks := entry.TrimMarks(p.toks); len(toks) == 1 && roleWords[toks[0].Text] {
		return toks[0].Text
	}
	return ""
}

// take takes one entry of a line.
func (r *reader) take(n int, span entry.Span, p *piece, asStep bool) {
	if len(p.toks) == 0 {
		return
	}
	at := entry.Span{Start: p.toks[0].Start, End: p.toks[len(p.toks)-1].End}
	written := token.OneLine(r.text[at.Start:at.End])
	r.said.Merge(&p.pour.Beside, true)
	if skip := ofServes(p.toks); skip > 0 { // "4 serves", "100 ml per serve over ice"
		r.entry(KindRemark, n, at)
		r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[at.Start:p.toks[skip-1].End])+"” is skipped: all of it is taken as one drink")
		if rest := p.toks[skip:]; len(rest) > 0 {
			r.takeServing(n, entry.Span{Start: rest[0].Start, End: at.End}, rest, asStep)
		}
		return
	}
	switch p.pour.Shape {
	case entry.ShapeNothing:
		r.ruled(n, at)
	case entry.ShapePour, entry.ShapeImplied:
		if len(r.d.Lines) > 0 && sums[strings.ToLower(p.pour.Name)] {
			r.entry(KindRemark, n, at)
			r.said.Notes = append(r.said.Notes, lineNote(n, "“"+written+"” is skipped: it is what all of it comes to"))
			return
		}
		if r.served > 0 && r.served == len(r.d.Lines) && p.pour.Laid(p.toks) {
			r.laid(n, p.toks)
			return
		}
		r.takePour(n, at, &p.pour, asStep)
	case entry.ShapeServing:
		r.sentence = p.sep == "."
		r.takeServing(n, at, p.toks, asStep)
		r.sentence = false
	case entry.ShapeGarnish:
		r.takeGarnish(n, at, p)
	case entry.ShapeRim:
		r.d.Rim = p.pour.Remark
		if s := serving.Read(p.toks); s.Glass != "" || s.Service != "" || s.Method != "" {
			r.said.Merge(&serving.Said{Glass: s.Glass, Method: s.Method, MethodAs: s.MethodAs, Service: s.Service, ServiceAs: s.ServiceAs, Weak: s.Weak}, true)
		}
		r.entry(KindRim, n, at)
	case entry.ShapeAmount:
		if p.pour.Unit == flavor.Dash && p.pour.Fault == nil && !p.pour.Each && p.pour.Figures { // "2 dash": of the bitters that stand beside every well
			q := p.pour
			q.Shape, q.Name, q.NameAt = entry.ShapePour, "aromatic bitters", entry.Span{Start: at.End, End: at.End}
			q.AddNote("“" + written + "” names nothing, and is read as aromatic bitters")
			q.Guessed = true
			r.takePour(n, at, &q, asStep)
			return
		}
		r.unread(n, at, measure.Invalid("ingredient", written, "%q names no ingredient; write it after the amount, such as \"2 oz London dry gin\"", written))
	case entry.ShapeTail:
		if strings.HasPrefix(p.toks[0].Text, "mud") || slices.ContainsFunc(r.d.Lines, func(l entry.Line) bool { return l.After }) { // a step that speaks of a pour above
			r.takeServing(n, at, p.toks, asStep)
			return
		}
		r.unread(n, at, measure.Invalid("ingredient", written, "%q names no ingredient; write what to pour, such as \"top soda water\"", written))
	case entry.ShapeName:
		if asStep {
			r.takeServing(n, at, p.toks, true)
			return
		}
		r.unnamed(n, at, written, p.toks)
	}
}

// sums name what all of a drink comes to.
var sums = map[string]bool{"total": true, "sum": true, "volume": true, "total volume": true, "yield": true, "in total": true, "all in": true}

func (r *reader) unread(n int, at entry.Span, f *flavor.Fault) {
	r.entry(KindUnread, n, at)
	r.fail(n, f)
}

// opinions begin what somebody thinks of a drink and no pour.
var opinions = token.Words(`needs need too bit cheers thanks maybe tasty`)

// unnamed is words without an amount that say nothing known.
func (r *reader) unnamed(n int, at entry.Span, written string, toks []token.Token) {
	if len(toks) > 1 && opinions[toks[0].Text] && !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral || t.Text == "of" }) {
		r.entry(KindRemark, n, at)
		r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+written+"” is skipped")
		return
	}
	if fixed, ok := r.corrected(n, toks); ok {
		r.takeServing(n, at, fixed, false)
		return
	}
	if s := serving.Read(toks); s.States() && s.Conflict == nil { // "quick shake", "rocks chilli salt"
		r.said.Merge(&s, true)
	}
	f := measure.Invalid("amount", written, "%q has no amount; write one before it, such as \"2 oz\", or a # to have the line skipped", written)
	f.Location = measure.LineLocation(n)
	r.d.Doubts = append(r.d.Doubts, Doubt{Entry: len(r.d.Entries), After: len(r.d.Lines), Laid: r.served > 0 && r.served == len(r.d.Lines) || len(r.d.Lines) > 1 && r.d.Lines[len(r.d.Lines)-1].After, Fault: f, toks: slices.Clone(toks)})
	r.entry(KindUnread, n, at)
}

// corrected returns words of making and serving with the slips of the pen among them
// mended, which is said; it is false if there is none, or if something else is unknown.
func (r *reader) corrected(n int, toks []token.Token) ([]token.Token, bool) {
	unknown := serving.Read(toks).Unknown
	fixed := slices.Clone(toks)
	var notes []string
	for i := range fixed {
		if !slices.ContainsFunc(unknown, func(t token.Token) bool { return t.Start == fixed[i].Start }) {
			continue
		}
		means, ok := serving.Slip(fixed[i].Text)
		if !ok {
			return nil, false
		}
		notes = append(notes, measure.LineLocation(n)+": “"+fixed[i].Text+"” is read as "+means)
		fixed[i].Text = means
	}
	if len(notes) == 0 {
		return nil, false
	}
	r.said.Notes = append(r.said.Notes, notes...)
	return fixed, true
}

func (r *reader) takePour(n int, at entry.Span, p *entry.Written, asStep bool) {
	if p.Fault == nil {
		p.Fault = entry.CheckAmount(p.Amount, p.Mostly(), r.amountText(p))
	}
	if p.Fault != nil {
		r.unread(n, at, p.Fault)
		return
	}
	if len(r.d.Lines) >= MaxPours {
		r.unread(n, at, measure.Invalid("", token.OneLine(r.text[at.Start:at.End]), "this is more than %d pours; leave some out", MaxPours))
		return
	}
	line := r.lineOf(n, p)
	line.Step, line.Amends = asStep, r.amends
	line.PerhapsName = len(r.d.Lines) == 0 && r.d.Name == "" && len(r.d.Entries) == 0 && p.UnitAt.Empty() && p.Stated
	r.d.Lines = append(r.d.Lines, line)
	if p.Stated && p.Shape == entry.ShapePour {
		own := *p
		r.amount = &own
	}
	r.d.Muddle = r.d.Muddle || p.Muddled
	r.entry(KindPour, n, at)
}

func (r *reader) lineOf(n int, p *entry.Written) entry.Line {
	l := p.Line
	l.Number = n
	l.Span = entry.Span{Start: p.Of[0].Start, End: p.Of[len(p.Of)-1].End}
	l.Asked = token.OneLine(r.text[l.Span.Start:l.Span.End])
	l.After = p.After || l.Unit.After()
	return l
}

func (r *reader) amountText(p *entry.Written) string {
	if p.AmountAt.Empty() {
		return token.Number(p.Amount)
	}
	return token.OneLine(r.text[p.AmountAt.Start:p.AmountAt.End])
}

// takeGarnish keeps a garnish with the words that are not only "garnish with".
func (r *reader) takeGarnish(n int, at entry.Span, p *piece) {
	toks := p.toks
	if first := toks[0].Text; (first == "handful" || first == "bunch") && r.served == 0 {
		written := token.OneLine(r.text[at.Start:at.End])
		r.unread(n, at, measure.Invalid("amount", written, "%q states no number; write one, such as \"8 mint leaves\", or \"garnish: %s\" if it is laid on the drink", written, written))
		return
	}
	for len(toks) > 0 && (toks[0].Kind == token.Mark || toks[0].Text == "garnish" || toks[0].Text == "garnished" || toks[0].Text == "garn" || toks[0].Text == "gar" || toks[0].Text == "with" || toks[0].Text == "the" || toks[0].Text == "of" && len(toks) > 1) {
		toks = toks[1:]
	}
	for len(toks) > 0 && !(len(toks) == 1 && toks[0].Text == "no") { // "no garnish"
		last := &toks[len(toks)-1]
		k, t := entry.TailAt(toks)
		switch {
		case k > 0 && t.Beside && k < len(toks):
			at := entry.Span{Start: toks[0].Start, End: last.End}
			r.garnish(n, at)
			r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[at.Start:at.End])+"” is kept as garnish, and not counted")
			return
		case k > 0 && t.Garnish:
			toks = toks[:len(toks)-k]
		case last.Kind == token.Mark && !last.Is(")"):
			toks = toks[:len(toks)-1]
		default:
			r.garnish(n, entry.Span{Start: toks[0].Start, End: last.End})
			if p.pour.Unit.Counted() && p.pour.UnitAt.Start == at.Start || serving.OtherMeasures[toks[0].Text] {
				r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[at.Start:at.End])+"” is kept as garnish; write 1 before it to have it counted")
			} else if p.pour.ByNoun && len(toks) == 1 && r.said.Method == "" && r.said.Service == "" { // "mint", above "shake": perhaps it goes in
				r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[at.Start:at.End])+"” is kept as garnish; write it with an amount to have it poured")
			}
			return
		}
	}
	r.entry(KindRemark, n, at)
}

// changeVerbs change an amount that stands elsewhere: "cut to 1/4".
var changeVerbs = token.Words(`cut reduce reduced drop lower raise bump changed change`)

// takeServing takes what is said of method, service, ice and glass, and keeps
// what says more as a step.
func (r *reader) takeServing(n int, at entry.Span, toks []token.Token, prose bool) {
	if cut := entry.GarnishAfter(toks); cut > 0 && !prose {
		r.takeServing(n, entry.Span{Start: at.Start, End: toks[cut-1].End}, toks[:cut], prose)
		r.laid(n, toks[cut:])
		return
	}
	s := serving.Read(toks)
	if w := cmp.Or(entry.PouredIn(toks), entry.CountedIn(toks, s.Unknown)); w != "" && !prose {
		r.unread(n, at, measure.Invalid("amount", w, "%q stands in a step; write it on a line of its own", w))
		return
	}
	if i := slices.IndexFunc(toks, func(t token.Token) bool { return changeVerbs[t.Text] }); i >= 0 && i+2 < len(toks) && toks[i+1].Text == "to" && toks[i+2].Kind == token.Numeral && !prose {
		w := token.OneLine(r.text[at.Start:at.End])
		r.unread(n, at, measure.Invalid("amount", w, "%q changes an amount; write only the one that counts, in its place", w))
		return
	}
	if fixed, ok := r.corrected(n, toks); ok {
		toks, s = fixed, serving.Read(fixed)
	}
	if s.Conflict != nil {
		s = r.firstOf(n, toks, s)
	}
	prose = prose || s.Begins && len(s.Unknown) > 0 || s.Words > 4
	if prose && !slices.ContainsFunc(s.Unknown, func(t token.Token) bool { return t.Text == "or" }) {
		s.Prose()
	}
	if s.Conflict != nil {
		r.unread(n, at, s.Conflict)
		return
	}
	r.d.Muddle = r.d.Muddle || s.Muddle
	if s.Service != "" || s.Glass != "" || s.Method != "" && s.Method != flavor.Build {
		r.served = len(r.d.Lines)
	}
	r.said.Merge(&s, prose || r.sentence || r.stepAfter(&s))
	if r.said.Conflict != nil {
		f := r.said.Conflict
		r.said.Conflict = nil
		r.unread(n, at, f)
		return
	}
	kind := KindServing
	if s.Keep && (s.Words > 0 || prose) {
		r.d.Steps = append(r.d.Steps, token.OneLine(strings.Trim(r.text[at.Start:at.End], " .,;-")))
		if !s.States() {
			kind = KindStep
		}
	}
	r.entry(kind, n, at)
}

// firstOf reads words that leave a choice of methods that work a drink alike as the first
// of them, which is said: "flash blend or shake". It returns s where they leave none.
func (r *reader) firstOf(n int, toks []token.Token, s serving.Said) serving.Said {
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Text == "or" })
	if at < 1 {
		return s
	}
	one, other := serving.Read(toks[:at]), serving.Read(toks[at+1:])
	if serving.Mixes(one.Method) < serving.Mixes(flavor.Swizzle) || serving.Mixes(other.Method) < serving.Mixes(flavor.Swizzle) { // stirred or shaken are two drinks
		return s
	}
	if one.Conflict != nil || other.Conflict != nil || len(one.Unknown) > 0 {
		return s
	}
	r.said.Notes = append(r.said.Notes, lineNote(n, "“"+token.OneLine(r.text[toks[0].Start:toks[len(toks)-1].End])+"” leaves a choice; the first is taken"))
	if one.Method != "" {
		other.Method, other.MethodAs = "", ""
	}
	if one.Service != "" {
		other.Service = ""
	}
	one.Merge(&other, false)
	one.Keep, one.Words, one.Begins = true, s.Words, s.Begins
	return one
}

// stepAfter reports whether a second method is only a touch at the end: "stir
// gently" once a drink is built or shaken.
func (r *reader) stepAfter(s *serving.Said) bool {
	return s.Method == flavor.Stir && s.Keep && s.Words > 1
}

// finish fills in what the draft says as a whole.
func (r *reader) finish() {
	d := &r.d
	r.sizeParts()
	d.Method, d.Service, d.HotC = r.said.Method, r.said.Service, r.said.HotC
	if d.Glass == "" {
		d.Glass = r.said.Glass
	}
	d.Hinted, d.Iced, d.OnIce, d.Cold, d.Together, d.Touch = r.said.Weak, r.said.Iced, r.said.OnIce, r.said.Cold, r.said.Together, r.said.Touch
	r.strained()
	if r.said.NoIce && (d.Service == "" || d.Service == flavor.Rocks) {
		if d.Method == flavor.Build {
			d.Service = flavor.Neat
		} else {
			d.Service = flavor.Up
		}
	}
	d.Notes = append(d.Notes, r.said.Notes...)
	if d.Service == flavor.Rocks && d.Hinted {
		d.Notes = append(d.Notes, "“"+r.said.ServiceAs+"” is taken as served on the rocks; say \"up\" if it is not")
	}
	if len(d.Faults) == 0 && len(d.Lines) == 0 && d.PerhapsPour == nil && len(d.Doubts) == 0 {
		r.fail(1, measure.Invalid("", "", "there is no pour here; write at least one, such as \"2 oz London dry gin\""))
	}
}

// strained takes "neat" after ice as strained without ice: who means that it never
// meets any builds it, or writes "room temperature".
func (r *reader) strained() {
	d := &r.d
	if d.Service != flavor.Neat || d.Method == "" || d.Method == flavor.Build || strings.HasPrefix(r.said.ServiceAs, "room") {
		return
	}
	d.Service = flavor.Up
	r.said.Notes = append(r.said.Notes, "“"+r.said.ServiceAs+"” after “"+r.said.MethodAs+"” is taken as strained without ice; write \"room temperature\" if it meets none")
}
