package listing

import (
	"context"
	"math"
	"slices"

	"counterpour/flavor/cover/idea"
	"counterpour/flavor/cover/search"
)

// earns reports whether every part of an idea brings the glass nearer by enough,
// as against any fewer of its parts, or none at all; fewer remembers how near those
// come. What the trade or the house pours has earned it, and one bottle of the kin of
// what went need not beat leaving it out.
func (l *List) earns(x *idea.Idea, fewer map[search.Combination]float64) (bool, error) {
	parts := x.Filling.Parts
	if l.Practice.Pours(x.Filling.Parts) || l.Practice.EachAlone(parts) || len(parts) == 1 && l.OfItsKin(parts[0]) {
		return true, nil
	}
	if x.Distance > l.LeftOut-l.Weights.Earn {
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
			if distance, err = l.distanceOf(of); err != nil {
				return false, err
			}
			fewer[search.Combine(of...)] = distance
		}
		if x.Distance > distance-l.Weights.Earn {
			return false, nil
		}
	}
	return true, nil
}

// distanceOf returns how near in the glass the nearest filling of some parts
// comes, whatever it ranks.
func (l *List) distanceOf(some []int) (float64, error) {
	p := l.Problem(1, tail)
	p.Parts = make([]search.Part, len(some))
	for k, i := range some {
		p.Parts[k] = l.Entries[i]
		p.Parts[k].Price, p.Parts[k].Strange, p.Parts[k].Odd = 0, make([]float64, len(l.Gap.Gone)), false
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
	poured, err := l.Mixed(&x)
	if err != nil {
		return 0, err
	}
	return poured.Distance, nil
}
