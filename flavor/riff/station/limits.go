package station

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/template"
)

// LeastStep is how far, in just-noticeable differences, a wish for more or less
// must move the finished drink to count as met.
const LeastStep = 1.0

// Limits is all that a riff must keep to: the guest's, and the wishes.
type Limits struct {
	Guest   cover.Guest
	classes []flavor.Class
	without []flavor.Family
	minABV  float64
	maxABV  float64 // +Inf for none
	Steps   []Step
}

// Step is a wish for more or less of a row.
type Step struct {
	Row   int
	Up    bool
	Least float64 // just-noticeable differences
}

// short returns by how many just-noticeable differences the step falls short,
// zero if it is met.
func (s *Step) short(before, after *Place) float64 {
	by := after[s.Row] - before[s.Row]
	if !s.Up {
		by = -by
	}
	return max(0, s.Least-by)
}

// NewLimits joins what a guest must not have and what they wish for. It fails if
// either is not sound.
func NewLimits(guest *cover.Guest, wishes []wish.Wish) (*Limits, error) {
	if err := guest.Check(); err != nil {
		return nil, err
	}
	l := &Limits{Guest: *guest, maxABV: math.Inf(1)}
	l.Guest.Avoid = slices.Clone(guest.Avoid)
	l.Guest.NoAnimal = slices.Clone(guest.NoAnimal)
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

func (l *Limits) add(w *wish.Wish) error {
	switch w.Kind {
	case wish.Axis:
		l.Steps = append(l.Steps, Step{RowOf(w.Axis), w.More, LeastStep})
	case wish.Aroma:
		l.Steps = append(l.Steps, Step{RowAroma + int(w.Family), w.More, TellsAroma})
	case wish.Without:
		l.without = append(l.without, w.Family)
	case wish.Allergen:
		l.Guest.Avoid = append(l.Guest.Avoid, w.Allergen)
	case wish.Animal:
		l.Guest.NoAnimal = append(l.Guest.NoAnimal, w.Animal)
	case wish.Class:
		l.classes = append(l.classes, w.Class)
	case wish.Below:
		l.maxABV = min(l.maxABV, w.ABV)
		l.Guest.NoAlcohol = l.Guest.NoAlcohol || w.ABV <= cover.NoAlcoholABV
	case wish.Above:
		l.minABV = max(l.minABV, w.ABV)
	default:
		return flavor.Invalid("toward", w.Kind, "%q is no kind of wish; read wishes with package wish", w.Kind)
	}
	if w.Axis < 0 || int(w.Axis) >= template.NumAxes || w.Family < 0 || int(w.Family) >= flavor.NumFamilies {
		return flavor.Invalid("toward", w.Word, "the wish names an axis or a family that is not one")
	}
	return nil
}

// neatAroma is the intensity of a family from which a bottle is known for it.
const neatAroma = 2.0

// Accepts reports whether p may be poured at all: by the guest, allergens first,
// and by the wishes.
func (l *Limits) Accepts(p *flavor.Profile) bool {
	if !l.Guest.Accepts(p) || slices.Contains(l.classes, p.Class) {
		return false
	}
	return !slices.ContainsFunc(l.without, func(f flavor.Family) bool { return p.Aroma[f] >= neatAroma })
}

// AcceptsAll reports whether every pour of a drink may be poured.
func (l *Limits) AcceptsAll(s *flavor.Spec) bool {
	for i := range s.Pours {
		if !l.Accepts(s.Pours[i].Profile) {
			return false
		}
	}
	return true
}

// CostOf returns the price of every pour, as far as prices are known.
func CostOf(s *flavor.Spec, prices map[string]float64) float64 {
	var sum float64
	for i := range s.Pours {
		sum += prices[s.Pours[i].Profile.ID] * s.Pours[i].ML
	}
	return sum
}

// Kept reports whether a finished drink breaks no limit. The wishes for more
// or less are not among them.
func (l *Limits) Kept(s *flavor.Spec, d *mix.Drink) bool {
	if !l.AcceptsAll(s) {
		return false
	}
	if d.ABV > l.maxABV || d.ABV < l.minABV {
		return false
	}
	if l.Guest.MaxCost > 0 && CostOf(s, l.Guest.Prices) > l.Guest.MaxCost {
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
func (l *Limits) shortfall(before, after *Place) float64 {
	var sum float64
	for i := range l.Steps {
		sum += l.Steps[i].short(before, after)
	}
	return sum
}
