package draft

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/ownsize"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/sheet"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/title"
	"counterpour/flavor/measure/draft/words/token"
)

// reader gathers a draft line by line.
type reader struct {
	d        Draft
	text     string
	said     serving.Said
	served   int             // pours above the line that says the service; 0: none does
	first    bool            // nothing but blanks and remarks so far
	section  label.Kind      // of a header that stands alone above
	heading  *entry.Written  // the amount of the list that goes on below
	idle     *idleHead       // that amount, while no name below has taken it
	amount   *entry.Written  // of the pour above
	part     *entry.Written  // how much a line says that a part is
	total    *entry.Written  // how much a line says that all of the drink comes to
	sizes    []entry.Written // how much lines say that the bar's own measures hold
	sentence bool            // it is one that is read: what it tells comes after what others tell
	table    *sheet.Table    // whose rows these lines may be
	tabled   string          // the drink that the rows above name
	ahead    []swapAhead     // changes of what stands below them
	about    []token.Token   // what the line before it finds too much or too little
	amends   bool            // the line takes back amounts of lines above
	shares   bool            // percentages say how much of all each pour is
	batch    bool            // the numbers in brackets behind the amounts are those of a batch
	plainly  bool            // no name stands before the pours of the first line
	toks     []token.Token
	join     joining.Joiner
}

func (r *reader) fail(line int, f *flavor.DataFault) {
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
	raw := from
	from, to = trimSpan(r.text, from, to)
	if from == to {
		r.blank()
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
		r.unread(n, span, fault)
		return r.goesOn()
	}
	r.toks = token.Lex(r.toks[:0], r.text, from, to)
	if at := (entry.Span{Start: raw, End: to}); r.headsTable(n, at) {
		r.first = first
		return true
	} else if r.row(n, at) {
		return r.goesOn()
	}
	toks := r.standing(n, span)
	if len(toks) > 0 {
		toks = r.ofAll(n, span, first, toks)
	}
	if len(toks) > 0 {
		toks = r.beside(n, span, first, toks)
	}
	if len(toks) > 0 {
		r.read(n, span, first, toks)
	}
	return r.goesOn()
}

// goesOn reports whether the text is read on: it holds neither too many faults nor too many pours.
func (r *reader) goesOn() bool { return len(r.d.Faults) < MaxFaults && len(r.d.Lines) <= MaxPours }

// blank reads a line that holds nothing, which ends what stands above it.
func (r *reader) blank() {
	if r.section == label.Garnish {
		r.section = label.None
	}
	if r.heading != nil && len(r.d.Lines) > 0 && r.d.Lines[len(r.d.Lines)-1].Shared {
		r.heading = nil
	}
}

// standing returns the tokens of a line without what is struck out, its bullet, the amounts of
// a batch and changes of what stands below; none if that is all.
func (r *reader) standing(n int, span entry.Span) []token.Token {
	standing := r.unstruck(n, r.toks)
	if len(standing) == 0 && len(r.toks) > 0 {
		r.entry(KindRemark, n, span)
		return nil
	}
	toks := r.withoutBatch(n, roundBrackets(parting.Unlist(standing)))
	if len(toks) > 0 {
		toks = r.swapsAhead(n, toks)
	}
	if len(toks) == 0 {
		r.ruled(n, span)
	}
	return toks
}

// ofAll drops what a line says of all that is poured: that the numbers are shares, their unit,
// for how many drinks they are. None are left where that is all, and then the next line is
// still the first.
func (r *reader) ofAll(n int, span entry.Span, first bool, toks []token.Token) []token.Token {
	toks = r.asParts(toks)
	switch {
	case len(entry.TrimMarks(toks)) == 0 && r.shares: // "total 90 ml"
	case len(toks) == 0:
		r.ruled(n, span)
		return nil
	case sheet.Spaced(toks):
		r.d.Headed = sheet.UnitOfHead(toks)
	case r.batch && sheet.HeadsBatch(r.text[span.Start:span.End]):
	case sheet.PerPortion(toks), sheet.Serves(toks), sheet.About(toks):
		r.said.Notes = append(r.said.Notes, lineNote(n, "“"+r.text[span.Start:span.End]+"” is skipped: the amounts are taken as those of one drink"))
	default:
		if toks = r.unitsStated(toks); len(toks) > 0 {
			return toks
		}
	}
	r.first = first
	r.entry(KindRemark, n, span)
	return nil
}

// beside drops what a line says beside its pours; none are left where it pours nothing.
func (r *reader) beside(n int, span entry.Span, first bool, toks []token.Token) []token.Token {
	if !first && aside.StruckOut(toks) {
		r.skips(n, toks)
		r.entry(KindRemark, n, span)
		return nil
	}
	r.amends = false
	if len(toks) < 2 || toks[0].Text != "name" || !toks[1].Is(":") { // a labelled name is kept to the letter
		toks = r.pouringWords(n, toks)
	}
	switch {
	case len(toks) == 0:
		r.entry(KindRemark, n, span)
	case first:
		return toks
	case speech.Resets(toks):
		written := r.text[span.Start:span.End]
		r.unread(n, span, measure.Invalid("ingredient", written, "%q does not say what it is the amount of; write it with its name, such as \"1 oz lemon juice\"", written))
	case aside.None(toks) || aside.Facts(toks) || title.Notes(toks) || r.about != nil:
		r.skips(n, toks)
		r.entry(KindRemark, n, span)
	default:
		return toks
	}
	return nil
}

// read reads what is left of a line: what it changes above, what it heads, its label, its entries.
func (r *reader) read(n int, span entry.Span, first bool, toks []token.Token) {
	if toks = r.insteadOf(n, toks); r.swapped(n, span, toks) {
		return
	}
	if toks = r.halved(n, toks); len(toks) == 0 {
		r.entry(KindRemark, n, span)
		return
	}
	if r.headsList(n, span, toks) || r.amountsBelow(n, span, toks) {
		return
	}
	l, rest := parting.Header(r.text, toks)
	if (l == label.None || l == label.Pours) && r.ditto(n, span, toks) {
		return
	}
	if first {
		if r.firstLine(n, span, l, rest, toks) {
			return
		}
	} else if l != label.None && r.labelled(n, span, l, rest) || l == label.None && r.namedAgain(n, span, toks) {
		return
	}
	if l == label.Pours && parting.AmountAlone(rest) { // "bitters: 2 dashes"
		l = label.None
	}
	if l != label.None && (l != label.Name || first || title.Pours(&r.join, rest) || r.poursOne(rest)) { // "spec: 2 oz gin, ..." below the name
		toks = behindLabel(toks, rest)
	}
	switch {
	case r.section == label.Garnish && l == label.None:
		r.garnish(n, span)
	case l == label.None && len(r.d.Lines) > 0 && title.HeadsRemark(toks):
		r.unnamed(n, span, token.OneLine(r.text[span.Start:span.End]), toks)
	default:
		r.entries(n, span, toks, r.section == label.Serving || l == label.Serving)
	}
}

// behindLabel returns what stands behind a label. That of the ice belongs to it: "ice: large".
func behindLabel(toks, rest []token.Token) []token.Token {
	if toks[0].Text != "ice" || len(rest) == 0 || rest[len(rest)-1].Text == "ice" {
		return rest
	}
	at := rest[len(rest)-1].End
	return append(rest[:len(rest):len(rest)], token.Token{Kind: token.Word, Start: at, End: at, Text: "ice"})
}

// pouringWords drops what a line says beside its pours, such as prices, talk and words
// that are taken back, and says so.
func (r *reader) pouringWords(n int, toks []token.Token) []token.Token {
	toks = r.dittoUnits(n, toks)
	toks = laid.Crushed(serving.WithIceSizes(speech.OneOfEach(speech.Lengthened(speech.WithoutHesitation(speech.Signs(toks))))))
	toks = r.withoutServes(n, r.withoutPrices(n, r.remarkFrom(n, joining.WithoutRole(r.text, toks))))
	about := r.about
	r.about = slices.Clone(speech.About(toks))
	kept, set := r.changed(n, speech.Ranges(r.text, toks))
	toks, r.amends = speech.Amended(kept, about)
	r.amends = r.amends || set
	toks = r.without(n, toks, speech.StandIn(toks))
	toks = r.withoutLead(n, r.withoutCommentary(n, r.secondThoughts(n, speech.Dictated(toks))))
	return r.partSize(n, r.without(n, toks, speech.Opening(toks)))
}

// changed is [speech.Changed] of a line, and says what was left out; true if anything was and one
// amount is left, so that an amount above may be the one that no longer counts.
func (r *reader) changed(n int, toks []token.Token) ([]token.Token, bool) {
	out, was := speech.Changed(r.text, toks)
	for _, w := range was {
		r.said.Notes = append(r.said.Notes, lineNote(n, "“"+w+"” is skipped: the amount beside it counts"))
	}
	return out, len(was) > 0 && numerals(out) == 1
}

// numerals is how many numbers some tokens hold.
func numerals(toks []token.Token) int {
	n := 0
	for i := range toks {
		if toks[i].Kind == token.Numeral {
			n++
		}
	}
	return n
}

// secondThoughts is [speech.SecondThoughts] of a line, and says what was taken back.
func (r *reader) secondThoughts(n int, toks []token.Token) []token.Token {
	out, back := speech.SecondThoughts(r.text, toks)
	for _, b := range back {
		r.said.Notes = append(r.said.Notes, lineNote(n, "“"+b+"” is corrected by what follows, and skipped"))
	}
	return out
}

// lineNote is a note on a line.
func lineNote(n int, note string) string { return measure.LineLocation(n) + ": " + note }

// labelled reads a line that says what it is, and is false if what follows the
// label is to be read like any other line.
func (r *reader) labelled(n int, span entry.Span, l label.Kind, rest []token.Token) bool {
	r.section = label.None
	if len(rest) == 0 {
		r.section = l
		r.entry(KindRemark, n, span)
		return true
	}
	if l == label.Glass || l == label.Garnish || l == label.Rim {
		if kept := r.servedAfter(n, rest); len(kept) < len(rest) {
			rest, span.End = kept, kept[len(kept)-1].End
		}
	}
	at := entry.Span{Start: rest[0].Start, End: span.End}
	text := token.OneLine(r.text[at.Start:at.End])
	switch l {
	case label.Garnish:
		r.garnish(n, at)
	case label.Rim:
		r.d.Rim = text
		r.entry(KindRim, n, at)
	case label.Glass:
		if slices.ContainsFunc(rest, func(t token.Token) bool { return strings.HasSuffix(t.Text, "rinsed") }) { // "coupe, rinsed with absinthe" pours it
			return false
		}
		s := serving.Read(rest)
		s.Glass, s.Conflict = text, nil
		s.Method = ""
		r.said.Merge(&s, true)
		r.d.Glass = text
		r.entry(KindServing, n, at)
	case label.Step:
		r.d.Steps = append(r.d.Steps, text)
		r.entry(KindStep, n, at)
	case label.Remark:
		if entry.UnitIn(rest) && entry.TellsToPour(rest) { // "tip: add 10 ml lime"
			return false
		}
		if slices.ContainsFunc(rest, func(t token.Token) bool { return t.Kind == token.Numeral }) {
			r.skips(n, rest)
		}
		r.entry(KindRemark, n, at)
	case label.Name:
		if r.d.Name != "" && (r.d.Labelled || len(r.d.Lines) > 0 || title.Pours(&r.join, rest)) || r.poursOne(rest) {
			return false
		}
		for i := range r.d.Entries { // what stands above a name with its label is none
			if e := &r.d.Entries[i]; e.Kind == KindName {
				e.Kind = KindRemark
				r.said.Notes = append(r.said.Notes, lineNote(e.Line, "“"+r.d.Name+"” is skipped: the name of the drink stands below"))
				r.d.PerhapsPour, r.d.ServingName = nil, nil
			}
		}
		r.setLabelled(n, at)
	default:
		return false
	}
	return true
}

// garnish keeps what is laid on a drink, but for what is dashed on it.
func (r *reader) garnish(n int, at entry.Span) {
	if !r.dosed(n, at) {
		r.garnishText(n, at)
	}
}

// garnishText keeps a stretch of the text as garnish.
func (r *reader) garnishText(n int, at entry.Span) {
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

// finish fills in what the draft says as a whole.
func (r *reader) finish() {
	d := &r.d
	r.unheaded()
	own, wrong := ownsize.Set(r.text, d.Lines, r.sizes)
	for _, f := range wrong {
		r.fail(f.Line, f.DataFault)
	}
	r.sizeParts()
	r.said.Notes = append(r.said.Notes, own...)
	r.swapBelow()
	r.said.OffIce()
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
	r.said.Notes = append(r.said.Notes, "“"+r.said.ServiceAs+"” after “"+r.said.MethodAs+"” is taken as strained without ice; write \"room temperature\" if it meets no ice")
}
