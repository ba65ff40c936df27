package cover

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/fill"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/weigh"
)

// worthListing leaves of ranked ideas those that a bartender wants to read, the best first.
func (t *task) worthListing(ideas []idea) []idea {
	if len(ideas) == 0 {
		return nil
	}
	t.putOthersBehind(ideas)
	ideas = t.withoutFar(ideas)
	ideas = t.withoutLost(ideas)
	for tier, otherKin := range []float64{role.AlikeTo, likeSmell} {
		unlike := func(x idea) bool { return !t.akin(&x.filling, otherKin) }
		if like := slices.DeleteFunc(slices.Clone(ideas), unlike); len(like) > 0 {
			t.strayed = tier
			return t.stop(like) // beside what is like the thing that went nothing is listed that is not
		}
	}
	t.strayed = strayedAll
	return t.unlike(ideas)
}

// strayedAll is how far a list has strayed whose ideas are all unlike what went, see
// [task.strayed].
const strayedAll = 2

// putOthersBehind puts what is another drink, and no custom, behind what is not.
func (t *task) putOthersBehind(ideas []idea) {
	another := func(x *idea) int {
		if x.distance > LastJND && !t.practice.Pours(x.filling.Parts) {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(ideas, func(a, b idea) int { return another(&a) - another(&b) })
}

// withoutFar leaves out what is no cover and what ranks far below the best. Once something keeps
// the drink, it also leaves out what lies far from it, and what lies nearly as far and has lost
// what led. What the trade pours stays, unless it lies far, has lost what led, and something else
// that a bar pours as a matter of course keeps the drink.
func (t *task) withoutFar(ideas []idea) []idea {
	best := t.standing(&ideas[0])
	ideas = slices.DeleteFunc(ideas, func(x idea) bool { return t.noCover(&x) })
	near := func(x idea) bool { return x.distance <= NearJND && !x.lost() }
	kept := slices.ContainsFunc(ideas, near)
	keptInKind := slices.ContainsFunc(ideas, func(x idea) bool { return near(x) && t.ofTheKind(&x) })
	keptByCustom := slices.ContainsFunc(ideas, func(x idea) bool { return near(x) && t.practice.Obvious(x.filling.Parts) })
	var spare []idea // what the trade pours to fill a glass, and a longer list has no place for
	fills := func(p *flavor.Profile) bool { return p.Class.Part() == flavor.PartLength }
	out := slices.DeleteFunc(slices.Clone(ideas), func(x idea) bool {
		if parts := x.filling.Parts; t.practice.Pours(parts) {
			far := keptByCustom && x.lost() && x.distance > farJND && !t.practice.FirstChoice(parts)
			if far && len(parts) == 1 && x.rank <= best+tail && t.gap.Any(fills) {
				spare = append(spare, x)
			}
			return far
		}
		if t.ofTheKind(&x) && !keptInKind {
			return x.rank > best+tail
		}
		return x.rank > best+tail || kept && t.farOff(&x)
	})
	return append(out, spare[:max(0, min(len(spare), enoughIdeas-len(out)))]...)
}

// ofTheKind reports whether an idea is one spirit of the class of the spirit that went: guests
// order by it, and no other class keeps it off the list, however near.
func (t *task) ofTheKind(x *idea) bool {
	parts := x.filling.Parts
	return len(parts) == 1 && t.practice.SameKind(parts[0]) && t.spiritsAlone(&x.filling) && !t.practice.SentBack(parts)
}

// withoutLost leaves out ideas that lose what led, where others keep it: the blends,
// since a blend is poured to bring that back, and what keeps nothing of the thing that
// went.
func (t *task) withoutLost(ideas []idea) []idea {
	if !slices.ContainsFunc(ideas, func(x idea) bool { return !x.lost() }) {
		return ideas
	}
	return slices.DeleteFunc(ideas, func(x idea) bool {
		return x.lost() && (t.blends(&x.filling) || t.keepsNothing(&x)) && !t.practice.Pours(x.filling.Parts)
	})
}

// unlike leaves of ideas that are all unlike the thing that went single bottles that lie
// near, what is of the same kin, and what a guest who drinks no alcohol is poured anywhere: no more
// than a few. Where nobody says what is at hand, no bar has a rare bottle for what is another drink.
func (t *task) unlike(ideas []idea) []idea {
	rare := func(i int) bool { return t.req.Common != nil && !t.req.Common.Usual(t.cands[i].Profile.ID) }
	ideas = slices.DeleteFunc(ideas, func(x idea) bool {
		return x.distance > farJND && slices.ContainsFunc(x.filling.Parts, rare) && !t.plain(&x.filling) || (x.distance > farJND || len(x.filling.Parts) > 1) && !t.sameKin(&x.filling) && !t.plain(&x.filling)
	})
	if !t.req.Far {
		ideas = ideas[:min(len(ideas), enoughIdeas)]
	}
	return ideas
}

// farOff reports whether an idea has no place beside one that keeps the drink: it lies
// far from it, or nearly so and has lost what led.
func (t *task) farOff(x *idea) bool {
	return !t.practice.EachAlone(x.filling.Parts) && (x.distance > farJND || x.lost() && x.distance > NearJND)
}

// stop ends a list behind its first ideas where the next ranks no more close to the
// best, or does not lie near and has lost what led: three good ideas are worth more than
// five with two bad ones. What the trade pours stays, if it is no more bottles than went.
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
		case t.practice.Pours(x.filling.Parts):
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
// every bar knows, and may lie further off. A guest who drinks no alcohol knows that the
// balance is not kept, where what is made after a spirit stands for it.
func (t *task) noCover(x *idea) bool {
	last, worth := LastJND, leastWorth
	switch {
	case t.plain(&x.filling):
		last, worth = LastCustomJND, 0 // a score holds a soft drink against drinks with alcohol
	case t.customary(&x.filling):
		last, worth = LastCustomJND, leastKnownWorth
	case t.everyBar(x):
		last = LastKnownJND
	}
	return x.distance > last || !t.knownDry(x) && !t.asUnjudged(x) && !t.sugarForSugar(&x.filling) && x.score < worth*t.scoreBefore
}

// asUnjudged reports whether an idea hardly moves a drink that no family holds as balanced: what
// a score says of such a drink is not held against what stands in for one thing of it.
func (t *task) asUnjudged(x *idea) bool {
	return t.scoreBefore < weigh.BalancedFrom && x.distance <= NearJND
}

// knownDry reports whether an idea pours what is made without alcohol after something that
// went, for a guest who drinks none.
func (t *task) knownDry(x *idea) bool {
	return slices.ContainsFunc(x.filling.Parts, func(i int) bool {
		return t.gap.Any(func(q *flavor.Profile) bool { return t.gap.StandsDry(t.cands[i].Profile.Class, q.Class) })
	})
}

// everyBar reports whether an idea is what any bar pours: by custom, or one spirit in the
// measure of another.
func (t *task) everyBar(x *idea) bool {
	if t.customary(&x.filling) {
		return true
	}
	parts := x.filling.Parts
	return len(parts) == 1 && t.spiritsAlone(&x.filling) && t.cands[parts[0]].amounts[x.filling.Amounts[0]].ML >= fill.LeastShare*t.gap.ML
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
