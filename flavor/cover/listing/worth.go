package listing

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/asked"
	"counterpour/flavor/cover/fill"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/idea"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/shelf"
	"counterpour/flavor/weigh"
)

// worthListing leaves of ranked ideas those that a bartender wants to read, the best first.
func (l *List) worthListing(ideas []idea.Idea) []idea.Idea {
	if len(ideas) == 0 {
		return nil
	}
	l.putOthersBehind(ideas)
	ideas = l.withoutFar(ideas)
	ideas = l.withoutLost(ideas)
	ideas = l.withoutOtherLook(ideas)
	for tier, otherKin := range []float64{role.AlikeTo, shelf.LikeSmell} {
		unlike := func(x idea.Idea) bool { return !l.Akin(&x.Filling, otherKin) }
		if like := slices.DeleteFunc(slices.Clone(ideas), unlike); len(like) > 0 {
			l.Strayed = tier
			return l.stop(like) // beside what is like the thing that went nothing is listed that is not
		}
	}
	l.Strayed = StrayedAll
	return l.unlike(ideas)
}

// StrayedAll is how far a list has strayed whose ideas are all unlike what went, see
// [List.Strayed].
const StrayedAll = 2

// putOthersBehind puts what is another drink, and no custom, behind what is not.
func (l *List) putOthersBehind(ideas []idea.Idea) {
	another := func(x *idea.Idea) int {
		if x.Distance > asked.LastJND && !l.Practice.Pours(x.Filling.Parts) {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(ideas, func(a, b idea.Idea) int { return another(&a) - another(&b) })
}

// withoutFar leaves out what is no cover and what ranks far below the best. Once something keeps
// the drink, it also leaves out what lies far from it, and what lies nearly as far and has lost
// what led. What the trade pours stays, unless it lies far, has lost what led, and something else
// that a bar pours as a matter of course keeps the drink.
func (l *List) withoutFar(ideas []idea.Idea) []idea.Idea {
	best := l.standing(&ideas[0])
	ideas = slices.DeleteFunc(ideas, func(x idea.Idea) bool { return l.noCover(&x) })
	near := func(x idea.Idea) bool { return x.Distance <= asked.NearJND && !x.Lost() }
	kept := slices.ContainsFunc(ideas, near)
	keptInKind := slices.ContainsFunc(ideas, func(x idea.Idea) bool { return near(x) && l.ofTheKind(&x) })
	keptByCustom := slices.ContainsFunc(ideas, func(x idea.Idea) bool { return near(x) && l.Practice.Obvious(x.Filling.Parts) })
	var spare []idea.Idea // what the trade pours to fill a glass, and a longer list has no place for
	fills := func(p *flavor.Profile) bool { return p.Class.Part() == flavor.PartLength }
	out := slices.DeleteFunc(slices.Clone(ideas), func(x idea.Idea) bool {
		if kept && l.onlyNamed(&x) && l.farOff(&x) {
			return true // no guest is talked into another drink whose own can be poured
		}
		if parts := x.Filling.Parts; l.Practice.Pours(parts) {
			far := keptByCustom && x.Lost() && x.Distance > FarJND && !l.Practice.FirstChoice(parts)
			if far && len(parts) == 1 && x.Rank <= best+tail && l.Gap.Any(fills) {
				spare = append(spare, x)
			}
			return far
		}
		if l.ofTheKind(&x) && !keptInKind {
			return x.Rank > best+tail
		}
		return x.Rank > best+tail || kept && l.farOff(&x)
	})
	return append(out, spare[:max(0, min(len(spare), enoughIdeas-len(out)))]...)
}

// named reports whether an idea makes another proven drink that guests order by its name.
func (l *List) named(x *idea.Idea) bool {
	return len(x.Filling.Parts) == 1 && l.Gap.Sister(l.Cands[x.Filling.Parts[0]].Profile.ID) != ""
}

// onlyNamed reports whether nothing but that name speaks for it.
func (l *List) onlyNamed(x *idea.Idea) bool {
	return len(x.Filling.Parts) == 1 && l.Gap.OnlySister(l.Cands[x.Filling.Parts[0]].Profile.ID)
}

// ofTheKind reports whether an idea is one spirit of the class of the spirit that went: guests
// order by it, and no other class keeps it off the list, however near.
func (l *List) ofTheKind(x *idea.Idea) bool {
	parts := x.Filling.Parts
	return len(parts) == 1 && l.Practice.SameKind(parts[0]) && l.SpiritsAlone(&x.Filling) && !l.Practice.SentBack(parts)
}

// withoutLost leaves out ideas that lose what led, where others keep it: the blends,
// since a blend is poured to bring that back, and what keeps nothing of the thing that
// went.
func (l *List) withoutLost(ideas []idea.Idea) []idea.Idea {
	if !slices.ContainsFunc(ideas, func(x idea.Idea) bool { return !x.Lost() }) {
		return ideas
	}
	return slices.DeleteFunc(ideas, func(x idea.Idea) bool {
		return x.Lost() && (l.Blends(&x.Filling) || l.KeepsNothing(&x)) && !l.Practice.Pours(x.Filling.Parts)
	})
}

// What is of another colour is not listed beside so many things that the trade pours, from so
// great a difference in look, see [role.OtherLook]: what is clear has better than a red one
// then. Common practice, no source.
const (
	enoughCustoms = 2
	otherLook     = 0.5
)

// withoutOtherLook leaves out what is of quite another colour than the only thing that went, and no
// custom, where the trade has enough to pour.
func (l *List) withoutOtherLook(ideas []idea.Idea) []idea.Idea {
	customs := 0
	for i := range ideas {
		if l.Practice.Pours(ideas[i].Filling.Parts) {
			customs++
		}
	}
	if len(l.Gap.Gone) != 1 || customs < enoughCustoms {
		return ideas
	}
	other := func(i int) bool { return role.OtherLook(l.Cands[i].Bottle, l.Gap.Gone[0].Bottle) >= otherLook }
	return slices.DeleteFunc(ideas, func(x idea.Idea) bool {
		return !l.Practice.Pours(x.Filling.Parts) && slices.ContainsFunc(x.Filling.Parts, other)
	})
}

// unlike leaves of ideas that are all unlike the thing that went single bottles that lie
// near, what is of the same kin, and what a guest who drinks no alcohol is poured anywhere: no more
// than a few. Where nobody says what is at hand, no bar has a rare bottle for what is another drink.
func (l *List) unlike(ideas []idea.Idea) []idea.Idea {
	rare := func(i int) bool { return l.Req.Common != nil && !l.Req.Common.Usual(l.Cands[i].Profile.ID) }
	ideas = slices.DeleteFunc(ideas, func(x idea.Idea) bool {
		return l.keepsNoFlavour(&x) || x.Distance > FarJND && slices.ContainsFunc(x.Filling.Parts, rare) && !l.Plain(&x.Filling) || (x.Distance > FarJND || len(x.Filling.Parts) > 1) && !l.SameKin(&x.Filling) && !l.Plain(&x.Filling)
	})
	if !l.Req.Far {
		ideas = ideas[:min(len(ideas), enoughIdeas)]
	}
	return ideas
}

// keepsNoFlavour reports whether an idea has nothing of a liqueur that a drink is made on, or that
// one other pour stands beside: cacao in place of the almond of an amaretto sour is no cover, nor
// is sugar in a glass of wine, and a riff says better what else to pour.
func (l *List) keepsNoFlavour(x *idea.Idea) bool {
	for m := range l.Gap.Gone {
		q := &l.Gap.Gone[m]
		if q.Missing && (q.ML >= gap.BaseML || len(l.Gap.Gone) == 1 && len(l.Gap.Keep) == 1) && q.Profile.Class.Kin() == flavor.KinLiqueur && l.Unled(x, q.Profile) {
			return !l.Plain(&x.Filling) && !l.Practice.Pours(x.Filling.Parts)
		}
	}
	return false
}

// farOff reports whether an idea has no place beside one that keeps the drink: it lies
// far from it, or nearly so and has lost what led.
func (l *List) farOff(x *idea.Idea) bool {
	return !l.Practice.EachAlone(x.Filling.Parts) && (x.Distance > FarJND || x.Lost() && x.Distance > asked.NearJND)
}

// stop ends a list behind its first ideas where the next ranks no more close to the
// best, or does not lie near and has lost what led: three good ideas are worth more than
// five with two bad ones. What the trade pours stays, if it is no more bottles than went or
// ranks close to the best.
func (l *List) stop(ideas []idea.Idea) []idea.Idea {
	if l.Req.Far || len(ideas) == 0 {
		return ideas
	}
	best, listed := l.standing(&ideas[0]), 0
	return slices.DeleteFunc(ideas, func(x idea.Idea) bool {
		listed++
		switch {
		case listed <= enoughIdeas:
			return false
		case l.Practice.Pours(x.Filling.Parts):
			return l.Blends(&x.Filling) && x.Rank > best+closeTail
		}
		return x.Rank > best+closeTail || x.Lost() && x.Distance > asked.NearJND
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
func (l *List) standing(x *idea.Idea) float64 { return x.Rank + l.Habit(&x.Filling) }

// noCover reports whether an idea is another drink, or one that nobody would serve. What
// the trade pours, and one spirit in the full measure of another, makes a drink that
// every bar knows, and may lie further off. A guest who drinks no alcohol knows that the
// balance is not kept, where what is made after a spirit stands for it.
func (l *List) noCover(x *idea.Idea) bool {
	last, worth := asked.LastJND, LeastWorth
	switch {
	case l.Plain(&x.Filling):
		last, worth = asked.LastCustomJND, 0 // a score holds a soft drink against drinks with alcohol
	case l.Customary(&x.Filling):
		last, worth = asked.LastCustomJND, LeastKnownWorth
	case l.everyBar(x):
		last = asked.LastKnownJND
	}
	return x.Distance > last || !l.knownDry(x) && !l.asUnjudged(x) && !l.SugarForSugar(&x.Filling) && x.Score < worth*l.ScoreBefore
}

// asUnjudged reports whether an idea hardly moves a drink that no family holds as balanced: what
// a score says of such a drink is not held against what stands in for one thing of it.
func (l *List) asUnjudged(x *idea.Idea) bool {
	return l.ScoreBefore < weigh.BalancedFrom && x.Distance <= asked.NearJND
}

// knownDry reports whether an idea pours what is made without alcohol after something that
// went, for a guest who drinks none.
func (l *List) knownDry(x *idea.Idea) bool {
	return slices.ContainsFunc(x.Filling.Parts, func(i int) bool {
		return l.Gap.Any(func(q *flavor.Profile) bool { return l.Gap.StandsDry(l.Cands[i].Profile.Class, q.Class) })
	})
}

// everyBar reports whether an idea is what any bar pours: by custom, or one spirit in the
// measure of another.
func (l *List) everyBar(x *idea.Idea) bool {
	if l.Customary(&x.Filling) {
		return true
	}
	parts := x.Filling.Parts
	return len(parts) == 1 && l.SpiritsAlone(&x.Filling) && l.Cands[parts[0]].Amounts[x.Filling.Amounts[0]].ML >= fill.LeastShare*l.Gap.ML
}

// FarJND is the distance from which a cover is not worth listing beside one that
// keeps the drink.
const FarJND = 1.25 * asked.NearJND

// knownJND is the distance up to which what the trade pours, and has lost nothing that led,
// keeps the drink.
const knownJND = 1.75 * asked.NearJND

// LeastWorth is the share of the score below which a cover is none, LeastKnownWorth the one
// for what the trade pours.
const (
	LeastWorth      = 0.5
	LeastKnownWorth = 0.3
)

// Keeps reports whether an idea keeps the drink: it lies near, or hardly further and is
// what every bar pours, or is no other drink, poured by custom, and has lost nothing that
// led. What the trade pours far off, such as a tequila for a pisco, is another drink.
func (l *List) Keeps(x *idea.Idea) bool {
	switch {
	case x.Distance <= asked.NearJND:
		return true
	case x.Distance <= FarJND:
		return l.everyBar(x)
	}
	return x.Distance <= knownJND && l.Practice.Pours(x.Filling.Parts) && !x.Lost()
}
