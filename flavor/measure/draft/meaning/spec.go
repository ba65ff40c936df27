package meaning

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/manner"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/onedrink"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/words/assumed"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// spec puts together what the tasks came to, and adds their faults.
func (r *resolver) spec(faults *flavor.DataFaults) (flavor.Spec, []int) {
	d := r.draft
	s := flavor.Spec{Name: r.name, Method: d.Method, Service: d.Service, HotC: d.HotC, Garnish: d.Garnish, Glass: d.Glass, Rim: d.Rim}
	at := r.pourAll(&s, faults)
	if f := onedrink.Versions(d, &s, at); f != nil {
		*faults, r.several = append(*faults, f), true
	}
	*faults = append(*faults, overlooked.Faults(d, s.Pours, r.resolver)...)
	odd, tooLarge := onedrink.Size(d, &s, at)
	if tooLarge != nil {
		*faults = append(*faults, tooLarge)
	}
	for _, n := range append(odd, onedrink.Amended(d, &s, at)...) {
		r.note(n)
	}
	s.Steps, s.Notes = r.steps, r.notes
	if len(s.Pours) == 0 && len(*faults) == 0 {
		f := measure.Invalid("", "", "there is no pour here; write at least one, such as \"2 oz London dry gin\"")
		f.Location = measure.LineLocation(1)
		*faults = append(*faults, f)
	}
	checkServing(d, faults)
	s.Together = d.Together
	for _, n := range manner.Settle(&s, d) {
		r.note(n)
	}
	s.Notes = r.notes
	if s.Method == "" {
		r.unstirred(&s)
	}
	return assumed.Fill(s), at
}

// denied is a method that a step says is not used: "no stir", "do not shake".
var denied = pattern.Of(`(?i)\b(?:no|don['’]?t|do[ \t]+not|never|not|without)[ \t]+(?:be[ \t]+)?(stir|shak|swizzl|blend)`)

// unstirred takes a drink as built that would be taken as stirred, where its steps deny that, or what is
// muddled in it stays in the glass.
func (r *resolver) unstirred(s *flavor.Spec) {
	usual := assumed.Fill(*s).Method
	for _, step := range r.steps {
		if m := denied.FindStringSubmatch(step); m != nil && strings.HasPrefix(string(usual), strings.ToLower(m[1])) {
			s.Method = flavor.Build
			s.Notes = append(slices.Clone(s.Notes), "no method stated: build, since it says “"+step+"”")
			return
		}
	}
	if usual == flavor.Stir && r.draft.Muddle && s.Service != flavor.Up {
		s.Method = flavor.Build
		s.Notes = append(slices.Clone(s.Notes), "no method stated: build, as is usual with what is muddled")
	}
}

// pourAll adds the pours of the tasks to a spec, and their faults; it returns for each line of the draft its
// pour, −1 for none.
func (r *resolver) pourAll(s *flavor.Spec, faults *flavor.DataFaults) []int {
	d := r.draft
	at := make([]int, len(d.Lines))
	for i := range at {
		at[i] = -1
	}
	for _, t := range r.tasks {
		if t.Laid {
			continue
		}
		pour, fault := pourOf(t)
		if fault != nil {
			*faults = append(*faults, r.locate(t, fault))
			continue
		}
		if r.repeats(s, t, &pour) || r.amends(s, t, &pour) {
			continue
		}
		for i := range d.Lines {
			if &d.Lines[i] == t.Line {
				at[i] = len(s.Pours)
			}
		}
		s.Pours = append(s.Pours, pour)
		r.topped = append(r.topped, nil)
		if unmeasuredTop(t) {
			r.topped[len(r.topped)-1] = pour.Profile
		}
		if t.Line.Note != "" {
			r.note(measure.LineLocation(t.Line.Number) + ": " + t.Line.Note)
		}
		for _, n := range t.Notes {
			r.note(measure.LineLocation(t.Line.Number) + ": " + n)
		}
	}
	return at
}

// checkServing refuses a method or a service that a draft was given and that is
// none.
func checkServing(d *draft.Draft, faults *flavor.DataFaults) {
	if d.Method != "" && !d.Method.Valid() {
		*faults = append(*faults, measure.Invalid("method", string(d.Method), "%q is no method; use %s", string(d.Method), flavor.JoinOr(measure.Names(flavor.Methods()))))
	}
	if d.Service != "" && !d.Service.Valid() {
		*faults = append(*faults, measure.Invalid("service", string(d.Service), "%q is no service; use %s", string(d.Service), flavor.JoinOr(measure.Names(flavor.Services()))))
	}
}

// locate gives a fault its line.
func (r *resolver) locate(t *counting.Task, f *flavor.DataFault) *flavor.DataFault {
	own := r.resolver.Copied(f)
	if own.Field == "" {
		own.Field = own.Location
	}
	own.Location = measure.LineLocation(t.Line.Number)
	if own.Kind == flavor.ErrUnknown {
		own.Value = t.Line.Name
	}
	if t.Line.PerhapsName {
		own.Message += "; if this is the name of the drink, write \"" + draft.NamePrefix + " " + draft.StripBullet(t.Line.Asked) + "\""
	}
	return own
}

// steeped is what was put into the bottle of a name, where nobody has stated what that may carry; else empty.
func steeped(h *naming.Found) string {
	if h.Unstated {
		return h.Infusion
	}
	return ""
}

// pour works out the millilitres of a task.
func pourOf(t *counting.Task) (flavor.Pour, *flavor.DataFault) {
	if t.Fault != nil {
		return flavor.Pour{}, t.Fault
	}
	p := t.Hit.Profile
	if f := entry.CheckAmount(t.Amount, t.Unit, token.Number(t.Amount)); f != nil {
		return flavor.Pour{}, f
	}
	u := t.Unit
	if u == "" {
		u = flavor.Piece
	}
	ml, fault := measure.Millilitres(t.Amount, u, p)
	if fault != nil {
		return flavor.Pour{}, fault
	}
	if ml > measure.MaxPourML {
		return flavor.Pour{}, measure.Invalid("amount", token.Number(t.Amount), "%s of %s is more than %v ml; write less", measure.FormatAmount(t.Amount, u), p.Name, measure.MaxPourML)
	}
	asked := t.Line.Name
	if t.Hit.As != "" && u.Counted() && strings.HasPrefix(t.Hit.As, t.Line.Name+" ") {
		asked = t.Hit.As // "bay leaf", where the unit is the last word of the name
	}
	return flavor.Pour{Profile: p, Amount: t.Amount, Unit: u, ML: ml, After: t.Line.After, Heat: manner.HeatOf(t.Line, p),
		Match: flavor.Match{Asked: asked, How: t.Hit.How, Inferred: t.Inferred, Steeped: steeped(&t.Hit)}}, nil
}

// repeats reports whether a step, or an instruction to top, float or rinse,
// speaks of a pour that a line above states; what tops then goes in afterwards. What
// was to top without an amount takes the amount of the step.
func (r *resolver) repeats(s *flavor.Spec, t *counting.Task, p *flavor.Pour) bool {
	l := t.Line
	i := slices.IndexFunc(s.Pours, func(x flavor.Pour) bool { return speaksOf(l, p.Profile, &x) })
	measured := l.After && !l.AmountAt.Empty() && !l.Unit.After()
	if i < 0 && measured {
		i = slices.IndexFunc(r.topped, func(x *flavor.Profile) bool { return x == p.Profile })
	}
	if i < 0 {
		return false
	}
	if measured && i < len(r.topped) && r.topped[i] == p.Profile {
		p.Match.Asked = s.Pours[i].Match.Asked
		s.Pours[i] = *p
		return true
	}
	s.Pours[i].After = s.Pours[i].After || l.After && (lengthens(s.Pours[i].Profile) || !strings.Contains(l.Name, " and ")) // "shake the tea, lemon and honey, top" tops with neither
	r.note(measure.LineLocation(l.Number) + ": “" + l.Asked + "” refers to what is poured above")
	r.steps = append(r.steps, l.Asked)
	return true
}

// mostFloated is the most mL of one pour that is floated, an ounce: common practice, no source.
const mostFloated = 30.0

// mostWetted is the most mL of what fills a glass up that wets sugar before: common practice, no source.
const mostWetted = 7.5

// speaksOf reports whether a line that names p speaks of a pour above it.
func speaksOf(l *entry.Line, p *flavor.Profile, above *flavor.Pour) bool {
	same := above.Profile == p
	switch {
	case same && l.Step:
		return true
	case same && l.Unit == flavor.Top && (lengthens(p) || p.Class == flavor.ClassWater) && above.ML <= mostWetted: // sugar is wetted with a splash, and the glass filled up
		return false
	case same && l.Unit == flavor.Top && above.Unit == flavor.Top && l.AmountAt.Empty(): // "soda", and "lengthened with soda"
		return true
	case !l.Unit.After() || !l.AmountAt.Empty() || l.UnitAt.Start > l.NameAt.Start || above.Unit.After(): // tells nobody to top with it
		return false
	case same && (lengthens(p) || above.ML <= mostFloated || l.Unit == flavor.Rinse || l.Unit == flavor.Spritz):
		return true
	case (above.After || l.Unit == flavor.Float && strings.Contains(l.Asked, " the ")) && above.Profile.Class == p.Class && partOf(l.Name, above.Match.Asked): // "float the rum", of the black rum above
		return true
	}
	return lengthens(above.Profile) && (partOf(l.Name, above.Match.Asked) || partOf(l.Name, string(above.Profile.Class))) // "top with beer", of the stout above
}

// amends puts a pour in place of the one above whose amount it takes back, and is false
// if it takes back none.
func (r *resolver) amends(s *flavor.Spec, t *counting.Task, p *flavor.Pour) bool {
	i := slices.IndexFunc(s.Pours, func(x flavor.Pour) bool { return x.Profile == p.Profile })
	if !t.Line.Amends || i < 0 {
		return false
	}
	r.note(measure.LineLocation(t.Line.Number) + ": “" + t.Line.Asked + "” replaces " + measure.FormatAmount(s.Pours[i].Amount, s.Pours[i].Unit) + " of " + p.Profile.Name)
	s.Pours[i] = *p
	return true
}

// partOf reports whether every word of a name is one of another.
func partOf(name, of string) bool {
	words := strings.Fields(flavor.NormaliseName(of))
	for _, w := range strings.Fields(flavor.NormaliseName(name)) {
		if !slices.Contains(words, w) {
			return false
		}
	}
	return true
}

// lengthens reports whether an ingredient is one that tops a drink, so that a
// list states its amount and a step says how it goes in.
func lengthens(p *flavor.Profile) bool {
	return p.Carbonated || p.Class.Part() == flavor.PartLength || p.Class.Part() == flavor.PartTexture || p.Class == flavor.ClassWine
}

// ResolvePour makes a pour of an amount, a unit and a name that were given
// apart, with the checks of a line of a draft. An empty unit is a piece, where
// the ingredient comes in pieces. What was inferred is in the match. The faults
// are located at location with ".amount", ".unit" or ".ingredient".
func ResolvePour(amount float64, unit, name, location string, f naming.Finder) (flavor.Pour, error) {
	var faults flavor.DataFaults
	at := func(fault *flavor.DataFault) {
		own := *fault
		if location != "" {
			own.Location = location + "." + own.Location
		}
		faults = append(faults, &own)
	}
	u, known := measure.ParseUnit(unit)
	if !known && strings.TrimSpace(unit) != "" {
		near := measure.NearestUnits(unit)
		fault := measure.Invalid("unit", unit, "%q is no unit%s; use %s", unit, measure.DidYouMean(near), flavor.JoinOr(measure.Names(measure.Units())))
		fault.Suggest = near
		at(fault)
	}
	if fault := entry.CheckAmount(amount, u, token.Number(amount)); fault != nil {
		at(fault)
	}
	written := token.OneLine(name)
	switch {
	case written == "":
		at(measure.Invalid("ingredient", name, "the pour names no ingredient; write one, such as \"London dry gin\""))
	case len([]rune(written)) > draft.MaxLine:
		at(measure.Invalid("ingredient", string([]rune(written)[:40]), "the name is longer than %d characters", draft.MaxLine))
	}
	if len(faults) > 0 {
		return flavor.Pour{}, faults
	}
	line := entry.Line{Amount: amount, Unit: u, Name: written, Asked: fmt.Sprintf("%v %s %s", amount, u, written), After: u.After()}
	r := &resolver{draft: &draft.Draft{}, resolver: naming.NewResolver(f)}
	t := &counting.Task{Line: &line, Unit: u, Amount: amount}
	if u == "" {
		t.Unit = flavor.Piece
	}
	var ok bool
	if t.Hit, ok = r.resolver.Literal(written, naming.PlaceOf(t.Unit, amount, false)); !ok {
		r.settle(t)
	}
	if r.resolver.Err() != nil {
		return flavor.Pour{}, r.resolver.Err()
	}
	pour, fault := pourOf(t)
	if fault != nil {
		if u == "" && fault.Field == "unit" {
			fault = noUnit(t)
		}
		at(fault)
		return flavor.Pour{}, faults
	}
	return pour, nil
}

// noUnit says that an ingredient does not come by the piece.
func noUnit(t *counting.Task) *flavor.DataFault {
	p := t.Hit.Profile
	suggest := measure.Names(measure.UnitsFor(p))
	f := measure.Invalid("unit", t.Line.Name, "%q has an amount but no unit; %s is poured in %s", t.Line.Name, p.Name, flavor.JoinOr(suggest))
	f.Suggest = suggest
	return f
}
