package riff

import (
	"fmt"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
)

// leastStep is how far, in just-noticeable differences, a wish for more or less
// must move the finished drink to count as met.
const leastStep = 1.0

// limits is all that a riff must keep to: the guest's, and the wishes.
type limits struct {
	guest   cover.Guest
	classes []flavor.Class
	without []flavor.Family
	minABV  float64
	maxABV  float64 // +Inf for none
	steps   []step
}

// step is a wish for more or less of a row.
type step struct {
	row   int
	up    bool
	least float64 // just-noticeable differences
}

// short returns by how many just-noticeable differences the step falls short,
// zero if it is met.
func (s *step) short(before, after *place) float64 {
	by := after[s.row] - before[s.row]
	if !s.up {
		by = -by
	}
	return max(0, s.least-by)
}

func newLimits(guest *cover.Guest, wishes []Wish) (*limits, error) {
	if err := guest.Check(); err != nil {
		return nil, err
	}
	l := &limits{guest: *guest, maxABV: math.Inf(1)}
	l.guest.Avoid = slices.Clone(guest.Avoid)
	l.guest.NoAnimal = slices.Clone(guest.NoAnimal)
	if guest.MaxABV > 0 {
		l.maxABV = guest.MaxABV
	}
	for i := range wishes {
		if err := l.add(&wishes[i]); err != nil {
			return nil, err
		}
	}
	return l, nil
}

func (l *limits) add(w *Wish) error {
	switch w.Kind {
	case WishAxis:
		l.steps = append(l.steps, step{rowOf(w.Axis), w.More, leastStep})
	case WishAroma:
		l.steps = append(l.steps, step{rowAroma + int(w.Family), w.More, tellsAroma})
	case WishWithout:
		l.without = append(l.without, w.Family)
	case WishAllergen:
		l.guest.Avoid = append(l.guest.Avoid, w.Allergen)
	case WishAnimal:
		l.guest.NoAnimal = append(l.guest.NoAnimal, w.Animal)
	case WishClass:
		l.classes = append(l.classes, w.Class)
	case WishBelow:
		l.maxABV = min(l.maxABV, w.ABV)
		l.guest.NoAlcohol = l.guest.NoAlcohol || w.ABV <= cover.NoAlcoholABV
	case WishAbove:
		l.minABV = max(l.minABV, w.ABV)
	default:
		return &flavor.Fault{Kind: flavor.ErrInvalid, Location: "toward", Value: string(w.Kind),
			Message: fmt.Sprintf("%q is no kind of wish; read wishes with ParseWishes", w.Kind)}
	}
	if w.Axis < 0 || int(w.Axis) >= template.NumAxes || w.Family < 0 || int(w.Family) >= flavor.NumFamilies {
		return &flavor.Fault{Kind: flavor.ErrInvalid, Location: "toward", Value: w.Word, Message: "the wish names an axis or a family that is not one"}
	}
	return nil
}

// neatAroma is the intensity of a family from which a bottle is known for it.
const neatAroma = 2.0

// accepts reports whether p may be poured at all: by the guest, allergens first,
// and by the wishes.
func (l *limits) accepts(p *flavor.Profile) bool {
	if !l.guest.Accepts(p) || slices.Contains(l.classes, p.Class) {
		return false
	}
	return !slices.ContainsFunc(l.without, func(f flavor.Family) bool { return p.Aroma[f] >= neatAroma })
}

// acceptsAll reports whether every pour of a drink may be poured.
func (l *limits) acceptsAll(s *flavor.Spec) bool {
	for i := range s.Pours {
		if !l.accepts(s.Pours[i].Profile) {
			return false
		}
	}
	return true
}

// costOf returns the price of every pour, as far as prices are known.
func costOf(s *flavor.Spec, prices map[string]float64) float64 {
	var sum float64
	for i := range s.Pours {
		sum += prices[s.Pours[i].Profile.ID] * s.Pours[i].ML
	}
	return sum
}

// kept reports whether a finished drink breaks no limit. The wishes for more
// or less are not among them.
func (l *limits) kept(s *flavor.Spec, d *mix.Drink) bool {
	if !l.acceptsAll(s) {
		return false
	}
	if d.ABV > l.maxABV || d.ABV < l.minABV {
		return false
	}
	if l.guest.MaxCost > 0 && costOf(s, l.guest.Prices) > l.guest.MaxCost {
		return false
	}
	for _, f := range l.without {
		if d.Aroma[f] >= cover.DefaultWeights().AromaFloor {
			return false
		}
	}
	return true
}

// shortfall sums what the wishes for more or less still lack.
func (l *limits) shortfall(before, after *place) float64 {
	var sum float64
	for i := range l.steps {
		sum += l.steps[i].short(before, after)
	}
	return sum
}
