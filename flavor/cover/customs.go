package cover

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/search"
)

// customs are what the trade pours for each thing that went.
type customs [][]flavor.Custom

// Customary lists what the trade pours in place of an ingredient, the first choice first.
func (f *Finder) Customary(p *flavor.Profile) []flavor.Custom { return f.customs.For(p.ID) }

func (t *task) customsByPart() customs {
	out := make(customs, len(t.removed))
	for m, p := range t.removed {
		out[m] = t.customsFor(p)
	}
	return out
}

// customsFor returns what the trade pours for something, less what the drink pours anyway:
// where it holds whiskey already, a cream liqueur is made up by cream. What sparkles is made
// up whole, since the little soda of a drink makes no wine sparkle.
func (t *task) customsFor(p *flavor.Profile) []flavor.Custom {
	out := t.finder.customs.For(p.ID)
	if p.Class.Sparkles() {
		return out
	}
	for i := range out {
		parts := slices.DeleteFunc(slices.Clone(out[i].Parts), t.stays)
		if len(parts) > 0 {
			out[i].Parts = parts
		}
	}
	return out
}

// stays reports whether the drink keeps a pour of an ingredient.
func (t *task) stays(id string) bool {
	return slices.ContainsFunc(t.keep, func(i int) bool { return t.req.Spec.Pours[i].Profile.ID == id })
}

// names reports whether some custom pours an ingredient.
func (c customs) names(id string) bool {
	return slices.ContainsFunc(c, func(of []flavor.Custom) bool {
		return slices.ContainsFunc(of, func(x flavor.Custom) bool { return slices.Contains(x.Parts, id) })
	})
}

// place returns the place of an ingredient poured alone in place of removed m,
// or −1 if that is no custom.
func (c customs) place(m int, id string) int {
	for _, x := range c[m] {
		if len(x.Parts) == 1 && x.Parts[0] == id {
			return x.Place
		}
	}
	return -1
}

// addKnown works out the standing of the combinations that are known for what
// they are: several ingredients that the trade pours together, and what the house
// has tasted.
func (t *task) addKnown(c customs) {
	t.known = map[search.Combination]float64{}
	if len(t.removed) == 1 {
		for _, x := range c[0] {
			if parts, ok := t.placesOf(x.Parts); ok && len(parts) > 1 {
				t.known[search.Combine(parts...)] = t.standingOfCustom(parts, x.Place)
			}
		}
	}
	t.addTastings()
}

// standingOfCustom is what ingredients that the trade pours together must earn:
// they count as one pour, which nobody has to think of.
func (t *task) standingOfCustom(parts []int, place int) float64 {
	w := &t.finder.weights
	s := min(w.Custom/2, w.Place*float64(place))
	for _, i := range parts {
		s += t.entries[i].Price
	}
	return s
}

// placesOf returns the places of ingredients among the candidates, ascending,
// and whether all are there.
func (t *task) placesOf(ids []string) ([]int, bool) {
	parts := make([]int, 0, len(ids))
	for _, id := range ids {
		at, found := slices.BinarySearchFunc(t.cands, id, func(c candidate, id string) int { return strings.Compare(c.Profile.ID, id) })
		if !found {
			return nil, false
		}
		parts = append(parts, at)
	}
	slices.Sort(parts)
	return parts, len(parts) <= t.parts
}
