package reading

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/parting"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
)

// Reading is what a draft means to a finder.
type Reading struct {
	Draft  draft.Draft
	Spec   flavor.Spec   // of the lines that can be read; Assume has filled it in
	Pours  []int         // for each line of the draft its pour in the spec, −1 if it has none
	Faults flavor.Faults // of the draft and of its names, by line
}

// Err returns the faults as an error, nil if everything was read.
func (r *Reading) Err() error {
	if len(r.Faults) == 0 {
		return nil
	}
	return r.Faults
}

// Read reads a text as a spec. Its error is [flavor.Faults], everything that is
// wrong with the text at once, or the failure of the finder; beside faults the
// spec holds what could be read.
func Read(text string, f naming.Finder) (flavor.Spec, error) {
	r, err := Resolve(draft.Parse(text), f)
	if err != nil {
		return flavor.Spec{}, err
	}
	return r.Spec, r.Err()
}

// resolver gathers what a reading needs.
type resolver struct {
	draft *draft.Draft
	book  *naming.Book
	tasks []*task
	found flavor.Faults // of the draft as a whole
	notes []string
	name  string
	steps []string

	topped []*flavor.Profile // for each pour of the spec what tops it without an amount, else nil
}

func (r *resolver) note(n string) {
	if n != "" && !slices.Contains(r.notes, n) {
		r.notes = append(r.notes, n)
	}
}

// Resolve looks up the names of a draft and works out units, millilitres, method
// and service. It fails only with the failure of the finder, wrapped; what is
// wrong with the draft is in the reading.
//
// Where a draft may be parsed in two ways, the one with fewer faults is meant. What
// cannot be read as a list is read as a text that runs on, if nothing is left over then.
func Resolve(d draft.Draft, f naming.Finder) (Reading, error) {
	out, err := resolve(d, f)
	if err != nil || len(out.Faults) == 0 {
		return out, err
	}
	if d.Led {
		if other, err := resolve(d.Plainly(), f); err != nil || len(other.Faults) < len(out.Faults) {
			out = other
			if err != nil || len(out.Faults) == 0 {
				return out, err
			}
		}
	}
	return onward(d, out, f)
}

// onward reads a draft as a text that runs on, and returns what was read before if that
// leaves anything open.
func onward(d draft.Draft, before Reading, f naming.Finder) (Reading, error) {
	if d.PoursOnly() || len(d.String()) > mostRunning {
		return before, nil
	}
	b := naming.NewBook(f)
	list, passed, ok := asList(d.String(), b)
	if !ok || b.Err() != nil {
		return before, b.Err()
	}
	out, err := resolve(draft.Parse(list), f)
	if err != nil || len(out.Faults) > 0 {
		return before, err
	}
	notes := []string{"the text runs on; it is read as these lines: “" + strings.ReplaceAll(list, "\n", " / ") + "”"}
	for _, p := range passed {
		notes = append(notes, "“"+p+"” is skipped")
	}
	out.Spec.Notes = append(notes, out.Spec.Notes...)
	return out, nil
}

// resolve is Resolve for one way to parse a draft.
func resolve(d draft.Draft, f naming.Finder) (Reading, error) {
	r := &resolver{draft: &d, book: naming.NewBook(f), name: d.Name, steps: slices.Clone(d.Steps)}
	out := Reading{Draft: d, Faults: slices.Clone(d.Faults)}
	for _, n := range d.Notes {
		r.note(n)
	}
	r.firstLine()
	for _, t := range r.tasks {
		if t.fault == nil {
			r.findBase(t)
		}
	}
	r.inferUnits()
	for _, t := range r.tasks {
		if t.fault == nil {
			r.settle(t)
		}
	}
	for _, t := range r.tasks {
		r.decide(t)
	}
	for _, t := range r.tasks {
		r.sweeten(t)
	}
	r.unsaid(&out)
	if r.book.Err() != nil {
		return Reading{}, r.book.Err()
	}
	out.Faults = append(out.Faults, r.found...)
	out.Spec, out.Pours = r.spec(&out.Faults)
	slices.SortStableFunc(out.Faults, func(a, b *flavor.Fault) int { return cmp.Compare(a.Place().Line, b.Place().Line) })
	out.Draft.Name = r.name
	return out, nil
}

// firstLine decides whether the first line is a pour or the name of the drink,
// where that depends on the ingredient, and makes a task of every line.
func (r *resolver) firstLine() {
	d := r.draft
	lines := make([]*entry.Line, 0, len(d.Lines)+1)
	if p := d.PerhapsPour; p != nil {
		if f := r.book.Find(p.Name, naming.Place{Unit: p.Unit}); f.Firm() && f.Fault == nil && (p.Unit != flavor.Spritz || sprayed(f.Profile)) {
			r.name = ""
			r.note(measure.LineLocation(p.Number) + ": “" + p.Asked + "” is read as a pour; write \"" + draft.NamePrefix + " " + p.Asked + "\" if it is the name")
			lines = append(lines, p)
		}
	}
	for i := range d.Lines {
		l := &d.Lines[i]
		if i == 0 && l.PerhapsName && len(lines) == 0 && r.isName(l) {
			if r.name != "" { // the name stands before the pours below
				r.note(measure.LineLocation(l.Number) + ": “" + draft.StripBullet(l.Asked) + "” is skipped: “" + r.name + "” is read as the name of the drink")
				lines = append(lines, nil)
				continue
			}
			r.name = draft.StripBullet(l.Asked)
			if len(d.Lines) > 1 {
				r.note(measure.LineLocation(l.Number) + ": “" + r.name + "” is read as the name of the drink")
			}
			lines = append(lines, nil)
			continue
		}
		lines = append(lines, l)
	}
	if s := d.ServingName; s != nil && d.Method == "" && (d.Service == "" || s.Service == "") {
		r.name = ""
		d.Method = s.Method
		d.Service = cmp.Or(d.Service, s.Service)
		d.Glass = cmp.Or(d.Glass, s.Glass)
		r.note("“" + d.Name + "” is read as the method; write \"" + draft.NamePrefix + " " + d.Name + "\" if it is the name")
	}
	r.nameless()
	for _, l := range lines {
		if l != nil {
			times := cmp.Or(l.Times, 1)
			t := &task{line: l, unit: l.Unit, amount: l.Amount * times}
			if l.Guessed || l.Measure == "measure" || l.Measure == "measures" {
				t.infer(flavor.InferredAmount)
			}
			if l.NoAmount {
				t.infer(flavor.InferredAmount)
				t.notes = append(t.notes, amountNote(l))
			}
			r.tasks = append(r.tasks, t)
		}
	}
}

// sprayed reports whether bars spray an ingredient: a "rosé spritz" is a drink.
func sprayed(p *flavor.Profile) bool {
	part := p.Class.Part()
	return part == flavor.PartBase || part == flavor.PartSeasoning && !p.Class.Solid() || p.Class == flavor.ClassAniseSpirit
}

// amountNote says what an amount that goes without saying is taken as.
func amountNote(l *entry.Line) string {
	if l.Unit == flavor.Top && l.UnitAt.Empty() {
		return "“" + l.Asked + "” has no amount and is read as topping up"
	}
	return "“" + l.Asked + "” is read as one"
}

// measureless are words before a name that state no amount.
var measureless = token.Words(`double single dbl sgl large small big treble triple half`)

// nameless asks where the first line, which has no amount, is the name of an
// ingredient and more likely a pour than the name of a drink: it is not written
// like a name, or it is a spirit.
func (r *resolver) nameless() {
	d := r.draft
	if r.name == "" || r.name != d.Name || d.Labelled || d.Titled {
		return
	}
	first, _ := utf8.DecodeRuneInString(r.name)
	lowly := unicode.IsLower(first) || d.Led
	line := 1 + strings.Count(d.String()[:d.NameAt.Start], "\n")
	if r.measuredName() {
		r.askName(line, "%q names an ingredient beside an amount that cannot be read; write it such as \"2 oz London dry gin\", or \"%s %s\" if it is the name of the drink")
		return
	}
	if r.unmeasured() && r.book.Mentions(r.name) {
		r.askName(line, "%q names an ingredient and has no amount; write one before it, such as \"2 oz\", or \"%s %s\" if it is the name of the drink")
		return
	}
	for part := range strings.SplitSeq(r.name, ",") {
		p := r.measureless(part, lowly)
		counted := r.countedIn(part)
		if p = cmp.Or(counted, p); p == nil {
			continue
		}
		if !lowly && counted == nil && p.Class.Part() != flavor.PartBase {
			r.note(measure.LineLocation(line) + ": “" + r.name + "” is read as the name of the drink; write an amount before it to have it poured")
			return
		}
		r.askName(line, "%q names an ingredient and has no amount; write one before it, such as \"2 oz\", or \"%s %s\" if it is the name of the drink")
		return
	}
}

// unmeasured reports whether a draft has pours, and states the amount of none.
func (r *resolver) unmeasured() bool {
	lines := r.draft.Lines
	return len(lines) > 0 && !slices.ContainsFunc(lines, func(l entry.Line) bool { return !l.AmountAt.Empty() })
}

// askName asks whether the first line is a name, in words that quote it, the word for
// a name, and it once more.
func (r *resolver) askName(line int, ask string) {
	f := measure.Invalid("amount", r.name, ask, r.name, draft.NamePrefix, r.name)
	f.Location = measure.LineLocation(line)
	r.found = append(r.found, f)
}

// measuredName reports whether a name begins with a number, or holds a measure, and
// then names an ingredient: it is a pour whose amount cannot be read, such as "6Oml
// gin" or "a good measure of cream".
func (r *resolver) measuredName() bool {
	toks := token.Lex(nil, r.name, 0, len(r.name))
	for i := range toks[:max(0, len(toks)-1)] {
		t := &toks[i]
		amount := i == 0 && (t.Kind == token.Numeral || t.Kind == token.Ratio) || t.Kind == token.Word && unicode.IsLower(rune(r.name[t.Start])) && (parting.Measured(t) || serving.OtherMeasures[t.Text])
		if amount && r.book.Mentions(r.name[toks[i+1].Start:]) {
			return true
		}
	}
	return false
}

// countedIn returns the ingredient that a number stands before in a name, as in
// "peel of 1 orange"; nil if there is none.
func (r *resolver) countedIn(name string) *flavor.Profile {
	toks := token.Lex(nil, name, 0, len(name))
	for i := 1; i+1 < len(toks); i++ {
		if toks[i].Kind == token.Numeral && toks[i].Wrong == "" && toks[i+1].Kind == token.Word {
			return r.measureless(name[toks[i+1].Start:], false)
		}
	}
	return nil
}

// measureless returns the ingredient of a name that says no more than it and a word
// that is no amount, shortened too if asked; nil if there is none.
func (r *resolver) measureless(name string, shortened bool) *flavor.Profile {
	words := strings.Fields(name)
	for len(words) > 1 && (measureless[strings.ToLower(words[0])] || serving.OtherMeasures[strings.ToLower(words[0])]) {
		words = words[1:]
	}
	whole := strings.Join(words, " ")
	for _, n := range naming.Strip(whole) {
		if !strings.HasSuffix(whole, n) { // "Rum OF" is no rum
			continue
		}
		if p, _, ok := r.book.Named(n); ok {
			return p
		}
		if f, ok := r.book.Short(flavor.NormaliseName(n), naming.Place{}, false); ok && shortened && f.Profile != nil {
			return f.Profile
		}
	}
	return nil
}

// isName reports whether a first line whose amount has no unit is a name.
func (r *resolver) isName(l *entry.Line) bool {
	if l.Whole != "" {
		if _, _, ok := r.book.Named(l.Whole); ok {
			return false
		}
	}
	name := l.Name
	if words := strings.Fields(name); len(words) > 1 && serving.OtherMeasures[strings.ToLower(words[len(words)-1])] {
		name = strings.Join(words[:len(words)-1], " ") // "1 lager bottle"
	}
	f := r.book.Find(name, naming.Place{Unit: flavor.Piece, Amount: l.Amount})
	if near, _, _ := r.slippedUnit(l); f.Firm() || near != nil {
		return false
	}
	f = r.book.Find(l.Name, naming.Place{Unit: flavor.Ounce, Amount: l.Amount})
	if f.Firm() || f.Fault != nil && f.Fault.Kind == flavor.ErrInvalid {
		return false
	}
	switch {
	case l.Amount >= leastNumberName && f.Profile == nil && r.smallBelow():
		return true // "151 Swizzle"
	case !l.Figures:
		return true
	case f.Profile != nil:
		return false
	case l.Amid:
		return !r.book.Mentions(strings.ReplaceAll(l.Name, ",", " "))
	case len(r.draft.Lines) > 1 && r.draft.Lines[1].Number == l.Number && r.book.Mentions(l.Name): // "vodka soda 1.5 + ..."
		return false
	case l.AmountAt.Start > l.NameAt.Start: // "try #3"
		return !r.behind()
	}
	return !r.bareBelow() && !r.book.EndsInName(l.Name)
}

// leastNumberName is a number from which the first line is no pour of a drink whose other
// numbers are ounces; common practice.
const leastNumberName = 100

// smallBelow reports whether every number below the first line is one of ounces.
func (r *resolver) smallBelow() bool {
	d := r.draft
	return len(d.Lines) > 1 && !slices.ContainsFunc(d.Lines[1:], func(l entry.Line) bool { return l.Amount > mostOunces })
}

// behind reports whether a line below the first has its amount behind its name.
func (r *resolver) behind() bool {
	d := r.draft
	return slices.ContainsFunc(d.Lines[1:], func(l entry.Line) bool { return l.AmountAt.Start > l.NameAt.Start && l.UnitAt.Empty() && !l.Amid })
}

// bareBelow reports whether a line below the first has a bare number too, so that
// the first is more likely one of them than a name.
func (r *resolver) bareBelow() bool {
	d := r.draft
	for i := range d.Lines[1:] {
		if l := &d.Lines[1+i]; l.Figures && l.UnitAt.Empty() && l.Measure == "" {
			if f := r.book.Find(l.Name, naming.Place{Unit: flavor.Ounce, Amount: l.Amount}); f.Firm() {
				return true
			}
		}
	}
	return false
}

// findBase finds what a name means, wherever it stands, and refuses a number
// that belongs to the name: "rum 151".
func (r *resolver) findBase(t *task) {
	l := t.line
	if l.Whole != "" {
		if p, _, ok := r.book.Named(l.Whole); ok {
			t.fault = measure.Invalid("amount", l.Whole, "%q is %s and has no amount; write one before it, such as \"2 oz\"", l.Whole, p.Name)
			return
		}
	}
	if !t.bare() && l.Measure == "" && !l.Squeezed {
		return // the place is known: see settle
	}
	for _, w := range wordings(l.Name, t.unit) {
		for _, n := range naming.Strip(w) {
			if p, how, ok := r.book.Named(n); ok {
				t.base = naming.Found{Profile: p, How: how, As: n}
				return
			}
		}
	}
	if f, ok := r.book.InPlace(flavor.NormaliseName(l.Name), naming.Place{Unit: flavor.Piece}, false); ok && t.bare() && f.Fault == nil {
		t.base = f // "1 white"
		return
	}
	if f, ok := r.book.Short(flavor.NormaliseName(l.Name), naming.Place{}, false); ok && f.Fault == nil {
		t.base = f
		return
	}
	if t.bare() {
		r.misspeltUnit(t)
	}
}

// sweetGPerL is the sugar in g/L from which a pour sweetens a drink: half that of
// a 1:1 syrup, and more than any juice has; common practice.
const sweetGPerL = 300

// sweeten takes a name that may mean a sweetened form as that where no other pour
// sweetens the drink, and says either way which is taken.
func (r *resolver) sweeten(t *task) {
	p := t.hit.Profile
	if t.fault != nil || p == nil || t.hit.How == flavor.MatchFuzzy || !naming.PlaceOf(t.unit, t.amount, t.line.After).Volume() {
		return
	}
	form := cmp.Or(naming.SweetForm(t.line.Name), naming.SweetForm(t.hit.As))
	if form == "" {
		return
	}
	sweet, _, ok := r.book.Named(form)
	if !ok || sweet == p {
		return
	}
	if !slices.ContainsFunc(r.tasks, func(o *task) bool {
		return o != t && o.hit.Profile != nil && o.hit.Profile.Sugar.Value >= sweetGPerL
	}) {
		t.hit = naming.Found{Profile: sweet, How: flavor.MatchAlias, As: form}
	}
	t.infer(flavor.InferredName)
	t.notes = append(t.notes, "“"+t.line.Name+"” is read as "+t.hit.Profile.Name+"; "+sweet.Name+" is sweet, "+p.Name+" is not")
}

// wordings lists what to look up: the name, and after a counted unit the name
// with the unit as its last word ("sugar cube", "bay leaf").
func wordings(name string, u flavor.Unit) []string {
	if u.Counted() {
		return []string{name, name + " " + measure.UnitWord(1, u)}
	}
	return []string{name}
}

// settle finds the ingredient of a line in its place and works out the pour.
func (r *resolver) settle(t *task) {
	l := t.line
	if l.Squeezed && r.squeeze(t) {
		return
	}
	if l.Measure == "shot" || l.Measure == "shots" {
		r.shot(t)
	}
	if t.fault != nil {
		return
	}
	pl := naming.PlaceOf(t.unit, t.amount, l.After)
	if r.dashedOn(t) || r.solidOn(t) || r.eitherWay(t, pl) {
		return
	}
	t.hit = r.book.Find(l.Name, pl)
	if t.unit.Counted() {
		t.hit = r.counted(t, pl, t.hit)
	}
	if (t.hit.Profile == nil || !t.hit.Firm()) && r.misspeltUnit(t) && t.fault != nil {
		return
	}
	if t.hit.Profile == nil {
		t.fault = t.hit.Fault
		t.fault.Location = "ingredient"
		return
	}
	if f := r.bitterPoured(t, pl); f != nil {
		t.fault = f
		t.fault.Location = "ingredient"
		return
	}
	if t.unit == flavor.Dash && t.line.AmountAt.Empty() && t.hit.Profile.Carbonated {
		t.unit = flavor.Splash
		t.infer(flavor.InferredUnit)
		t.notes = append(t.notes, "“"+t.line.Asked+"” is read as a splash")
	}
	t.say(pl)
	r.laidOn(t)
}

// say notes what of a name was inferred.
func (t *task) say(pl naming.Place) {
	h := &t.hit
	switch {
	case h.Infusion != "":
		t.infer(flavor.InferredName)
		t.notes = append(t.notes, "“"+t.line.Name+"” is read as "+h.Profile.Name+"; what “"+h.Infusion+"” brings to it is not counted")
	case h.How == flavor.MatchFuzzy:
		t.notes = append(t.notes, "“"+t.line.Name+"” is read as "+h.Profile.Name)
	case h.Inferred:
		t.infer(flavor.InferredName)
		t.notes = append(t.notes, "“"+t.line.Name+"” "+naming.PlaceWords(pl.Unit)+" is read as "+h.Profile.Name)
	}
	if h.Dropped != "" {
		t.notes = append(t.notes, "“"+h.Dropped+"” is skipped")
	}
}

// counted prefers, after a counted unit, the name that the unit is a part of:
// "2 lime leaves" are lime leaves, and "1 sugar cube" a sugar cube.
func (r *resolver) counted(t *task, pl naming.Place, hit naming.Found) naming.Found {
	ok := func(f *naming.Found, u flavor.Unit) bool {
		if f.Profile == nil {
			return false
		}
		_, pours := measure.MLPerUnit(u, f.Profile)
		return pours
	}
	if hit.Firm() && ok(&hit, pl.Unit) {
		return hit
	}
	longer := t.line.Name + " " + measure.UnitWord(1, pl.Unit)
	for _, u := range []flavor.Unit{pl.Unit, flavor.Piece} {
		f := r.book.Find(longer, naming.Place{Unit: u, Amount: pl.Amount})
		if f.Firm() && ok(&f, u) {
			t.unit = u
			return f
		}
	}
	return hit
}

// slippedUnit finds a word at either end of the name that is nearly a unit, where the
// rest is an ingredient: "2 ouncse gin". It returns the units that it is near to, the
// word and the rest; none if there is no such word.
func (r *resolver) slippedUnit(l *entry.Line) (near []string, word, rest string) {
	words := strings.Fields(l.Name)
	if len(words) < 2 || !l.UnitAt.Empty() {
		return nil, "", ""
	}
	last := len(words) - 1
	for _, split := range []struct {
		word string
		rest []string
	}{{words[0], words[1:]}, {words[last], words[:last]}} {
		near := measure.NearestUnits(split.word)
		if len(near) == 0 || len(split.word) < leastUnitSlip || serving.OtherMeasures[split.word] || serving.DegreeWords[split.word] || draft.Quality(strings.ToLower(split.word)) {
			continue
		}
		rest := strings.TrimPrefix(strings.Join(split.rest, " "), "of ")
		if f := r.book.Find(rest, naming.Place{Unit: flavor.Unit(near[0])}); f.Firm() {
			return near, split.word, rest
		}
	}
	return nil, "", ""
}

// leastUnitSlip is the letters of a word in which a slip of a unit is seen: shorter ones
// are words of their own, as "de" is.
const leastUnitSlip = 3

// misspeltUnit mends a slip in a unit where only one is near, and refuses the line where
// more are; it is false if there is none.
func (r *resolver) misspeltUnit(t *task) bool {
	near, word, rest := r.slippedUnit(t.line)
	switch len(near) {
	case 0:
		return false
	case 1:
		own := *t.line
		own.Name, own.Unit = rest, flavor.Unit(near[0])
		t.line, t.unit, t.base = &own, own.Unit, naming.Found{}
		t.infer(flavor.InferredUnit)
		t.notes = append(t.notes, "“"+word+"” is read as "+measure.UnitWord(t.amount, t.unit))
		t.hit = r.book.Find(rest, naming.PlaceOf(t.unit, t.amount, own.After))
		return true
	}
	t.fault = measure.Invalid("unit", word, "%q is no unit%s", word, measure.DidYouMean(near))
	t.fault.Suggest = near
	return true
}

// squeeze takes a fruit that is squeezed as its juice.
func (r *resolver) squeeze(t *task) bool {
	fruit := t.base.Profile
	if fruit == nil || !t.unitIsFruit() {
		return false
	}
	juice := naming.Pressed(t.line.Name)
	p, how, ok := r.book.Named(juice)
	per, yields := measure.MLPerUnit(cmp.Or(t.unit, flavor.Piece), fruit)
	if juice == "" || !ok || !yields {
		return false
	}
	ml := per * t.amount
	t.unit = r.system().Unit()
	t.amount = measure.Snap(ml, t.unit, p)
	t.hit = naming.Found{Profile: p, How: how, As: juice, Inferred: true}
	t.infer(flavor.InferredUnit)
	t.infer(flavor.InferredName)
	t.notes = append(t.notes, "“"+t.line.Asked+"” is read as "+measure.FormatAmount(t.amount, t.unit)+" of "+p.Name)
	return true
}

func (t *task) unitIsFruit() bool {
	return t.unit == "" || t.unit == flavor.Piece || t.unit == flavor.Wedge || t.unit == flavor.Slice
}

// system is the set of units that the draft is poured in.
func (r *resolver) system() measure.System {
	s := flavor.Spec{}
	for _, t := range r.tasks {
		s.Pours = append(s.Pours, flavor.Pour{Unit: t.unit})
	}
	return measure.SystemOf(&s)
}
