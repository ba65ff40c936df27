package balance

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// What a change is worth, in points of score, beside the score that it
// brings: the fewest and smallest steps of the jigger. Common practice; the
// trial shows how often the first fix undoes what was spoilt.
const (
	pointsPerDoubling = 6.0  // a pour doubled or halved
	pointsPerML       = 0.05 // a millilitre more or less in the glass
	pointsPerMove     = 6.0  // a second pour moved
	pointsPerAdded    = 4.0  // a pour added or left out
	pointsNamed       = 10.0 // for the pour that the first fault names, moved as it says
)

// How far one pour is moved, and how far each of two, as a factor and in steps.
const (
	singleTimes, singleSteps = 6.0, 48
	pairTimes, pairSteps     = 3.0, 8
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
	cost float64
	near bool // within reach of a pair
}

// movesOf returns every step of the jigger that each pour may be taken to.
func movesOf(s *flavor.Spec) [][]move {
	out := make([][]move, len(s.Pours))
	for i := range s.Pours {
		out[i] = movesOfPour(s, i)
	}
	return out
}

func movesOfPour(s *flavor.Spec, i int) []move {
	p := &s.Pours[i]
	perUnit, ok := measure.MLPerUnit(p.Unit, p.Profile)
	if !ok || !movable(p.Profile) {
		return nil
	}
	amounts := measure.Neighbours(p.Amount, p.Unit, singleSteps)
	below := 0
	for below < len(amounts) && amounts[below] < p.Amount {
		below++
	}
	var out []move
	for k, amount := range amounts {
		steps := below - k
		if k >= below {
			steps = k - below + 1
		}
		times := math.Max(amount/p.Amount, p.Amount/amount)
		if times > singleTimes && steps > 1 {
			continue
		}
		m := move{Change: Change{Pour: i, Profile: p.Profile, Unit: p.Unit,
			From: p.Amount, To: amount, FromML: p.ML, ToML: amount * perUnit}}
		m.cost = pointsPerDoubling*math.Log2(times) + pointsPerML*math.Abs(m.ToML-m.FromML)
		m.near = steps == 1 || times <= pairTimes && steps <= pairSteps
		out = append(out, m)
	}
	return out
}

// movable reports whether a bartender would move a pour to mend the balance:
// eggs, herbs and salt are there for something else.
func movable(p *flavor.Profile) bool {
	switch p.Class {
	case flavor.ClassEgg, flavor.ClassFoam, flavor.ClassFreshHerb, flavor.ClassSpice, flavor.ClassSaline, flavor.ClassSavoury:
		return false
	}
	return true
}

// addition is an ingredient that a bartender reaches for when nothing in the
// glass can mend it, in the amounts that are tried.
type addition struct {
	profile *flavor.Profile
	unit    flavor.Unit
	amounts []float64
}

// additionsTo lists what may be added to a draft from a pantry: only what
// nothing in the draft brings already.
func additionsTo(s *flavor.Spec, p *Pantry) []addition {
	ounce, amounts := flavor.Ounce, []float64{0.25, 0.5, 0.75, 1}
	spoon, spoons := flavor.Barspoon, []float64{1, 2}
	if measure.SystemOf(s) == measure.Metric {
		ounce, amounts = flavor.Millilitre, []float64{7.5, 15, 22.5, 30}
	}
	var out []addition
	add := func(x *flavor.Profile, u flavor.Unit, amounts []float64, has func(*flavor.Profile) bool) {
		if x == nil || hasAny(s, has) {
			return
		}
		out = append(out, addition{x, u, amounts})
	}
	part := func(want flavor.Part) func(*flavor.Profile) bool {
		return func(x *flavor.Profile) bool { return x.Class.Part() == want }
	}
	add(p.Syrup, ounce, amounts, part(flavor.PartSweetener))
	add(p.Syrup, spoon, spoons, part(flavor.PartSweetener))
	add(p.Sour, ounce, amounts, part(flavor.PartSour))
	add(p.Bitters, flavor.Dash, []float64{1, 2, 3}, func(x *flavor.Profile) bool { return x.Class == flavor.ClassCocktailBitters })
	add(p.Length, ounce, []float64{amounts[1], amounts[3], 2 * amounts[3], 3 * amounts[3]}, part(flavor.PartLength))
	return out
}

func hasAny(s *flavor.Spec, is func(*flavor.Profile) bool) bool {
	for i := range s.Pours {
		if is(s.Pours[i].Profile) {
			return true
		}
	}
	return false
}

// moves returns the additions as moves of a pour that is not there yet.
func (a *addition) moves(pour int) []move {
	perUnit, ok := measure.MLPerUnit(a.unit, a.profile)
	if !ok {
		return nil
	}
	var out []move
	for _, amount := range a.amounts {
		m := move{Change: Change{Pour: pour, Profile: a.profile, Unit: a.unit, To: amount, ToML: amount * perUnit}, near: true}
		m.cost = pointsPerAdded + pointsPerML*m.ToML
		out = append(out, m)
	}
	return out
}
