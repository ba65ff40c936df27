package search

import (
	"math"
	"slices"
)

// list keeps the best fillings, at most so many of one kind.
type list struct {
	problem *Problem
	best    map[kind][]Filling // each in order
	ranks   []float64          // of all of them, ascending
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
	own := l.best[of]
	at, _ := slices.BinarySearchFunc(own, x, compare)
	own = slices.Insert(own, at, x)
	l.rank(x.Rank)
	if most := l.problem.PerKind; len(own) > most {
		l.unrank(own[most].Rank)
		own = own[:most]
	}
	l.best[of] = own
	if l.problem.Tail > 0 {
		l.cutoff = min(l.cutoff, l.ranks[0]+l.problem.Tail)
	}
	if len(l.ranks) >= l.problem.Limit {
		l.cutoff = min(l.cutoff, l.ranks[l.problem.Limit-1])
	}
	for len(l.ranks) > 0 && l.ranks[len(l.ranks)-1] > l.cutoff {
		l.ranks = l.ranks[:len(l.ranks)-1]
	}
}

func (l *list) rank(x float64) {
	at, _ := slices.BinarySearch(l.ranks, x)
	l.ranks = slices.Insert(l.ranks, at, x)
}

// unrank takes out a rank, unless the cutoff took it out before.
func (l *list) unrank(x float64) {
	if at, found := slices.BinarySearch(l.ranks, x); found {
		l.ranks = slices.Delete(l.ranks, at, at+1)
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
