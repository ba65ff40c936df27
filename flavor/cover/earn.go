package cover

import (
	"context"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
)

// ofItsKin reports whether a part is of the kin of something that went. What seasons is
// poured for its smell, so there it must be something like it.
func (t *task) ofItsKin(part int) bool {
	c := &t.cands[part]
	for m := range t.gap.Gone {
		p := t.gap.Gone[m].Profile
		if p.Class.Kin() != c.Profile.Class.Kin() {
			continue
		}
		apart := role.Apart(&c.Smell, &t.gap.Gone[m].Smell, 0, math.Inf(1))
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

// earns reports whether every part of an idea brings the glass nearer by enough,
// as against any fewer of its parts, or none at all; fewer remembers how near those
// come. What the trade or the house pours has earned it, and one bottle of the kin of
// what went need not beat leaving it out.
func (t *task) earns(x *idea, fewer map[search.Combination]float64) (bool, error) {
	parts := x.filling.Parts
	if t.practice.Pours(x.filling.Parts) || t.practice.EachAlone(parts) || len(parts) == 1 && t.ofItsKin(parts[0]) {
		return true, nil
	}
	if x.distance > t.leftOut-t.finder.weights.Earn {
		return false, nil
	}
	for some := 1; some < 1<<len(parts)-1; some++ {
		var of []int
		for k, i := range parts {
			if some&(1<<k) != 0 {
				of = append(of, i)
			}
		}
		distance, known := fewer[search.Combine(of...)]
		if !known {
			var err error
			if distance, err = t.distanceOf(of); err != nil {
				return false, err
			}
			fewer[search.Combine(of...)] = distance
		}
		if x.distance > distance-t.finder.weights.Earn {
			return false, nil
		}
	}
	return true, nil
}

// distanceOf returns how near in the glass the nearest filling of some parts
// comes, whatever it ranks.
func (t *task) distanceOf(some []int) (float64, error) {
	p := t.problem(1, tail)
	p.Parts = make([]search.Part, len(some))
	for k, i := range some {
		p.Parts[k] = t.entries[i]
		p.Parts[k].Price, p.Parts[k].Strange, p.Parts[k].Odd = 0, make([]float64, len(t.gap.Gone)), false
	}
	p.Known, p.Allows, p.Choose = nil, nil, nil
	p.Most, p.Costs = len(some), search.Costs{}
	found, err := search.Find(context.Background(), p)
	if err != nil || len(found.Fillings) == 0 {
		return math.Inf(1), err
	}
	x := found.Fillings[0]
	x.Parts = slices.Clone(x.Parts)
	for k, own := range x.Parts {
		x.Parts[k] = some[own]
	}
	poured, err := t.mixed(&x)
	if err != nil {
		return 0, err
	}
	return poured.distance, nil
}
