package idea

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/cover/shelf"
	"counterpour/flavor/cover/soft"
)

// Plain reports whether a filling is what any bar pours for a guest who drinks no alcohol,
// however far from the drink it is: what is left is a drink by itself, every part stands for
// something that went, and some part stands for each spirit and each liqueur. A wine, an
// amaro or bitters beside them may go with the rest, and a spirit where the rest is long.
func (t *Task) Plain(x *search.Filling) bool {
	if !t.Gap.Less || !t.Gap.NoAlcohol() || len(x.Parts) == 0 || !t.leavesDrink() {
		return false
	}
	led := false
	for m := range t.Gap.Gone {
		stood := slices.ContainsFunc(x.Parts, func(i int) bool { return t.standsPlain(i, m, x) })
		switch was := t.Gap.Gone[m].Profile.Class; {
		case stood:
			led = true
		case was.Part() == flavor.PartBase && !t.IsLong(x), was.Kin() == flavor.KinLiqueur:
			return false
		case was.Part() == flavor.PartBase:
		case t.Gap.Gone[m].Profile.ABV.Value <= flavor.NoAlcoholABV:
			return false
		}
	}
	return led && soft.Sugared(t.Pours(x)) && !slices.ContainsFunc(x.Parts, func(i int) bool {
		for m := range t.Gap.Gone {
			if t.standsPlain(i, m, x) {
				return false
			}
		}
		return true
	})
}

// standsPlain reports whether part i of a filling stands for removed m for a guest who drinks no
// alcohol: by custom, alone or with the rest of the filling, or a sweetener for a liqueur.
func (t *Task) standsPlain(i, m int, x *search.Filling) bool {
	p, was := t.Cands[i].Profile, t.Gap.Gone[m].Profile
	switch {
	case t.Practice.Alone(m, i), t.Gap.PouredFor(p, was), !was.Base() && was.Class.Kin() == p.Class.Kin():
		return true
	case was.Class.Kin() == flavor.KinLiqueur && p.Class.Kin() == flavor.KinSweetener:
		return true
	case t.Gap.StandsDry(p.Class, was.Class):
		return was.Base() || role.Apart(&t.Cands[i].Smell, &t.Gap.Gone[m].Smell, 0, math.Inf(1)) <= shelf.LikeSmell
	}
	return slices.ContainsFunc(t.Gap.CustomsFor(was), func(c flavor.Custom) bool {
		parts, all := t.PlacesOf(c.Parts)
		return all && slices.Contains(parts, i) && !slices.ContainsFunc(parts, func(k int) bool { return !slices.Contains(x.Parts, k) })
	})
}

// leavesDrink reports whether what went leaves something to make a soft drink of.
func (t *Task) leavesDrink() bool { return soft.Leaves(t.Req.Spec, t.Gap.Keep) }

// IsLong reports whether a filling leaves a long drink, or one of milk, without anything else.
func (t *Task) IsLong(x *search.Filling) bool { return soft.Long(t.Pours(x), t.Req.Spec.VolumeML()) }

// tooSharp reports whether a filling leaves a guest who drinks no alcohol with less sugar than its
// lemon or lime wants.
func (t *Task) tooSharp(x *search.Filling) bool {
	return t.Gap.Less && t.Gap.NoAlcohol() && t.sweetAsOrdered && !soft.Sugared(t.Pours(x))
}
