package cover

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// shortlist keeps the best covers, at most perLead for each leading part.
type shortlist struct {
	task *task
	best map[int][]found // by leading candidate, each in order
	edge float64         // rank beyond which a cover is not kept
}

func newShortlist(t *task) *shortlist {
	return &shortlist{task: t, best: map[int][]found{}, edge: math.Inf(1)}
}

func (l *shortlist) keep(x found) {
	lead := l.task.lead(&x)
	list := append(l.best[lead], x)
	slices.SortFunc(list, l.task.compare)
	l.best[lead] = list[:min(len(list), perLead)]
	all := l.sorted()
	if len(all) < l.task.req.Limit {
		return
	}
	l.edge = all[l.task.req.Limit-1].rank
	for lead, list := range l.best {
		if list[0].rank > l.edge {
			delete(l.best, lead)
		}
	}
}

// sorted returns the covers kept, the best first, at most the limit.
func (l *shortlist) sorted() []found {
	var all []found
	for _, list := range l.best {
		all = append(all, list...)
	}
	slices.SortFunc(all, l.task.compare)
	return all[:min(len(all), l.task.req.Limit)]
}

// compare orders covers: rank, then fewer parts, fewer moved pours, then names;
// the ids tell apart what has one name.
func (t *task) compare(a, b found) int {
	if c := cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(len(a.parts), len(b.parts)), cmp.Compare(len(a.moves), len(b.moves))); c != 0 {
		return c
	}
	for k := range a.parts {
		if c := strings.Compare(t.cands[a.parts[k]].profile.Name, t.cands[b.parts[k]].profile.Name); c != 0 {
			return c
		}
	}
	return cmp.Or(slices.Compare(a.amounts[:], b.amounts[:]), slices.Compare(a.moves, b.moves), slices.Compare(a.parts, b.parts))
}

// lead returns the candidate that is poured most.
func (t *task) lead(x *found) int {
	best := 0
	for k := range x.parts {
		if t.cands[x.parts[k]].amounts[x.amounts[k]].ml > t.cands[x.parts[best]].amounts[x.amounts[best]].ml {
			best = k
		}
	}
	return x.parts[best]
}
