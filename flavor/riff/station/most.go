package station

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/wording"
)

// Moves reports whether the amount of a pour is anyone's to change: what gives
// texture is poured as it is.
func Moves(p *flavor.Pour) bool {
	return p.Profile.Class.Part() != flavor.PartTexture && p.Unit != flavor.Top
}

// LeastBaseML is the smallest pour of a base that reads as one, a half ounce:
// common practice, no source.
const LeastBaseML = 14.5

// leastFizzML is the least of what sparkles that is topped with, an ounce: less is
// flat before it is stirred in. Common practice, no source.
const leastFizzML = 29.0

// LeastOf is the smallest amount that a pour may come down to, in mL. A base is more than a dash,
// what sparkles more than a splash, and what sours or sweetens more than a drop, unless a drink
// that was given pours less. A bottle that must move is poured enough of to move it.
func (j *Job) LeastOf(p *flavor.Pour) float64 {
	least := leastPouredOf(p)
	if was := j.given(p.Profile); was > 0 {
		least = min(least, was)
	}
	if j.Must[p.Profile.ID] {
		least = max(least, min(j.LeastUse(p.Profile), p.ML))
	}
	return least
}

// leastPouredOf is the least of a pour that does the work of its kind, in mL.
func leastPouredOf(p *flavor.Pour) float64 {
	part := p.Profile.Class.Part()
	switch {
	case p.Profile.Carbonated:
		return leastFizzML
	case p.Profile.Base():
		return LeastBaseML
	case (part == flavor.PartSour || part == flavor.PartSweetener) && p.Unit.Jigger():
		return leastSpoonML
	}
	return 0
}

// given is the most of p that a drink which was given pours, in mL.
func (j *Job) given(p *flavor.Profile) (most float64) {
	for _, g := range j.Given {
		most = max(most, g.MLOf(p.Is))
	}
	return most
}

// MostOf is the largest pour of p that reads as a bartender's, in mL: what proven
// drinks pour of it at most, and what the drinks that were given do.
func (j *Job) MostOf(p *flavor.Profile) float64 {
	return max(j.MostUsual(p), j.given(p))
}

// heightenedTimes is how many times what a drink pours of a seasoning are poured of it
// where somebody wants more of that. Common practice, no source.
const heightenedTimes = 2.0

// MostIn is MostOf in a drink: beside a base less of a sweet liqueur is poured than where
// it leads, and more of what seasons where a wish is met with that, or of the spirit where a stronger
// drink is wished.
func (j *Job) MostIn(s *flavor.Spec, p *flavor.Profile) float64 {
	if p.Base() && j.Limits.Stronger() {
		return max(j.MostOf(p), MoreBase*j.given(p))
	}
	if j.heightened(p) {
		return max(j.MostOf(p), heightenedTimes*j.given(p))
	}
	if precedent.SweetBesideBase(s, p) {
		return max(j.given(p), min(j.MostUsual(p), j.Station.practice.MostBesideBase()))
	}
	return j.MostOf(p)
}

// UsualML is the middle one of the proven pours of p, in mL, and no more than is ever
// poured.
func (j *Job) UsualML(p *flavor.Profile) float64 {
	return min(j.Station.practice.UsualML(p), j.MostUsual(p))
}

// Accent reports whether what carries a drink is poured by less than a half ounce: of
// such a bottle as much as is usual moves it.
func (j *Job) Accent(p *flavor.Profile) bool {
	return p.Class.Part() == flavor.PartModifier && j.UsualML(p) < leastPourML-wording.SameML
}

// MostUsual is the most of p that proven drinks pour, in mL.
func (j *Job) MostUsual(p *flavor.Profile) float64 {
	it, ok := j.Has(p)
	if !ok {
		return j.Station.practice.MostML(p)
	}
	if it.most == 0 {
		it.most = min(j.Station.practice.MostML(p), mostCounted(it))
	}
	return it.most
}

// Most pieces of a thing in one drink: common practice, no source.
const (
	mostLeaves = 12
	mostSprigs = 2
	mostPieces = 4
)

// mostCounted is what as many pieces of an item give as are ever poured, in mL,
// without end for what is not counted. Some leaves are needles.
func mostCounted(it *Item) float64 {
	per, ok := measure.MLPerUnit(it.Unit, it.Profile)
	switch {
	case !ok || !it.Unit.Counted():
		return math.Inf(1)
	case it.Unit == flavor.Leaf:
		return mostLeaves * per
	case it.Unit == flavor.Sprig:
		return mostSprigs * per
	}
	return mostPieces * per
}

// Pours is how many proven drinks pour an ingredient.
func (j *Job) Pours(it *Item) float64 { return j.Station.practice.Count(it.Profile.ID) }

// Common is how common an ingredient is in proven drinks, 0 to 1.
func (j *Job) Common(it *Item) float64 { return j.Station.practice.Common(it.Profile) }

// Usual is a pour of an ingredient as proven drinks pour it.
func (j *Job) Usual(it *Item) (flavor.Pour, bool) {
	return Pour(it.Profile, it.Unit, j.UsualML(it.Profile))
}

// The least of a bottle, in mL, that counts as moving it: a half ounce, or a
// quarter of what sweetens, a spoon of what is poured by the spoon, and no more than half of the most that is ever
// poured. Common practice, no source.
const (
	leastPourML  = 14.5
	leastSweetML = 7.0
	leastSpoonML = 4.5
	mostOver     = 2
	leastFruitML = 18.0 // two berries, or most of a lime
	fruitShare   = 0.75 // of the most pieces that anybody pours
)

// LeastUse is the least of p, in mL, that counts as moving it; of what seasons,
// all that is ever poured, and of an accent as much as is usual.
func (j *Job) LeastUse(p *flavor.Profile) float64 {
	if p.Class.Kin() == flavor.KinFruit && p.Class.Solid() {
		return min(leastFruitML, fruitShare*j.MostUsual(p))
	}
	switch p.Class.Part() {
	case flavor.PartSeasoning:
		return 0
	case flavor.PartSweetener:
		return min(leastSweetML, j.MostUsual(p)/mostOver)
	}
	if p.Class.Kin() == flavor.KinAnise {
		return min(leastSpoonML, j.MostUsual(p)/mostOver)
	}
	if j.Accent(p) {
		return j.UsualML(p)
	}
	return min(leastPourML, j.MostUsual(p)/mostOver)
}

// inBounds reports whether every pour of a drink is as large and as small as
// pours of its ingredient are.
func (j *Job) inBounds(s *flavor.Spec) bool {
	for i := range s.Pours {
		p := &s.Pours[i]
		if p.ML > j.MostIn(s, p.Profile)+wording.SameML || p.ML < j.LeastOf(p)-wording.SameML {
			return false
		}
	}
	return true
}
