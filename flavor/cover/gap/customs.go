package gap

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
)

// Customs are what the trade pours for each thing that went.
type Customs [][]flavor.Custom

// Customs lists what the trade pours for each thing that went.
func (g *Gap) Customs() Customs {
	out := make(Customs, len(g.Gone))
	for m := range g.Gone {
		out[m] = g.CustomsFor(g.Gone[m].Profile)
	}
	return out
}

// Names reports whether some custom pours an ingredient.
func (c Customs) Names(id string) bool {
	return slices.ContainsFunc(c, func(of []flavor.Custom) bool {
		return slices.ContainsFunc(of, func(x flavor.Custom) bool { return slices.Contains(x.Parts, id) })
	})
}

// Place returns the place of an ingredient poured alone in place of what went, by its index,
// or −1 if that is no custom.
func (c Customs) Place(m int, id string) int {
	for _, x := range c[m] {
		if len(x.Parts) == 1 && x.Parts[0] == id {
			return x.Place
		}
	}
	return -1
}

// CustomsFor returns what the trade pours for something, less what the drink pours anyway:
// where it holds whiskey already, a cream liqueur is made up by cream. What sparkles is made
// up whole, since the little soda of a drink makes no wine sparkle. Where a guest wants less
// alcohol, what is lighter comes first; what is kept apart from the rest of the drink is no
// custom.
func (g *Gap) CustomsFor(p *flavor.Profile) []flavor.Custom {
	out := slices.DeleteFunc(g.trade.Customs.For(p.ID), func(x flavor.Custom) bool { return g.apartIn(x.Parts, p) })
	out = g.hotFirst(g.withSisters(out, p))
	if lighter := g.lighterFirst(p); len(lighter) > 0 {
		first := make([]flavor.Custom, len(lighter), len(lighter)+len(out))
		for i, id := range lighter {
			first[i] = flavor.Custom{Parts: []string{id}, Place: i}
		}
		if p.Class.Part() == flavor.PartBase {
			out = append(first, out...)
		} else {
			out = append(out, first...) // what tastes like the liqueur comes before what lengthens
		}
	}
	if p.Class.Sparkles() {
		return out
	}
	for i := range out {
		parts := slices.DeleteFunc(slices.Clone(out[i].Parts), func(id string) bool {
			return g.Keeps(func(q *flavor.Profile) bool { return q.ID == id })
		})
		if len(parts) > 0 {
			out[i].Parts = g.atHand(parts)
		}
	}
	return out
}

// hotFirst puts what is made cold, as cold brew is, behind all else in a drink that is served hot.
func (g *Gap) hotFirst(out []flavor.Custom) []flavor.Custom {
	if g.Asked.Spec.Service != flavor.Hot {
		return out
	}
	cold := func(id string) bool {
		return slices.ContainsFunc(g.Asked.Candidates, func(p *flavor.Profile) bool {
			as := flavor.Pour{Profile: p}
			return p.ID == id && as.Warmth() == flavor.HeatCold
		})
	}
	for i := range out {
		if slices.ContainsFunc(out[i].Parts, cold) {
			out[i].Place += len(out)
		}
	}
	slices.SortStableFunc(out, func(a, b flavor.Custom) int { return a.Place - b.Place })
	return out
}

// lighter returns what is poured in place of a spirit for a guest who wants less alcohol, or
// drinks none: then nothing lengthens what is savoury, and nothing more that sparkles what
// sparkles already or holds milk, nor is tea poured beside coffee or another tea.
func (g *Gap) lighter(p *flavor.Profile) []string {
	switch {
	case !g.Less:
		return nil
	case !g.NoAlcohol():
		return g.trade.Customs.Lighter(p.Class)
	case p.Class.Part() != flavor.PartBase && !g.madeOn(p):
		return nil
	}
	flat := g.Keeps(func(q *flavor.Profile) bool { return q.Class.Sparkles() || q.Class.Kin() == flavor.KinMilk })
	savoury := g.Keeps(role.Savoury)
	tea := g.Keeps(func(q *flavor.Profile) bool { return q.Class.Kin() == flavor.KinTea && q.Class != flavor.ClassWater })
	return slices.DeleteFunc(slices.Clone(g.trade.Customs.Dry(p.Class)), func(id string) bool {
		at := slices.IndexFunc(g.Asked.Candidates, func(q *flavor.Profile) bool { return q.ID == id })
		if at < 0 {
			return true // it is not at hand
		}
		is := g.Asked.Candidates[at].Class
		return is != flavor.ClassAlcoholFree && (savoury || flat && is.Sparkles() || tea && is.Kin() == flavor.KinTea)
	})
}

// madeOn reports whether a drink is made on a liqueur, a bitter or a wine: it pours a measure of
// it, and no spirit.
func (g *Gap) madeOn(p *flavor.Profile) bool {
	s := g.Asked.Spec
	return !s.Has(isBase) && slices.ContainsFunc(s.Pours, func(x flavor.Pour) bool { return x.Profile == p && x.ML >= BaseML })
}

// PouredFor reports whether p is what the trade pours in place of a spirit for a guest who
// wants less alcohol, or drinks none.
func (g *Gap) PouredFor(p, was *flavor.Profile) bool { return slices.Contains(g.lighter(was), p.ID) }

// lighterFirst returns the same, the first choice first: no dark wine before a pale one where
// the spirit is clear, and what sparkles before another wine where the drink keeps one.
func (g *Gap) lighterFirst(p *flavor.Profile) []string {
	wine := g.Keeps(func(q *flavor.Profile) bool { return q.Class.Kin() == flavor.KinWine })
	was := g.trade.Cellar.Of(p)
	place := func(id string) int {
		at := slices.IndexFunc(g.Asked.Candidates, func(q *flavor.Profile) bool { return q.ID == id })
		switch {
		case at < 0:
			return 0 // it is not at hand
		case wine && g.Asked.Candidates[at].Class.Sparkles():
			return -1
		case role.UnlikeInLook(g.trade.Cellar.Of(g.Asked.Candidates[at]), was) >= otherColour:
			return 1
		}
		return 0
	}
	return slices.SortedStableFunc(slices.Values(g.lighter(p)), func(a, b string) int { return place(a) - place(b) })
}

// otherColour is the difference in look, see [role.UnlikeInLook], from which a wine does not
// pass for a lighter pour of a spirit: a sherry from a solera for what is clear.
const otherColour = 0.9

// keptApart reports whether nobody pours a spirit beside something that the drink keeps, in
// place of one of another class.
func (g *Gap) keptApart(p, was *flavor.Profile) bool {
	return g.Sister(p.ID) == "" && p.Class != was.Class && g.Keeps(func(q *flavor.Profile) bool { return g.trade.Customs.Apart(p.Class, q.ID) })
}

// apartIn reports whether one of the candidates with some ids is kept apart from the drink.
func (g *Gap) apartIn(ids []string, was *flavor.Profile) bool {
	return slices.ContainsFunc(g.Asked.Candidates, func(p *flavor.Profile) bool {
		return slices.Contains(ids, p.ID) && g.keptApart(p, was)
	})
}

// atHand puts kin that is at hand in the place of those of several parts that are not: a
// rich syrup is poured with the cucumber where there is no other.
func (g *Gap) atHand(parts []string) []string {
	if len(parts) < 2 {
		return parts
	}
	out := slices.Clone(parts)
	for i, id := range out {
		if g.offered(id) {
			continue
		}
		kin := g.trade.Customs.Kin(id)
		if at := slices.IndexFunc(kin, func(k string) bool { return g.offered(k) && !slices.Contains(out, k) }); at >= 0 {
			out[i] = kin[at]
		}
	}
	slices.Sort(out)
	return out
}

// offered reports whether an ingredient is among those that may be poured.
func (g *Gap) offered(id string) bool {
	return slices.ContainsFunc(g.Asked.Candidates, func(p *flavor.Profile) bool { return p.ID == id && g.Accepts(p) && !g.InDrink(p) })
}
