package cover

import (
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/measure"
	"counterpour/flavor/sense"
)

// candidate is one ingredient that may be a part.
type candidate struct {
	profile *flavor.Profile
	amounts []amount
}

// addCandidates lists what may be poured, in the order of the ids, and what each
// must earn.
func (t *task) addCandidates() {
	grid := newGrid(t.gapML, measure.SystemOf(t.req.Spec))
	customs := t.customsByPart()
	t.cands = make([]candidate, 0, len(t.req.Candidates))
	t.entries = make([]search.Part, 0, len(t.req.Candidates))
	for _, p := range byID(t.req.Candidates) {
		if t.inDrink(p) || !t.accepts(p) {
			continue
		}
		amounts := grid.amountsOf(p)
		holds := t.finder.space.PerML(p)
		likeness := t.likeness(&holds)
		if len(amounts) == 0 || !customs.names(p.ID) && !t.mayHelp(p, likeness) {
			continue
		}
		part := search.Part{Per: t.near.RowOf(&holds), Odd: odd(p.Class)}
		if t.req.Common != nil {
			part.Price = t.finder.weights.Rare * t.req.Common.Rarity(p.ID)
		}
		for _, a := range amounts {
			part.Amounts = append(part.Amounts, a.ml)
		}
		for m := range t.removed {
			part.Strange = append(part.Strange, t.strange(p, m, likeness[m], customs.place(m, p.ID)))
		}
		t.cands = append(t.cands, candidate{p, amounts})
		t.entries = append(t.entries, part)
	}
	t.addKnown(customs)
}

// byID returns profiles in the order of their ids, which is that of the index.
func byID(profiles []*flavor.Profile) []*flavor.Profile {
	order := func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) }
	if slices.IsSortedFunc(profiles, order) {
		return profiles
	}
	return slices.SortedFunc(slices.Values(profiles), order)
}

// inDrink reports whether p is a pour of the drink already, the missing ones
// among them.
func (t *task) inDrink(p *flavor.Profile) bool {
	return slices.ContainsFunc(t.req.Spec.Pours, func(q flavor.Pour) bool { return q.Profile.ID == p.ID })
}

// likeness returns how alike the aroma of something is to that of each thing that
// went, 0 to 1.
func (t *task) likeness(holds *sense.Vector) []float64 {
	out := make([]float64, len(t.gone))
	a := holds[firstAroma:lastAroma]
	for m := range t.gone {
		b := t.gone[m].holds[firstAroma:lastAroma]
		if x, y := length(a), length(b); x > 0 && y > 0 {
			out[m] = min(1, max(0, product(a, b)/(x*y)))
		}
	}
	return out
}

// kindred is the likeness of aroma from which something is of a kind with what
// went, whatever its class, and stranger the one below which it smells of
// nothing that went.
const (
	kindred  = 0.5
	stranger = 0.1
)

// mayHelp reports whether a bartender would look at p at all. Some kin only take
// the place of their own: the numbers of a brine, a foam or a coffee may fit a
// gap, and the guest would not thank us.
func (t *task) mayHelp(p *flavor.Profile, likeness []float64) bool {
	own := ownKind(p.Class)
	if own == "" {
		return true
	}
	for m, x := range t.removed {
		if ownKind(x.Class) == own || own == kindPlant && likeness[m] >= kindred {
			return true
		}
	}
	return false
}

// kindPlant is the kind of what tastes of one plant: it also stands in for
// anything of that plant.
const kindPlant = "plant"

// ownKind names the kind of a class that only replaces its own kind; it is empty
// for what may help anywhere.
func ownKind(c flavor.Class) string {
	switch c.Kin() {
	case flavor.KinSavoury, flavor.KinSaline, flavor.KinSpice:
		return "savoury"
	case flavor.KinFoam:
		return "foam"
	case flavor.KinMilk, flavor.KinCream:
		return "cream"
	case flavor.KinSharp, flavor.KinSourJuice:
		return "sour"
	case flavor.KinJuice, flavor.KinFruit, flavor.KinHerb:
		return kindPlant
	case flavor.KinTea:
		if c == flavor.ClassWater {
			return "water"
		}
		return kindPlant
	}
	if c == flavor.ClassBeer || c == flavor.ClassCider {
		return "beer"
	}
	return ""
}

// odd reports whether p is something that a bartender puts up with once in a
// cover.
func odd(c flavor.Class) bool { return c.Kin() == flavor.KinBitters || ownKind(c) != "" }

// strange is what p must earn for being strange in place of removed m: of another
// class, smelling of something else. The trade's customs let it off up to a step.
// What smells of nothing never stands for an aroma.
func (t *task) strange(p *flavor.Profile, m int, likeness float64, place int) float64 {
	w, was := &t.finder.weights, t.removed[m]
	cost := w.Class * classDistance(p.Class, was.Class)
	if t.gone[m].smells {
		if place < 0 && likeness < stranger && p.Class.Kin() != was.Class.Kin() {
			return math.Inf(1)
		}
		cost += w.Aroma * unlike(likeness)
	}
	cost *= t.gone[m].weight
	if place >= 0 {
		cost = max(0, cost-w.Custom) + min(w.Custom/2, w.Place*float64(place))
	}
	return cost
}

// Likeness of two aromas from which they are taken for one another, and below
// which they are nothing like it: gins are alike by 0.9, gold and white rum by
// 0.85, vodka and white rum, or apricot and elderflower, by 0.5.
const (
	alikeFrom  = 0.85
	unlikeFrom = 0.5
)

// unlike is 0 for aromas that are taken for one another and 1 for those that are
// nothing like it.
func unlike(likeness float64) float64 {
	return min(1, max(0, (alikeFrom-likeness)/(alikeFrom-unlikeFrom)))
}

// classDistance is how far two classes are apart: 0 for one class, 1 for other
// parts of a drink.
func classDistance(a, b flavor.Class) float64 {
	switch {
	case a == b:
		return 0
	case a.Kin() == b.Kin():
		return 1.0 / 3
	case a.Part() == b.Part():
		return 2.0 / 3
	}
	return 1
}

func product(a, b []float64) float64 {
	var s float64
	for i, x := range a {
		s += x * b[i]
	}
	return s
}

func length(v []float64) float64 { return math.Sqrt(product(v, v)) }
