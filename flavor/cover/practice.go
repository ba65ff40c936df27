package cover

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/search"
)

// Customary lists what the trade pours in place of an ingredient, the first choice first.
func (f *Finder) Customary(p *flavor.Profile) []flavor.Custom { return f.trade.Customs.For(p.ID) }

// CustomaryDry lists the same for a guest who drinks no alcohol: behind what is poured for
// everybody, what is where the ingredient is a spirit or what a drink is made on.
func (f *Finder) CustomaryDry(p *flavor.Profile) []flavor.Custom {
	out := f.Customary(p)
	for i, id := range f.trade.Customs.Dry(p.Class) {
		out = append(out, flavor.Custom{Parts: []string{id}, Place: len(out) + i})
	}
	return out
}

// habit is what a filling ranks nearer by for being what every hand reaches for.
func (t *task) habit(x *search.Filling) float64 {
	return t.finder.weights.Habit * t.practice.Habit(x.Parts)
}

// customary reports whether the trade, or the house, pours a filling for what went, or
// for each of several things that lead one of its parts.
func (t *task) customary(x *search.Filling) bool {
	if len(t.gap.Gone) < 2 || len(x.Parts) == 0 || t.practice.Pours(x.Parts) {
		return t.practice.Pours(x.Parts)
	}
	for m := range t.gap.Gone {
		if t.leading(m) && !t.practice.Alone(m, x.Parts[t.standsFor(x, m)]) {
			return false
		}
	}
	return true
}

// addKnown works out the standing of the combinations that are known for what
// they are: several ingredients that the trade pours together, what a guest who drinks no
// alcohol is poured for a liqueur, and what the house has tasted.
func (t *task) addKnown(c gap.Customs) {
	if len(t.gap.Gone) == 1 {
		first := -1
		for _, x := range c[0] {
			parts, ok := t.placesOf(x.Parts)
			if !ok {
				continue
			}
			if first < 0 {
				first = x.Place // what comes before it is not at hand
			}
			t.practice.AddChoice(parts, x.Place-first, t.standingOfCustom(parts, x.Place))
		}
		for place, parts := range t.lengthened(0) { // behind what the trade pours for everybody
			t.practice.AddBehind(parts, t.standingOfCustom(parts, place))
		}
	}
	t.addTastings()
}

// standingOfCustom is what ingredients that the trade pours together must earn:
// they count as one pour, which nobody has to think of.
func (t *task) standingOfCustom(parts []int, place int) float64 {
	w := &t.finder.weights.Gap
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
		at, found := t.placeOf(id)
		if !found {
			return nil, false
		}
		parts = append(parts, at)
	}
	slices.Sort(parts)
	return parts, len(parts) <= t.parts
}

// placeOf returns the place of an ingredient among the candidates, and whether it is there.
func (t *task) placeOf(id string) (int, bool) {
	return slices.BinarySearchFunc(t.cands, id, func(c candidate, id string) int { return strings.Compare(c.Profile.ID, id) })
}
