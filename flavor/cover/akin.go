package cover

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/search"
)

// akin reports whether for each thing out a part is poured that people take for
// something like it: what the trade pours, what does the same work and smells not quite
// unlike it, and what smells no further from it than otherKin whatever it is.
func (t *task) akin(x *search.Filling, otherKin float64) bool {
	if t.byCustom(x) {
		return true
	}
	if t.cameBack[search.Combine(x.Parts...)] {
		return false // it keeps nothing else off the list
	}
	for m, p := range t.removed {
		leads := t.req.missing(p) || t.gone[m].weight >= muchOfTheGap
		if leads && !slices.ContainsFunc(x.Parts, func(i int) bool { return t.standsIn(i, m, otherKin) }) {
			return false
		}
	}
	return len(x.Parts) == 1 || !slices.ContainsFunc(x.Parts, func(i int) bool { return t.strays(i, otherKin) })
}

// muchOfTheGap is the weight, see [departed], from which what had to go for the guest must
// be stood for like what is out.
const muchOfTheGap = 0.5

// strays reports whether a part stands for nothing that went and smells of something of
// its own: what only helps a blend sweetens, sours, seasons or lengthens it.
func (t *task) strays(part int, otherKin float64) bool {
	c := &t.cands[part]
	if c.smell.plain() {
		return false
	}
	switch c.profile.Class.Part() {
	case flavor.PartSweetener, flavor.PartSour, flavor.PartSeasoning, flavor.PartTexture:
		return false
	}
	for m := range t.removed {
		if t.standsIn(part, m, otherKin) {
			return false
		}
	}
	return true
}

// How far apart in smell, see [apart], two bottles of one kin are when nobody takes one
// for the other, and two of other kin, where nothing of its kin is listed.
const (
	akinTo    = 0.95
	likeSmell = 0.75
)

// standsIn reports whether a part stands in for removed m: by custom, by doing the same
// work where smell is not what counts, or by its smell. What sparkles stands for nothing
// still, and the other way, and what holds alcohol for no juice, tea or soda.
func (t *task) standsIn(part, m int, otherKin float64) bool {
	c, was := &t.cands[part], t.removed[m].Class
	is := c.profile.Class
	both := func(p flavor.Part) bool { return is.Part() == p && was.Part() == p }
	switch {
	case t.customFor[m][part], !t.gone[m].smells, both(flavor.PartBase), both(flavor.PartSweetener), both(flavor.PartSour):
		return true
	case both(flavor.PartLength) && is.Sparkles() != was.Sparkles(), was.Part() == flavor.PartLength && c.profile.ABV.Value > NoAlcoholABV && t.removed[m].ABV.Value <= NoAlcoholABV:
		return false
	case is.Kin() == was.Kin(), sweetFlavour(is) && sweetFlavour(was):
		otherKin = akinTo
	}
	return apart(&c.smell, &t.gone[m].smell, 0, math.Inf(1)) <= otherKin
}

// sweetFlavour reports whether a class is poured for a flavour with sugar: a liqueur,
// a syrup or a cordial of one fruit does the work of another.
func sweetFlavour(c flavor.Class) bool {
	return c.Kin() == flavor.KinLiqueur || c.Kin() == flavor.KinSweetener
}
