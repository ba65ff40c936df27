package correcting

import (
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Corrected is a text in which what it corrects is carried out, and what is to be said of it.
type Corrected struct {
	Text  string
	Notes []string
}

// mostText is the most bytes of a text whose corrections are looked for: a longer one is no note of
// one drink.
const mostText = 2000

// telling are words of which one stands in every text that corrects itself.
var telling = vocabulary.Words(`no nope nah naah wait hmm hmmm actually sorry oops rather scratch strike correction edit not go make call use say mean meant should must now instead better nicer plenty enough double doubled twice triple half halve halved tried started began wrong other is took taken take pulled cut left scrap scrapped ditch ditched removed remove perfect bump bring drop push raise lower knock put wins final yes keeper winner perfect keep approved stick stay sticking staying went running pick choose prefer`)

// Of carries out what a text corrects; false if it corrects nothing that has one meaning.
func Of(text string, b *naming.Resolver) (Corrected, bool) {
	if len(text) > mostText {
		return Corrected{}, false
	}
	all, out := ranOut(text)
	strong, ratio := strengths(text)
	all = append(all, strong...)
	if len(all) == 0 && !tellsOf(text) && !stars(text) {
		return Corrected{}, false
	}
	c := &corrector{text: text, resolver: b, clauses: clausesOf(text), stars: stars(text)}
	var notes []string
	for _, n := range []string{out, ratio} {
		if n != "" {
			notes = append(notes, n)
		}
	}
	for _, told := range [...]func() ([]edit, []string){c.chosenVersion, c.triedBefore, c.toldAnew} {
		if edits, said := told(); len(edits) > 0 && b.Err() == nil { // what is left is read once more
			return Corrected{Text: apply(text, edits), Notes: said}, true
		}
	}
	for i := 0; i < len(c.clauses); {
		n, edits, note := c.manner(i)
		if n == 0 {
			n, edits, note = c.group(i)
		}
		if n > 0 {
			all, notes = append(all, edits...), append(notes, note)
			i += n
			continue
		}
		c.pours = append(c.pours, poursOf(&c.clauses[i], i)...)
		i++
	}
	if len(all) == 0 || b.Err() != nil {
		return Corrected{}, false
	}
	return Corrected{Text: apply(text, all), Notes: notes}, true
}

// tellsOf reports whether a text has a word, or an arrow, that a correction begins with.
func tellsOf(text string) bool {
	if strings.ContainsAny(text, ">→⇒") {
		return true
	}
	for w := range strings.FieldsFuncSeq(strings.ToLower(text), func(r rune) bool { return (r < 'a' || r > 'z') && r != '\'' }) {
		if telling.Has(w) {
			return true
		}
	}
	return false
}

// edit is what stands in place of a stretch of the text.
type edit struct {
	at  entry.Span
	now string
}

// apply carries out edits, none of which overlaps another.
func apply(text string, all []edit) string {
	slices.SortStableFunc(all, func(a, b edit) int { return a.at.Start - b.at.Start })
	var out strings.Builder
	from := 0
	for _, e := range all {
		if e.at.Start < from { // said twice of one pour: the last counts
			continue
		}
		out.WriteString(text[from:e.at.Start])
		out.WriteString(e.now)
		from = e.at.End
	}
	out.WriteString(text[from:])
	return out.String()
}

// group carries out the correction that begins at clause i, and returns how many clauses it takes; 0
// if none does, or if it does not come to one meaning.
func (c *corrector) group(i int) (int, []edit, string) {
	r := run{c: c, first: i}
	if last := len(c.pours) - 1; last >= 0 && c.pours[last].clause == i-1 {
		r.last = &c.pours[last]
	}
	n := i
	for n < len(c.clauses) {
		s := c.read(&c.clauses[n])
		if s.kind == aName && !r.armed && n+1 < len(c.clauses) && c.read(&c.clauses[n+1]).kind == aDenied { // "lemon, not lime"
			r.armed = true
		}
		regret := s.kind == anAmount && s.about != nil && n == i && c.regrets(n)
		contrast := s.kind == anAmount && s.about != nil && n == i && c.contrasts(n, s.about)
		s.armed = s.armed || regret || contrast
		if !r.take(s, n) {
			break
		}
		if n++; regret {
			r.done = n + 1
			break
		}
	}
	n = r.done // what follows the last that counts belongs to the text
	if n == 0 {
		return 0, nil, ""
	}
	if r.restarts(n) {
		return 0, nil, ""
	}
	edits, note, ok := r.carriedOut(n)
	if !ok {
		return 0, nil, ""
	}
	return n - i, edits, note
}

// run is a correction while it is read.
type run struct {
	c        *corrector
	first    int
	last     *pour // the one right before it
	armed    bool  // a signal stands before what follows
	about    *pour
	wrong    []said
	values   []said
	name     *said
	denied   *pour
	other    *said // the pour that stands in place of the one before
	removed  bool
	mixed    bool // it speaks of two pours
	done     int  // behind the last clause that counts
	commands int
}

// take takes a clause into the correction; false if it is no part of it.
func (r *run) take(s said, n int) bool {
	switch s.kind {
	case aNothing:
		return false
	case aFiller:
		return r.commands > 0 || n == r.first || r.armed
	case aSignal:
		r.armed = true
		return true
	case aComment, aRejected:
		r.speaks(s.about)
		if s.kind == aRejected {
			r.wrong = append(r.wrong, s)
		}
		if r.commands > 0 {
			r.done = n + 1
		}
		return true
	case aDenied:
		r.denied = s.about
		r.speaks(s.about)
		r.counts(n)
		r.armed = true
		return true
	case aSame:
		if r.name != nil {
			r.counts(n)
		}
		return r.name != nil
	}
	if !r.armed && !s.armed {
		return false
	}
	switch s.kind {
	case anAmount, aFactor:
		r.values = append(r.values, s)
	case aName:
		if r.name != nil || !r.armed {
			return false
		}
		r.name = &s
	case aRemoval:
		r.removed = true
	case aPour:
		if r.commands > 0 || !r.armed {
			return false
		}
		r.other = &s
	}
	r.speaks(s.about)
	r.counts(n)
	return true
}

// restarts reports whether the clause behind a correction tells of a pour before it once more: the
// whole list is told anew.
func (r *run) restarts(n int) bool {
	if n >= len(r.c.clauses) {
		return false
	}
	for _, p := range poursOf(&r.c.clauses[n], n) {
		if slices.ContainsFunc(r.c.pours, func(q pour) bool { return len(q.name) == len(p.name) && q.has(p.name) }) {
			return true
		}
	}
	return false
}

// counts says that the clause counts.
func (r *run) counts(n int) {
	r.armed, r.done = false, n+1
	r.commands++
}

// speaks says of which pour a clause speaks.
func (r *run) speaks(p *pour) {
	if p == nil {
		return
	}
	r.mixed = r.mixed || r.about != nil && r.about != p
	r.about = p
}

// carriedOut are the edits of the correction, which ends before clause n; false if it does not come
// to one meaning.
func (r *run) carriedOut(n int) ([]edit, string, bool) {
	p := r.about
	if p == nil {
		p = r.last
	}
	at, sign, whole := r.c.around(r.first, n)
	switch {
	case p == nil, r.mixed, !whole:
		return nil, "", false
	case r.removed:
		return r.takenOut(p, at, sign)
	case r.denied != nil && r.name == nil:
		return nil, "", false
	case r.other != nil:
		return r.replaced(p, at)
	}
	said := r.c.said(at)
	edits := []edit{{at, sign}}
	note := ""
	if r.name != nil {
		now, ok := r.renamed(p)
		if !ok {
			return nil, "", false
		}
		edits = append(edits, edit{entry.Span{Start: p.name[0].Start, End: p.name[len(p.name)-1].End}, now})
		note = "“" + said + "”: “" + now + "” stands in place of “" + r.c.written(p.name) + "”"
	}
	if len(r.values) > 0 {
		now, unit, ok := r.amount(p)
		if !ok {
			return nil, "", false
		}
		edits = append(edits, edit{p.amount, now})
		if unit != "" && !p.unitAt.Empty() {
			edits = append(edits, edit{p.unitAt, unit})
		} else if unit != "" {
			edits[len(edits)-1].now += " " + unit
		}
		was := r.c.text[p.amount.Start:p.amount.End]
		note = "“" + said + "”: " + strings.TrimSpace(now+" "+unit) + " stands in place of " + was + " of “" + r.c.written(p.name) + "”"
		if was == now {
			note = "“" + said + "”: " + was + " of “" + r.c.written(p.name) + "” stays"
		}
	}
	return edits, note, note != ""
}

// sameAmount is how far two amounts that are the same may lie apart.
const sameAmount = 1e-9

// mostChange is by how much an amount without a unit may change at most: more, and it is in another
// unit.
const mostChange = 4

// amount is the amount that counts, as written, with its unit if one is stated; false if what is said
// to be wrong is not what was poured.
func (r *run) amount(p *pour) (now, unit string, ok bool) {
	last := &r.values[len(r.values)-1]
	value, was := last.value, []float64{p.value}
	for i := range r.values {
		was = append(was, r.values[i].value)
	}
	for _, w := range r.wrong {
		if w.former {
			continue
		}
		if !slices.ContainsFunc(was, func(x float64) bool { return math.Abs(x-w.value) < sameAmount }) || math.Abs(w.value-value) < sameAmount {
			return "", "", false
		}
	}
	if last.kind == aFactor {
		if len(r.values) > 1 {
			return "", "", false
		}
		return token.Decimals(value * p.value), "", true
	}
	if last.unit == "" && (value > mostChange*p.value || value < p.value/mostChange) {
		return "", "", false
	}
	now = r.c.text[last.at.Start:last.at.End]
	if !strings.ContainsAny(now, "0123456789½¼¾⅓⅔⅛") {
		now = token.Decimals(value)
	}
	if last.unit != "" {
		unit = r.c.text[last.unitAt.Start:last.unitAt.End]
	}
	return now, unit, true
}

// renamed is the name that a pour has now; false if it may be meant for something else.
func (r *run) renamed(p *pour) (string, bool) {
	now := r.c.text[r.name.at.Start:r.name.at.End]
	of, is := r.c.means(r.c.written(p.name)), r.c.means(now)
	if r.denied == nil && !slices.ContainsFunc(of, func(x *flavor.Profile) bool {
		return slices.ContainsFunc(is, func(y *flavor.Profile) bool { return x.Class.Part() == y.Class.Part() })
	}) {
		return "", false
	}
	return now, true
}

// means are the ingredients that a name may mean.
func (c *corrector) means(name string) []*flavor.Profile {
	f := c.resolver.Find(name, naming.Place{Unit: flavor.Ounce, Amount: 1})
	if f.Profile != nil {
		return []*flavor.Profile{f.Profile}
	}
	var out []*flavor.Profile
	if f.Fault != nil {
		for _, s := range f.Fault.Suggest {
			if p, _, ok := c.resolver.Named(s); ok {
				out = append(out, p)
			}
		}
	}
	return out
}

// replaced takes a pour out in whose place another of its kind stands behind the signal.
func (r *run) replaced(p *pour, at entry.Span) ([]edit, string, bool) {
	was, is := r.c.means(r.c.written(p.name)), r.c.means(r.c.text[r.other.at.Start:r.other.at.End])
	akin := slices.ContainsFunc(was, func(x *flavor.Profile) bool {
		return slices.ContainsFunc(is, func(y *flavor.Profile) bool { return naming.Akin(x, y) })
	})
	last := &r.c.clauses[r.done-1]
	signal := wordsIn(r.c.clauses[r.first : r.done-1])
	if one := signal < 2 && r.c.clauses[r.first-1].after != "?"; one && math.Abs(r.other.value-p.value) > sameAmount { // one word says too little
		return nil, "", false
	}
	if !akin || r.commands > 1 || len(r.wrong) > 0 || p != r.last || strings.Contains(r.c.text[at.Start:last.start()], "(") {
		return nil, "", false
	}
	rest, _, _ := withoutLeads(last.toks)
	note := "“" + r.c.said(at) + "” stands in place of “" + r.c.said(entry.Span{Start: p.start, End: p.end}) + "”"
	return []edit{{entry.Span{Start: p.start, End: rest[0].Start}, ""}}, note, true
}

// takenOut takes a pour out of the text.
func (r *run) takenOut(p *pour, at entry.Span, sign string) ([]edit, string, bool) {
	if r.commands > 1 || len(r.wrong) > 0 || r.c.putsBack() {
		return nil, "", false
	}
	from := entry.Span{Start: p.start, End: p.end}
	if cl := &r.c.clauses[p.clause]; p.alone {
		from = entry.Span{Start: cl.start(), End: cl.end()}
	}
	if from.End > at.Start {
		from.End = at.Start
	}
	return []edit{{from, ""}, {at, sign}}, "“" + r.c.said(at) + "”: “" + strings.TrimSpace(r.c.text[from.Start:from.End]) + "” is not poured", true
}

// putsBack reports whether a text speaks of putting something back.
func (c *corrector) putsBack() bool {
	return slices.ContainsFunc(c.clauses, func(cl clause) bool {
		return slices.ContainsFunc(cl.toks, func(t token.Token) bool { return t.Text == "back" })
	})
}

// around is the stretch of the clauses from i to n with the brackets around them, and the sign to put
// there; whole is false if a bracket begins or ends amid them.
func (c *corrector) around(i, n int) (at entry.Span, sign string, whole bool) {
	at = entry.Span{Start: c.clauses[i].start(), End: c.clauses[n-1].end()}
	if i > 0 {
		at.Start = c.clauses[i-1].end()
		if lines := strings.LastIndexByte(c.text[at.Start:c.clauses[i].start()], '\n'); lines >= 0 {
			at.Start += lines + 1
		}
	}
	behind := c.text[at.End:]
	if open := strings.Count(c.text[at.Start:at.End], "(") - strings.Count(c.text[at.Start:at.End], ")"); open == 1 {
		closing := strings.IndexByte(behind, ')')
		if closing < 0 || strings.Trim(behind[:closing], " .!?…") != "" {
			return at, "", false
		}
		at.End += closing + 1
	} else if open != 0 {
		return at, "", false
	}
	rest := strings.TrimLeft(c.text[at.End:], " \t")
	if c.stars && strings.HasPrefix(rest, starSign) { // "lemon 25*"
		rest = strings.TrimLeft(rest[len(starSign):], " \t")
		at.End = len(c.text) - len(rest)
	}
	switch {
	case rest == "" || strings.ContainsRune(".,;:)\n!|/", rune(rest[0])):
		return at, "", true
	case strings.HasPrefix(rest, "-"), strings.HasPrefix(rest, "–"), strings.HasPrefix(rest, "—"), strings.HasPrefix(rest, "…"), strings.HasPrefix(rest, "?"):
		cut := len(c.text) - len(rest)
		at.End = cut + len(string([]rune(rest)[:1]))
		if strings.TrimSpace(strings.SplitN(c.text[at.End:]+"\n", "\n", 2)[0]) == "" { // the line ends there
			return at, "", true
		}
	}
	return at, ", ", true
}

// said is a stretch of the text as a note quotes it.
func (c *corrector) said(at entry.Span) string {
	return strings.Trim(strings.Join(strings.Fields(c.text[at.Start:at.End]), " "), " ,.;:()[]-–—…?")
}
