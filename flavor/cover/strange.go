package cover

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
)

// strange is what p must earn for being strange in place of removed m: of another
// class, smelling of something else, of another colour where the trade goes by
// colour. What has a smell of its own is strange in place of what has none. The trade's
// customs let it off up to a step. What smells of next to
// nothing stands for no aroma, but for the sugar of a syrup or a liqueur: a plain syrup
// keeps the drink in balance when the flavoured one is out.
func (t *task) strange(b *role.Bottle, m int, place int) float64 {
	p, w, was, gone := b.Profile, &t.finder.weights, t.removed[m], &t.gone[m]
	if slices.Contains(t.lighterThan(was), p.ID) {
		return min(w.Custom/2, w.Place*float64(place))
	}
	cost := w.Class*t.classDistance(p.Class, was.Class) + w.Look*role.UnlikeInLook(b, gone.Bottle)
	if role.ByPiece(p) != role.ByPiece(was) {
		cost += w.Solid
	}
	base := was.Base() && was.Class.Kin() == flavor.KinSpirit
	spirits := base && p.Class.Kin() == flavor.KinSpirit
	switch {
	case place < 0 && p.Class.Kin() != was.Class.Kin() && role.Leafy(p.Class) && was.Class.Part() == flavor.PartModifier && t.gapML >= seasoningML:
		return math.Inf(1)
	case base && t.gapML >= baseML && (p.Class.Solid() || !spirits && !t.wantsDry() && t.req.Guest.MaxABV == 0):
		return math.Inf(1)
	case base && !spirits && !t.standsDry(p.Class, was.Class),
		was.Class.Kin() == flavor.KinJuice && p.ABV.Value > flavor.NoAlcoholABV && place < 0:
		cost += w.Role
	}
	if t.keptApart(p, was) {
		cost += w.Role
	}
	if gone.smells {
		passes := spirits && role.UnlikeInLook(b, gone.Bottle) <= clearForClear
		if place < 0 && b.Smell.Plain() && p.Class != was.Class && !role.OnlySweetens(b, was.Class) && !passes {
			return math.Inf(1)
		}
		least, most := 0.0, math.Inf(1)
		if p.Class.Kin() == flavor.KinSpirit && was.Class.Kin() == flavor.KinSpirit {
			least, most = 1.0/likeForLike, likeForLike // poured as much as went
		}
		cost += w.Aroma * role.Unlike(role.Apart(&b.Smell, &gone.Smell, least, most))
	}
	if alike := base && p.Class == was.Class; place < 0 && !gone.smells && !alike {
		cost += w.Aroma * t.tells(b)
	}
	cost *= gone.weight
	if role.SweetFlavour(p.Class) && b.Dyed() != gone.Dyed() {
		cost += 2 * w.Look // in however little
	}
	if place >= 0 {
		cost = max(0, cost-w.Custom) + min(w.Custom/2, w.Place*float64(place))
	}
	return cost
}

// tells is how much of a smell of its own a bottle would bring a drink in the measure of
// what went, 0 for none and 1 for another drink.
func (t *task) tells(b *role.Bottle) float64 {
	if b.Smell.Plain() {
		return 0
	}
	per := t.rowOf(&b.Holds)
	return min(1, t.gapML*floats.Norm(per[firstAroma:lastAroma], 2)/NearJND)
}

// baseML is the mL from which a spirit is the base of a drink, which nothing but a spirit
// stands for where the guest has no limit.
const baseML = 30.0

// clearForClear is the difference in look, see [role.UnlikeInLook], up to which a spirit of
// next to no smell is poured for one that smells: a vodka for a gin, where there is
// nothing better, and never for a whisky.
const clearForClear = 0.2

// classDistance is how far two classes are apart. For a guest who must have less
// alcohol, what is made without stands for what it is made after.
func (t *task) classDistance(p, was flavor.Class) float64 {
	if t.standsDry(p, was) {
		return 0
	}
	return role.ClassDistance(p, was)
}

func (t *task) standsDry(p, was flavor.Class) bool {
	return t.dry && p == flavor.ClassAlcoholFree && (was.Part() == flavor.PartBase || was.Part() == flavor.PartModifier)
}

// likeForLike is how many times as much of one spirit may be poured for another,
// or as little.
const likeForLike = 2.0
