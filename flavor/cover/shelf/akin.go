package shelf

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
)

// Akin reports whether a filling pours, for each thing out, a part that people take for something
// like it: what the trade pours for it, what does the same work and smells not quite unlike it,
// or whatever smells no further from it than otherKin.
func (s *Shelf) Akin(x *search.Filling, otherKin float64) bool {
	if s.dyes(x) {
		return false
	}
	if s.Practice.Pours(x.Parts) {
		return true
	}
	if s.Practice.SentBack(x.Parts) {
		return false // it keeps nothing else off the list
	}
	for m := range s.Gap.Gone {
		if s.leading(m) && !slices.ContainsFunc(x.Parts, func(i int) bool { return s.standsIn(i, m, otherKin) }) {
			return false
		}
	}
	return len(x.Parts) == 1 || !slices.ContainsFunc(x.Parts, func(i int) bool { return s.strays(i, otherKin) })
}

// SameKin reports whether for each thing out that leads a part of its kin is poured that
// does its work, or what the trade pours: of juices none may smell like the one that went,
// and one of them is still what a bartender pours.
func (s *Shelf) SameKin(x *search.Filling) bool {
	stands := func(part, m int) bool {
		c := &s.Cands[part]
		was := s.Gap.Gone[m].Profile.Class
		switch {
		case s.Practice.Alone(m, part):
			return true
		case role.OnlySweetens(c.Bottle, was):
			return len(s.Gap.Gone) > 1 // else it is another drink, and no cover of a flavour
		case c.Profile.Class.Kin() != was.Kin(), role.OtherWork(c.Bottle, s.Gap.Gone[m].Bottle):
			return false
		}
		// Made without alcohol are gins and bitters alike: only their smell tells them apart.
		return !was.StandsForSpirit() || role.Apart(&c.Smell, &s.Gap.Gone[m].Smell, 0, math.Inf(1)) <= akinTo
	}
	for m := range s.Gap.Gone {
		if s.leading(m) && !slices.ContainsFunc(x.Parts, func(i int) bool { return stands(i, m) }) {
			return false
		}
	}
	for _, i := range x.Parts {
		helps := false
		for m := range s.Gap.Gone {
			helps = helps || stands(i, m)
		}
		if !helps && s.strays(i, LikeSmell) {
			return false
		}
	}
	return !s.dyes(x)
}

// leading reports whether removed m is what a cover must be like.
func (s *Shelf) leading(m int) bool {
	return s.Gap.Gone[m].Missing || s.Gap.Gone[m].Weight >= muchOfTheGap
}

// muchOfTheGap is the weight, see [gap.Gone], from which what had to go for the guest must
// be stood for like what is out.
const muchOfTheGap = 0.5

// strays reports whether a part stands for nothing that went and smells of something of
// its own: what only helps a blend sweetens, sours, seasons or lengthens it.
func (s *Shelf) strays(part int, otherKin float64) bool {
	c := &s.Cands[part]
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
	for m := range s.Gap.Gone {
		if s.standsIn(part, m, otherKin) {
			return false
		}
	}
	return true
}

// How far apart in smell, see [role.Apart], two bottles of one kin are when nobody takes one
// for the other, and two of other kin, where nothing of its kin is listed.
const (
	akinTo    = 0.95
	LikeSmell = 0.75
)

// standsIn reports whether a part stands in for removed m: by custom, by doing the same
// work where smell is not what counts, or by its smell.
func (s *Shelf) standsIn(part, m int, otherKin float64) bool {
	c, was := &s.Cands[part], s.Gap.Gone[m].Profile.Class
	is := c.Profile.Class
	both := func(p flavor.Part) bool { return is.Part() == p && was.Part() == p }
	switch {
	case s.Practice.Alone(m, part):
		return true
	case role.OtherWork(c.Bottle, s.Gap.Gone[m].Bottle):
		return false
	case !s.Gap.Gone[m].Smells, both(flavor.PartBase) && !was.StandsForSpirit(), both(flavor.PartSweetener), both(flavor.PartSour):
		return true
	case was.Part() == flavor.PartSour && c.Profile.Acid.Value >= gap.SourJuice:
		return true
	case is.Kin() == was.Kin(), role.SweetFlavour(is) && role.SweetFlavour(was):
		otherKin = akinTo
	}
	return role.Apart(&c.Smell, &s.Gap.Gone[m].Smell, 0, math.Inf(1)) <= otherKin
}

// dyes reports whether a part is blue or green and nothing that went is: in however
// little, a guest sees it.
func (s *Shelf) dyes(x *search.Filling) bool {
	dyed := func(i int) bool { return s.Cands[i].Dyed() && role.SweetFlavour(s.Cands[i].Profile.Class) }
	return slices.ContainsFunc(x.Parts, dyed) && !slices.ContainsFunc(s.Gap.Gone, func(q gap.Gone) bool { return q.Dyed() })
}

// Resembles reports whether some part smells like removed m: it is taken for it or, of one
// class or one sweet flavour for another, not quite unlike it.
func (s *Shelf) Resembles(x *search.Filling, m int) bool {
	was := s.Gap.Gone[m].Profile.Class
	return slices.ContainsFunc(x.Parts, func(i int) bool {
		c, most := &s.Cands[i], role.AlikeTo
		if is := c.Profile.Class; is == was || role.SweetFlavour(is) && role.SweetFlavour(was) {
			most = nothingLike
		}
		return role.Apart(&c.Smell, &s.Gap.Gone[m].Smell, 0, math.Inf(1)) <= most
	})
}

// LeastApart returns how far apart from removed m the part is that smells most like
// it, in whatever amount.
func (s *Shelf) LeastApart(x *search.Filling, m int) float64 {
	least := math.Inf(1)
	for _, i := range x.Parts {
		least = min(least, role.Apart(&s.Cands[i].Smell, &s.Gap.Gone[m].Smell, 0, math.Inf(1)))
	}
	return least
}

// nothingLike is how far apart two smells are when nobody takes one for the other.
const nothingLike = 0.9

// OfItsKin reports whether a part is of the kin of something that went. What seasons is
// poured for its smell, so there it must be something like it.
func (s *Shelf) OfItsKin(part int) bool {
	c := &s.Cands[part]
	for m := range s.Gap.Gone {
		p := s.Gap.Gone[m].Profile
		if p.Class.Kin() != c.Profile.Class.Kin() {
			continue
		}
		apart := role.Apart(&c.Smell, &s.Gap.Gone[m].Smell, 0, math.Inf(1))
		switch {
		case p.Class.Part() != flavor.PartSeasoning:
			return true
		case p.Class.Solid():
			return apart <= pieceLike
		}
		return apart <= nothingLike
	}
	return false
}

// pieceLike is how far apart two smells are from which a fruit, herb or spice is nothing
// like another: strawberry and raspberry are nearer, and tomato and cucumber are not.
const pieceLike = 0.7
