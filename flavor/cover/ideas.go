package cover

import (
	"cmp"
	"context"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
	"counterpour/flavor/weigh"
)

// idea is one filling as it comes into the glass, and those that come to the same.
type idea struct {
	filling  search.Filling
	spec     flavor.Spec
	drink    *mix.Drink
	glass    *sense.Percept
	distance float64 // between the two glasses
	score    float64
	rank     float64
	gone     []sense.Lost // what led what went and is gone
	also     []idea
}

// How many fillings are looked for, to be left with enough ideas: first so many
// times as many, then twice that, and so on up to the most.
const (
	fillingsEach = 4
	mostFillings = 8 * MaxLimit
	mostAlso     = 4 // covers that are listed under one
)

// ideas returns the best ideas of the task, the best first. The search lists more
// fillings than are wanted; they are measured in the glass, and those that come to
// the same glass become one. Since the list is a beginning of all fillings by
// rank, twice the list is looked for while too few ideas are left: at first only among
// what ranks close to the best, since nothing else follows enough ideas.
func (t *task) ideas(ctx context.Context) (ideas []idea, proven bool, err error) {
	enough, reach := min(t.req.Limit, enoughIdeas), closeTail // what ranks behind them ends the list soon
	if t.req.Far {
		enough, reach = t.req.Limit, tail
	}
	var besides []search.Filling
	for limit, first := fillingsEach*t.req.Limit, true; ; first = false {
		p := t.problem(limit, reach)
		if p.Effort = t.req.Effort; p.Effort > 0 {
			p.Effort = max(1, p.Effort-t.effort)
		}
		found, err := search.Find(ctx, p)
		if err != nil {
			return nil, false, err
		}
		t.effort += found.Effort
		if first {
			if besides, err = t.besides(ctx, found.Fillings); err != nil {
				return nil, false, err
			}
		}
		measured, err := t.measure(withBesides(found.Fillings, besides))
		if err != nil {
			return nil, false, err
		}
		ideas := t.worthListing(t.merge(measured))
		full := len(found.Fillings) == limit
		if len(ideas) >= enough || !full && reach == tail || !found.Proven || limit >= mostFillings {
			return ideas[:min(len(ideas), t.req.Limit)], found.Proven, nil
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
func (t *task) measure(fillings []search.Filling) ([]idea, error) {
	out := make([]idea, 0, len(fillings))
	fewer := map[search.Combination]float64{}
	for i := range fillings {
		x, err := t.mixed(&fillings[i])
		if err != nil {
			return nil, err
		}
		if earns, err := t.earns(x, fewer); err != nil {
			return nil, err
		} else if !earns {
			continue
		}
		if err := t.rate(x); err != nil {
			return nil, err
		}
		out = append(out, *x)
	}
	order := func(a, b idea) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), slices.Compare(a.filling.Parts, b.filling.Parts))
	}
	slices.SortFunc(out, order)
	t.putBlendsBehind(out)
	slices.SortFunc(out, order)
	t.putOffBehind(out)
	slices.SortFunc(out, order)
	return out, nil
}

// putBlendsBehind puts blends behind the single bottles that the trade pours as a matter
// of course: those of the same class, or by custom. It does so where such a bottle keeps
// the drink, or where the best of them is hardly further than the blend. A blend that
// the trade pours is no blend. The ideas are given in order.
func (t *task) putBlendsBehind(all []idea) {
	first, last := -1, -1
	for i := range all {
		x := &all[i]
		if len(x.filling.Parts) != 1 || !t.practice.Obvious(x.filling.Parts) {
			continue
		}
		if first < 0 {
			first = i
		}
		if x.distance <= NearJND {
			last = i
		}
	}
	for i := range all {
		x, single := &all[i], last
		if first >= 0 && all[first].distance <= x.distance+t.finder.weights.Part {
			single = max(first, last)
		}
		if i < single && len(x.filling.Parts) > 1 && !t.practice.Pours(x.filling.Parts) {
			x.rank = all[single].rank + behind
		}
	}
}

// moderate is how much further than a drink that is out of balance one in balance may lie, in
// steps, to be poured before it.
const moderate = 1.5

// putOffBehind puts what is out of balance behind the first idea that is in balance and lies
// hardly further: the draft may be one that no family is judged by, and then neither loses
// anything against it. The ideas are given in order.
func (t *task) putOffBehind(all []idea) {
	if t.gap.Less {
		return // a score holds a soft drink against drinks with alcohol
	}
	for i := range all {
		x := &all[i]
		if weigh.VerdictOf(x.score) != weigh.Off || t.practice.FirstChoice(x.filling.Parts) {
			continue
		}
		better := slices.IndexFunc(all[i+1:], func(y idea) bool {
			return weigh.VerdictOf(y.score) == weigh.Balanced && y.distance <= x.distance+moderate
		})
		if better >= 0 {
			x.rank = all[i+1+better].rank + behind
		}
	}
}

// behind is what puts a blend just behind a single bottle.
const behind = 1e-6

// pour mixes a filling and rates it.
func (t *task) pour(x *search.Filling) (*idea, error) {
	out, err := t.mixed(x)
	if err != nil {
		return nil, err
	}
	return out, t.rate(out)
}

// mixed mixes a filling and measures how far from the original the glass is.
func (t *task) mixed(x *search.Filling) (*idea, error) {
	out := &idea{filling: *x, spec: t.specOf(x)}
	return out, t.inGlass(out)
}

// inGlass mixes the drink of an idea, and measures how far from the original its glass is.
func (t *task) inGlass(x *idea) (err error) {
	if x.drink, err = t.finder.mixer.Mix(&x.spec); err != nil {
		return err
	}
	x.glass = t.finder.space.Percept(&x.spec, x.drink)
	x.distance = t.between(t.glass, x.glass)
	return nil
}

// merge makes one of ideas that come to the same glass, or are the same to a hand: the
// better one stands, the others under it.
func (t *task) merge(all []idea) []idea {
	var out []idea
	for i := range all {
		x := &all[i]
		at := slices.IndexFunc(out, func(o idea) bool {
			if t.onlySugar(&o) && t.onlySugar(x) {
				return true
			}
			steps := sense.Between(o.glass, x.glass)
			return steps.Total() < sameIdea
		})
		switch {
		case at < 0:
			out = append(out, *x)
		case len(out[at].also) < mostAlso:
			out[at].also = append(out[at].also, *x)
		}
	}
	return out
}

// onlySugar reports whether an idea pours one plain sweetener where a flavour with sugar
// went: which of them is no other idea.
func (t *task) onlySugar(x *idea) bool {
	return len(x.filling.Parts) == 1 && len(t.gap.Gone) == 1 && t.gap.Gone[0].Smells &&
		role.OnlySweetens(t.cands[x.filling.Parts[0]].Bottle, t.gap.Gone[0].Profile.Class)
}
