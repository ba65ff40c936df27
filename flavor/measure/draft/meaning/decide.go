package meaning

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/fitting"
	"counterpour/flavor/measure/draft/names/naming"
)

// A name that may mean several things is settled where the rest of the drink leaves one of
// them: common practice. Which is taken, and why, is said.

// beside gathers what the other lines pour, as far as it is known.
func (r *resolver) beside(t *counting.Task) fitting.Others {
	var o fitting.Others
	for _, other := range r.tasks {
		if p := other.Hit.Profile; other != t && p != nil {
			o.Add(p)
		}
	}
	return o
}

// others lists what the other lines pour, as far as it is known.
func (r *resolver) others(t *counting.Task) []*flavor.Profile {
	var out []*flavor.Profile
	for _, other := range r.tasks {
		if p := other.Hit.Profile; other != t && p != nil {
			out = append(out, p)
		}
	}
	return out
}

// decide takes the one meaning of a name in doubt that fits the rest of the drink.
func (r *resolver) decide(t *counting.Task) {
	pl := naming.PlaceOf(t.Unit, t.Amount, t.Line.After)
	if t.Fault == nil || t.Fault != t.Hit.Fault || t.Fault.Kind != flavor.ErrInvalid || len(t.Fault.Suggest) < 2 || !pl.Volume() && !t.Unit.Spoon() || pl.ML() <= 0 {
		return
	}
	var means []*flavor.Profile
	for _, name := range t.Fault.Suggest {
		p, _, ok := r.resolver.Named(name)
		if !ok {
			return
		}
		means = append(means, p)
	}
	p, why := r.ofName(means, t.Line.Name), "the drink is called “"+r.name+"”"
	if p == nil {
		p, why = fitting.Drink(means, t.Line.Name, r.name, r.profile)
	}
	if p == nil {
		p, why = fitting.Rest(means, r.others(t), r.profile)
	}
	if p == nil && pl.Volume() {
		p, why = fitting.Of(means, r.beside(t), pl.ML())
	}
	if p == nil {
		return
	}
	var rest []string
	for _, m := range means {
		if m != p {
			rest = append(rest, m.Name)
		}
	}
	t.Fault, t.Hit = nil, naming.Found{Profile: p, How: flavor.MatchAlias, As: p.Name, Inferred: true}
	t.Infer(flavor.InferredName)
	t.Notes = append(t.Notes, "“"+t.Line.Name+"” is read as "+p.Name+", since "+why+"; write "+flavor.JoinOr(rest)+" if that is meant")
}

// profile is the ingredient of a name, nil if there is none.
func (r *resolver) profile(name string) *flavor.Profile {
	p, _, _ := r.resolver.Named(name)
	return p
}

// bottled takes a name that says only a kind of spirit as the bottle that the drink is known to have, and
// what is floated of it as the one above.
func (r *resolver) bottled(t *counting.Task) {
	p, why := fitting.Bottle(t.Line.Name, r.name, r.profile)
	for _, o := range r.tasks {
		if l := t.Line; l.Unit == flavor.Float && l.AmountAt.Empty() && o != t && t.Class() == o.Class() && o.Hit.Profile != nil && partOf(l.Name, o.Line.Name) {
			p, why = o.Hit.Profile, "that is poured above"
			break
		}
	}
	if p == nil || t.Fault != nil || p == t.Hit.Profile {
		return
	}
	t.Hit = naming.Found{Profile: p, How: flavor.MatchAlias, As: p.Name, Inferred: true}
	t.Infer(flavor.InferredName)
	t.Notes = []string{"“" + t.Line.Name + "” is read as " + p.Name + ", since " + why}
}

// ofName returns the one of several meanings of a name with which the name of the drink shares a
// word that the others have not: the whiskey of an Irish coffee. It is nil if there is none.
func (r *resolver) ofName(means []*flavor.Profile, written string) *flavor.Profile {
	called := strings.Fields(flavor.NormaliseName(r.name))
	asked := strings.Fields(flavor.NormaliseName(written))
	var hit *flavor.Profile
	for _, m := range means {
		shares := slices.ContainsFunc(strings.Fields(flavor.NormaliseName(m.Name)), func(w string) bool {
			return slices.Contains(called, w) && !slices.Contains(asked, w)
		})
		if shares && hit != nil {
			return nil
		}
		if shares {
			hit = m
		}
	}
	return hit
}

// turnedHeads are words that a pour is no name of, so that the word behind a comma says
// which of them it is: "bitters, orange".
var turnedHeads = []string{"bitters", "bitter", "curacao", "curaçao", "oleo", "liqueur", "syrup", "juice", "puree", "purée"}

// turnedBehind takes the word behind a comma into the name before it, where that is the
// one pour of its line.
func (r *resolver) turnedBehind(words string, after int, line int) bool {
	if after == 0 || after > len(r.draft.Lines) {
		return false
	}
	l := &r.draft.Lines[after-1]
	if l.Number != line || !slices.Contains(turnedHeads, strings.ToLower(l.Name)) {
		return false
	}
	for _, t := range r.tasks {
		switch {
		case t.Line.Number != line:
			continue
		case t.Line != l && t.Line.NameAt != l.NameAt:
			return false
		}
		f, ok := r.resolver.Turned(l.Name, words, naming.PlaceOf(t.Unit, t.Amount, l.After))
		if !ok {
			return false
		}
		t.Hit, t.Fault = f, nil
		t.Infer(flavor.InferredName)
		t.Notes = []string{"“" + l.Name + ", " + words + "” is read as " + f.Profile.Name}
		return true
	}
	return false
}
