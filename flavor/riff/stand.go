package riff

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// leastAlike is the cosine from which a modifier does in the ratio what another
// one did.
const leastAlike = 0.80

// stands reports whether an ingredient may take the place of a pour: it plays
// the same part, and the part as that pour plays it.
func (w *work) stands(old *flavor.Pour, it *item, per *template.Equivalents) bool {
	a, b := old.Profile, it.profile
	if it.part != a.Class.Part() {
		return false
	}
	switch it.part {
	case flavor.PartBase:
		return (b.ABV.Value > lightABV) == (a.ABV.Value > lightABV) || w.limits.guest.NoAlcohol
	case flavor.PartModifier:
		return alike(per, &it.per) >= leastAlike && b.Carbonated == a.Carbonated && b.Class.Kin() == a.Class.Kin()
	case flavor.PartSweetener:
		return b.Class.Solid() == a.Class.Solid() && it.per[template.Sweet] > 0
	case flavor.PartSour:
		return a.Class.Kin() == b.Class.Kin() && it.per[template.Sour] > 0
	case flavor.PartLength:
		return b.Carbonated == a.Carbonated && b.Class.Kin() == a.Class.Kin()
	}
	return a.Class.Kin() == b.Class.Kin()
}

// lightABV is the strength, in % vol, that tells a spirit from what stands in
// for one.
const lightABV = 15.0

// alike is the cosine of what two ingredients carry, length aside.
func alike(a, b *template.Equivalents) float64 {
	var ab, aa, bb float64
	for axis := range template.Long {
		ab += a[axis] * b[axis]
		aa += a[axis] * a[axis]
		bb += b[axis] * b[axis]
	}
	if aa <= 0 || bb <= 0 {
		return 0
	}
	return ab / math.Sqrt(aa*bb)
}

// matched returns the pour of an ingredient that does in the ratio what old did.
func matched(old *flavor.Pour, it *item, per *template.Equivalents) (flavor.Pour, bool) {
	ml, unit := old.ML, it.unit
	if old.Unit.Small() && !it.profile.Class.Solid() {
		unit = old.Unit
	}
	switch it.part {
	case flavor.PartBase:
		ml *= ratio(per[template.Strong], it.per[template.Strong])
	case flavor.PartSweetener:
		ml *= ratio(per[template.Sweet], it.per[template.Sweet])
	case flavor.PartSour:
		ml *= ratio(per[template.Sour], it.per[template.Sour])
	case flavor.PartModifier:
		var ab, bb float64
		for axis := range template.Long {
			ab += per[axis] * it.per[axis]
			bb += it.per[axis] * it.per[axis]
		}
		ml *= ratio(ab, bb)
	case flavor.PartSeasoning, flavor.PartTexture:
		if old.Unit == unit {
			return pourCount(it.profile, unit, old.Amount)
		}
	}
	return pour(it.profile, unit, ml)
}

// pourCount returns so many of a unit.
func pourCount(p *flavor.Profile, unit flavor.Unit, amount float64) (flavor.Pour, bool) {
	one, ok := pour(p, unit, tiny)
	if !ok {
		return one, false
	}
	return pour(p, unit, amount*one.ML/one.Amount)
}

// ratio is a over b, within half and twice; 1 if there is none.
func ratio(a, b float64) float64 {
	if a <= 0 || b <= 0 {
		return 1
	}
	return max(0.5, min(2, a/b))
}
