package forgotten

import (
	"cmp"
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

// Lacking returns the one thing that each of the proven drinks that the draft is called after has and it has
// not, where it is that drink but for it, as much as each of those pours, first as much as is usual; plain
// water that is poured in its place goes out for it.
func (d *Draft) Lacking() []Exchange {
	var out []Exchange
	for _, i := range d.called {
		s := d.book.specs[i]
		odd, lacks := d.apartFrom(s)
		if len(lacks) != 1 || len(out) > 0 && !doesAlike(lacks[0].Profile, out[0].In.Profile) {
			return nil
		}
		x := Exchange{In: lacks[0]}
		for _, p := range odd {
			switch {
			case plain(p):
				x.Out = p
			case d.amountOf(p) >= standsIn*lacks[0].ML:
				return nil
			}
		}
		out = append(out, x)
	}
	usualFirst(out)
	return out
}

// usualFirst orders exchanges by how near what comes in is to the middle of them, then by their order.
func usualFirst(all []Exchange) {
	if len(all) < 2 {
		return
	}
	ml := make([]float64, len(all))
	for i := range all {
		ml[i] = all[i].In.ML
	}
	slices.Sort(ml)
	middle := ml[(len(ml)-1)/2]
	slices.SortStableFunc(all, func(x, y Exchange) int {
		return cmp.Compare(math.Abs(x.In.ML-middle), math.Abs(y.In.ML-middle))
	})
}

// standsIn is the share of what a draft lacks from which another pour is there in its place: a splash of
// orange is no lemon. Judged.
const standsIn = 0.3

// Odd returns the one thing that the draft has and none of the proven drinks that it is called after has,
// where it has all that one of them has; nil if there is none such.
func (d *Draft) Odd() *flavor.Profile {
	var out *flavor.Profile
	for _, i := range d.called {
		odd, lacks := d.apartFrom(d.book.specs[i])
		if len(odd) != 1 || out != nil && odd[0] != out {
			return nil
		}
		if len(lacks) == 0 {
			out = odd[0]
		}
	}
	return out
}

// amountOf returns the mL of an ingredient in the draft.
func (d *Draft) amountOf(p *flavor.Profile) float64 {
	ml := 0.0
	for i := range d.parts {
		if d.parts[i].Profile == p {
			ml += d.parts[i].Amount(d.ml)
		}
	}
	return ml
}

// apartFrom lists what the draft has and a proven drink has not, and the other way round; of what does the
// same in it, the most. Bases, seasonings and eggs are no matter of that.
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
		if !joins(&part) || makeup.IsBase(&part) || o.Profile.Class.Free() || !d.allows(o.Profile) ||
			slices.ContainsFunc(d.parts, func(p makeup.Part) bool { return doesAlike(p.Profile, o.Profile) }) {
			continue
		}
		lack := Companion{Profile: o.Profile, ML: o.ML * d.scaleTo(s)}
		at := slices.IndexFunc(lacks, func(c Companion) bool { return doesAlike(c.Profile, o.Profile) })
		switch {
		case at < 0:
			lacks = append(lacks, lack)
		case lack.ML > lacks[at].ML:
			lacks[at] = lack
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
// stands for another, all else only for its own class, and plain water for nothing that tastes.
func doesAlike(p, o *flavor.Profile) bool {
	if p.Class == o.Class {
		return plain(p) == plain(o)
	}
	switch part := p.Class.Part(); part {
	case flavor.PartBase, flavor.PartSweetener, flavor.PartSour:
		return part == o.Class.Part()
	}
	return false
}

// plain reports whether an ingredient is water, sparkling or not, that tastes of nothing.
func plain(p *flavor.Profile) bool {
	return p.Class.Free() || p.Class == flavor.ClassSoda && p.Sugar.Value == 0 && p.Acid.Value == 0 && p.Bitter.Value == 0
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
