package service

import (
	"context"
	"errors"

	"counterpour/api/service/coaching"
	"counterpour/flavor"
)

// Triangle plans a triangle test for a drink, with its strength as finished in this
// house.
func (s *Snapshot) Triangle(_ context.Context, r coaching.TriangleRequest) (*coaching.TriangleAnswer, error) {
	abv, known, err := s.strengthOf(r.Drink)
	if err != nil {
		return nil, err
	}
	if !known {
		abv = coaching.SpiritABV
	}
	a, err := coaching.LayOut(r, abv)
	if err == nil {
		a.Assumed = !known
	}
	return a, err
}

// strengthOf returns the strength of a drink of the house, in % vol. known is false for
// any other drink, and for one that cannot be weighed.
func (s *Snapshot) strengthOf(name string) (abv float64, known bool, err error) {
	for i := range s.Menu {
		if flavor.NormaliseName(s.Menu[i].Spec.Name) != flavor.NormaliseName(name) {
			continue
		}
		judged, err := s.Judge.Score(&s.Menu[i].Spec)
		if errors.Is(err, flavor.ErrInvalid) || errors.Is(err, flavor.ErrUnknown) {
			return 0, false, nil
		}
		if err != nil {
			return 0, false, err
		}
		return judged.Drink.ABV, true, nil
	}
	return 0, false, nil
}
