package cover

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/sense"
)

func (x *idea) lost() bool { return len(x.gone) > 0 }

// lacks reports whether what goes by a name led, and is gone.
func (x *idea) lacks(name string) bool {
	return slices.ContainsFunc(x.gone, func(l sense.Lost) bool { return l.Material == name })
}

// leadsGone returns what led the missing ingredients and is not in the glass any
// more, each once. What no odorant tells is there as long as a part smells of it.
// A lead is gone too, though its odorants are there, where no part smells like what
// went: cream shares odorants with coconut, and raspberry with violet.
func (t *task) leadsGone(x *search.Filling, glass *sense.Percept) []sense.Lost {
	var out []sense.Lost
	add := func(l sense.Lost) {
		if told := slices.ContainsFunc(out, func(o sense.Lost) bool { return o.Material == l.Material }); !told && !(t.gap.Less && l.Material == sense.Ethanol.Lead()) {
			out = append(out, l)
		}
	}
	for m := range t.gap.Gone {
		p := t.gap.Gone[m].Profile
		if !t.gap.Gone[m].Missing {
			continue
		}
		least := t.leastApart(x, m)
		lost := t.finder.space.Lost(p, t.glass, glass)
		for _, l := range lost {
			if len(l.Odorants) > 0 || least > role.AlikeTo {
				add(l)
			}
		}
		if leads := t.finder.space.Leads(p); t.gap.Gone[m].Told && !t.resembles(x, m) && len(leads) > 0 && !pours(glass, leads[0].Name) {
			add(sense.Lost{Material: leads[0].Name})
		}
	}
	return out
}

// resembles reports whether some part smells like removed m: it is taken for it or, of one
// class or one sweet flavour for another, not quite unlike it.
func (t *task) resembles(x *search.Filling, m int) bool {
	was := t.gap.Gone[m].Profile.Class
	return slices.ContainsFunc(x.Parts, func(i int) bool {
		c, most := &t.cands[i], role.AlikeTo
		if is := c.Profile.Class; is == was || role.SweetFlavour(is) && role.SweetFlavour(was) {
			most = nothingLike
		}
		return role.Apart(&c.Smell, &t.gap.Gone[m].Smell, 0, math.Inf(1)) <= most
	})
}

// leastApart returns how far apart from removed m the part is that smells most like
// it, in whatever amount.
func (t *task) leastApart(x *search.Filling, m int) float64 {
	least := math.Inf(1)
	for _, i := range x.Parts {
		least = min(least, role.Apart(&t.cands[i].Smell, &t.gap.Gone[m].Smell, 0, math.Inf(1)))
	}
	return least
}

// nothingLike is how far apart two smells are when nobody takes one for the other.
const nothingLike = 0.9

// pours reports whether a glass holds a material.
func pours(glass *sense.Percept, material string) bool {
	return slices.ContainsFunc(glass.Materials, func(m flavor.MaterialShare) bool { return m.Material == material })
}

// missed is how much of [Weights.Lead] a cover that has lost what led must earn: a quarter more
// if none of it is left, and nothing if the trade pours it, knowing that. Where several things
// are out, something is left of the drink that keeps one of them. Of several bottles that the
// trade pours together one must be like what went, unless they are its first choice.
func (t *task) missed(x *idea) float64 {
	const ofSeveral = 1.0 / 3
	switch {
	case !x.lost():
		return 0
	case t.practice.FirstChoice(x.filling.Parts), t.customary(&x.filling) && (!t.blends(&x.filling) || t.leastApart(&x.filling, 0) <= role.AlikeTo):
		if len(t.gap.Gone) > 1 {
			return ofSeveral
		}
		return 0
	case t.gap.Any(func(p *flavor.Profile) bool { return t.unled(x, p) }):
		return 1.25
	}
	return 1
}

// unled reports whether all that led the smell of something is gone.
func (t *task) unled(x *idea, p *flavor.Profile) bool {
	leads := t.finder.space.Leads(p)
	return len(leads) > 0 && !slices.ContainsFunc(leads, func(l sense.Lead) bool { return !x.lacks(l.Name) })
}

// keepsNothing reports whether a cover has lost all that led one of the things out: what it
// was poured for to taste or to feel, and what it smelt of.
func (t *task) keepsNothing(x *idea) bool {
	return t.gap.Any(func(p *flavor.Profile) bool {
		lead, tastes := t.finder.space.LeadSense(p)
		return tastes && x.lacks(lead.Lead()) && t.unled(x, p)
	})
}
