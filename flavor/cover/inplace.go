package cover

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/sense"
)

// InPlace pours an ingredient in place of one pour of a drink, measure for measure, and
// tells how far that moves the glass: what a hand does that asks nobody. It is no cover,
// since nothing is moved to mend it and nothing is judged. It fails if there is no such
// pour, or the ingredient cannot be measured or mixed so.
func (f *Finder) InPlace(s *flavor.Spec, at int, p *flavor.Profile) (Cover, error) {
	if at < 0 || at >= len(s.Pours) {
		return Cover{}, flavor.Invalid("pour", at, "there is no pour %d; use 0 to %d", at, len(s.Pours)-1)
	}
	old := &s.Pours[at]
	ml, err := measure.ToML(old.Amount, old.Unit, p)
	if err != nil {
		return Cover{}, err
	}
	before, err := f.mixer.Mix(s)
	if err != nil {
		return Cover{}, err
	}
	c := Cover{For: []*flavor.Profile{old.Profile}, Spec: s.Clone()}
	c.Spec.Pours[at].Profile, c.Spec.Pours[at].ML = p, ml
	after, err := f.mixer.Mix(&c.Spec)
	if err != nil {
		return Cover{}, err
	}
	c.Parts = slices.Clone(c.Spec.Pours[at : at+1])
	steps := sense.Between(f.space.Percept(s, before), f.space.Percept(&c.Spec, after))
	c.Distance = steps.Total()
	return c, nil
}
