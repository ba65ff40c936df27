package aim

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/sense"
)

// LeastStep is how far, in just-noticeable differences, a wish for more or less
// must move the finished drink to count as met, and from which a change is told: one, but for a
// twentieth, which no measure that a hand pours decides.
const LeastStep = 0.95

// TellsAroma is the same of an aroma, which is told less surely: common practice,
// no source.
const TellsAroma = 1.5

// lighterStep is the same of a wish for less strength: common practice, no source.
const lighterStep = 2.0

// strongerStep is the same of a wish for more strength that is met by more of the spirit in a
// drink that is no weaker: half an ounce more of two is told, a quarter is not. Common practice,
// no source.
const strongerStep = 1.4

// Aim is a wish for more or less of one thing in the glass: a sense, some aroma
// families together, or some ingredients.
type Aim struct {
	Up    bool
	Least float64 // just-noticeable differences

	kind     wish.Kind
	sense    sense.Sense
	families []flavor.AromaFamily
	ids      []string
	or       []Aim     // any of these meets it as well
	total    bool      // of the whole drink, not of each millilitre of it
	row      *wish.Row // what a bartender meets it with; nil for whatever has much of it
	wish     wish.Wish
}

// newAim reads a wish for more or less; it fails if the wish names nothing of the kind.
func newAim(w *wish.Wish) (Aim, error) {
	a := Aim{Up: w.More, Least: LeastStep, kind: w.Kind, sense: w.Sense, families: w.Families, ids: w.IDs, wish: *w}
	switch w.Kind {
	case wish.Sense:
		if w.Sense < 0 || int(w.Sense) >= sense.NumSenses || w.Sense == sense.Aroma || w.Sense == sense.Colour || w.Sense == sense.Temperature {
			return a, flavor.Invalid("toward", w.Word, "the wish names nothing that can be more or less")
		}
		if w.Sense == sense.Ethanol && !w.More {
			a.Least = lighterStep // a quarter ounce less of a base is no lighter drink
		}
		if w.Sense == sense.Ethanol && w.More {
			more := a
			more.total, more.Least = true, strongerStep
			a.or = []Aim{more}
		}
		return a, nil
	case wish.Aroma:
		a.sense, a.Least = sense.Aroma, TellsAroma
		if len(w.Families) == 0 || slices.ContainsFunc(w.Families, func(f flavor.AromaFamily) bool { return f < 0 || int(f) >= flavor.NumAromaFamilies }) {
			return a, flavor.Invalid("toward", w.Word, "the wish names no aroma family")
		}
		for _, s := range w.Or {
			other, err := newAim(&wish.Wish{Kind: wish.Sense, Sense: s, More: w.More, Word: w.Word})
			if err != nil {
				return a, err
			}
			a.or = append(a.or, other)
		}
		return a, nil
	}
	a.sense = sense.Volume // amounts are told apart as volumes are
	return a, nil
}

// ways lists the aim and what meets it as well.
func (a *Aim) ways() []*Aim {
	out := []*Aim{a}
	for i := range a.or {
		out = append(out, &a.or[i])
	}
	return out
}

// PerML is how much of it an ingredient has, so that in a finished drink there is
// Σ mL · PerML / volume of it. Of volume it is 1.
func (a *Aim) PerML(space *sense.Space, p *flavor.Profile) float64 {
	switch a.kind {
	case wish.Aroma:
		var sum float64
		for _, f := range a.families {
			sum += p.Aroma[f]
		}
		return sum
	case wish.Poured:
		if slices.Contains(a.ids, p.ID) {
			return litre
		}
		return 0
	}
	if a.sense == sense.Volume {
		return 1
	}
	v := space.PerML(p)
	if a.total {
		return v[a.sense] / perCent
	}
	return v[a.sense]
}

const litre = 1000.0

// in is how much of it is in a drink that was mixed.
func (a *Aim) in(m *Mixed) float64 {
	s, g, d := m.Spec, m.Glass, m.Drink
	switch a.kind {
	case wish.Aroma:
		var sum float64
		for _, f := range a.families {
			sum += d.Aroma[f]
		}
		return sum
	case wish.Poured:
		return litre * s.MLOf(func(p *flavor.Profile) bool { return slices.Contains(a.ids, p.ID) }) / d.VolumeML
	}
	if a.sense == sense.Volume {
		return g.VolumeML
	}
	if a.total {
		return g.Holds[a.sense] * d.VolumeML / perCent
	}
	return g.Holds[a.sense]
}

// perCent makes mL of pure alcohol of a strength and a volume.
const perCent = 100.0

// steps is how many just-noticeable differences lead toward the wish from before
// to after; below zero if they lead away.
func (a *Aim) steps(before, after float64) float64 {
	by := sense.StepsBetween(a.sense, before, after)
	if !a.Up {
		by = -by
	}
	return by
}

// Standing of what a bartender meets a wish with, among what may be poured: that of
// what is known for it is about 1.
const (
	firstStands = 0.9
	alsoStands  = 0.4
)

// Leads is how much nearer to the wish one ingredient leads than another, which
// may be nil: about 1 for what is known for it, nothing for what no bartender meets it
// with.
func (a *Aim) Leads(space *sense.Space, p, old *flavor.Profile) float64 {
	best := math.Inf(-1)
	for _, way := range a.ways() {
		best = max(best, way.leads(space, p, old))
	}
	return max(-1, min(1, best))
}

// leads is Leads of one way to meet a wish.
func (a *Aim) leads(space *sense.Space, p, old *flavor.Profile) float64 {
	v := a.share(space, p)
	if old != nil {
		v -= a.share(space, old)
	}
	if !a.Up {
		v = -v
	}
	switch {
	case a.row == nil:
		return v
	case old != nil && a.row.Carries(old) && a.OfStrength(): // of two spirits the stronger leads
		return v
	case a.row.First[p.ID]:
		return max(v, firstStands)
	case a.row.Also[p.ID]:
		return max(v, alsoStands)
	}
	return min(v, 0)
}

// share is how much an ingredient has of what leads a neat one.
func (a *Aim) share(space *sense.Space, p *flavor.Profile) float64 {
	x := a.PerML(space, p)
	neat := neatOf[a.sense]
	if a.total {
		neat /= perCent
	}
	if a.kind == wish.Poured {
		neat = litre
	}
	return x / neat
}

// neatOf is what an ingredient that is known for a sense has of it: a spirit, a
// syrup, lemon juice, a bitter aperitif and so on. Common practice, no source.
var neatOf = [sense.NumSenses]float64{
	sense.Ethanol: 40, sense.Sweet: 600, sense.Sour: 60, sense.Salty: 50, sense.Bitter: 100, sense.Umami: 5, sense.Pungent: 10,
	sense.Cooling: 50, sense.Astringent: 2, sense.Carbonation: 6, sense.Body: 50, sense.Fat: 200, sense.Foam: 80, sense.Cloud: 1,
	sense.Aroma: 10, sense.Volume: 1,
}

// CarriedBy sets what a bartender meets the wish with in a drink on a class of spirit, none
// if base is empty: by the table where stocked says that some of a row is at hand, else
// whatever has much of what is wished.
func (a *Aim) CarriedBy(table *wish.Carriers, base flavor.Class, stocked func(*wish.Row) bool) {
	row := table.Of(&a.wish, base)
	if row != nil && stocked(row) {
		a.row = row
		for i := range a.or {
			a.or[i].row = row
		}
		return
	}
	for i := range a.or {
		a.or[i].CarriedBy(table, base, stocked)
	}
}

// Carries reports whether a wish for more is met with an ingredient, by the table of
// what a bartender meets it with.
func (a *Aim) Carries(p *flavor.Profile) bool { return a.Up && a.row != nil && a.row.Carries(p) }

// CarriesFirst reports whether a bartender reaches for an ingredient first, by the same table.
func (a *Aim) CarriesFirst(p *flavor.Profile) bool { return a.Up && a.row != nil && a.row.First[p.ID] }

// Of reports whether the aim is for more or less of the aroma of a family.
func (a *Aim) Of(f flavor.AromaFamily) bool {
	return a.kind == wish.Aroma && slices.Contains(a.families, f)
}

// OfStrength reports whether the aim is for a stronger drink.
func (a *Aim) OfStrength() bool { return a.Up && a.kind == wish.Sense && a.sense == sense.Ethanol }

// leastLead is how far an ingredient must lead toward a wish to be there for it.
const leastLead = 0.1

// Tastes reports whether a wish for more of a taste or a smell leads to an ingredient; one
// for a longer drink asks for no taste.
func (a *Aim) Tastes(space *sense.Space, p *flavor.Profile) bool {
	return a.Up && slices.ContainsFunc(a.ways(), func(way *Aim) bool {
		long := way.kind == wish.Sense && (way.sense == sense.Volume || way.sense == sense.Carbonation)
		return !long && way.leads(space, p, nil) > leastLead
	})
}

// Serves reports whether an ingredient that comes in serves the wish: it leads there, or,
// where there should be less of something, it brings none and seasons or sours in its place.
func (a *Aim) Serves(space *sense.Space, p *flavor.Profile) bool {
	if a.Leads(space, p, nil) > leastLead {
		return true
	}
	if a.Up || p.Class.Kin() == flavor.KinHerb {
		return false
	}
	part := p.Class.Part()
	return part == flavor.PartSeasoning || part == flavor.PartSour || part == flavor.PartLength && p.Carbonated
}

// Brings reports whether an ingredient brings much of what there should be less of, in taste
// or smell.
func (a *Aim) Brings(space *sense.Space, p *flavor.Profile) bool {
	return !a.Up && a.sense != sense.Volume && a.share(space, p) > leastLead
}

// BringsTaste is Brings of a taste alone.
func (a *Aim) BringsTaste(space *sense.Space, p *flavor.Profile) bool {
	return a.kind == wish.Sense && a.Brings(space, p)
}
