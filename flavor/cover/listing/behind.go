package listing

import (
	"slices"

	"counterpour/flavor/cover/asked"
	"counterpour/flavor/cover/idea"
	"counterpour/flavor/weigh"
)

// putBlendsBehind puts blends behind the single bottles that the trade pours as a matter
// of course: those of the same class, or by custom. It does so where such a bottle keeps
// the drink, or where the best of them is hardly further than the blend. A blend that
// the trade pours is no blend. The ideas are given in order.
func (l *List) putBlendsBehind(all []idea.Idea) {
	first, last := -1, -1
	for i := range all {
		x := &all[i]
		if len(x.Filling.Parts) != 1 || !l.Practice.Obvious(x.Filling.Parts) {
			continue
		}
		if first < 0 {
			first = i
		}
		if x.Distance <= asked.NearJND {
			last = i
		}
	}
	for i := range all {
		x, single := &all[i], last
		if first >= 0 && all[first].Distance <= x.Distance+l.Weights.Part {
			single = max(first, last)
		}
		if i < single && len(x.Filling.Parts) > 1 && !l.Practice.Pours(x.Filling.Parts) {
			x.Rank = all[single].Rank + behind
		}
	}
}

// putNamelessBehind puts spirits of another class that make no drink with a name in place of the
// one that ran out behind what makes one: a guest is told a name, and no bar pours the other. The ideas are
// given in order.
func (l *List) putNamelessBehind(all []idea.Idea) {
	proven := func(x *idea.Idea) bool {
		return l.named(x) && l.SpiritsAlone(&x.Filling) && weigh.VerdictOf(x.Score) != weigh.Off
	}
	for i := range all {
		x := &all[i]
		if proven(x) || !l.SpiritsAlone(&x.Filling) || slices.ContainsFunc(x.Filling.Parts, l.Practice.SameKind) || l.smellingCustom(x) {
			continue
		}
		for k := i + 1; k < len(all); k++ {
			if proven(&all[k]) {
				x.Rank = max(x.Rank, all[k].Rank+behind)
			}
		}
	}
}

// smellingCustom reports whether an idea is one bottle that the trade pours for what went, and that
// smells of something.
func (l *List) smellingCustom(x *idea.Idea) bool {
	parts := x.Filling.Parts
	return len(parts) == 1 && l.Practice.Pours(parts) && !l.Cands[parts[0]].Smell.Plain()
}

// Moderate is how much further than a drink that is out of balance one in balance may lie, in
// steps, to be poured before it.
const Moderate = 1.5

// putOffBehind puts what is out of balance behind the first idea that is in balance and lies
// hardly further: the draft may be one that no family is judged by, and then neither loses
// anything against it. The ideas are given in order.
func (l *List) putOffBehind(all []idea.Idea) {
	if l.Gap.Less {
		return // a score holds a soft drink against drinks with alcohol
	}
	for i := range all {
		x := &all[i]
		if weigh.VerdictOf(x.Score) != weigh.Off || l.Practice.FirstChoice(x.Filling.Parts) {
			continue
		}
		better := slices.IndexFunc(all[i+1:], func(y idea.Idea) bool {
			return weigh.VerdictOf(y.Score) == weigh.Balanced && y.Distance <= x.Distance+Moderate
		})
		if better >= 0 {
			x.Rank = all[i+1+better].Rank + behind
		}
	}
}

// putEmptyBehind puts what is another drink and has nothing of what went, to taste or to smell, behind
// the first idea that keeps the drink and some of that: fewer bottles are no reason to pour cream
// where it was for its sugar. What the trade pours stays. The ideas are given in order.
func (l *List) putEmptyBehind(all []idea.Idea) {
	for i := range all {
		x := &all[i]
		if x.Distance <= asked.NearJND || l.Practice.Pours(x.Filling.Parts) || !l.KeepsNothing(x) {
			continue
		}
		better := slices.IndexFunc(all[i+1:], func(y idea.Idea) bool { return y.Distance <= asked.NearJND && !l.KeepsNothing(&y) })
		if better >= 0 {
			x.Rank = all[i+1+better].Rank + behind
		}
	}
}

// putAllergensBehind puts what brings the drink a new allergen behind the first idea that brings
// fewer, is as near and as well balanced, and has lost no more: the next guest may have to avoid
// it. What the trade pours before all else goes behind nothing but another custom. The ideas are
// those listed, the best first.
func (l *List) putAllergensBehind(listed []idea.Idea) {
	added := func(x *idea.Idea) int { return len(x.Spec.NewAllergens(l.Req.Spec)) }
	for i := len(listed) - 2; i >= 0; i-- {
		x := listed[i]
		brings := added(&x)
		if brings == 0 {
			continue
		}
		first := l.Practice.FirstChoice(x.Filling.Parts)
		behindIt := slices.IndexFunc(listed[i+1:], func(y idea.Idea) bool {
			return added(&y) < brings && y.Distance <= x.Distance+asked.SpareJND && len(y.Gone) <= len(x.Gone) && (!first || l.Practice.Pours(y.Filling.Parts)) &&
				(weigh.VerdictOf(y.Score) == weigh.Balanced || weigh.VerdictOf(x.Score) != weigh.Balanced)
		})
		if behindIt >= 0 {
			at := i + 1 + behindIt
			x.Rank = max(x.Rank, listed[at].Rank+behind)
			copy(listed[i:], listed[i+1:at+1])
			listed[at] = x
		}
	}
}

// behind is what puts a blend just behind a single bottle.
const behind = 1e-6
