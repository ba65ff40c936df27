package draft

import (
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/sheet"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// entries reads what one line holds.
func (r *reader) entries(n int, span entry.Span, toks []token.Token, asSteps bool) {
	toks = r.ratioList(n, toks)
	if len(toks) == 0 {
		return
	}
	r.takeAll(n, span, r.underHead(r.join.Entries(toks)), asSteps)
}

// takeAll takes the entries of a line, each by what stands before it.
func (r *reader) takeAll(n int, span entry.Span, in []joining.Piece, asSteps bool) {
	for i := 0; i < len(in); i++ {
		if many := r.seasoned(n, in[i:]); many > 0 {
			i += many - 1
			if i+1 < len(in) && in[i+1].LaidOn() { // "s&p, celery"
				i++
				r.laid(n, in[i].Toks)
			}
			continue
		}
		switch role := in[i].Role(); {
		case in[i].Sep == parting.Soaked && i > 0 && in[i].Listed():
			r.soak(n, &in[i])
		case tellsRole(in, i, role):
			r.takeRole(n, &in[i], role)
		case i > 0 && joining.Dressed(&in[i-1], &in[i]) || len(r.d.Lines) > 0 && in[i].SaltAlone():
			r.dress(n, &in[i])
		case timesStep(in, i):
			in[i].Pour.Shape = entry.ShapeServing
			r.take(n, span, &in[i], asSteps)
		case laidBeside(in, i):
			in[i].Pour.Shape = entry.ShapeGarnish
			r.laid(n, in[i].Toks)
		default:
			r.take(n, span, &in[i], asSteps)
		}
	}
}

// seasons reports whether a seasoning that stands alone goes into the drink: behind a pinch or
// a dash of something else, "2 dashes hot sauce, cracked pepper", or before a pinch. Salt alone
// dresses the rim.
func (r *reader) seasons(s *parting.Seasoning, in []joining.Piece) bool {
	last := r.d.Lines[len(r.d.Lines)-1].Unit
	if in[0].Sep == "+" && last == flavor.Pinch { // "pinch celery salt + black pepper"
		return true
	}
	if r.said.States() || r.said.NoIce {
		return false
	}
	pinched := len(in) > 1 && in[1].Pour.Unit == flavor.Pinch && parting.Seasonings(in[1].Pour.NameTokens()) != nil
	return pinched || s.Name != "salt" && s.Name != "celery salt" && (last == flavor.Dash || last == flavor.Pinch || last == flavor.Barspoon)
}

// dashesSoaked is how many dashes of bitters a sugar cube takes; common practice.
const dashesSoaked = 3

// soak takes what a sugar cube is soaked in as dashes.
func (r *reader) soak(n int, p *joining.Piece) {
	at := entry.Span{Start: p.Toks[0].Start, End: p.Toks[len(p.Toks)-1].End}
	q := entry.Written{Of: p.Toks, Shape: entry.ShapeImplied}
	q.TakeNameOnly(r.text, p.Toks)
	q.Amount, q.Unit = dashesSoaked, flavor.Dash
	q.AddNote("what the cube is soaked in is taken as " + measure.FormatAmount(dashesSoaked, flavor.Dash))
	r.takePour(n, at, &q, false)
}

// seasoned takes seasonings in a row, of which no amounts are written, as a pinch of each, and
// returns how many entries they are; 0 if these do not begin with any. One alone may dress
// the rim.
func (r *reader) seasoned(n int, in []joining.Piece) int {
	var row []parting.Seasoning
	many := 0
	for many < len(in) && in[many].Pour.Shape != entry.ShapeRim {
		next := parting.Seasonings(in[many].Toks)
		if next == nil {
			break
		}
		row = append(row, next...)
		many++
	}
	if len(r.d.Lines) == 0 || len(row) == 0 || len(row) < 2 && !r.seasons(&row[0], in) {
		return 0
	}
	for _, s := range row {
		q := entry.Written{Of: r.lex(s.At), Shape: entry.ShapeImplied}
		q.Name, q.NameAt, q.Amount, q.Unit, q.Guessed = s.Name, s.At, 1, flavor.Pinch, true
		q.AddNote("“" + r.text[s.At.Start:s.At.End] + "” has no amount; a pinch of " + s.Name + " is taken")
		r.takePour(n, s.At, &q, false)
	}
	return many
}

// take takes one entry of a line.
func (r *reader) take(n int, span entry.Span, p *joining.Piece, asStep bool) {
	if len(p.Toks) == 0 {
		return
	}
	at := entry.Span{Start: p.Toks[0].Start, End: p.Toks[len(p.Toks)-1].End}
	written := token.OneLine(r.text[at.Start:at.End])
	r.said.Merge(&p.Pour.Beside, true)
	if r.takeServes(n, at, p, asStep) || p.Pour.Shape != entry.ShapePour && r.swapped(n, at, p.Toks) {
		return
	}
	switch p.Pour.Shape {
	case entry.ShapeNothing:
		if slices.ContainsFunc(p.Toks, func(t token.Token) bool { return t.Kind == token.Word }) { // "(not lime)"
			r.unnamed(n, at, written, p.Toks)
			return
		}
		r.ruled(n, at)
	case entry.ShapePour, entry.ShapeImplied:
		switch {
		case len(r.d.Lines) > 0 && sums[strings.ToLower(p.Pour.Name)]:
			r.total = &p.Pour
			r.entry(KindRemark, n, at)
			r.said.Notes = append(r.said.Notes, lineNote(n, "“"+written+"” is skipped: it is the total"))
		case p.Sep != parting.With && r.servedAbove() && p.Pour.Laid(p.Toks):
			r.laid(n, p.Toks)
		default:
			r.takePour(n, at, &p.Pour, asStep)
		}
	case entry.ShapeServing:
		r.sentence = p.Sep == "."
		r.takeServing(n, at, p.Toks, asStep)
		r.sentence = false
	case entry.ShapeGarnish:
		r.takeGarnish(n, at, p)
	case entry.ShapeRim:
		r.d.Rim = p.Pour.Remark
		if s := serving.Read(p.Toks); s.Glass != "" || s.Service != "" || s.Method != "" {
			r.said.Merge(&serving.Said{Glass: s.Glass, Method: s.Method, MethodAs: s.MethodAs, Service: s.Service, ServiceAs: s.ServiceAs, Weak: s.Weak}, true)
		}
		r.entry(KindRim, n, at)
	case entry.ShapeAmount:
		r.takeAmount(n, at, p, asStep)
	case entry.ShapeTail:
		r.takeTail(n, at, p, asStep)
	case entry.ShapeName:
		if asStep {
			r.takeServing(n, at, p.Toks, true)
			return
		}
		r.unnamed(n, at, written, p.Toks)
	}
}

// takeServes takes an entry that says for how many drinks the amounts are, with what it goes on
// to say: "4 serves", "100 ml per serve over ice". It is false if the entry says nothing of that.
func (r *reader) takeServes(n int, at entry.Span, p *joining.Piece, asStep bool) bool {
	skip := sheet.OfServes(p.Toks)
	if skip == 0 {
		return false
	}
	r.entry(KindRemark, n, at)
	r.said.Notes = append(r.said.Notes, lineNote(n, "“"+token.OneLine(r.text[at.Start:p.Toks[skip-1].End])+"” is skipped: the amounts are taken as those of one drink"))
	if rest := p.Toks[skip:]; len(rest) > 0 {
		r.takeServing(n, entry.Span{Start: rest[0].Start, End: at.End}, rest, asStep)
	}
	return true
}

// takeAmount takes an amount that names no ingredient.
func (r *reader) takeAmount(n int, at entry.Span, p *joining.Piece, asStep bool) {
	written := token.OneLine(r.text[at.Start:at.End])
	sound := p.Pour.Each && p.Pour.Fault == nil
	switch {
	case p.Pour.Unit == flavor.Dash && p.Pour.Fault == nil && !p.Pour.Each && p.Pour.Figures: // "2 dash": of the bitters that stand beside every well
		q := p.Pour
		q.Shape, q.Name, q.NameAt = entry.ShapePour, "aromatic bitters", entry.Span{Start: at.End, End: at.End}
		q.AddNote("“" + written + "” names no ingredient, and is read as aromatic bitters")
		q.Guessed = true
		r.takePour(n, at, &q, asStep)
	case p.Pour.Each && p.Pour.Unit == flavor.PartUnit && len(r.d.Lines) > 1: // "1 gin, 1 lime, 1 honey, equal parts"
		r.entry(KindRemark, n, at)
	case sound && (p.Pour.Unit.Jigger() || p.Pour.Unit == "" && p.Pour.Figures) && r.part == nil && r.equalParts(): // "equal parts a, b and c, 22 ml each"
		r.part = &p.Pour
		r.entry(KindRemark, n, at)
	case p.Sep == "." && p.Pour.Unit == "" && r.served > 0 && aside.PriceAlone(written):
		r.entry(KindRemark, n, at)
		r.said.Notes = append(r.said.Notes, lineNote(n, "“"+written+"” is skipped: it is taken as the price"))
	default:
		r.unread(n, at, measure.Invalid("ingredient", written, "%q names no ingredient; write it after the amount, such as \"2 oz London dry gin\"", written))
	}
}

// takeTail takes words that say how something goes in, and name nothing.
func (r *reader) takeTail(n int, at entry.Span, p *joining.Piece, asStep bool) {
	if strings.HasPrefix(p.Toks[0].Text, "mud") || slices.ContainsFunc(r.d.Lines, func(l entry.Line) bool { return l.After }) { // a step that speaks of a pour above
		r.takeServing(n, at, p.Toks, asStep)
		return
	}
	written := token.OneLine(r.text[at.Start:at.End])
	f := measure.Invalid("ingredient", written, "%q names no ingredient; write what to pour, such as \"top soda water\"", written)
	f.Location = measure.LineLocation(n)
	r.d.Doubts = append(r.d.Doubts, Doubt{Entry: len(r.d.Entries), After: len(r.d.Lines), Top: pouring.Verbs[p.Toks[0].Text] == flavor.Top, Fault: f, toks: slices.Clone(p.Toks)})
	r.entry(KindUnread, n, at)
}

// servedAbove reports whether the service is said, and nothing poured since but what goes
// on top.
func (r *reader) servedAbove() bool {
	return r.served > 0 && !slices.ContainsFunc(r.d.Lines[min(r.served, len(r.d.Lines)):], func(l entry.Line) bool { return !l.After })
}

// equalParts reports whether all that is poured so far is one part each.
func (r *reader) equalParts() bool {
	return len(r.d.Lines) > 1 && !slices.ContainsFunc(r.d.Lines, func(l entry.Line) bool { return l.Unit != flavor.PartUnit || l.Amount != 1 })
}

// sums name what all of a drink comes to.
var sums = map[string]bool{"total": true, "sum": true, "volume": true, "total volume": true, "yield": true, "in total": true, "all in": true, "in all": true, "all told": true, "altogether": true, "overall": true, "the whole": true, "the whole to measure": true}

func (r *reader) unread(n int, at entry.Span, f *flavor.DataFault) {
	r.entry(KindUnread, n, at)
	r.fail(n, f)
}

// unnamed is words without an amount that say nothing known.
func (r *reader) unnamed(n int, at entry.Span, written string, toks []token.Token) {
	muddled := slices.ContainsFunc(toks, func(t token.Token) bool { return strings.HasPrefix(t.Text, "muddle") })
	if !strings.ContainsFunc(written, func(c rune) bool { return unicode.IsLetter(c) || unicode.IsNumber(c) }) { // a picture of a thumb
		r.entry(KindRemark, n, at)
		return
	}
	if aside.Said(toks) && !topsIn(toks) && !deniesPour(toks) {
		r.entry(KindRemark, n, at)
		if s := serving.Read(toks); usOnly(toks) && s.States() && s.Conflict == nil { // "we shake it here"
			r.saidBeside(&s)
		}
		r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+written+"” is skipped")
		return
	}
	if len(r.d.Lines) > 0 && joining.Studded(toks) {
		r.laid(n, toks)
		return
	}
	if fixed, ok := r.corrected(n, toks); ok {
		r.takeServing(n, at, fixed, false)
		return
	}
	if s := serving.Read(toks); s.States() && s.Conflict == nil { // "quick shake", "rocks chilli salt"
		r.saidBeside(&s)
	}
	f := measure.Invalid("amount", written, "%q has no amount; write one before it, such as \"2 oz\", or a # to have the line skipped", written)
	f.Location = measure.LineLocation(n)
	r.d.Doubts = append(r.d.Doubts, Doubt{Entry: len(r.d.Entries), After: len(r.d.Lines), Laid: r.served > 0 && r.served == len(r.d.Lines) || len(r.d.Lines) > 1 && r.d.Lines[len(r.d.Lines)-1].After, Mixed: muddled, Fault: f, toks: slices.Clone(toks)})
	r.entry(KindUnread, n, at)
}

// deniesPour reports whether words say no and nothing else: they take back what is poured before.
func deniesPour(toks []token.Token) bool {
	return len(toks) == 1 && (toks[0].Text == "no" || toks[0].Text == "nope" || toks[0].Text == "nah")
}

// usOnly reports whether words say what those do who write them, and neither deny it nor tell when:
// what others do makes no stirred drink a shaken one.
func usOnly(toks []token.Token) bool {
	if t := toks[0].Text; t != "we" && t != "i" {
		return false
	}
	return !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind != token.Mark && restraints.Has(t.Text) })
}

// restraints are words that deny, that tell of another time, or that leave a choice.
var restraints = vocabulary.Words(`don't dont not no never used was were if when unless or but instead would could should might may used usually sometimes some`)

// topsIn reports whether words say that something fills the drink up or floats on it: "we top it
// with soda".
func topsIn(toks []token.Token) bool {
	denies := slices.ContainsFunc(toks, func(t token.Token) bool {
		return t.Text == "don't" || t.Text == "dont" || t.Text == "not" || t.Text == "no" || t.Text == "never"
	})
	return !denies && slices.ContainsFunc(toks, func(t token.Token) bool { return pouring.Verbs[t.Text] != "" })
}

// saidBeside takes what words that say more tell of making and serving, where nothing else
// has: "new guy keeps shaking it" makes no stirred drink a shaken one.
func (r *reader) saidBeside(s *serving.Said) {
	if r.said.Method != "" {
		s.Method, s.MethodAs = "", ""
	}
	if r.said.Service != "" && !r.said.Weak {
		s.Service, s.ServiceAs = "", ""
	}
	r.said.Merge(s, true)
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

// usualPours is how many pours a drink seldom has more of.
const usualPours = 6

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
	batch := p.AmountAt.Start > p.NameAt.Start && strings.HasPrefix(p.Measure, "l") // "Keg punch 10 L"
	line.PerhapsName = len(r.d.Lines) == 0 && r.d.Name == "" && len(r.d.Entries) == 0 && (p.UnitAt.Empty() || batch) && p.Stated
	if r.d.Lines == nil {
		r.d.Lines = make([]entry.Line, 0, usualPours)
	}
	r.d.Lines = append(r.d.Lines, line)
	if p.Stated && p.Shape == entry.ShapePour {
		if r.amount == nil {
			r.amount = new(entry.Written)
		}
		*r.amount = *p
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
