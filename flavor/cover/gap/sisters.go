package gap

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/sister"
)

// sistersOf returns which candidates make another drink that guests order by its name in place of the
// only thing that ran out, a spirit, the first choice first. For a guest who must have less alcohol
// there are none: what is lighter is another question.
func (g *Gap) sistersOf() (out []sister.Sister) {
	if len(g.Gone) != 1 || !g.Gone[0].Missing || g.Less {
		return nil
	}
	was := g.Gone[0].Profile
	if !isBase(was) {
		return nil
	}
	b := g.trade.Sisters
	for _, x := range b.Of(g.Asked.Spec, was) {
		if x.Name == "" {
			continue
		}
		for _, p := range g.Asked.Candidates {
			told := slices.ContainsFunc(out, func(y sister.Sister) bool { return y.Profile == p })
			if !told && b.Same(p, x.Profile) && !g.InDrink(p) && g.Accepts(p) {
				x.Profile = p
				out = append(out, x)
			}
		}
	}
	return out
}

// Sister returns the name of the other proven drink that an ingredient makes in place of what ran
// out, "" if it makes none.
func (g *Gap) Sister(id string) string {
	at := slices.IndexFunc(g.sisters, func(x sister.Sister) bool { return x.Profile.ID == id })
	if at < 0 {
		return ""
	}
	return g.sisters[at].Name
}

// OnlySister reports whether nothing but its name speaks for an ingredient: it makes another proven
// drink, and the trade pours it for nothing that went.
func (g *Gap) OnlySister(id string) bool {
	if g.Sister(id) == "" {
		return false
	}
	return !slices.ContainsFunc(g.trade.Customs.For(g.Gone[0].Profile.ID), func(c flavor.Custom) bool { return slices.Equal(c.Parts, []string{id}) })
}

// passesAtHand reports whether something is at hand that a guest takes for what went: of its class,
// or what the trade pours alone for it and smells of something.
func (g *Gap) passesAtHand() bool {
	was := g.Gone[0].Profile
	customs := g.trade.Customs.For(was.ID)
	return slices.ContainsFunc(g.Asked.Candidates, func(p *flavor.Profile) bool {
		if p == was || g.InDrink(p) || !g.Accepts(p) {
			return false
		}
		alone := slices.ContainsFunc(customs, func(c flavor.Custom) bool { return len(c.Parts) == 1 && c.Parts[0] == p.ID })
		return p.Class == was.Class || alone && !g.trade.Cellar.Of(p).Smell.Plain()
	})
}

// withSisters adds to what the trade pours what makes another proven drink: behind what the trade
// takes for the very thing, and before the customs of another class that make none.
func (g *Gap) withSisters(out []flavor.Custom, was *flavor.Profile) []flavor.Custom {
	if len(g.sisters) == 0 || g.Gone[0].Profile != was || g.passesAtHand() {
		return out // no guest is talked into another drink whose own can be poured
	}
	place := 0
	for _, c := range out {
		if g.ofClass(c.Parts, was.Class) {
			place = max(place, c.Place+1)
		}
	}
	for i := range out {
		if !g.keepsTo(out[i].Parts, was) {
			out[i].Place += place + len(g.sisters)
		}
	}
	for i, x := range g.sisters {
		alone := []string{x.Profile.ID}
		if !slices.ContainsFunc(out, func(c flavor.Custom) bool { return slices.Equal(c.Parts, alone) }) {
			out = append(out, flavor.Custom{Parts: alone, Place: place + i})
		}
	}
	slices.SortStableFunc(out, func(a, b flavor.Custom) int { return a.Place - b.Place })
	return out
}

// ofClass reports whether a candidate of a class is among what is poured.
func (g *Gap) ofClass(parts []string, is flavor.Class) bool {
	return slices.ContainsFunc(g.Asked.Candidates, func(p *flavor.Profile) bool { return p.Class == is && slices.Contains(parts, p.ID) })
}

// keepsTo reports whether what is poured makes a proven drink or is, in one of its parts, of the
// class of what went.
func (g *Gap) keepsTo(parts []string, was *flavor.Profile) bool {
	named := func(id string) bool { return g.Sister(id) != "" }
	return slices.ContainsFunc(parts, named) || g.ofClass(parts, was.Class)
}

// How much is poured of what makes a proven drink and is no spirit, as against what that pours
// (common practice, no source).
const sisterLeast, sisterMost = 0.75, 1.5

// sisterMeasure returns the least and the most mL that is poured of what makes a proven drink and is
// no spirit; most is 0 if it makes none.
func (g *Gap) sisterMeasure(p *flavor.Profile) (least, most float64) {
	at := slices.IndexFunc(g.sisters, func(x sister.Sister) bool { return x.Profile == p })
	if at < 0 || p.Class.Kin() == flavor.KinSpirit {
		return 0, 0
	}
	return sisterLeast * g.sisters[at].ML, sisterMost * g.sisters[at].ML
}
