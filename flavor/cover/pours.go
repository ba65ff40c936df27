package cover

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
)

// leastShare is the share of what went that several parts pour together at the
// least: a barspoon of each stands for no ounce.
const leastShare = 0.6

// longShare is the same where a juice or a soda went: a glass is to be as full as it was.
const longShare = 0.8

// leadShare is the share of two spirits for one that the leading one pours at the least:
// the other seasons it, as a little smoky malt does a tequila in place of a mezcal.
const leadShare = 0.8

// led reports whether of several spirits that stand for one the first leads.
func (t *task) led(x *search.Filling) bool {
	if len(x.Parts) < 2 || len(t.gap.Gone) > 1 || t.gap.ML < gap.BaseML || !t.spiritsAlone(x) {
		return true
	}
	var most, all float64
	for k, i := range x.Parts {
		ml := t.cands[i].amounts[x.Amounts[k]].ML
		most, all = max(most, ml), all+ml
	}
	return most >= leadShare*all
}

// fortifies reports whether a filling makes up for missing alcohol with a second bottle:
// what is made without alcohol is brought up to the strength of what went, or a spirit
// makes up a beer or wine that fills the glass. Nobody pours vodka into an alcohol-free
// beer, or vodka and tonic for a beer.
func (t *task) fortifies(x *search.Filling) bool {
	if len(x.Parts) < 2 || len(t.gap.Gone) > 1 || t.gap.WantsDry() {
		return false
	}
	stands := func(i int) bool { return t.cands[i].Profile.StandsForABV() > 0 }
	holds := func(i int) bool { return t.cands[i].Profile.ABV.Value > flavor.NoAlcoholABV }
	spirit := func(i int) bool { return t.cands[i].Profile.Class.Kin() == flavor.KinSpirit }
	if was := t.gap.Gone[0].Profile; was.Class.Part() == flavor.PartLength && was.ABV.Value > flavor.NoAlcoholABV && slices.ContainsFunc(x.Parts, spirit) {
		return true
	}
	return slices.ContainsFunc(x.Parts, stands) && slices.ContainsFunc(x.Parts, holds)
}

// concentrates reports whether a filling pours a sweetener where a juice went with other
// things: a little grenadine does for an ounce of cranberry.
func (t *task) concentrates(x *search.Filling) bool {
	return t.gap.Any(func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinJuice }) &&
		slices.ContainsFunc(x.Parts, func(i int) bool { return t.cands[i].Profile.Class.Kin() == flavor.KinSweetener })
}

// fullMeasure reports whether, with several things out, a base spirit is covered by its
// full measure of spirit.
func (t *task) fullMeasure(x *search.Filling) bool {
	var is portion.Spirits
	for k, i := range x.Parts {
		is.Add(t.cands[i].Profile, t.cands[i].amounts[x.Amounts[k]].ML)
	}
	return t.gap.FullMeasure(&is)
}

// customary reports whether the trade, or the house, pours a filling for what went, or
// for each of several things that lead one of its parts.
func (t *task) customary(x *search.Filling) bool {
	if len(t.gap.Gone) < 2 || len(x.Parts) == 0 || t.practice.pours(x.Parts) {
		return t.practice.pours(x.Parts)
	}
	for m := range t.gap.Gone {
		if t.leading(m) && !t.practice.alone[m][x.Parts[t.standsFor(x, m)]] {
			return false
		}
	}
	return true
}

// leavesRoom reports whether one bottle stands for what fills the glass, as that did, and leaves
// it emptier. What is much richer is poured by less.
func (t *task) leavesRoom(x *search.Filling) bool {
	const fillsML, richer = 45.0, 250 // mL, and g/L of fat: a thick cream for a milk
	if len(x.Parts) != 1 || len(t.gap.Gone) != 1 || t.gap.ML < fillsML {
		return false
	}
	p, was := t.cands[x.Parts[0]].Profile, t.gap.Gone[0].Profile
	return role.Fills(p.Class, was.Class) && p.Fat.Value <= was.Fat.Value+richer &&
		t.cands[x.Parts[0]].amounts[x.Amounts[0]].ML < longShare*t.gap.ML
}

// fizzesMilk reports whether a filling would pour what sparkles beside milk, which the drink does
// not: the acid of the bubbles curdles it.
func (t *task) fizzesMilk(x *search.Filling) bool {
	sparkles := func(p *flavor.Profile) bool { return p.Class.Sparkles() }
	milk := func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinMilk }
	pours := func(of func(*flavor.Profile) bool) bool {
		return slices.ContainsFunc(x.Parts, func(i int) bool { return of(t.cands[i].Profile) })
	}
	return pours(sparkles) && pours(milk) && !(t.req.Spec.Has(sparkles) && t.req.Spec.Has(milk))
}

// enough reports whether several parts pour about as much as went. What went by the
// piece, to season or to sweeten is made up for by strength.
func (t *task) enough(x *search.Filling) bool {
	if !t.led(x) || !t.fullMeasure(x) || t.fortifies(x) {
		return false
	}
	if t.leavesRoom(x) || t.fizzesMilk(x) || t.tooSharp(x) {
		return false
	}
	little := func(p *flavor.Profile) bool { return p.Class.Solid() || p.Class.Kin() == flavor.KinSweetener }
	if len(x.Parts) < 2 || t.gap.ML < gap.SeasoningML || t.gap.Any(little) || len(t.gap.Gone) > 1 && (t.gap.Less || t.concentrates(x)) {
		return true
	}
	var ml float64
	for k, i := range x.Parts {
		ml += t.cands[i].amounts[x.Amounts[k]].ML
	}
	least := leastShare
	if !t.gap.Any(func(p *flavor.Profile) bool { return p.Class.Part() != flavor.PartLength }) {
		least = longShare
	}
	return ml >= least*t.gap.ML
}
