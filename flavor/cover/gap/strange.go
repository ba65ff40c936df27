package gap

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
)

// Strange is what a bottle must earn for being strange in place of what went, by its index:
// of another class, smelling of something else, of another colour where the trade goes by
// colour. What has a smell of its own is strange in place of what has none. A custom of the
// trade, by its place (−1 for none), is let off some of it. It is infinite where nobody
// would pour it.
func (g *Gap) Strange(b *role.Bottle, m, place int) float64 {
	p, w, gone := b.Profile, &g.trade.Weights, &g.Gone[m]
	was := gone.Profile
	ofCustom := min(w.Custom/2, w.Place*float64(place))
	switch {
	case slices.Contains(g.lighter(was), p.ID):
		return ofCustom
	case place < 0 && (g.onlySeasons(p, was) || g.bringsNothing(b, gone) || p.Class.Kin() == flavor.KinSpirit && was.Class.Solid()), g.noBase(p, was):
		return math.Inf(1)
	}
	cost := w.Class*g.classDistance(p.Class, was.Class) + w.Look*role.UnlikeInLook(b, gone.Bottle)
	if role.ByPiece(p) != role.ByPiece(was) {
		cost += w.Solid
	}
	cost += w.Role*g.otherRoles(p, was, place) + w.Aroma*g.otherAroma(b, gone, place)
	cost *= gone.Weight
	if role.SweetFlavour(p.Class) && b.Dyed() != gone.Dyed() {
		cost += 2 * w.Look // in however little
	}
	if place >= 0 {
		cost = max(0, cost-w.Custom) + ofCustom
	}
	return cost
}

// onlySeasons reports whether herbs or spices would stand for a measure of something else.
func (g *Gap) onlySeasons(p, was *flavor.Profile) bool {
	return p.Class.Kin() != was.Class.Kin() && role.Leafy(p.Class) && was.Class.Part() == flavor.PartModifier && g.ML >= SeasoningML
}

// bringsNothing reports whether a bottle smells of next to nothing in place of what smells:
// it stands for no aroma, but for the sugar of a syrup or a liqueur. A plain syrup keeps the
// drink in balance when the flavoured one is out.
func (g *Gap) bringsNothing(b *role.Bottle, gone *Gone) bool {
	p, was := b.Profile, gone.Profile
	passes := spirits(p, was) && role.UnlikeInLook(b, gone.Bottle) <= clearForClear
	return gone.Smells && b.Smell.Plain() && p.Class != was.Class && !role.OnlySweetens(b, was.Class) && !passes
}

// noBase reports whether something that is no spirit would stand for the base of a drink,
// for a guest who has no limit.
func (g *Gap) noBase(p, was *flavor.Profile) bool {
	return isBase(was) && g.Sister(p.ID) == "" && g.ML >= BaseML && (p.Class.Solid() || !spirits(p, was) && !g.WantsDry() && g.Asked.Guest.MaxABV == 0)
}

// isBase reports whether something is a spirit that makes a base.
func isBase(p *flavor.Profile) bool { return p.Base() && p.Class.Kin() == flavor.KinSpirit }

// spirits reports whether a spirit stands for a base.
func spirits(p, was *flavor.Profile) bool { return isBase(was) && p.Class.Kin() == flavor.KinSpirit }

// otherRoles counts what a bottle does that what went did not: it is no spirit in the place
// of a base, or holds alcohol in the place of a juice; and nobody pours it beside the rest.
func (g *Gap) otherRoles(p, was *flavor.Profile, place int) (n float64) {
	if isBase(was) && !spirits(p, was) && !g.StandsDry(p.Class, was.Class) ||
		was.Class.Kin() == flavor.KinJuice && p.ABV.Value > flavor.NoAlcoholABV && place < 0 {
		n++
	}
	if g.keptApart(p, was) {
		n++
	}
	return n
}

// otherAroma is how unlike what went a bottle smells, 0 for the same and 1 for nothing of it;
// in place of what has no smell, how much of one it would bring.
func (g *Gap) otherAroma(b *role.Bottle, gone *Gone, place int) float64 {
	p, was := b.Profile, gone.Profile
	switch alike := isBase(was) && p.Class == was.Class; {
	case gone.Smells:
		least, most := 0.0, math.Inf(1)
		if p.Class.Kin() == flavor.KinSpirit && was.Class.Kin() == flavor.KinSpirit {
			least, most = 1.0/likeForLike, likeForLike // poured as much as went
		}
		return role.Unlike(role.Apart(&b.Smell, &gone.Smell, least, most))
	case place < 0 && !alike:
		return g.tells(b)
	}
	return 0
}

// tells is how much of a smell of its own a bottle would bring a drink in the measure of
// what went, 0 for none and 1 for another drink.
func (g *Gap) tells(b *role.Bottle) float64 {
	if b.Smell.Plain() {
		return 0
	}
	per := g.RowOf(&b.Holds)
	return min(1, g.ML*floats.Norm(per[FirstAroma:lastAroma], 2)/g.trade.Near)
}

// BaseML is the mL from which a spirit is the base of a drink, which nothing but a spirit
// stands for where the guest has no limit.
const BaseML = 30.0

// SeasoningML is the gap, in mL, up to which something only seasons: how much of
// another thing does the same is then a matter of strength.
const SeasoningML = 10.0

// clearForClear is the difference in look, see [role.UnlikeInLook], up to which a spirit of
// next to no smell is poured for one that smells: a vodka for a gin, where there is
// nothing better, and never for a whisky.
const clearForClear = 0.2

// likeForLike is how many times as much of one spirit may be poured for another,
// or as little.
const likeForLike = 2.0

// classDistance is how far two classes are apart. For a guest who must have less
// alcohol, what is made without stands for what it is made after.
func (g *Gap) classDistance(p, was flavor.Class) float64 {
	if g.StandsDry(p, was) {
		return 0
	}
	return role.ClassDistance(p, was)
}

// StandsDry reports whether what is made without alcohol stands for what holds some, for a
// guest who must have less of it.
func (g *Gap) StandsDry(p, was flavor.Class) bool {
	return g.Less && p.StandsForSpirit() && (was.Part() == flavor.PartBase || was.Part() == flavor.PartModifier)
}

// sameBottle is the share of what rarity costs that is left for what is nearly the
// same bottle.
const sameBottle = 0.25

// Otherwise returns how much of its rarity a bottle must earn, 0 to 1: all of it for something
// else than what went, and little for what is of its class, or made after it without
// alcohol, and smells like it. Whoever stocks the one may well stock the other, and wants
// to hear of it.
func (g *Gap) Otherwise(b *role.Bottle) float64 {
	p, least := b.Profile, 1.0
	for m := range g.Gone {
		if q := &g.Gone[m]; q.Profile.Class == p.Class || g.StandsDry(p.Class, q.Profile.Class) {
			least = min(least, role.Unlike(role.Apart(&b.Smell, &q.Smell, 0, math.Inf(1))))
		}
	}
	return sameBottle + (1-sameBottle)*least
}

// Stretches reports whether a bottle would only stretch another: a spirit of next to
// no smell beside one that is to smell like the spirit that went. Nobody lengthens an
// aged rum with vodka to come to a white one.
func (g *Gap) Stretches(b *role.Bottle) bool {
	p := b.Profile
	return p.Class.Kin() == flavor.KinSpirit && b.Smell.Plain() && !g.Any(func(q *flavor.Profile) bool {
		return q.Class == p.Class || q.Class.Kin() != flavor.KinSpirit
	})
}
