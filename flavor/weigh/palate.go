package weigh

import (
	"fmt"
	"math"
	"slices"

	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

// Palate is how a house pours one family, against the proven drinks.
type Palate struct {
	ID     string       // of the family
	Drinks int          // how many drinks the house marked as right
	Axes   []ratio.Axis // of the family
	// Factors is by what factor each part is larger than in the proven drinks,
	// against the geometric mean of all parts: sweet 0.8 is drier.
	Factors []float64

	shift []float64 // of the centre, in log-ratio coordinates
}

// Palates returns the families that a house moved, in the families' order;
// none for a set without a palate.
func (s *Set) Palates() []Palate {
	out := make([]Palate, len(s.palates))
	for i, p := range s.palates {
		p.Axes, p.Factors = slices.Clone(p.Axes), slices.Clone(p.Factors)
		out[i] = p
	}
	return out
}

// WithPalate returns a set whose centres are moved to the taste of a house, as
// the specs that it marks as right show it. The rule is the conjugate one: with
// n drinks that lie r from where the proven drinks would have them on average,
// the centre moves by n·r ÷ (n + Tuning.RatioDrinks), so that one drink hardly
// counts and twenty bring it most of the way; the spread stays. Each drink is
// held against its own relatives, so that a house that only pours unusual kinds
// right is not taken to pour the usual ones differently. An earlier palate is
// replaced; no specs give the proven drinks' own centres. It fails if a spec is
// of a family that the set does not know or has nothing to weigh.
func (s *Set) WithPalate(right []template.Labelled) (*Set, error) {
	out := *s
	out.palates = nil
	for _, r := range right {
		if s.modelOf(r.Family) == nil {
			return nil, fmt.Errorf("weigh: %q is marked as a drink of family %q, which is not known", r.Spec.Name, r.Family)
		}
	}
	lessons := template.LessonsOf(right)
	for i := range s.models {
		p, err := s.palateOf(i, lessons)
		if err != nil {
			return nil, err
		}
		if p.Drinks > 0 {
			out.palates = append(out.palates, p)
		}
	}
	out.hulls = out.hullsOf()
	return &out, nil
}

func (s *Set) palateOf(i int, right []template.Lesson) (Palate, error) {
	m := s.models[i]
	poured, _, err := template.RelativesOf(&m.Family, m.Basis, right)
	if err != nil {
		return Palate{}, err
	}
	p := Palate{ID: m.ID, Drinks: len(poured), Axes: slices.Clone(m.Axes), shift: make([]float64, len(m.Fitted.Centre))}
	for _, r := range poured {
		near := s.middleFor(i, template.WeightFor(r.Kin, &s.tuning))
		for j := range p.shift {
			p.shift[j] += (r.Coords[j] - near.Coords[j]) / (float64(len(poured)) + s.tuning.RatioDrinks)
		}
	}
	for a := range m.Axes {
		var l float64
		for j := range p.shift {
			l += m.Basis.Contrasts.At(a, j) * p.shift[j]
		}
		p.Factors = append(p.Factors, math.Exp(l))
	}
	return p, nil
}

// modelOf returns the model of a family, nil if there is none.
func (s *Set) modelOf(id string) *template.Model {
	for _, m := range s.models {
		if m.ID == id {
			return m
		}
	}
	return nil
}

// shifted adds the house's shift of a family to log-ratio coordinates.
func (s *Set) shifted(id string, c template.Coords) template.Coords {
	for _, p := range s.palates {
		if p.ID == id {
			for j, shift := range p.shift {
				c[j] += shift
			}
		}
	}
	return c
}
