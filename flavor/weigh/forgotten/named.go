package forgotten

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
)

// A drink that is called by the name of a proven one is meant to be that: it tells which base is
// forgotten where the rest of the pours goes with several, and what stands in another's place.

// namedBase returns the base of the proven drinks that the draft is called after, those whose
// rest is nearest counting most; nil if none has one that the draft may have.
func (d *Draft) namedBase() *flavor.Profile {
	if len(d.called) == 0 {
		return nil
	}
	weights, near := d.room(len(d.book.bases)), d.nearUnbased()
	for _, i := range d.called {
		weights[i] = near[i] + NearestToTell
	}
	of := make([]*flavor.Profile, len(weights))
	for _, i := range d.called {
		of[i] = d.book.bases[i]
	}
	return mostVoted(of, weights)
}

// Called reports whether the draft is called after proven drinks, and whether any of those has what
// does in a drink as an ingredient does.
func (d *Draft) Called(p *flavor.Profile) (called, has bool) {
	for _, i := range d.called {
		called = true
		has = has || slices.ContainsFunc(d.book.specs[i].Pours, func(o flavor.Pour) bool { return doesAlike(p, o.Profile) })
	}
	return called, has
}

// Exchange is what makes a draft the drink that it is called after: a pour that this has not goes
// out, and what it has instead comes in.
type Exchange struct {
	Out *flavor.Profile
	In  Companion
}

// Exchanges returns what makes the draft each of the proven drinks that it is called after, where
// that is neither nothing nor more than one pour in the place of another.
func (d *Draft) Exchanges() []Exchange {
	var out []Exchange
	for _, i := range d.called {
		if odd, lacks := d.apartFrom(d.book.specs[i]); len(odd) == 1 && len(lacks) == 1 {
			out = append(out, Exchange{odd[0], lacks[0]})
		}
	}
	return out
}

// Lacking returns the one thing that each of the proven drinks that the draft is called after has and
// it has not, where it is that drink but for it, as much as each of those pours.
func (d *Draft) Lacking() []Companion {
	var out []Companion
	for _, i := range d.called {
		odd, lacks := d.apartFrom(d.book.specs[i])
		if len(odd) > 0 || len(lacks) != 1 || len(out) > 0 && !doesAlike(lacks[0].Profile, out[0].Profile) {
			return nil
		}
		out = append(out, lacks[0])
	}
	return out
}

// apartFrom lists what the draft has and a proven drink has not, and the other way round. Bases,
// seasonings and eggs are no matter of that.
func (d *Draft) apartFrom(s *flavor.Spec) (odd []*flavor.Profile, lacks []Companion) {
	for k := range d.parts {
		p := &d.parts[k]
		if exchanged(p) && !slices.ContainsFunc(s.Pours, func(o flavor.Pour) bool { return doesAlike(p.Profile, o.Profile) }) {
			odd = append(odd, p.Profile)
		}
	}
	for k := range s.Pours {
		o := &s.Pours[k]
		part := makeup.Part{Profile: o.Profile, Role: o.Profile.Class.Part()}
		if joins(&part) && !makeup.IsBase(&part) && !o.Profile.Class.Free() && d.allows(o.Profile) &&
			!slices.ContainsFunc(d.parts, func(p makeup.Part) bool { return doesAlike(p.Profile, o.Profile) }) {
			lacks = append(lacks, Companion{Profile: o.Profile, ML: o.ML * d.scaleTo(s)})
		}
	}
	return odd, lacks
}

// exchanged reports whether a part of a draft may stand in the place of another.
func exchanged(p *makeup.Part) bool {
	return !makeup.IsBase(p) && !p.Profile.Class.Free() && p.Profile.Class.Kin() != flavor.KinFoam &&
		(p.Role != flavor.PartSeasoning || p.Profile.Class == flavor.ClassSavoury)
}

// doesAlike reports whether two ingredients do the same in a drink: any base, syrup or citrus
// stands for another, all else only for its own class.
func doesAlike(p, o *flavor.Profile) bool {
	if p.Class == o.Class {
		return true
	}
	switch part := p.Class.Part(); part {
	case flavor.PartBase, flavor.PartSweetener, flavor.PartSour:
		return part == o.Class.Part()
	}
	return false
}

// scaleTo returns how many times as large as a proven drink the draft is, by their bases; 1 where
// either has none.
func (d *Draft) scaleTo(s *flavor.Spec) float64 {
	own, other := 0.0, 0.0
	for i := range d.parts {
		if makeup.IsBase(&d.parts[i]) {
			own += d.parts[i].Amount(d.ml)
		}
	}
	for i := range s.Pours {
		if s.Pours[i].Profile.Base() {
			other += s.Pours[i].ML
		}
	}
	if own <= 0 || other <= 0 {
		return 1
	}
	return math.Min(2, math.Max(0.5, own/other))
}
