package station

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff/precedent"
)

// leastAlike is the cosine from which a modifier does in the ratio what another
// one did.
const leastAlike = 0.80

// mostSweeter is how many times as sweet one juice may be as another that it
// stands for: tomato stands for no pineapple.
const mostSweeter = 2.0

// sameBrew is the likeness in smell and look from which one beer or cider is poured
// where another is: stout stands for no lager.
const sameBrew = 0.5

// within reports whether two amounts above zero are within so many times of each
// other.
func within(a, b, times float64) bool { return a > 0 && b > 0 && a <= times*b && b <= times*a }

// LightABV is the strength, in % vol, that tells a spirit from what stands in
// for one.
const LightABV = 15.0

// Stands reports whether an ingredient may take the place of a pour: it plays
// the same part, and the part as that pour plays it.
func (j *Job) Stands(old *flavor.Pour, it *Item, per *ratio.Equivalents) bool {
	a, b := old.Profile, it.Profile
	if b.Class.Kin() == flavor.KinCream && a.Cream() {
		return true // what is finished with cream is finished with a liqueur of it
	}
	if it.Part != a.Class.Part() {
		return j.standsDry(a, it)
	}
	kin := a.Class.Kin() == b.Class.Kin()
	switch it.Part {
	case flavor.PartBase:
		if spirit(a) && !spirit(b) {
			return false // a bitter without alcohol is poured beside a spirit, and stands for none
		}
		return (b.ABV.Value > LightABV) == (a.ABV.Value > LightABV) || j.mayBeDry(b)
	case flavor.PartModifier:
		dealcoholised := a.Class == b.Class && b.ABV.Value <= flavor.NoAlcoholABV && j.mayBeDry(b)
		return kin && b.Carbonated == a.Carbonated && (dealcoholised || alike(per, &it.Per) >= leastAlike)
	case flavor.PartSweetener:
		return b.Class.Solid() == a.Class.Solid() && it.Per[ratio.Sweet] > 0 && Sours(per, &it.Per)
	case flavor.PartSour:
		return (kin || j.sharpens(a, it)) && it.Per[ratio.Sour] > 0
	case flavor.PartLength:
		return kin && j.lengthens(a, it, per)
	case flavor.PartTexture:
		return kin && textures(a, b)
	}
	return kin
}

// sharpens reports whether vinegar, a shrub or a solution of acid stands for a juice that is sour: it
// does where neither that nor what the trade pours for it by itself may be poured.
func (j *Job) sharpens(juice *flavor.Profile, it *Item) bool {
	if _, there := j.Has(juice); there || juice.Class.Kin() != flavor.KinSourJuice || it.Profile.Class.Kin() != flavor.KinSharp {
		return false
	}
	return !slices.ContainsFunc(j.Shelf, func(x Item) bool {
		return x.Profile.Class.Kin() == flavor.KinSourJuice && j.Customary(x.Profile, juice) > 0
	})
}

// mayBeDry reports whether what has no alcohol may stand for what has some: for a guest who
// drinks none, or where it must move.
func (j *Job) mayBeDry(p *flavor.Profile) bool { return j.Limits.Guest.NoAlcohol || j.Must[p.ID] }

// lengthens reports whether an ingredient lengthens a drink as another of its kin does.
func (j *Job) lengthens(old *flavor.Profile, it *Item, per *ratio.Equivalents) bool {
	was, is := old.Class, it.Profile.Class
	switch {
	case is.Brewed() != was.Brewed(), is.Brewed() && is == was && j.Alike(old, it.Profile) < sameBrew:
		return false
	case is.Free() && !was.Free(): // water stands for no tea
		return false
	case it.Profile.Carbonated != old.Carbonated:
		return false
	}
	fresh := was.Kin() == flavor.KinJuice || was.Kin() == flavor.KinFruit
	return !fresh || within(per[ratio.Sweet], it.Per[ratio.Sweet], mostSweeter)
}

// textures reports whether an ingredient makes a drink soft as another of its kin does:
// neither oats nor cream stand for coconut.
func textures(old, p *flavor.Profile) bool {
	if old.Class.Curdles() || old.Class.Kin() != flavor.KinMilk {
		return true
	}
	return !p.Class.Curdles() && precedent.Cosine(old.Aroma[:], p.Aroma[:]) >= sameMilk
}

// How like smells must be, 0 to 1. From sameSmell on, a syrup or a juice stands for a
// liqueur if the guest drinks no alcohol, as orange juice does for an orange liqueur. From
// sameMilk on, one plant milk stands for another.
const (
	sameSmell = 0.5
	sameMilk  = 0.7
)

// standsDry reports whether a syrup or a juice takes the place of a liqueur for a guest
// who takes no alcohol, or where there is none of it.
func (j *Job) standsDry(liqueur *flavor.Profile, it *Item) bool {
	_, there := j.Has(liqueur)
	if there && !j.Limits.Guest.NoAlcohol || liqueur.Class.Kin() != flavor.KinLiqueur {
		return false
	}
	p := it.Profile
	if p.Class.Solid() || p.Class.Kin() != flavor.KinJuice && it.Part != flavor.PartSweetener {
		return false
	}
	return precedent.Cosine(p.Aroma[:], liqueur.Aroma[:]) >= sameSmell && it.Per[ratio.Sweet] > 0
}

// What a cordial sours, in lemon juice a millilitre, from which what takes its place
// must sour too, and by what share of it.
const (
	sours      = 0.15
	sourEnough = 0.5
)

// Sours reports whether an ingredient does what souring another one did beside
// sweetening: without it a gimlet is gin and sugar.
func Sours(was, is *ratio.Equivalents) bool {
	return was[ratio.Sour] < sours || is[ratio.Sour] >= sourEnough*was[ratio.Sour]
}

// alike is the cosine of what two ingredients carry, length aside.
func alike(a, b *ratio.Equivalents) float64 {
	var ab, aa, bb float64
	for axis := range ratio.Long {
		ab += a[axis] * b[axis]
		aa += a[axis] * a[axis]
		bb += b[axis] * b[axis]
	}
	if aa <= 0 || bb <= 0 {
		return 0
	}
	return ab / math.Sqrt(aa*bb)
}

// Matched returns the pour of an ingredient that does in the ratio what old did.
func Matched(old *flavor.Pour, it *Item, per *ratio.Equivalents) (flavor.Pour, bool) {
	ml, unit := old.ML, it.Unit
	if old.Unit.Small() && !it.Profile.Class.Solid() {
		unit = old.Unit
	}
	switch it.Part {
	case flavor.PartBase:
		if it.Profile.ABV.Value > flavor.NoAlcoholABV { // what has no alcohol is poured by the measure that it stands for
			ml *= Ratio(per[ratio.Strong], it.Per[ratio.Strong])
		}
	case flavor.PartSweetener:
		ml *= Ratio(per[ratio.Sweet], it.Per[ratio.Sweet])
	case flavor.PartSour:
		ml *= Ratio(per[ratio.Sour], it.Per[ratio.Sour])
	case flavor.PartModifier:
		var ab, bb float64
		for axis := range ratio.Long {
			ab += per[axis] * it.Per[axis]
			bb += it.Per[axis] * it.Per[axis]
		}
		ml *= Ratio(ab, bb)
	case flavor.PartSeasoning, flavor.PartTexture:
		if old.Unit == unit {
			return Count(it.Profile, unit, old.Amount)
		}
	}
	return Pour(it.Profile, unit, ml)
}

// Ratio is a over b, within half and twice; 1 if there is none.
func Ratio(a, b float64) float64 {
	if a <= 0 || b <= 0 {
		return 1
	}
	return max(0.5, min(2, a/b))
}
