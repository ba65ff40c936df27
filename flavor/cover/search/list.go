package search

import (
	"math"
	"slices"
)

// list keeps the best fillings, at most so many of one kind.
type list struct {
	problem *Problem
	best    map[kind][]Filling // each in order
	cutoff  float64            // rank beyond which a filling is not kept
}

// kind tells fillings apart by the part that is poured most and by their number of
// parts, so that a part with help does not drive out the same part alone.
type kind struct{ lead, parts int }

func newList(p *Problem) *list {
	return &list{problem: p, best: map[kind][]Filling{}, cutoff: math.Inf(1)}
}

func (l *list) keep(x Filling) {
	of := l.problem.kindOf(&x)
	own := append(l.best[of], x)
	slices.SortFunc(own, compare)
	l.best[of] = own[:min(len(own), l.problem.PerKind)]
	all := l.sorted()
	if l.problem.Tail > 0 {
		l.cutoff = min(l.cutoff, all[0].Rank+l.problem.Tail)
	}
	if len(all) >= l.problem.Limit {
		l.cutoff = min(l.cutoff, all[l.problem.Limit-1].Rank)
	}
	for of, own := range l.best {
		if own[0].Rank > l.cutoff {
			delete(l.best, of)
		}
	}
}

// sorted returns the fillings kept, the best first, at most the limit.
func (l *list) sorted() []Filling {
	var all []Filling
	for _, own := range l.best {
		all = append(all, own...)
	}
	slices.SortFunc(all, compare)
	if l.problem.Tail > 0 && len(all) > 0 {
		last := all[0].Rank + l.problem.Tail
		all = slices.DeleteFunc(all, func(x Filling) bool { return x.Rank > last })
	}
	return all[:min(len(all), l.problem.Limit)]
}

func (p *Problem) kindOf(x *Filling) kind {
	best := 0
	for k := range x.Parts {
		if p.Parts[x.Parts[k]].Amounts[x.Amounts[k]] > p.Parts[x.Parts[best]].Amounts[x.Amounts[best]] {
			best = k
		}
	}
	return kind{x.Parts[best], len(x.Parts)}
}
