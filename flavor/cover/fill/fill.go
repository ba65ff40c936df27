// Package fill tells whether what is poured in a gap is what a bartender would pour there:
// about as much as went, led by one spirit, and nothing that only makes up for the strength
// or the bulk of what went.
package fill

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/role"
)

// Portion is one thing that is poured in a gap.
type Portion struct {
	Profile *flavor.Profile
	ML      float64
}

// Fill is what is poured together in the gap of a drink.
type Fill struct {
	Gap   *gap.Gap
	Drink *flavor.Spec // as it is written
	Parts []Portion
}

// LeastShare is the share of what went that is poured in its place at the least: a barspoon
// of each of several things stands for no ounce.
const LeastShare = 0.6

// leastOfOne is the share of a measure of a liqueur, an amaro or a wine that one bottle pours in its place
// at the least, however strong it is.
const leastOfOne = 0.25

// longShare is the same where a juice or a soda went: a glass is to be as full as it was.
const longShare = 0.8

// leadShare is the share of two spirits for one that the leading one pours at the least:
// the other seasons it, as a little smoky malt does a tequila in place of a mezcal.
const leadShare = 0.8

// has reports whether some part is of some kind.
func (f *Fill) has(is func(*flavor.Profile) bool) bool {
	return slices.ContainsFunc(f.Parts, func(p Portion) bool { return is(p.Profile) })
}

// ml is the volume of all parts, in mL.
func (f *Fill) ml() (ml float64) {
	for _, p := range f.Parts {
		ml += p.ML
	}
	return ml
}

// SpiritsAlone reports whether spirits went, and nothing else is poured for them.
func (f *Fill) SpiritsAlone() bool {
	other := func(p *flavor.Profile) bool { return p.Class.Kin() != flavor.KinSpirit }
	return !f.Gap.Any(other) && !f.has(other)
}

// led reports whether of several spirits that stand for one the first leads.
func (f *Fill) led() bool {
	if len(f.Parts) < 2 || len(f.Gap.Gone) > 1 || f.Gap.ML < gap.BaseML || !f.SpiritsAlone() {
		return true
	}
	most := 0.0
	for _, p := range f.Parts {
		most = max(most, p.ML)
	}
	return most >= leadShare*f.ml()
}

// fortifies reports whether missing alcohol is made up for with a second bottle:
// what is made without alcohol is brought up to the strength of what went, or a spirit
// makes up a beer or wine that fills the glass. Nobody pours vodka into an alcohol-free
// beer, or vodka and tonic for a beer.
func (f *Fill) fortifies() bool {
	if len(f.Parts) < 2 || len(f.Gap.Gone) > 1 || f.Gap.WantsDry() {
		return false
	}
	holds := func(p *flavor.Profile) bool { return p.ABV.Value > flavor.NoAlcoholABV }
	spirit := func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinSpirit }
	if was := f.Gap.Gone[0].Profile; was.Class.Part() == flavor.PartLength && holds(was) && f.has(spirit) {
		return true
	}
	return f.has(func(p *flavor.Profile) bool { return p.StandsForABV() > 0 }) && f.has(holds)
}

// concentrates reports whether a sweetener is poured where a juice went with other
// things: a little grenadine does for an ounce of cranberry.
func (f *Fill) concentrates() bool {
	return f.Gap.Any(func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinJuice }) &&
		f.has(func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinSweetener })
}

// fullMeasure reports whether, with several things out, a base spirit is covered by its
// full measure of spirit.
func (f *Fill) fullMeasure() bool {
	var is portion.Spirits
	for _, p := range f.Parts {
		is.Add(p.Profile, p.ML)
	}
	return f.Gap.FullMeasure(&is)
}

// leavesRoom reports whether one bottle stands for what fills the glass, as that did, and leaves
// it emptier. What is much richer is poured by less.
func (f *Fill) leavesRoom() bool {
	const fillsML, richer = 45.0, 250 // mL, and g/L of fat: a thick cream for a milk
	if len(f.Parts) != 1 || len(f.Gap.Gone) != 1 || f.Gap.ML < fillsML {
		return false
	}
	p, was := f.Parts[0].Profile, f.Gap.Gone[0].Profile
	return role.Fills(p.Class, was.Class) && p.Fat.Value <= was.Fat.Value+richer && f.Parts[0].ML < longShare*f.Gap.ML
}

// hardlyThere reports whether one bottle stands for a measure of what modifies a drink, in hardly any
// of it: a barspoon of almond syrup for an ounce and a half of amaretto.
func (f *Fill) hardlyThere() bool {
	if len(f.Parts) != 1 || len(f.Gap.Gone) != 1 || f.Gap.ML < gap.BaseML || f.Gap.Gone[0].Profile.Class.Part() != flavor.PartModifier {
		return false
	}
	return f.Parts[0].ML < leastOfOne*f.Gap.ML
}

// flavourSpooned reports whether a barspoon of a syrup or a cordial would stand for a measure of a liqueur, for a
// guest who must have less alcohol: the guest wants to taste it, and some sugar beside it may go.
func (f *Fill) flavourSpooned() bool {
	const measureML, leastML = 14.0, 7.0 // a half and a quarter ounce, as a jigger rounds them
	if !f.Gap.Less || !slices.ContainsFunc(f.Gap.Gone, func(q gap.Gone) bool { return q.Profile.Class.Kin() == flavor.KinLiqueur && q.ML >= measureML }) {
		return false
	}
	return slices.ContainsFunc(f.Parts, func(p Portion) bool {
		return p.Profile.Class.Kin() == flavor.KinSweetener && p.ML < leastML && !role.ByPiece(p.Profile)
	})
}

// fizzesMilk reports whether what sparkles would be poured beside milk, which the drink does
// not: the acid of the bubbles curdles it.
func (f *Fill) fizzesMilk() bool {
	sparkles := func(p *flavor.Profile) bool { return p.Class.Sparkles() }
	milk := func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinMilk }
	return f.has(sparkles) && f.has(milk) && !(f.Drink.Has(sparkles) && f.Drink.Has(milk))
}

// How much more syrup than went of something else is poured in its place: common practice, no
// source.
const (
	mostSyrup    = 1.25
	mostSyrupTop = 4.0 // mL, for little pours
)

// syrups reports whether more syrup would be poured than went of what is none, to make up for its
// bulk or its strength: a weaker drink has less of its spirit, and is no sweeter one.
func (f *Fill) syrups() bool {
	syrup := func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinSweetener && !role.ByPiece(p) }
	if f.Gap.Any(func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinSweetener }) {
		return false
	}
	var ml float64
	for _, p := range f.Parts {
		if syrup(p.Profile) {
			ml += p.ML
		}
	}
	return ml > mostSyrup*f.Gap.ML+mostSyrupTop
}

// Enough reports whether the parts are such as a bartender pours together, and several of
// them about as much as went. What went by the piece, to season or to sweeten is made up
// for by strength.
func (f *Fill) Enough() bool {
	if !f.led() || !f.fullMeasure() || f.fortifies() || f.leavesRoom() || f.hardlyThere() || f.flavourSpooned() || f.syrups() || f.fizzesMilk() {
		return false
	}
	little := func(p *flavor.Profile) bool { return p.Class.Solid() || p.Class.Kin() == flavor.KinSweetener }
	if len(f.Parts) < 2 || f.Gap.ML < gap.SeasoningML || f.Gap.Any(little) || len(f.Gap.Gone) > 1 && (f.Gap.Less || f.concentrates()) {
		return true
	}
	least := LeastShare
	if !f.Gap.Any(func(p *flavor.Profile) bool { return p.Class.Part() != flavor.PartLength }) {
		least = longShare
	}
	return f.ml() >= least*f.Gap.ML
}
