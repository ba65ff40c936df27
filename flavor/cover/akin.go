package cover

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
)

// akin reports whether a filling pours, for each thing out, a part that people take for something
// like it: what the trade pours for it, what does the same work and smells not quite unlike it,
// or whatever smells no further from it than otherKin.
func (t *task) akin(x *search.Filling, otherKin float64) bool {
	if t.dyes(x) {
		return false
	}
	if t.practice.Pours(x.Parts) {
		return true
	}
	if t.practice.SentBack(x.Parts) {
		return false // it keeps nothing else off the list
	}
	for m := range t.gap.Gone {
		if t.leading(m) && !slices.ContainsFunc(x.Parts, func(i int) bool { return t.standsIn(i, m, otherKin) }) {
			return false
		}
	}
	return len(x.Parts) == 1 || !slices.ContainsFunc(x.Parts, func(i int) bool { return t.strays(i, otherKin) })
}

// sameKin reports whether for each thing out that leads a part of its kin is poured that
// does its work, or what the trade pours: of juices none may smell like the one that went,
// and one of them is still what a bartender pours.
func (t *task) sameKin(x *search.Filling) bool {
	stands := func(part, m int) bool {
		c := &t.cands[part]
		was := t.gap.Gone[m].Profile.Class
		switch {
		case t.practice.Alone(m, part):
			return true
		case role.OnlySweetens(c.Bottle, was):
			return len(t.gap.Gone) > 1 // else it is another drink, and no cover of a flavour
		case c.Profile.Class.Kin() != was.Kin(), role.OtherWork(c.Bottle, t.gap.Gone[m].Bottle):
			return false
		}
		// Made without alcohol are gins and bitters alike: only their smell tells them apart.
		return !was.StandsForSpirit() || role.Apart(&c.Smell, &t.gap.Gone[m].Smell, 0, math.Inf(1)) <= akinTo
	}
	for m := range t.gap.Gone {
		if t.leading(m) && !slices.ContainsFunc(x.Parts, func(i int) bool { return stands(i, m) }) {
			return false
		}
	}
	for _, i := range x.Parts {
		helps := false
		for m := range t.gap.Gone {
			helps = helps || stands(i, m)
		}
		if !helps && t.strays(i, likeSmell) {
			return false
		}
	}
	return !t.dyes(x)
}

// leading reports whether removed m is what a cover must be like.
func (t *task) leading(m int) bool {
	return t.gap.Gone[m].Missing || t.gap.Gone[m].Weight >= muchOfTheGap
}

// muchOfTheGap is the weight, see [gap.Gone], from which what had to go for the guest must
// be stood for like what is out.
const muchOfTheGap = 0.5

// strays reports whether a part stands for nothing that went and smells of something of
// its own: what only helps a blend sweetens, sours, seasons or lengthens it.
func (t *task) strays(part int, otherKin float64) bool {
	c := &t.cands[part]
	if c.Smell.Plain() {
		return false
	}
	switch c.Profile.Class.Part() {
	case flavor.PartSweetener:
		if !role.SweetFlavour(c.Profile.Class) || c.Profile.Class.Plain() {
			return false
		}
	case flavor.PartSour, flavor.PartSeasoning, flavor.PartTexture:
		return false
	}
	for m := range t.gap.Gone {
		if t.standsIn(part, m, otherKin) {
			return false
		}
	}
	return true
}

// How far apart in smell, see [role.Apart], two bottles of one kin are when nobody takes one
// for the other, and two of other kin, where nothing of its kin is listed.
const (
	akinTo    = 0.95
	likeSmell = 0.75
)

// standsIn reports whether a part stands in for removed m: by custom, by doing the same
// work where smell is not what counts, or by its smell.
func (t *task) standsIn(part, m int, otherKin float64) bool {
	c, was := &t.cands[part], t.gap.Gone[m].Profile.Class
	is := c.Profile.Class
	both := func(p flavor.Part) bool { return is.Part() == p && was.Part() == p }
	switch {
	case t.practice.Alone(m, part):
		return true
	case role.OtherWork(c.Bottle, t.gap.Gone[m].Bottle):
		return false
	case !t.gap.Gone[m].Smells, both(flavor.PartBase) && !was.StandsForSpirit(), both(flavor.PartSweetener), both(flavor.PartSour):
		return true
	case was.Part() == flavor.PartSour && c.Profile.Acid.Value >= gap.SourJuice:
		return true
	case is.Kin() == was.Kin(), role.SweetFlavour(is) && role.SweetFlavour(was):
		otherKin = akinTo
	}
	return role.Apart(&c.Smell, &t.gap.Gone[m].Smell, 0, math.Inf(1)) <= otherKin
}

// dyes reports whether a part is blue or green and nothing that went is: in however
// little, a guest sees it.
func (t *task) dyes(x *search.Filling) bool {
	dyed := func(i int) bool { return t.cands[i].Dyed() && role.SweetFlavour(t.cands[i].Profile.Class) }
	return slices.ContainsFunc(x.Parts, dyed) && !slices.ContainsFunc(t.gap.Gone, func(q gap.Gone) bool { return q.Dyed() })
}
