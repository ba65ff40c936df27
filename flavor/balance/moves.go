package balance

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/template"
)

// What a change is worth, in points of score, beside the score that it
// brings: the fewest and smallest steps of the jigger. Common practice; the
// trial shows how often the first fix undoes what was spoilt.
const (
	pointsPerDoubling = 6.0  // a pour doubled or halved
	pointsPerML       = 0.05 // a millilitre more or less in the glass
	pointsPerMove     = 6.0  // a second pour moved
	pointsPerAdded    = 4.0  // a pour added or left out
	pointsNamed       = 10.0 // for the pour that the first fault names, moved as it says; for others by their odds
)

// How far one pour is moved, and how far each of two, as a factor and in steps.
const (
	singleTimes, singleSteps = 8.0, 48
	pairTimes, pairSteps     = 3.0, 6
)

// How far a fix may take a pour that no fault names, as long as others can mend
// the draft: the base by a share of what was ordered, the rest by a factor.
const (
	strayShare = 0.25
	strayTimes = 2.5
)

// move is one pour taken to another amount.
type move struct {
	Change
	times float64 // the larger amount over the smaller
	steps int     // of the jigger
	cost  float64
}

// movesOf returns every step of the jigger that each pour may be taken to.
func movesOf(s *flavor.Spec, faults []Fault) [][]move {
	out := make([][]move, len(s.Pours))
	for i := range s.Pours {
		if p := s.Pours[i].Profile; p.Class.Movable() || blames(faults, p) {
			out[i] = movesOfPour(s, i)
		}
	}
	return out
}

// blames reports whether a fault says that there is too much of an ingredient in
// itself: then even what is otherwise left alone is moved.
func blames(faults []Fault, p *flavor.Profile) bool {
	return slices.ContainsFunc(faults, func(f Fault) bool { return f.Beyond && f.Profile == p })
}

func movesOfPour(s *flavor.Spec, i int) []move {
	p := &s.Pours[i]
	perUnit, ok := measure.MLPerUnit(p.Unit, p.Profile)
	if !ok {
		return nil
	}
	amounts := measure.Neighbours(p.Amount, p.Unit, singleSteps)
	below := 0
	for below < len(amounts) && amounts[below] < p.Amount {
		below++
	}
	var out []move
	for k, amount := range amounts {
		m := move{Change: Change{Pour: i, Profile: p.Profile, Unit: p.Unit,
			From: p.Amount, To: amount, FromML: p.ML, ToML: amount * perUnit}}
		m.steps = max(below-k, k-below+1)
		m.times = math.Max(amount/p.Amount, p.Amount/amount)
		m.cost = pointsPerDoubling*math.Log2(m.times) + pointsPerML*math.Abs(m.ToML-m.FromML)
		if m.times <= singleTimes || m.steps == 1 {
			out = append(out, m)
		}
	}
	return out
}

// addition is an ingredient that a bartender reaches for when nothing in the
// glass can mend it, in the amounts that are tried.
type addition struct {
	profile *flavor.Profile
	unit    flavor.Unit
	amounts []float64
}

// additionsTo lists what may be added to a draft: what its faults ask for and
// nothing in it brings already.
func additionsTo(s *flavor.Spec, p *Pantry, faults []Fault) []addition {
	ounce, amounts := flavor.Ounce, []float64{0.25, 0.5, 0.75, 1}
	if measure.SystemOf(s) == measure.Metric {
		ounce, amounts = flavor.Millilitre, []float64{7.5, 15, 22.5, 30}
	}
	asked := func(a template.Axis, high bool) bool {
		return slices.ContainsFunc(faults, func(f Fault) bool { return f.Axis == a && f.High == high })
	}
	sweet := asked(template.Sweet, false) || asked(template.Sour, true)
	sour := asked(template.Sour, false) || asked(template.Sweet, true)
	bitter := asked(template.Bitter, false) || asked(template.Sweet, true)
	long := asked(template.Long, false) || asked(template.Strong, true) && s.Service == flavor.Long

	var out []addition
	add := func(wanted bool, x *flavor.Profile, u flavor.Unit, amounts ...float64) {
		if wanted && x != nil && !brings(s, x.Class) {
			out = append(out, addition{x, u, amounts})
		}
	}
	add(sweet, p.Syrup, ounce, amounts...)
	add(sweet, p.Syrup, flavor.Barspoon, 1, 2)
	add(sour, p.Sour, ounce, amounts...)
	add(bitter, p.Bitters, flavor.Dash, 1, 2, 3)
	add(long, p.Length, ounce, amounts[1], amounts[3], 2*amounts[3], 3*amounts[3])
	return out
}

// brings reports whether a pour of a draft does what a class does: seasonings
// differ by class, all else by part.
func brings(s *flavor.Spec, c flavor.Class) bool {
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool {
		return p.Profile.Class == c || c.Part() != flavor.PartSeasoning && p.Profile.Class.Part() == c.Part()
	})
}

// moves returns the additions as moves of a pour that is not there yet.
func (a *addition) moves(pour int) []move {
	perUnit, ok := measure.MLPerUnit(a.unit, a.profile)
	if !ok {
		return nil
	}
	var out []move
	for _, amount := range a.amounts {
		m := move{Change: Change{Pour: pour, Profile: a.profile, Unit: a.unit, To: amount, ToML: amount * perUnit}, steps: 1}
		m.cost = pointsPerAdded + pointsPerML*m.ToML
		out = append(out, m)
	}
	return out
}
