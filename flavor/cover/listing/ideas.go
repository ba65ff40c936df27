// Package listing lists the ideas for a gap that a bartender wants to read, the best first.
package listing

import (
	"cmp"
	"context"
	"slices"

	"counterpour/flavor/cover/asked"
	"counterpour/flavor/cover/idea"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/sense"
)

// List is a task whose ideas are being listed.
type List struct {
	*idea.Task
	Strayed int // how far what is listed is from being like what went: 0 for what is taken for it
	effort  int // that its searches took
}

// How many fillings are looked for, to be left with enough ideas: first so many
// times as many, then twice that, and so on up to the most.
const (
	fillingsEach = 4
	mostFillings = 8 * asked.MaxLimit
	mostAlso     = 4 // covers that are listed under one
)

// Ideas returns the best ideas of the task, the best first. The search lists more
// fillings than are wanted; they are measured in the glass, and those that come to
// the same glass become one. Since the list is a beginning of all fillings by
// rank, twice the list is looked for while too few ideas are left: at first only among
// what ranks close to the best, since nothing else follows enough ideas.
func (l *List) Ideas(ctx context.Context) (ideas []idea.Idea, proven bool, err error) {
	enough, reach := min(l.Req.Limit, enoughIdeas), closeTail // what ranks behind them ends the list soon
	if l.Req.Far {
		enough, reach = l.Req.Limit, tail
	}
	var besides []search.Filling
	for limit, first := fillingsEach*l.Req.Limit, true; ; first = false {
		p := l.Problem(limit, reach)
		if p.Effort = l.Req.Effort; p.Effort > 0 {
			p.Effort = max(1, p.Effort-l.effort)
		}
		found, err := search.Find(ctx, p)
		if err != nil {
			return nil, false, err
		}
		l.effort += found.Effort
		if first {
			if besides, err = l.besides(ctx, found.Fillings); err != nil {
				return nil, false, err
			}
		}
		measured, err := l.measure(withBesides(found.Fillings, besides))
		if err != nil {
			return nil, false, err
		}
		ideas := l.worthListing(l.merge(measured))
		l.putAllergensBehind(ideas)
		full := len(found.Fillings) == limit
		if len(ideas) >= enough || !full && reach == tail || !found.Proven || limit >= mostFillings {
			return ideas[:min(len(ideas), l.Req.Limit)], found.Proven, nil
		}
		if full {
			limit *= 2
		}
		reach = tail
	}
}

// withBesides adds fillings to a list that does not hold them.
func withBesides(listed, besides []search.Filling) []search.Filling {
	out := slices.Clone(listed)
	for i := range besides {
		key := search.Combine(besides[i].Parts...)
		if !slices.ContainsFunc(listed, func(x search.Filling) bool { return search.Combine(x.Parts...) == key }) {
			out = append(out, besides[i])
		}
	}
	return out
}

// measure pours the fillings and leaves out those whose parts do not earn their
// place in the glass.
func (l *List) measure(fillings []search.Filling) ([]idea.Idea, error) {
	out := make([]idea.Idea, 0, len(fillings))
	fewer := map[search.Combination]float64{}
	for i := range fillings {
		x, err := l.Mixed(&fillings[i])
		if err != nil {
			return nil, err
		}
		if earns, err := l.earns(x, fewer); err != nil {
			return nil, err
		} else if !earns {
			continue
		}
		if err := l.Rate(x); err != nil {
			return nil, err
		}
		out = append(out, *x)
	}
	order := func(a, b idea.Idea) int {
		return cmp.Or(cmp.Compare(a.Rank, b.Rank), slices.Compare(a.Filling.Parts, b.Filling.Parts))
	}
	slices.SortFunc(out, order)
	l.putBlendsBehind(out)
	slices.SortFunc(out, order)
	l.putOffBehind(out)
	slices.SortFunc(out, order)
	l.putNamelessBehind(out)
	slices.SortFunc(out, order)
	l.putEmptyBehind(out)
	slices.SortFunc(out, order)
	return out, nil
}

// merge makes one of ideas that come to the same glass, or are the same to a hand: the
// better one stands, the others under it.
func (l *List) merge(all []idea.Idea) []idea.Idea {
	var out []idea.Idea
	for i := range all {
		x := &all[i]
		at := slices.IndexFunc(out, func(o idea.Idea) bool {
			if l.onlySugar(&o) && l.onlySugar(x) {
				return true
			}
			steps := sense.Between(o.Glass, x.Glass)
			return steps.Total() < asked.SameIdea
		})
		switch {
		case at < 0:
			out = append(out, *x)
		case len(out[at].Also) < mostAlso:
			out[at].Also = append(out[at].Also, *x)
		}
	}
	return out
}

// onlySugar reports whether an idea pours one plain sweetener where a flavour with sugar
// went: which of them is no other idea.
func (l *List) onlySugar(x *idea.Idea) bool {
	return len(x.Filling.Parts) == 1 && len(l.Gap.Gone) == 1 && l.Gap.Gone[0].Smells &&
		role.OnlySweetens(l.Cands[x.Filling.Parts[0]].Bottle, l.Gap.Gone[0].Profile.Class)
}

// tail is by how much a cover may rank below the best to be listed at all, in
// steps.
const tail = 5.0
