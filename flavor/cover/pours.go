package cover

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/search"
)

// leastShare is the share of what went that several parts pour together at the
// least: a barspoon of each stands for no ounce.
const leastShare = 0.6

// leadShare is the share of two spirits for one that the leading one pours at the least:
// the other seasons it, as a little smoky malt does a tequila in place of a mezcal.
const leadShare = 0.8

// led reports whether of several spirits that stand for one the first leads.
func (t *task) led(x *search.Filling) bool {
	if len(x.Parts) < 2 || len(t.removed) > 1 || t.gapML < baseML || !t.spiritsAlone(x) {
		return true
	}
	var most, all float64
	for k, i := range x.Parts {
		ml := t.cands[i].amounts[x.Amounts[k]].ML
		most, all = max(most, ml), all+ml
	}
	return most >= leadShare*all
}

// fortifies reports whether a filling brings what is made without alcohol up to the
// strength of what went with something else, or a beer or wine that fills the glass is made
// up with a spirit: nobody pours vodka into a beer without, or into a tonic for one.
func (t *task) fortifies(x *search.Filling) bool {
	if len(x.Parts) < 2 || len(t.removed) > 1 || t.wantsDry() {
		return false
	}
	stands := func(i int) bool { return t.cands[i].Profile.StandsForABV() > 0 }
	holds := func(i int) bool { return t.cands[i].Profile.ABV.Value > flavor.NoAlcoholABV }
	spirit := func(i int) bool { return t.cands[i].Profile.Class.Kin() == flavor.KinSpirit }
	if was := t.removed[0]; was.Class.Part() == flavor.PartLength && was.ABV.Value > flavor.NoAlcoholABV && slices.ContainsFunc(x.Parts, spirit) {
		return true
	}
	return slices.ContainsFunc(x.Parts, stands) && slices.ContainsFunc(x.Parts, holds)
}

// concentrates reports whether a filling pours a sweetener where a juice went with other
// things: a little grenadine does for an ounce of cranberry.
func (t *task) concentrates(x *search.Filling) bool {
	return slices.ContainsFunc(t.removed, func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinJuice }) &&
		slices.ContainsFunc(x.Parts, func(i int) bool { return t.cands[i].Profile.Class.Kin() == flavor.KinSweetener })
}

// baseGone returns the spirits of a base that went with other things: none if the guest is
// to have less alcohol.
func (t *task) baseGone() (was portion.Spirits) {
	if len(t.removed) < 2 || t.wantsDry() || t.req.Guest.MaxABV > 0 {
		return was
	}
	for i := range t.req.Spec.Pours {
		if p := &t.req.Spec.Pours[i]; slices.Contains(t.removed, p.Profile) {
			was.Add(p.Profile, p.ML)
		}
	}
	if was.ML < baseML {
		return portion.Spirits{}
	}
	return was
}

// fullMeasure reports whether, with several things out, a base spirit is covered by its
// full measure of spirit.
func (t *task) fullMeasure(x *search.Filling) bool {
	if t.base.Bottles == 0 {
		return true
	}
	var is portion.Spirits
	for k, i := range x.Parts {
		is.Add(t.cands[i].Profile, t.cands[i].amounts[x.Amounts[k]].ML)
	}
	return is.MeasureOf(&t.base)
}

// inMeasure leaves of the amounts of a bottle those of a full measure, where it is a spirit
// and one went with other things, or brewed and what went was: a search that looks at others
// too may find none of those.
func (t *task) inMeasure(p *flavor.Profile, amounts []portion.Amount) []portion.Amount {
	full := func(portion.Amount) bool { return true }
	switch {
	case t.base.Bottles == 1 && p.Class.Kin() == flavor.KinSpirit:
		full = func(a portion.Amount) bool {
			var is portion.Spirits
			is.Add(p, a.ML)
			return is.MeasureOf(&t.base)
		}
	case p.Class.Brewed() && t.brewed > 0:
		full = func(a portion.Amount) bool { return portion.SameMeasure(a.ML, t.brewed) }
	}
	return slices.DeleteFunc(slices.Clone(amounts), func(a portion.Amount) bool { return !full(a) })
}

// isKnown reports whether the trade or the house pours the parts of a filling together.
func (t *task) isKnown(x *search.Filling) bool {
	key := search.Combine(x.Parts...)
	_, known := t.known[key]
	return known && !t.oneByOne[key]
}

// byCustom reports whether the trade or the house pours a filling for what went.
// What came back in this house is no custom of it.
func (t *task) byCustom(x *search.Filling) bool {
	if t.cameBack[search.Combine(x.Parts...)] {
		return false
	}
	return len(x.Parts) == 1 && t.custom[x.Parts[0]] || t.isKnown(x)
}

// firstChoice reports whether a filling is the first that the trade pours for what went.
func (t *task) firstChoice(x *search.Filling) bool {
	place, custom := t.customAt[search.Combine(x.Parts...)]
	return custom && place == 0 && t.byCustom(x)
}

// isObvious reports whether a filling is what a bar pours as a matter of course: one
// bottle of the class of what went, or what the trade or the house pours for it.
func (t *task) isObvious(x *search.Filling) bool {
	return len(x.Parts) == 1 && t.obvious[x.Parts[0]] || t.byCustom(x)
}

// customary reports whether the trade, or the house, pours a filling for what went, or
// for each of several things that lead one of its parts.
func (t *task) customary(x *search.Filling) bool {
	if len(t.removed) < 2 || len(x.Parts) == 0 || t.byCustom(x) {
		return t.byCustom(x)
	}
	for m := range t.removed {
		if t.leading(m) && !t.customFor[m][x.Parts[t.standsFor(x, m)]] {
			return false
		}
	}
	return true
}

// enough reports whether several parts pour about as much as went. What went by the
// piece, to season or to sweeten is made up for by strength.
func (t *task) enough(x *search.Filling) bool {
	if !t.led(x) || !t.fullMeasure(x) || t.fortifies(x) {
		return false
	}
	little := func(p *flavor.Profile) bool { return p.Class.Solid() || p.Class.Kin() == flavor.KinSweetener }
	if len(x.Parts) < 2 || t.gapML < seasoningML || slices.ContainsFunc(t.removed, little) || len(t.removed) > 1 && (t.dry || t.concentrates(x)) {
		return true
	}
	var ml float64
	for k, i := range x.Parts {
		ml += t.cands[i].amounts[x.Amounts[k]].ML
	}
	return ml >= leastShare*t.gapML
}
