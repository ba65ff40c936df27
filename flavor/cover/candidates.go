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
		if len(amounts) == 0 || !customs.names(p.ID) && !t.mayHelp(p, &holds) {
			continue
		}
		part := search.Part{Per: t.near.RowOf(&holds), Odd: odd(p.Class)}
		if t.req.Common != nil {
			part.Price = t.finder.weights.Rare * t.req.Common.Rarity(p.ID)
		}
		for _, a := range amounts {
			part.Amounts = append(part.Amounts, a.ml)
		}
		part.Alike = t.alike(p, part.Amounts)
		for m := range t.removed {
			part.Strange = append(part.Strange, t.strange(p, &holds, m, customs.place(m, p.ID)))
		}
		t.cands = append(t.cands, candidate{p, amounts})
		t.obvious = append(t.obvious, len(t.removed) == 1 && (p.Class == t.removed[0].Class || customs.place(0, p.ID) >= 0))
		t.entries = append(t.entries, part)
	}
	t.addKnown(customs)
}

// alike returns the amount of p that is poured as a matter of course: as much as
// went, of the same class or of one spirit for another; 0 if there is none.
func (t *task) alike(p *flavor.Profile, amounts []float64) float64 {
	if len(t.removed) > 1 {
		return 0
	}
	was := t.removed[0].Class
	if p.Class != was && (p.Class.Kin() != flavor.KinSpirit || was.Kin() != flavor.KinSpirit) {
		return 0
	}
	const same = 1e-6
	for _, ml := range amounts {
		if math.Abs(ml-t.gapML) < same {
			return ml
		}
	}
	return 0
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

// kindred is the likeness of aroma, as a cosine, from which something is of a kind
// with what went, whatever its class.
const kindred = 0.5

// mayHelp reports whether a bartender would look at p at all. Some kin only take
// the place of their own: the numbers of a brine, a foam or a coffee may fit a
// gap, and the guest would not thank us. What is mostly fat is not poured.
func (t *task) mayHelp(p *flavor.Profile, holds *sense.Vector) bool {
	if p.Fat.Value >= mostlyFat {
		return false
	}
	own := ownKind(p.Class)
	if own == "" {
		return true
	}
	for m, x := range t.removed {
		if ownKind(x.Class) == own || own == kindPlant && cosine(holds, &t.gone[m].holds) >= kindred {
			return true
		}
	}
	return false
}

// mostlyFat is the g/L of fat from which something is no liquid behind the bar.
const mostlyFat = 500

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
// What smells of next to nothing stands for no aroma, but for the sugar of a syrup:
// a plain syrup keeps the drink in balance when the flavoured one is out.
func (t *task) strange(p *flavor.Profile, holds *sense.Vector, m int, place int) float64 {
	w, was, gone := &t.finder.weights, t.removed[m], &t.gone[m]
	cost := w.Class * classDistance(p.Class, was.Class)
	if gone.smells {
		if place < 0 && plain(holds) && !plain(&gone.holds) && !sweetens(p.Class, was.Class) {
			return math.Inf(1)
		}
		least, most := 0.0, math.Inf(1)
		if p.Class.Kin() == flavor.KinSpirit && was.Class.Kin() == flavor.KinSpirit {
			least, most = 1.0/likeForLike, likeForLike // poured as much as went
		}
		cost += w.Aroma * unlike(apart(holds, &gone.holds, least, most))
	}
	cost *= gone.weight
	if place >= 0 {
		cost = max(0, cost-w.Custom) + min(w.Custom/2, w.Place*float64(place))
	}
	return cost
}

// sweetens reports whether both classes are poured to sweeten.
func sweetens(a, b flavor.Class) bool {
	return a.Kin() == flavor.KinSweetener && b.Kin() == flavor.KinSweetener
}

// plainBelow is the intensity of aroma below which something smells of next to
// nothing: syrups of sugar, water, neutral spirits and vodkas do.
const plainBelow = 2.0

func plain(holds *sense.Vector) bool { return length(holds[firstAroma:lastAroma]) < plainBelow }

// likeForLike is how many times as much of one spirit may be poured for another,
// or as little.
const likeForLike = 2.0

// How far apart two aromas may be to be taken for one another, and from where on
// they are nothing like it: gins are apart by 0.4, gold and white rum by 0.5, vodka
// and white rum, or apricot and elderflower, by 1.
const (
	alikeTo    = 0.5
	unlikeFrom = 1.0
)

// unlike is 0 for aromas that are taken for one another and 1 for those that are
// nothing like it.
func unlike(apart float64) float64 {
	return min(1, max(0, (apart-alikeTo)/(unlikeFrom-alikeTo)))
}

// apart returns how far apart two aromas are, as against the stronger one, when
// so many times as much of the first is poured as brings them nearest, within
// bounds: 0 for aromas that are the same, 1 if one is nothing like it.
func apart(holds, was *sense.Vector, least, most float64) float64 {
	a, b := holds[firstAroma:lastAroma], was[firstAroma:lastAroma]
	x, y := length(a), length(b)
	if x == 0 || y == 0 {
		return 1
	}
	times := min(most, max(least, y/x))
	square := times*times*x*x + y*y - 2*times*product(a, b)
	return math.Sqrt(max(0, square)) / max(times*x, y)
}

// cosine is how alike two aromas are, whatever their strength.
func cosine(holds, was *sense.Vector) float64 {
	a, b := holds[firstAroma:lastAroma], was[firstAroma:lastAroma]
	if x, y := length(a), length(b); x > 0 && y > 0 {
		return product(a, b) / (x * y)
	}
	return 0
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
