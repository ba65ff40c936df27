package station

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/sense"
)

// LeastStep is how far, in just-noticeable differences, a wish for more or less
// must move the finished drink to count as met.
const LeastStep = 1.0

// tellsAroma is the same of an aroma, which is told less surely: common practice,
// no source.
const tellsAroma = 1.5

// lighterStep is the same of a wish for less strength: common practice, no source.
const lighterStep = 2.0

// wellMet is the number of steps from which more of the same counts no more.
const wellMet = 3.0

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
	row      *wish.Row // what a bartender meets it with; nil for whatever has much of it
	wish     wish.Wish
}

func aimOf(w *wish.Wish) (Aim, error) {
	a := Aim{Up: w.More, Least: LeastStep, kind: w.Kind, sense: w.Sense, families: w.Families, ids: w.IDs, wish: *w}
	switch w.Kind {
	case wish.Sense:
		if w.Sense < 0 || int(w.Sense) >= sense.NumSenses || w.Sense == sense.Aroma || w.Sense == sense.Colour || w.Sense == sense.Temperature {
			return a, flavor.Invalid("toward", w.Word, "the wish names nothing that can be more or less")
		}
		if w.Sense == sense.Ethanol && !w.More {
			a.Least = lighterStep // a quarter ounce less of a base is no lighter drink
		}
		return a, nil
	case wish.Aroma:
		a.sense, a.Least = sense.Aroma, tellsAroma
		if len(w.Families) == 0 || slices.ContainsFunc(w.Families, func(f flavor.AromaFamily) bool { return f < 0 || int(f) >= flavor.NumAromaFamilies }) {
			return a, flavor.Invalid("toward", w.Word, "the wish names no aroma family")
		}
		for _, s := range w.Or {
			other, err := aimOf(&wish.Wish{Kind: wish.Sense, Sense: s, More: w.More, Word: w.Word})
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
	return v[a.sense]
}

const litre = 1000.0

// in is how much of it is in a drink.
func (a *Aim) in(m measured) float64 {
	s, g, d := m.spec, m.glass, m.drink
	switch a.kind {
	case wish.Aroma:
		var sum float64
		for _, f := range a.families {
			sum += d.Aroma[f]
		}
		return sum
	case wish.Poured:
		var ml float64
		for i := range s.Pours {
			if slices.Contains(a.ids, s.Pours[i].Profile.ID) {
				ml += s.Pours[i].ML
			}
		}
		return litre * ml / d.VolumeML
	}
	if a.sense == sense.Volume {
		return g.VolumeML
	}
	return g.Holds[a.sense]
}

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

// leads is how much nearer to the wish one ingredient leads than another, which
// may be nil: about 1 for what is known for it, nothing for what no bartender meets it
// with.
func (a *Aim) leads(space *sense.Space, p, old *flavor.Profile) float64 {
	best := math.Inf(-1)
	for _, way := range a.ways() {
		v := way.share(space, p)
		if old != nil {
			v -= way.share(space, old)
		}
		if !a.Up {
			v = -v
		}
		best = max(best, v)
	}
	switch {
	case a.row == nil:
	case a.row.First[p.ID]:
		best = max(best, firstStands)
	case a.row.Also[p.ID]:
		best = max(best, alsoStands)
	default:
		best = min(best, 0)
	}
	return max(-1, min(1, best))
}

// share is how much an ingredient has of what leads a neat one.
func (a *Aim) share(space *sense.Space, p *flavor.Profile) float64 {
	x := a.PerML(space, p)
	neat := neatOf[a.sense]
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

// moved is how many just-noticeable differences a settled drink is nearer to the wish
// than the drink that it is held against.
func (j *Job) moved(a *Aim, s *Settled) float64 { return a.moved(j.wished, s) }

func (a *Aim) moved(from measured, s *Settled) float64 {
	return a.steps(a.in(from), a.in(measured{&s.Spec, s.Drink, s.Glass}))
}

// met is how well a drink meets the wishes for more or less, 0 to 1; 1 if there
// are none.
func (j *Job) met(s *Settled) float64 {
	aims := j.Limits.Aims
	if len(aims) == 0 || j.From == nil {
		return 1
	}
	worst := math.Inf(1)
	for i := range aims {
		best := math.Inf(-1)
		for _, a := range aims[i].ways() {
			best = max(best, j.moved(a, s))
		}
		worst = min(worst, best/wellMet)
	}
	return max(0, min(1, worst))
}

// shortfall sums what a drink still lacks of the wishes for more or less, in
// just-noticeable differences, held against another drink.
func (j *Job) shortfall(s *Settled, from measured) (lack float64) {
	for i := range j.Limits.Aims {
		least := math.Inf(1)
		for _, a := range j.Limits.Aims[i].ways() {
			least = min(least, max(0, a.Least-a.moved(from, s)))
		}
		lack += least
	}
	return lack
}

// A wish for more of a smell is met by what is known for it, of which at least so
// much of the smell is that; and of length by what lengthens: the brandy in a drink
// makes it no fruitier, and a fourth half ounce of it no longer. So much of the
// growth comes from there. Common practice, no source.
const (
	knownShare       = 1.0 / 6
	knownShareOfMany = 1.0 / 3 // of a wish as wide as fruit of any kind
	fewFamilies      = 3
	mostGrowth       = 0.6
)

// knownFor reports whether an ingredient is one that a bartender reaches for when
// there should be more of what is wished.
func (a *Aim) knownFor(p *flavor.Profile) bool {
	switch {
	case a.row != nil:
		return a.row.Carries(p)
	case a.kind == wish.Aroma:
		var sum float64
		for _, f := range a.families {
			sum += p.Aroma[f]
		}
		share := knownShare
		if len(a.families) > fewFamilies {
			share = knownShareOfMany
		}
		return sum > 0 && sum >= share*p.Aroma.Total()
	case a.kind == wish.Sense && a.sense == sense.Volume:
		return p.Class.Part() == flavor.PartLength
	}
	return true
}

// brought reports whether what grew toward a wish for more comes from what is known
// for it, in one of the ways that meet it.
func (j *Job) brought(a *Aim, s *Settled) bool {
	if !a.Up {
		return true
	}
	for _, way := range a.ways() {
		known := j.grown(way, s, way.knownFor)
		if j.moved(way, s) >= way.Least && known > 0 && known >= mostGrowth*j.grown(way, s, anything) {
			return true
		}
	}
	return false
}

func anything(*flavor.Profile) bool { return true }

// grown is how much more of what is wished a drink holds by ingredients that count, a
// millilitre of it.
func (j *Job) grown(a *Aim, s *Settled, counts func(*flavor.Profile) bool) float64 {
	sum := func(s *flavor.Spec, ml float64) (v float64) {
		for i := range s.Pours {
			if p := &s.Pours[i]; counts(p.Profile) {
				v += p.ML * a.PerML(j.Station.Space, p.Profile)
			}
		}
		if a.sense == sense.Volume && a.kind == wish.Sense {
			return v
		}
		return v / ml
	}
	return sum(&s.Spec, s.Drink.VolumeML) - sum(j.wished.spec, j.wished.drink.VolumeML)
}

// carried is the share of what grew toward the wishes that comes from what a bartender
// reaches for first, 0 to 1; 1 where no table says what that is.
func (j *Job) carried(s *Settled) float64 {
	worst := 1.0
	for i := range j.Limits.Aims {
		a := &j.Limits.Aims[i]
		if a.row == nil {
			continue
		}
		best := 0.0
		for _, way := range a.ways() {
			if j.moved(way, s) >= way.Least {
				first := j.grown(way, s, func(p *flavor.Profile) bool { return a.row.First[p.ID] })
				best = max(best, min(1, first/max(tiny, j.grown(way, s, anything))))
			}
		}
		worst = min(worst, best)
	}
	return worst
}

// mostBroughtBack is how much of what there should be less of may come in anew, as a
// share of what there was.
const mostBroughtBack = 0.15

// bringsBack reports whether something new brings what there should be less of: who
// wants less sugar wants the syrup gone, and no liqueur for it.
func (j *Job) bringsBack(a *Aim, s *Settled) bool {
	came := j.grown(a, s, func(p *flavor.Profile) bool { return !j.wished.spec.HasProfile(p) && !p.Base() })
	was := a.in(j.wished)
	return came > mostBroughtBack*was
}

// Carries reports whether a wish for more is met with an ingredient, by the table of
// what a bartender meets it with.
func (j *Job) Carries(p *flavor.Profile) bool {
	return slices.ContainsFunc(j.Limits.Aims, func(a Aim) bool { return a.Up && a.row != nil && a.row.Carries(p) })
}

// Toward says how much nearer to the wishes an ingredient leads than what it
// takes the place of, which may be nil.
func (j *Job) Toward(it *Item, old *flavor.Profile) (sum float64) {
	for i := range j.Limits.Aims {
		sum += j.Limits.Aims[i].leads(j.Station.Space, it.Profile, old)
	}
	if j.Limits.Wants(it.Profile) {
		sum++
	}
	return sum
}

// Tastes reports whether a wish for more of a taste or a smell leads to an ingredient; one
// for a longer drink asks for no taste.
func (j *Job) Tastes(p *flavor.Profile) bool {
	return slices.ContainsFunc(j.Limits.Aims, func(a Aim) bool {
		long := a.kind == wish.Sense && (a.sense == sense.Volume || a.sense == sense.Carbonation)
		return a.Up && !long && a.leads(j.Station.Space, p, nil) > leastLead
	})
}

// leastLead is how far an ingredient must lead toward a wish to be there for it.
const leastLead = 0.1

// Serves reports whether an ingredient that comes in serves a wish for more or less: it
// leads there, or, where there should be less of something, it brings none and seasons or
// sours in its place. True if there are no such wishes.
func (j *Job) Serves(p *flavor.Profile) bool {
	for i := range j.Limits.Aims {
		a := &j.Limits.Aims[i]
		part := p.Class.Part()
		if a.leads(j.Station.Space, p, nil) > leastLead || !a.Up && p.Class.Kin() != flavor.KinHerb && (part == flavor.PartSeasoning || part == flavor.PartSour || part == flavor.PartLength && p.Carbonated) {
			return true
		}
	}
	return len(j.Limits.Aims) == 0
}

// idle counts what comes in and serves no wish, what stands in for a pour that is not
// there aside.
func (j *Job) idle(s *flavor.Spec) (n int) {
	for i := range s.Pours {
		p := s.Pours[i].Profile
		if !j.From.HasProfile(p) && !j.wished.spec.HasProfile(p) && !j.stepsIn(p) && !j.Limits.Wants(p) && !j.Serves(p) {
			n++
		}
	}
	return n
}

// strays reports whether a drink pours a spirit of another class than the drink asked about
// does, where wishes for more or less say what to change and that spirit serves none: who
// wants it drier wants no other drink.
func (j *Job) strays(s *flavor.Spec) bool {
	if len(j.Limits.Aims) == 0 || j.Limits.Lighter() {
		return false
	}
	return slices.ContainsFunc(s.Pours, func(x flavor.Pour) bool {
		p := x.Profile
		return p.Base() && !j.From.HasClass(p.Class) && !j.stepsIn(p) && !j.Limits.Wants(p) && !j.Serves(p)
	})
}

// heightened reports whether an ingredient of the drink asked about seasons it and is what a
// bartender meets a wish for more with: then more of it is poured than usual.
func (j *Job) heightened(p *flavor.Profile) bool {
	return j.From != nil && p.Class.Part() == flavor.PartSeasoning && j.From.HasProfile(p) && j.Carries(p)
}

// Brings reports whether an ingredient brings much of what there should be less of, in taste
// or smell.
func (j *Job) Brings(p *flavor.Profile) bool {
	return slices.ContainsFunc(j.Limits.Aims, func(a Aim) bool {
		return !a.Up && a.sense != sense.Volume && a.share(j.Station.Space, p) > leastLead
	})
}

// Lessens reports whether an ingredient of the drink asked about brings what there should
// be less of: no more of it is poured then.
func (j *Job) Lessens(p *flavor.Profile) bool {
	return j.From != nil && j.From.HasProfile(p) && slices.ContainsFunc(j.Limits.Aims, func(a Aim) bool {
		return !a.Up && a.kind == wish.Sense && a.sense != sense.Volume && a.share(j.Station.Space, p) > leastLead
	})
}
