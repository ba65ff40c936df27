package cover

import (
	"cmp"
	"context"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// idea is one filling as it comes into the glass, and those that come to the same.
type idea struct {
	filling  search.Filling
	spec     flavor.Spec
	drink    *mix.Drink
	glass    *sense.Glass
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

// worthListing leaves out what ranks far below the best, and once something keeps the
// drink, what does not: what lies far from it, or nearly so and has lost what led.
// What the trade pours is listed too, unless both is true of it and something else that a
// bar pours as a matter of course keeps the drink. Nothing is listed that is another drink,
// or that has lost most of its score; what even so is another drink, and no custom, stands
// behind what is not.
// A blend is poured to bring back what led: one that does not is listed by itself only, and so
// is what keeps nothing of the thing that went.
// Beside what is like the thing that went nothing is listed
// that is not, and by itself only one bottle that lies near, or what is of the same kin, and no more than a few. After three, only what ranks close to
// the best is: three good ideas are worth more than five with two bad ones.
func (t *task) worthListing(ideas []idea) []idea {
	if len(ideas) == 0 {
		return nil
	}
	another := func(x *idea) int {
		if x.distance > LastJND && !t.usual(x) {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(ideas, func(a, b idea) int { return another(&a) - another(&b) })
	best := t.standing(&ideas[0])
	near := func(x idea) bool { return x.distance <= NearJND && !x.lost() }
	kept := slices.ContainsFunc(ideas, near)
	keptByCustom := slices.ContainsFunc(ideas, func(x idea) bool { return near(x) && t.isObvious(&x.filling) })
	ideas = slices.DeleteFunc(ideas, func(x idea) bool {
		if t.usual(&x) {
			return t.noCover(&x) || keptByCustom && x.lost() && x.distance > farJND && !t.firstChoice(&x.filling)
		}
		return t.noCover(&x) || x.rank > best+tail || kept && t.farOff(&x)
	})
	if slices.ContainsFunc(ideas, func(x idea) bool { return !x.lost() }) {
		ideas = slices.DeleteFunc(ideas, func(x idea) bool { return x.lost() && (t.blends(&x.filling) || t.keepsNothing(&x)) && !t.usual(&x) })
	}
	for _, otherKin := range []float64{role.AlikeTo, likeSmell} {
		alike := func(x idea) bool { return t.akin(&x.filling, otherKin) }
		if slices.ContainsFunc(ideas, alike) {
			return t.stop(slices.DeleteFunc(ideas, func(x idea) bool { return !alike(x) }))
		}
	}
	ideas = slices.DeleteFunc(ideas, func(x idea) bool {
		return (x.distance > farJND || len(x.filling.Parts) > 1) && !t.sameKin(&x.filling)
	})
	if !t.req.Far {
		ideas = ideas[:min(len(ideas), enoughIdeas)]
	}
	return ideas
}

// farOff reports whether an idea has no place beside one that keeps the drink: it lies
// far from it, or nearly so and has lost what led.
func (t *task) farOff(x *idea) bool {
	return !t.oneByOne[search.Combine(x.filling.Parts...)] && (x.distance > farJND || x.lost() && x.distance > NearJND)
}

// stop ends a list behind its first ideas where the next ranks no more close to the
// best, or does not lie near and has lost what led. What the trade pours stays, if it is
// no more bottles than went.
func (t *task) stop(ideas []idea) []idea {
	if t.req.Far || len(ideas) == 0 {
		return ideas
	}
	best, listed := t.standing(&ideas[0]), 0
	return slices.DeleteFunc(ideas, func(x idea) bool {
		listed++
		switch {
		case listed <= enoughIdeas:
			return false
		case t.usual(&x):
			return t.blends(&x.filling)
		}
		return x.rank > best+closeTail || x.lost() && x.distance > NearJND
	})
}

// How many ideas are listed whatever they rank, and by how much one behind them may rank
// below the best, in steps.
const (
	enoughIdeas = 3
	closeTail   = 3.0
)

// standing is what an idea ranks if no hand reached for it: by how much others rank below
// the best is told from there.
func (t *task) standing(x *idea) float64 { return x.rank + t.habit(&x.filling) }

// noCover reports whether an idea is another drink, or one that nobody would serve. What
// the trade pours, and one spirit in the full measure of another, makes a drink that
// every bar knows, and may lie further off. A guest who drinks no alcohol knows that the balance is not kept.
func (t *task) noCover(x *idea) bool {
	last, worth := LastJND, leastWorth
	switch {
	case t.customary(&x.filling):
		last, worth = LastCustomJND, leastKnownWorth
	case t.everyBar(x):
		last = LastKnownJND
	}
	return x.distance > last || !t.req.Guest.NoAlcohol && !t.req.Guest.NoTrace && x.score < worth*t.scoreBefore
}

// everyBar reports whether an idea is what any bar pours: by custom, or one spirit in the
// measure of another.
func (t *task) everyBar(x *idea) bool {
	if t.customary(&x.filling) {
		return true
	}
	parts := x.filling.Parts
	return len(parts) == 1 && t.spiritsAlone(&x.filling) && t.cands[parts[0]].amounts[x.filling.Amounts[0]].ML >= leastShare*t.gapML
}

// farJND is the distance from which a cover is not worth listing beside one that
// keeps the drink.
const farJND = 1.25 * NearJND

// knownJND is the distance up to which what the trade pours, and has lost nothing that led,
// keeps the drink.
const knownJND = 1.75 * NearJND

// leastWorth is the share of the score below which a cover is none, leastKnownWorth the one
// for what the trade pours.
const (
	leastWorth      = 0.5
	leastKnownWorth = 0.3
)

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
	return out, nil
}

// putBlendsBehind lets no blend come before the single bottles that the trade pours
// as a matter of course and that keep the drink, nor before the best of them if it
// is hardly further than the blend: those of the same class or by custom. A blend
// that the trade pours is no blend. The ideas are given in order.
func (t *task) putBlendsBehind(all []idea) {
	first, last := -1, -1
	for i := range all {
		x := &all[i]
		if len(x.filling.Parts) != 1 || !t.isObvious(&x.filling) {
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
		if i < single && len(x.filling.Parts) > 1 && !t.usual(x) {
			x.rank = all[single].rank + behind
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
	x.glass = t.finder.space.Glass(&x.spec, x.drink)
	x.distance = t.between(t.glass, x.glass)
	return nil
}

// rate scores an idea that is mixed, and ranks it.
func (t *task) rate(out *idea) error {
	x := &out.filling
	var known bool
	if out.score, known = t.scored[x.Key()]; !known {
		var err error
		if out.score, err = t.finder.judge.ScoreOnly(&out.spec); err != nil {
			return err
		}
		t.scored[x.Key()] = out.score
	}
	t.rank(out)
	return nil
}

// rank ranks an idea that is mixed and scored.
func (t *task) rank(out *idea) {
	x := &out.filling
	out.rank = x.Rank - x.Distance() + felt(out.distance) + t.finder.weights.Score*math.Max(0, t.scoreBefore-out.score-hardlyWorse)
	out.rank += t.finder.weights.Part*float64(t.idle(x)) + t.finder.weights.Lead*float64(t.unserved(x)) + t.req.Guest.Unsettles(&out.spec, t.req.Spec)
	out.gone = t.leadsGone(x, out.glass)
	out.rank += t.finder.weights.Lead*t.missed(out) - t.habit(x)
}

// blends reports whether a filling pours more things than went.
func (t *task) blends(x *search.Filling) bool { return len(x.Parts) > len(t.removed) }

// unserved counts the things out that nothing is poured for: fewer bottles come near by
// leaving something out.
func (t *task) unserved(x *search.Filling) int { return max(0, len(t.removed)-len(x.Parts)) }

// felt is what a distance counts for in a rank: each step up to [NearJND], and half of
// each beyond. Of two glasses that are both another drink, people hardly tell which is
// the nearer.
func felt(distance float64) float64 {
	return distance - max(0, distance-NearJND)/2
}

// idle counts the parts of a filling that stand for nothing that went: each thing is
// covered by the part that is least strange in its place, and what is left only helps.
// Of one thing the search itself asks what a further part must earn.
func (t *task) idle(x *search.Filling) int {
	if len(t.removed) < 2 || len(x.Parts) == 0 {
		return 0
	}
	var stands [search.MaxParts]bool
	for m := range t.removed {
		stands[t.standsFor(x, m)] = true
	}
	n := 0
	for k := range x.Parts {
		if !stands[k] {
			n++
		}
	}
	return n - max(0, len(x.Parts)-len(t.removed)) // these the search has counted
}

// standsFor returns the place among the parts of the one that is least strange in place
// of removed m.
func (t *task) standsFor(x *search.Filling, m int) int {
	least := 0
	for k, i := range x.Parts {
		if t.entries[i].Strange[m] < t.entries[x.Parts[least]].Strange[m] {
			least = k
		}
	}
	return least
}

// hardlyWorse is how many points of the score a cover may lose at no cost.
const hardlyWorse = 8.0

// usual reports whether the trade, or the house, pours an idea in place of what went.
func (t *task) usual(x *idea) bool {
	return t.byCustom(&x.filling)
}

// ofItsKin reports whether a part is of the kin of something that went. What seasons is
// poured for its smell, so there it must be something like it.
func (t *task) ofItsKin(part int) bool {
	for m, p := range t.removed {
		c := &t.cands[part]
		if p.Class.Kin() != c.Profile.Class.Kin() {
			continue
		}
		apart := role.Apart(&c.Smell, &t.gone[m].Smell, 0, math.Inf(1))
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
	if t.usual(x) || t.oneByOne[search.Combine(parts...)] || len(parts) == 1 && t.ofItsKin(parts[0]) {
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
		p.Parts[k].Price, p.Parts[k].Strange, p.Parts[k].Odd = 0, make([]float64, len(t.removed)), false
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
	return len(x.filling.Parts) == 1 && len(t.removed) == 1 && t.gone[0].smells &&
		role.OnlySweetens(t.cands[x.filling.Parts[0]].Bottle, t.removed[0].Class)
}
