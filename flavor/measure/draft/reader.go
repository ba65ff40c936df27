package draft

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
)

// reader gathers a draft line by line.
type reader struct {
	d       Draft
	text    string
	said    serving
	served  int   // pours above the line that says the service; 0: none does
	first   bool  // nothing but blanks and remarks so far
	section label // of a header that stands alone above
	toks    []token
	cut     []piece
}

func (r *reader) fail(line int, f *flavor.Fault) {
	f.Location = lineLocation(line)
	r.d.Faults = append(r.d.Faults, f)
}

func (r *reader) entry(k Kind, line int, s Span) {
	r.d.Entries = append(r.d.Entries, Entry{k, s, line})
}

// line reads text[from:to], and is false when reading should stop.
func (r *reader) line(n, from, to int) bool {
	at := remarkAt(r.d.text, from, to)
	more := r.content(n, from, at)
	if at < to {
		r.entry(KindRemark, n, Span{at, to})
	}
	return more
}

// content reads a line without its remark.
func (r *reader) content(n, from, to int) bool {
	r.text = r.d.text
	from, to = trimSpan(r.text, from, to)
	if from == to {
		if r.section == labelGarnish {
			r.section = noLabel
		}
		return true
	}
	span := Span{from, to}
	if r.text[from] == '#' {
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
	r.toks = lex(r.toks[:0], r.text, from, to)
	toks := r.unlist(r.unstruck(n, r.toks))
	if len(toks) == 0 {
		r.ruled(n, span)
		return true
	}
	if columns(toks) {
		r.d.headed = headOf(toks)
		r.first = first
		r.entry(KindRemark, n, span)
		return true
	}
	if len(toks) < 4 && len(toks) > 1 && servesWords[toks[0].text] && toks[1].kind == numeral {
		r.first = first
		r.entry(KindRemark, n, span)
		r.said.notes = append(r.said.notes, lineLocation(n)+": “"+r.text[from:to]+"” is passed over: all of it is taken as one drink")
		return true
	}
	l, rest := header(toks)
	if first {
		if r.firstLine(n, span, l, rest, toks) {
			return true
		}
	} else if l != noLabel && r.labelled(n, span, l, rest) {
		return true
	}
	if l == labelPours && amountAlone(rest) { // "bitters: 2 dashes"
		l = noLabel
	}
	if l != noLabel && (l != labelName || first) {
		toks = rest
	}
	if r.section == labelGarnish && l == noLabel {
		r.garnish(n, span)
		return true
	}
	r.entries(n, span, toks, r.section == labelServing || l == labelServing)
	return len(r.d.Faults) < MaxFaults && len(r.d.Lines) <= MaxPours
}

// amountAlone reports whether tokens are an amount and name nothing.
func amountAlone(toks []token) bool {
	return startsAmount(toks) && !named(toks)
}

// servesWords begin a line that says how many drinks the amounts are for.
var servesWords = set(`serves makes yields yield serving`)

// labelled reads a line that says what it is, and is false if what follows the
// label is to be read like any other line.
func (r *reader) labelled(n int, span Span, l label, rest []token) bool {
	r.section = noLabel
	if len(rest) == 0 {
		r.section = l
		r.entry(KindRemark, n, span)
		return true
	}
	at := Span{rest[0].start, span.End}
	text := oneLine(r.text[at.Start:at.End])
	switch l {
	case labelGarnish:
		r.garnish(n, at)
	case labelRim:
		r.d.Rim = text
		r.entry(KindRim, n, at)
	case labelGlass:
		s := readServing(rest)
		s.glass, s.conflict = text, nil
		s.method = ""
		r.said.merge(&s, true)
		r.d.Glass = text
		r.entry(KindServing, n, at)
	case labelStep:
		r.d.Steps = append(r.d.Steps, text)
		r.entry(KindStep, n, at)
	case labelRemark:
		r.entry(KindRemark, n, at)
	case labelName:
		if r.d.Name != "" {
			return false
		}
		r.setName(n, at)
		r.d.labelled = true
	default:
		return false
	}
	return true
}

func (r *reader) garnish(n int, at Span) {
	text := oneLine(strings.Trim(r.text[at.Start:at.End], " ,;.-•*"))
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
func (r *reader) entries(n int, span Span, toks []token, asSteps bool) {
	toks = r.ratioList(n, toks)
	if len(toks) == 0 {
		return
	}
	r.takeAll(n, span, r.spread(r.gather(r.pieces(toks))), asSteps)
}

// takeAll takes the entries of a line, each by what stands before it.
func (r *reader) takeAll(n int, span Span, in []piece, asSteps bool) {
	for i := range in {
		if i > 0 && dressed(&in[i-1], &in[i]) {
			toks := trimMarks(in[i].toks)
			at := Span{toks[0].start, toks[len(toks)-1].end}
			r.d.Rim = oneLine(r.text[at.Start:at.End])
			r.entry(KindRim, n, at)
			r.said.notes = append(r.said.notes, lineLocation(n)+": “"+r.d.Rim+"” is kept as the rim; write it with an amount to have it poured")
			in[i].pour.shape = shapeRim
			continue
		}
		if i > 0 && ((in[i-1].pour.shape == shapeServing || in[i-1].pour.shape == shapeRim) && laidOn(&in[i]) || in[i-1].pour.shape == shapeGarnish && in[i].sep == "+" && in[i].pour.shape == shapeName) {
			in[i].pour.shape = shapeGarnish
			r.laid(n, in[i].toks)
			continue
		}
		r.take(n, span, &in[i], asSteps)
	}
}

// take takes one entry of a line.
func (r *reader) take(n int, span Span, p *piece, asStep bool) {
	if len(p.toks) == 0 {
		return
	}
	at := Span{p.toks[0].start, p.toks[len(p.toks)-1].end}
	written := oneLine(r.text[at.Start:at.End])
	switch p.pour.shape {
	case shapeNothing:
		r.ruled(n, at)
	case shapePour, shapeImplied:
		if r.served > 0 && r.served == len(r.d.Lines) && p.pour.laid(p.toks) {
			r.laid(n, p.toks)
			return
		}
		r.takePour(n, at, &p.pour, asStep)
	case shapeServing:
		r.takeServing(n, at, p.toks, asStep)
	case shapeGarnish:
		r.takeGarnish(n, at, p)
	case shapeRim:
		r.d.Rim = p.pour.remark
		if s := readServing(p.toks); s.glass != "" || s.service != "" || s.method != "" {
			r.said.merge(&serving{glass: s.glass, method: s.method, methodAs: s.methodAs, service: s.service, serviceAs: s.serviceAs, weak: s.weak}, true)
		}
		r.entry(KindRim, n, at)
	case shapeAmount:
		r.unread(n, at, invalid("ingredient", written, "%q names no ingredient; write it after the amount, such as \"2 oz London dry gin\"", written))
	case shapeTail:
		if strings.HasPrefix(p.toks[0].text, "mud") { // a step, where no pour stands before it
			r.takeServing(n, at, p.toks, asStep)
			return
		}
		r.unread(n, at, invalid("ingredient", written, "%q names no ingredient; write what to pour, such as \"top soda water\"", written))
	case shapeName:
		if asStep {
			r.takeServing(n, at, p.toks, true)
			return
		}
		r.unnamed(n, at, written, p.toks)
	}
}

func (r *reader) unread(n int, at Span, f *flavor.Fault) {
	r.entry(KindUnread, n, at)
	r.fail(n, f)
}

// opinions begin what somebody thinks of a drink and no pour.
var opinions = set(`needs need too bit cheers thanks maybe tasty`)

// unnamed is words without an amount that say nothing known.
func (r *reader) unnamed(n int, at Span, written string, toks []token) {
	if len(toks) > 1 && opinions[toks[0].text] && !slices.ContainsFunc(toks, func(t token) bool { return t.kind == numeral || t.text == "of" }) {
		r.entry(KindRemark, n, at)
		r.said.notes = append(r.said.notes, lineLocation(n)+": “"+written+"” is passed over")
		return
	}
	s := readServing(toks)
	if near := nearTerms(s.unknown); len(near) > 0 && s.words <= 3 {
		for _, w := range s.unknown {
			r.unread(n, at, unknownTerm(w, NearestMethods(w.text)))
		}
		return
	}
	if s.method != "" {
		for _, w := range s.unknown {
			r.unread(n, at, unknownTerm(w, NearestMethods(w.text)))
		}
		return
	}
	f := invalid("amount", written, "%q has no amount; write one before it, such as \"2 oz\", or a # to have the line passed over", written)
	r.unread(n, at, f)
}

func (r *reader) takePour(n int, at Span, p *pour, asStep bool) {
	if p.fault == nil {
		p.fault = checkAmount(p.Amount, p.mostly(), r.amountText(p))
	}
	if p.fault != nil {
		r.unread(n, at, p.fault)
		return
	}
	if len(r.d.Lines) >= MaxPours {
		r.unread(n, at, invalid("", oneLine(r.text[at.Start:at.End]), "this is more than %d pours; leave some out", MaxPours))
		return
	}
	line := r.lineOf(n, p)
	line.step = asStep
	line.perhapsName = len(r.d.Lines) == 0 && r.d.Name == "" && len(r.d.Entries) == 0 && p.UnitAt.Empty() && p.amount
	r.d.Lines = append(r.d.Lines, line)
	r.d.muddle = r.d.muddle || p.muddled
	r.entry(KindPour, n, at)
}

func (r *reader) lineOf(n int, p *pour) Line {
	l := p.Line
	l.Number = n
	l.Span = Span{p.of[0].start, p.of[len(p.of)-1].end}
	l.Asked = oneLine(r.text[l.Span.Start:l.Span.End])
	l.After = p.After || l.Unit.After()
	return l
}

func (r *reader) amountText(p *pour) string {
	if p.AmountAt.Empty() {
		return number(p.Amount)
	}
	return oneLine(r.text[p.AmountAt.Start:p.AmountAt.End])
}

// takeGarnish keeps a garnish with the words that are not only "garnish with".
func (r *reader) takeGarnish(n int, at Span, p *piece) {
	toks := p.toks
	for len(toks) > 0 && (toks[0].kind == mark || toks[0].text == "garnish" || toks[0].text == "garnished" || toks[0].text == "garn" || toks[0].text == "gar" || toks[0].text == "with" || toks[0].text == "the" || toks[0].text == "of" && len(toks) > 1) {
		toks = toks[1:]
	}
	for len(toks) > 0 && !(len(toks) == 1 && toks[0].text == "no") { // "no garnish"
		last := &toks[len(toks)-1]
		k, t := tailAt(toks)
		switch {
		case k > 0 && t.beside && k < len(toks):
			at := Span{toks[0].start, last.end}
			r.garnish(n, at)
			r.said.notes = append(r.said.notes, lineLocation(n)+": “"+oneLine(r.text[at.Start:at.End])+"” is kept as garnish, and not counted")
			return
		case k > 0 && t.garnish:
			toks = toks[:len(toks)-k]
		case last.kind == mark && !last.is(")"):
			toks = toks[:len(toks)-1]
		default:
			r.garnish(n, Span{toks[0].start, last.end})
			if p.pour.Unit.Counted() && p.pour.UnitAt.Start == at.Start || otherMeasures[toks[0].text] {
				r.said.notes = append(r.said.notes, lineLocation(n)+": “"+oneLine(r.text[at.Start:at.End])+"” is kept as garnish; write 1 before it to have it counted")
			}
			return
		}
	}
	r.entry(KindRemark, n, at)
}

// takeServing takes what is said of method, service, ice and glass, and keeps
// what says more as a step.
func (r *reader) takeServing(n int, at Span, toks []token, prose bool) {
	if cut := garnishAfter(toks); cut > 0 && !prose {
		r.takeServing(n, Span{at.Start, toks[cut-1].end}, toks[:cut], prose)
		r.laid(n, toks[cut:])
		return
	}
	s := readServing(toks)
	if w := cmp.Or(pouredIn(toks), countedIn(toks, s.unknown)); w != "" && !prose {
		r.unread(n, at, invalid("amount", w, "%q stands in a step; write it in a line of its own", w))
		return
	}
	prose = prose || s.begins && len(s.unknown) > 0 || s.words > 4
	if !prose || s.words <= 3 {
		for _, w := range s.unknown {
			if near := NearestMethods(w.text); len(near) > 0 && s.states() {
				r.unread(n, at, unknownTerm(w, near))
				return
			}
		}
	}
	if prose {
		s.prose()
	}
	if s.conflict != nil {
		r.unread(n, at, s.conflict)
		return
	}
	r.d.muddle = r.d.muddle || s.muddle
	if s.service != "" || s.glass != "" || s.method != "" && s.method != flavor.Build {
		r.served = len(r.d.Lines)
	}
	r.said.merge(&s, prose || r.stepAfter(&s))
	if r.said.conflict != nil {
		f := r.said.conflict
		r.said.conflict = nil
		r.unread(n, at, f)
		return
	}
	kind := KindServing
	if s.keep && (s.words > 0 || prose) {
		r.d.Steps = append(r.d.Steps, oneLine(strings.Trim(r.text[at.Start:at.End], " .,;-")))
		if !s.states() {
			kind = KindStep
		}
	}
	r.entry(kind, n, at)
}

// stepAfter reports whether a second method is only a touch at the end: "stir
// gently" once a drink is built or shaken.
func (r *reader) stepAfter(s *serving) bool {
	return s.method == flavor.Stir && s.keep && s.words > 1
}

// unknownTerm is the fault of a word that names no method or service.
func unknownTerm(w token, near []string) *flavor.Fault {
	f := invalid("method", w.text, "%q is no method or service%s; a method is %s, a service %s; a pour starts with its amount", w.text,
		didYouMean(near), flavor.JoinOr(names(flavor.Methods())), flavor.JoinOr(names(flavor.Services())))
	f.Suggest = near
	return f
}

func nearTerms(unknown []token) []string {
	for _, w := range unknown {
		if near := NearestMethods(w.text); len(near) > 0 {
			return near
		}
	}
	return nil
}

// finish fills in what the draft says as a whole.
func (r *reader) finish() {
	d := &r.d
	d.Method, d.Service, d.HotC = r.said.method, r.said.service, r.said.hotC
	if d.Glass == "" {
		d.Glass = r.said.glass
	}
	d.hinted, d.iced, d.onIce, d.cold, d.together = r.said.weak, r.said.iced, r.said.onIce, r.said.cold, r.said.together
	r.strained()
	if r.said.noIce && (d.Service == "" || d.hinted && d.Service == flavor.Rocks) {
		if d.Method == flavor.Build {
			d.Service = flavor.Neat
		} else {
			d.Service = flavor.Up
		}
	}
	d.Notes = append(d.Notes, r.said.notes...)
	if d.Service == flavor.Rocks && d.hinted {
		d.Notes = append(d.Notes, "“"+r.said.serviceAs+"” is taken as served on the rocks; say \"up\" if it is not")
	}
	if len(d.Faults) == 0 && len(d.Lines) == 0 && d.perhapsPour == nil {
		r.fail(1, invalid("", "", "there is no pour here; write at least one, such as \"2 oz London dry gin\""))
	}
}
