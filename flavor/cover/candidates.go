package cover

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// candidate is one ingredient that may be a part.
type candidate struct {
	profile *flavor.Profile
	amounts []amount
	per     vector    // a millilitre
	self    float64   // product with itself
	gap     float64   // and with the gap
	moves   []float64 // and with the moves
	odd     bool
	rare    float64 // what it must earn for being rare
}

// odd reports whether p is something that a bartender puts up with once in a
// cover.
func odd(c flavor.Class) bool {
	switch c {
	case flavor.ClassCocktailBitters, flavor.ClassTincture, flavor.ClassFreshHerb, flavor.ClassFruit,
		flavor.ClassCoffee, flavor.ClassTea:
		return true
	}
	return restricted(c) != ""
}

// restricted names the kind of a class that only replaces its own kind: the
// numbers of a brine or a foam may fit a gap, and the guest would not thank us.
func restricted(c flavor.Class) string {
	switch c {
	case flavor.ClassSavoury, flavor.ClassSaline, flavor.ClassSpice:
		return "savoury"
	case flavor.ClassEgg, flavor.ClassFoam:
		return "foam"
	case flavor.ClassDairy, flavor.ClassPlantMilk:
		return "cream"
	case flavor.ClassCreamLiqueur:
		return "cream"
	case flavor.ClassVinegar, flavor.ClassAcid, flavor.ClassShrub, flavor.ClassSourJuice:
		return "sour"
	case flavor.ClassBeer, flavor.ClassCider:
		return "beer"
	}
	return ""
}

// shelf is the candidates of a request. There may be very many, so the room for
// them is left to the next request.
type shelf struct {
	cands    []candidate
	products []float64 // of candidates and moves
}

// borrow returns a shelf that may hold anything.
func (f *Finder) borrow() *shelf {
	if s, ok := f.shelves.Get().(*shelf); ok {
		return s
	}
	return &shelf{}
}

// addCandidates lists what may be poured, in the order of the ids.
func (t *task) addCandidates() {
	grid := newGrid(t.gapML, measure.SystemOf(t.req.Spec))
	t.cands = slices.Grow(t.cands[:0], len(t.req.Candidates))
	for _, p := range byID(t.req.Candidates) {
		if !t.allowed(p) {
			continue
		}
		t.cands = append(t.cands, candidate{profile: p, amounts: grid.amountsOf(p), odd: odd(p.Class)})
		c := &t.cands[len(t.cands)-1]
		c.per = t.space.perML(p)
		c.self, c.gap = dot(&c.per, &c.per), dot(&c.per, &t.gap)
		if len(c.amounts) == 0 || c.self <= 0 {
			t.cands = t.cands[:len(t.cands)-1]
			continue
		}
		if t.req.Usual != nil && !t.req.Usual[p.ID] {
			c.rare = t.finder.weights.RareCost
		}
	}
	t.addTastings()
}

// byID returns profiles in the order of their ids, which is that of the index.
func byID(profiles []*flavor.Profile) []*flavor.Profile {
	order := func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) }
	if slices.IsSortedFunc(profiles, order) {
		return profiles
	}
	return slices.SortedFunc(slices.Values(profiles), order)
}

// allowed keeps out what the guest must not have, what only replaces its own kind, and
// what is in the drink already, the missing ones among it.
func (t *task) allowed(p *flavor.Profile) bool {
	if !t.req.Guest.Accepts(p) {
		return false
	}
	if kind := restricted(p.Class); kind != "" &&
		!slices.ContainsFunc(t.removed, func(x *flavor.Profile) bool { return restricted(x.Class) == kind }) {
		return false
	}
	for i := range t.req.Spec.Pours {
		if t.req.Spec.Pours[i].Profile.ID == p.ID {
			return false
		}
	}
	return true
}
