package meaning

import (
	"cmp"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/naming"
)

// What each pour of a draft is: its ingredient, its unit and its millilitres.

// findBase finds what a name means, wherever it stands, and refuses a number
// that belongs to the name: "rum 151".
func (r *resolver) findBase(t *counting.Task) {
	l := t.Line
	if l.Whole != "" {
		if p, _, ok := r.resolver.Named(l.Whole); ok {
			t.Fault = measure.Invalid("amount", l.Whole, "%q is %s and has no amount; write one before it, such as \"2 oz\"", l.Whole, p.Name)
			return
		}
	}
	if !t.Bare() && l.Measure == "" && !l.Squeezed && !l.Pt {
		return // the place is known: see settle
	}
	for _, w := range wordings(l.Name, t.Unit) {
		for _, n := range jargon.Strip(w) {
			if p, how, ok := r.resolver.Named(n); ok && !(t.Several() && !p.Class.Solid()) {
				t.Base = naming.Found{Profile: p, How: how, As: n}
				return
			}
		}
	}
	if f, ok := r.resolver.InPlace(flavor.NormaliseName(l.Name), naming.Place{Unit: flavor.Piece}, false); ok && t.Bare() && f.Fault == nil {
		t.Base = f // "1 white"
		return
	}
	if f, ok := r.resolver.Short(flavor.NormaliseName(l.Name), naming.Place{}, false); ok && f.Fault == nil {
		t.Base = f
		return
	}
	if t.Bare() {
		r.misspeltUnit(t)
	}
}

// sweetGPerL is the sugar in g/L from which a pour sweetens a drink: half that of
// a 1:1 syrup, and more than any juice has; common practice.
const sweetGPerL = 300

// sweeten takes a name that may mean a sweetened form as that where no other pour
// sweetens the drink, and says either way which is taken.
func (r *resolver) sweeten(t *counting.Task) {
	p := t.Hit.Profile
	if t.Fault != nil || p == nil || t.Hit.How == flavor.MatchFuzzy || !naming.PlaceOf(t.Unit, t.Amount, t.Line.After).Volume() {
		return
	}
	form := jargon.SweetForm(t.Line.Name)
	if form == "" && t.Hit.As != t.Line.Name {
		form = jargon.SweetForm(t.Hit.As)
	}
	if form == "" {
		return
	}
	sweet, _, ok := r.resolver.Named(form)
	if !ok || sweet == p {
		return
	}
	if !slices.ContainsFunc(r.tasks, func(o *counting.Task) bool {
		return o != t && o.Hit.Profile != nil && o.Hit.Profile.Sugar.Value >= sweetGPerL
	}) {
		t.Hit = naming.Found{Profile: sweet, How: flavor.MatchAlias, As: form}
	}
	t.Infer(flavor.InferredName)
	t.Notes = append(t.Notes, "“"+t.Line.Name+"” is read as "+t.Hit.Profile.Name+"; "+sweet.Name+" is sweet, "+p.Name+" is not")
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
func (r *resolver) settle(t *counting.Task) {
	l := t.Line
	if l.Squeezed && r.squeeze(t) {
		return
	}
	if (l.Measure == "shot" || l.Measure == "shots") && !l.Sized {
		r.shot(t)
	}
	if t.Fault != nil {
		return
	}
	pl := naming.PlaceOf(t.Unit, t.Amount, l.After)
	if r.dashedOn(t) || r.solidOn(t) || r.eitherWay(t, pl) {
		return
	}
	t.Hit = r.resolver.Find(l.Name, pl)
	if t.Unit.Counted() {
		t.Hit = r.counted(t, pl, t.Hit)
	}
	if (t.Hit.Profile == nil || !t.Hit.Firm()) && r.misspeltUnit(t) && t.Fault != nil {
		return
	}
	if t.Hit.Profile == nil {
		t.Hit.Fault = r.resolver.Copied(t.Hit.Fault)
		t.Fault = t.Hit.Fault
		t.Fault.Location = "ingredient"
		return
	}
	if f := r.liqueurWeighed(t); f != nil {
		t.Fault = f
		t.Fault.Location = "ingredient"
		return
	}
	if f := r.bitterPoured(t, pl); f != nil {
		t.Fault = f
		t.Fault.Location = "ingredient"
		return
	}
	if t.Unit == flavor.Dash && t.Line.AmountAt.Empty() && t.Hit.Profile.Carbonated {
		t.Unit = flavor.Splash
		t.Infer(flavor.InferredUnit)
		t.Notes = append(t.Notes, "“"+t.Line.Asked+"” is read as a splash")
	}
	say(t, pl)
	r.laidOn(t)
}

// unstated says that nobody has stated what an infusion may carry, where that is so.
func unstated(h *naming.Found) string {
	if h.Unstated {
		return ", and nobody has stated what it may carry"
	}
	return ""
}

// say notes what of a name was inferred.
func say(t *counting.Task, pl naming.Place) {
	h := &t.Hit
	switch {
	case h.Infusion != "":
		t.Infer(flavor.InferredName)
		t.Notes = append(t.Notes, "“"+t.Line.Name+"” is read as "+h.Profile.Name+"; what “"+h.Infusion+"” brings to it is not counted"+unstated(h))
	case h.How == flavor.MatchFuzzy:
		t.Notes = append(t.Notes, "“"+t.Line.Name+"” is read as "+h.Profile.Name)
	case h.Inferred:
		t.Infer(flavor.InferredName)
		said := "“" + t.Line.Name + "” " + naming.PlaceWords(pl.Unit) + " is read as " + h.Profile.Name
		if other := jargon.Mistakable(t.Line.Name); other != "" {
			said += "; " + other + " is another bottle, to be written where it is meant"
		}
		t.Notes = append(t.Notes, said)
	}
	if h.Dropped != "" {
		t.Notes = append(t.Notes, "“"+h.Dropped+"” is skipped")
	}
}

// counted prefers, after a counted unit, the name that the unit is a part of:
// "2 lime leaves" are lime leaves, and "1 sugar cube" a sugar cube.
func (r *resolver) counted(t *counting.Task, pl naming.Place, hit naming.Found) naming.Found {
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
	longer := t.Line.Name + " " + measure.UnitWord(1, pl.Unit)
	for _, u := range []flavor.Unit{pl.Unit, flavor.Piece} {
		f := r.resolver.Find(longer, naming.Place{Unit: u, Amount: pl.Amount})
		if f.Firm() && ok(&f, u) {
			t.Unit = u
			return f
		}
	}
	return hit
}

// squeeze takes a fruit that is squeezed as its juice.
func (r *resolver) squeeze(t *counting.Task) bool {
	fruit := t.Base.Profile
	if fruit == nil || !ofFruit(t) {
		return false
	}
	juice := jargon.Pressed(t.Line.Name)
	p, how, ok := r.resolver.Named(juice)
	per, yields := measure.MLPerUnit(cmp.Or(t.Unit, flavor.Piece), fruit)
	if juice == "" || !ok || !yields {
		return false
	}
	ml := per * t.Amount
	t.Unit = r.system().Unit()
	t.Amount = measure.Snap(ml, t.Unit, p)
	t.Hit = naming.Found{Profile: p, How: how, As: juice, Inferred: true}
	t.Infer(flavor.InferredUnit)
	t.Infer(flavor.InferredName)
	t.Notes = append(t.Notes, "“"+t.Line.Asked+"” is read as "+measure.FormatAmount(t.Amount, t.Unit)+" of "+p.Name)
	return true
}

func ofFruit(t *counting.Task) bool {
	return t.Unit == "" || t.Unit == flavor.Piece || t.Unit == flavor.Wedge || t.Unit == flavor.Slice
}

// system is the set of units that the draft is poured in.
func (r *resolver) system() measure.System {
	s := flavor.Spec{}
	for _, t := range r.tasks {
		s.Pours = append(s.Pours, flavor.Pour{Unit: t.Unit})
	}
	return measure.SystemOf(&s)
}

// InOrder sorts faults by line.
func InOrder(faults flavor.DataFaults) flavor.DataFaults {
	slices.SortStableFunc(faults, func(a, b *flavor.DataFault) int { return cmp.Compare(a.Place().Line, b.Place().Line) })
	return faults
}
