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

// practice is what the trade and the house are known to pour in place of what went. Parts
// are told by their places among the candidates.
type practice struct {
	alone    [][]bool                       // by what went and by candidate: the trade pours it alone for that
	sameKind []bool                         // by candidate: of the class of the only thing that went
	places   map[search.Combination]int     // of what the trade pours for the only thing that went, 0 for its first choice of what is at hand
	choices  [][]int                        // the same, the first choice first
	standing map[search.Combination]float64 // what a known combination must earn
	cameBack map[search.Combination]bool    // sent back in this house more often than kept
	oneByOne map[search.Combination]bool    // what covers each thing alone that went, taken together
}

// add takes in the next candidate.
func (k *practice) add(p *flavor.Profile, g *gap.Gap, c gap.Customs) {
	if k.alone == nil {
		k.alone = make([][]bool, len(g.Gone))
	}
	for m := range g.Gone {
		k.alone[m] = append(k.alone[m], c.Place(m, p.ID) >= 0)
	}
	k.sameKind = append(k.sameKind, len(g.Gone) == 1 && p.Class == g.Gone[0].Profile.Class)
}

// poursAlone reports whether parts are one that the trade pours alone for the only thing that
// went.
func (k *practice) poursAlone(parts []int) bool {
	return len(parts) == 1 && len(k.alone) == 1 && k.alone[0][parts[0]]
}

// knows reports whether the trade or the house pours some parts together.
func (k *practice) knows(parts []int) bool {
	key := search.Combine(parts...)
	_, known := k.standing[key]
	return known && !k.oneByOne[key]
}

// pours reports whether the trade or the house pours some parts for what went.
// What came back in this house is no custom of it.
func (k *practice) pours(parts []int) bool {
	return !k.sentBack(parts) && (k.poursAlone(parts) || k.knows(parts))
}

// sentBack reports whether some parts came back in this house more often than not.
func (k *practice) sentBack(parts []int) bool { return k.cameBack[search.Combine(parts...)] }

// eachAlone reports whether some parts are what covers each thing alone that went.
func (k *practice) eachAlone(parts []int) bool { return k.oneByOne[search.Combine(parts...)] }

// firstChoice reports whether some parts are the first that the trade pours for what went.
func (k *practice) firstChoice(parts []int) bool {
	place, custom := k.places[search.Combine(parts...)]
	return custom && place == 0 && k.pours(parts)
}

// obvious reports whether some parts are what a bar pours as a matter of course: one
// bottle of the class of what went, or what the trade or the house pours for it.
func (k *practice) obvious(parts []int) bool {
	return len(parts) == 1 && (k.sameKind[parts[0]] || k.poursAlone(parts)) || k.pours(parts)
}

// habitPlaces is how many of the first choices of the trade rank nearer for it.
const habitPlaces = 4.0

// habit is how much of [Weights.Habit] some parts rank nearer by for being what every hand
// reaches for: all of it for a first choice of the trade, and a share for a later one. What
// came back in this house is none.
func (k *practice) habit(parts []int) float64 {
	place, custom := k.places[search.Combine(parts...)]
	if !custom || k.sentBack(parts) {
		return 0
	}
	return max(0, 1-float64(place)/habitPlaces)
}

// habit is what a filling ranks nearer by for being what every hand reaches for.
func (t *task) habit(x *search.Filling) float64 {
	return t.finder.weights.Habit * t.practice.habit(x.Parts)
}

// customary reports whether the trade, or the house, pours a filling for what went, or
// for each of several things that lead one of its parts.
func (t *task) customary(x *search.Filling) bool {
	if len(t.gap.Gone) < 2 || len(x.Parts) == 0 || t.practice.pours(x.Parts) {
		return t.practice.pours(x.Parts)
	}
	for m := range t.gap.Gone {
		if t.leading(m) && !t.practice.alone[m][x.Parts[t.standsFor(x, m)]] {
			return false
		}
	}
	return true
}

// addKnown works out the standing of the combinations that are known for what
// they are: several ingredients that the trade pours together, and what the house
// has tasted.
func (t *task) addKnown(c gap.Customs) {
	k := &t.practice
	k.standing, k.places = map[search.Combination]float64{}, map[search.Combination]int{}
	if len(t.gap.Gone) == 1 {
		first := 0
		for _, x := range c[0] {
			parts, ok := t.placesOf(x.Parts)
			if !ok {
				continue
			}
			key := search.Combine(parts...)
			if _, twice := k.places[key]; twice {
				continue
			}
			if len(k.choices) == 0 {
				first = x.Place // what comes before it is not at hand
			}
			k.places[key], k.choices = x.Place-first, append(k.choices, parts)
			if len(parts) > 1 {
				k.standing[key] = t.standingOfCustom(parts, x.Place)
			}
		}
		t.addLengthened()
	}
	t.addTastings()
}

// addLengthened adds what a guest who drinks no alcohol is poured for a liqueur, behind what the
// trade pours for everybody.
func (t *task) addLengthened() {
	k := &t.practice
	for place, parts := range t.lengthened(0) {
		key := search.Combine(parts...)
		k.choices, k.standing[key] = append(k.choices, parts), t.standingOfCustom(parts, place)
	}
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
