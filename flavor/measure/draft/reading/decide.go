package reading

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/naming"
)

// A name that may mean several things is settled where the rest of the drink leaves one of
// them: common practice. Which is taken, and why, is said.

// How much of a name in doubt points at one of its meanings, in mL; common practice.
const (
	leastSpirit = 29.0 // a spirit rather than what seasons or sweetens
	leastPureed = 20.0 // purée rather than a liqueur beside a sweetener
	leastPlain  = 14.0 // a liqueur rather than the syrup of a drink that has none
	mostLiqueur = 31.0
)

// others are what the lines but one pour, as far as it is known.
type others struct{ strong, sour, sweetened, modified, soft, sparkling bool }

// beside gathers what the other lines pour.
func (r *resolver) beside(t *task) others {
	var o others
	for _, other := range r.tasks {
		p := other.hit.Profile
		if other == t || p == nil {
			continue
		}
		switch part := p.Class.Part(); {
		case part == flavor.PartBase:
			o.strong = true
		case p.Class == flavor.ClassSourJuice || p.Class == flavor.ClassAcid:
			o.sour = true
		case part == flavor.PartSweetener && p.ABV.Value == 0:
			o.sweetened = true
		case part == flavor.PartModifier:
			o.modified = true
		case p.Class == flavor.ClassJuice, p.Class == flavor.ClassPuree, p.Class == flavor.ClassDairy, p.Class == flavor.ClassPlantMilk, p.Class == flavor.ClassEgg:
			o.soft = true
		}
		o.sparkling = o.sparkling || p.Carbonated
	}
	return o
}

// decide takes the one meaning of a name in doubt that fits the rest of the drink.
func (r *resolver) decide(t *task) {
	pl := naming.PlaceOf(t.unit, t.amount, t.line.After)
	if t.fault == nil || t.fault != t.hit.Fault || t.fault.Kind != flavor.ErrInvalid || len(t.fault.Suggest) < 2 || !pl.Volume() || pl.ML() <= 0 {
		return
	}
	var means []*flavor.Profile
	for _, name := range t.fault.Suggest {
		p, _, ok := r.book.Named(name)
		if !ok {
			return
		}
		means = append(means, p)
	}
	p, why := fitting(means, r.beside(t), pl.ML())
	if p == nil {
		return
	}
	var rest []string
	for _, m := range means {
		if m != p {
			rest = append(rest, m.Name)
		}
	}
	t.fault, t.hit = nil, naming.Found{Profile: p, How: flavor.MatchAlias, As: p.Name, Inferred: true}
	t.infer(flavor.InferredName)
	t.notes = append(t.notes, "“"+t.line.Name+"” is read as "+p.Name+", since "+why+"; write "+flavor.JoinOr(rest)+" if that is meant")
}

// fitting returns the one of several meanings that fits beside what else is poured, and
// why; nil if several do.
func fitting(means []*flavor.Profile, o others, ml float64) (*flavor.Profile, string) {
	of := func(fits func(flavor.Class) bool) *flavor.Profile {
		var hit *flavor.Profile
		for _, p := range means {
			if fits(p.Class) {
				if hit != nil {
					return nil
				}
				hit = p
			}
		}
		return hit
	}
	is := func(classes ...flavor.Class) *flavor.Profile {
		return of(func(c flavor.Class) bool { return slices.Contains(classes, c) })
	}
	spirit := of(func(c flavor.Class) bool { return c.Part() == flavor.PartBase })
	syrup := is(flavor.ClassSyrup, flavor.ClassFruitSyrup, flavor.ClassSpicedSyrup)
	liqueur, puree := is(flavor.ClassLiqueur), is(flavor.ClassPuree)
	short := o.strong && !o.sour && !o.soft && !o.sparkling && !o.sweetened // what a sweetener stands beside may be sour
	switch {
	case spirit != nil && len(means) == 2 && syrup != nil && ml >= leastSpirit:
		return spirit, "it is as much as a spirit"
	case liqueur != nil && short && ml <= mostLiqueur && (o.modified || ml >= leastPlain):
		return liqueur, "nothing sour or soft stands beside it"
	case puree != nil && o.sweetened && (liqueur == nil || o.sour && ml >= leastPureed):
		return puree, "the drink is sweetened already"
	case liqueur != nil && puree == nil && syrup != nil && o.strong && o.sour && o.sweetened:
		return liqueur, "the drink is sweetened already"
	case syrup != nil && liqueur == nil && o.sour && !o.sweetened && !o.modified:
		return syrup, "nothing else sweetens the drink"
	case o.strong && !o.sparkling && !slices.ContainsFunc(means, func(p *flavor.Profile) bool { return p.Class != flavor.ClassBitterAperitif }):
		return means[0], "that is the usual one in a short drink"
	}
	return nil, ""
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
		case t.line.Number != line:
			continue
		case t.line != l && t.line.NameAt != l.NameAt:
			return false
		}
		f, ok := r.book.Turned(l.Name, words, naming.PlaceOf(t.unit, t.amount, l.After))
		if !ok {
			return false
		}
		t.hit, t.fault = f, nil
		t.infer(flavor.InferredName)
		t.notes = []string{"“" + l.Name + ", " + words + "” is read as " + f.Profile.Name}
		return true
	}
	return false
}
