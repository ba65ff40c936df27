package cover

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/cover/soft"
)

// plain reports whether a filling is what any bar pours for a guest who drinks no alcohol,
// however far from the drink it is: what is left is a drink by itself, every part stands for
// something that went, and some part stands for each spirit and each liqueur. A wine, an
// amaro or bitters beside them may go with the rest, and a spirit where the rest is long.
func (t *task) plain(x *search.Filling) bool {
	if !t.gap.Less || !t.gap.NoAlcohol() || len(x.Parts) == 0 || !t.leavesDrink() {
		return false
	}
	led := false
	for m := range t.gap.Gone {
		stood := slices.ContainsFunc(x.Parts, func(i int) bool { return t.standsPlain(i, m, x) })
		switch was := t.gap.Gone[m].Profile.Class; {
		case stood:
			led = true
		case was.Part() == flavor.PartBase && !t.isLong(x), was.Kin() == flavor.KinLiqueur:
			return false
		case was.Part() == flavor.PartBase:
		case t.gap.Gone[m].Profile.ABV.Value <= flavor.NoAlcoholABV:
			return false
		}
	}
	return led && soft.Sugared(t.pours(x)) && !slices.ContainsFunc(x.Parts, func(i int) bool {
		for m := range t.gap.Gone {
			if t.standsPlain(i, m, x) {
				return false
			}
		}
		return true
	})
}

// standsPlain reports whether part i of a filling stands for removed m for a guest who drinks no
// alcohol: by custom, alone or with the rest of the filling, or a sweetener for a liqueur.
func (t *task) standsPlain(i, m int, x *search.Filling) bool {
	p, was := t.cands[i].Profile, t.gap.Gone[m].Profile
	switch {
	case t.practice.Alone(m, i), t.gap.PouredFor(p, was), !was.Base() && was.Class.Kin() == p.Class.Kin():
		return true
	case was.Class.Kin() == flavor.KinLiqueur && p.Class.Kin() == flavor.KinSweetener:
		return true
	case t.gap.StandsDry(p.Class, was.Class):
		return was.Base() || role.Apart(&t.cands[i].Smell, &t.gap.Gone[m].Smell, 0, math.Inf(1)) <= likeSmell
	}
	return slices.ContainsFunc(t.gap.CustomsFor(was), func(c flavor.Custom) bool {
		parts, all := t.placesOf(c.Parts)
		return all && slices.Contains(parts, i) && !slices.ContainsFunc(parts, func(k int) bool { return !slices.Contains(x.Parts, k) })
	})
}

// leavesDrink reports whether what went leaves something to make a soft drink of.
func (t *task) leavesDrink() bool { return soft.Leaves(t.req.Spec, t.gap.Keep) }

// isLong reports whether a filling leaves a long drink, or one of milk, without anything else.
func (t *task) isLong(x *search.Filling) bool { return soft.Long(t.pours(x), t.req.Spec.VolumeML()) }

// tooSharp reports whether a filling leaves a guest who drinks no alcohol with less sugar than its
// lemon or lime wants.
func (t *task) tooSharp(x *search.Filling) bool {
	return t.gap.Less && t.gap.NoAlcohol() && t.sweetAsOrdered && !soft.Sugared(t.pours(x))
}

// lengthened returns what a guest who drinks no alcohol is poured for the liqueur that a drink
// is made on, as places among the candidates: a sweetener, and what lengthens it.
func (t *task) lengthened(m int) (out [][]int) {
	was := t.gap.Gone[m].Profile
	if was.Class.Kin() != flavor.KinLiqueur {
		return nil
	}
	var long []int
	for i := range t.cands {
		if t.gap.PouredFor(t.cands[i].Profile, was) {
			long = append(long, i)
		}
	}
	for _, sweet := range t.sweetFor(m) {
		for _, l := range t.leastStrange(long, m) {
			if parts := union(sweet, []int{l}); len(parts) <= t.parts {
				out = append(out, parts)
			}
		}
	}
	return out
}

// sweetFor returns what sweetens in place of removed m, if that is a liqueur, for a guest who
// drinks no alcohol: the sweeteners that are the least strange in its place, and the plain one.
func (t *task) sweetFor(m int) [][]int {
	if !t.gap.Less || !t.gap.NoAlcohol() || t.gap.Gone[m].Profile.Class.Kin() != flavor.KinLiqueur {
		return nil
	}
	var sweet []int
	for i := range t.cands {
		if p := t.cands[i].Profile; p.Class.Kin() == flavor.KinSweetener && !role.ByPiece(p) && !math.IsInf(t.entries[i].Strange[m], 1) {
			sweet = append(sweet, i)
		}
	}
	sweet = t.leastStrange(sweet, m)
	for _, plain := range t.sugarFor(m) {
		if !slices.Contains(sweet, plain[0]) {
			sweet = append(slices.Clip(sweet), plain[0])
		}
	}
	return oneEach(sweet)
}
