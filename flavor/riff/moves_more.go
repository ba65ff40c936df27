package riff

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// variations lists the drafts that one move away from a drink leads to.
func (w *work) variations(from *parent) []draft {
	var out []draft
	for i := range from.spec.Pours {
		out = append(out, w.swaps(from, i, w.each)...)
	}
	out = append(out, w.splits(from)...)
	out = append(out, w.lengthened(from)...)
	out = append(out, w.lightened(from)...)
	out = append(out, w.served(from)...)
	out = append(out, w.added(from)...)
	out = append(out, w.sweetenedBy(from)...)
	// What has lost a pour already loses no other, or it is no riff of the drink.
	if len(w.limits.steps) > 0 && from.lost == 0 {
		out = append(out, w.leftOut(from)...)
	}
	return out
}

// largest returns the pour of a part that is poured most, or −1.
func largest(s *flavor.Spec, part flavor.Part) int {
	at := -1
	for i := range s.Pours {
		if s.Pours[i].Profile.Class.Part() == part && (at < 0 || s.Pours[i].ML > s.Pours[at].ML) {
			at = i
		}
	}
	return at
}

// splits shares the base between it and another one.
func (w *work) splits(from *parent) []draft {
	at := largest(&from.spec, flavor.PartBase)
	if at < 0 {
		return nil
	}
	old := &from.spec.Pours[at]
	per := template.PerML(old.Profile)
	half := *old
	half.ML /= 2
	var options []option
	for i := range w.shelf {
		it := &w.shelf[i]
		if poured(&from.spec, it.profile) || it.part != flavor.PartBase || !w.stands(old, it, &per) {
			continue
		}
		mine, ok := pour(old.Profile, old.Unit, old.ML/2)
		other, fits := matched(&half, it, &per)
		if !ok || !fits || min(mine.ML, other.ML) < leastBaseML {
			continue
		}
		s := from.spec.Clone()
		s.Pours[at] = mine
		s.Pours = slices.Insert(s.Pours, at+1, other)
		options = append(options, w.consider(from, s, KindSplit, it, nil, old.Profile))
	}
	return best(options, w.each)
}

// Length poured on top, in mL, and the largest drink that still takes it.
const (
	topUpML   = 90.0
	topUpMost = 150.0
)

// lengthened pours something long on top and serves the drink long.
func (w *work) lengthened(from *parent) []draft {
	if from.spec.VolumeML() > topUpMost {
		return nil
	}
	var options []option
	for i := range w.shelf {
		it := &w.shelf[i]
		if it.part != flavor.PartLength || poured(&from.spec, it.profile) || it.profile.Class.Solid() || it.profile.Class == flavor.ClassPuree {
			continue
		}
		p, ok := pour(it.profile, it.unit, topUpML)
		if !ok {
			continue
		}
		s := from.spec.Clone()
		s.Pours = append(s.Pours, p)
		s.Service = flavor.Long
		if s.Method != flavor.Shake && s.Method != flavor.DryShake {
			s.Method = flavor.Build
		}
		options = append(options, w.consider(from, s, KindLengthen, it, nil, nil))
	}
	return best(options, w.each)
}

// lightened pours wine, or a spirit without alcohol, in place of the base or of
// half of it.
func (w *work) lightened(from *parent) []draft {
	at := largest(&from.spec, flavor.PartBase)
	if at < 0 || from.spec.Pours[at].Profile.ABV.Value <= lightABV {
		return nil
	}
	old := &from.spec.Pours[at]
	var options []option
	for i := range w.shelf {
		it := &w.shelf[i]
		wine := it.part == flavor.PartModifier && it.profile.Class.Kin() == flavor.KinWine
		free := it.part == flavor.PartBase && it.profile.ABV.Value <= lightABV
		if !wine && !free || poured(&from.spec, it.profile) {
			continue
		}
		whole, ok := pour(it.profile, it.unit, old.ML)
		half, fits := pour(it.profile, it.unit, old.ML/2)
		mine, snaps := pour(old.Profile, old.Unit, old.ML/2)
		if !ok || !fits || !snaps {
			continue
		}
		s := from.spec.Clone()
		s.Pours[at] = whole
		options = append(options, w.consider(from, s, KindLighter, it, old.Profile, old.Profile))
		if min(mine.ML, half.ML) < leastBaseML {
			continue
		}
		s = from.spec.Clone()
		s.Pours[at] = mine
		s.Pours = slices.Insert(s.Pours, at+1, half)
		options = append(options, w.consider(from, s, KindLighter, it, nil, old.Profile))
	}
	return best(options, w.each)
}

// servings lists the other ways in which a drink may be mixed and served.
func servings(s *flavor.Spec) []struct {
	method  flavor.Method
	service flavor.Service
} {
	type way = struct {
		method  flavor.Method
		service flavor.Service
	}
	switch s.Method {
	case flavor.Shake:
		return []way{{flavor.Shake, flavor.Up}, {flavor.Shake, flavor.Rocks}, {flavor.Swizzle, flavor.Crushed}, {flavor.Blend, flavor.Up}}
	case flavor.DryShake:
		return []way{{flavor.DryShake, flavor.Up}, {flavor.DryShake, flavor.Rocks}}
	case flavor.Stir, flavor.Throw:
		return []way{{flavor.Stir, flavor.Up}, {flavor.Stir, flavor.Rocks}, {flavor.Throw, flavor.Up}, {flavor.Build, flavor.Rocks}}
	case flavor.Swizzle, flavor.Blend:
		return []way{{flavor.Shake, flavor.Up}, {flavor.Shake, flavor.Rocks}, {flavor.Swizzle, flavor.Crushed}}
	}
	return []way{{flavor.Build, flavor.Rocks}, {flavor.Build, flavor.Long}, {flavor.Build, flavor.Crushed}, {flavor.Stir, flavor.Up}}
}

// served mixes and serves the same pours another way.
func (w *work) served(from *parent) []draft {
	fizz := slices.ContainsFunc(from.spec.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated })
	likely := likely(from.made, from.products)
	var out []draft
	for _, way := range servings(&from.spec) {
		same := way.method == from.spec.Method && way.service == from.spec.Service
		if same || fizz && (way.method == flavor.Blend || way.service == flavor.Up) {
			continue
		}
		s := from.spec.Clone()
		s.Method, s.Service = way.method, way.service
		out = append(out, draft{spec: s, kind: KindMethod, moves: from.moves + 1, lost: from.lost, likely: likely, rank: likely})
	}
	return out
}

// addedML is what a modifier that is added comes in at, and addedDashes the
// same for bitters.
const (
	addedML     = 15.0
	addedDashes = 2
)

// added pours something small beside the rest: bitters, herbs or a modifier.
func (w *work) added(from *parent) []draft {
	var options []option
	for i := range w.shelf {
		it := &w.shelf[i]
		if poured(&from.spec, it.profile) {
			continue
		}
		var p flavor.Pour
		ok := false
		switch it.profile.Class.Kin() {
		case flavor.KinBitter, flavor.KinLiqueur, flavor.KinWine:
			p, ok = pour(it.profile, it.unit, addedML)
		case flavor.KinBitters:
			p, ok = pourCount(it.profile, it.unit, addedDashes)
		case flavor.KinHerb, flavor.KinSpice:
			p, ok = pourCount(it.profile, it.unit, 1)
		}
		if !ok {
			continue
		}
		s := from.spec.Clone()
		s.Pours = append(s.Pours, p)
		options = append(options, w.consider(from, s, KindAdd, it, nil, nil))
	}
	return best(options, w.few())
}

// few is how many additions go on: more where wishes lead there.
func (w *work) few() int {
	if len(w.limits.steps) > 0 {
		return 3 * draftsFew
	}
	return draftsFew
}

// sweetenedBy lets a liqueur do the work of the syrup.
func (w *work) sweetenedBy(from *parent) []draft {
	at := largest(&from.spec, flavor.PartSweetener)
	if at < 0 {
		return nil
	}
	old := &from.spec.Pours[at]
	per := template.PerML(old.Profile)
	var options []option
	for i := range w.shelf {
		it := &w.shelf[i]
		if it.profile.Class != flavor.ClassLiqueur || poured(&from.spec, it.profile) || it.per[template.Sweet] <= 0 {
			continue
		}
		p, ok := pour(it.profile, it.unit, old.ML*ratio(per[template.Sweet], it.per[template.Sweet]))
		if !ok {
			continue
		}
		s := from.spec.Clone()
		s.Pours[at] = p
		options = append(options, w.consider(from, s, KindSweetener, it, old.Profile, old.Profile))
	}
	return best(options, draftsFew)
}

// leftOut leaves out one pour that is not the base.
func (w *work) leftOut(from *parent) []draft {
	if len(from.spec.Pours) < 3 {
		return nil
	}
	var out []draft
	for i := range from.spec.Pours {
		if from.spec.Pours[i].Profile.Class.Part() == flavor.PartBase {
			continue
		}
		out = append(out, w.without(from, i))
	}
	return out
}

func (w *work) without(from *parent, at int) draft {
	likely := w.likelyWith(from, nil, from.spec.Pours[at].Profile)
	s := from.spec.Clone()
	s.Pours = slices.Delete(s.Pours, at, at+1)
	return draft{spec: s, kind: KindWithout, moves: from.moves + 1, lost: from.lost + 1, likely: likely, rank: likely}
}

// portioned is the drink itself, its amounts to be solved anew.
func (w *work) portioned(from *parent) draft {
	likely := likely(from.made, from.products)
	return draft{spec: from.spec, kind: from.kind, moves: from.moves, lost: from.lost, likely: likely, rank: likely}
}
