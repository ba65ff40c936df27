package behind

import (
	"context"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover"
)

// Shift is the state of the house during a shift.
type Shift struct {
	Menu  []HouseSpec
	Stock []*flavor.Profile
	Out   []*flavor.Profile // in the order of the shelves

	Tastings []cover.Tasting
}

// IsOut reports whether an ingredient of the stock has run out.
func (s *Shift) IsOut(p *flavor.Profile) bool { return slices.Contains(s.Out, p) }

// ShiftOf reads the state of the house.
func ShiftOf(ctx context.Context, h House) (*Shift, error) {
	var s Shift
	var err error
	if s.Menu, err = h.Menu(ctx); err != nil {
		return nil, err
	}
	if s.Stock, err = h.Stock(ctx); err != nil {
		return nil, err
	}
	if s.Tastings, err = h.Tastings(ctx); err != nil {
		return nil, err
	}
	ids, err := h.RunOut(ctx)
	if err != nil {
		return nil, err
	}
	for _, b := range s.Stock {
		if slices.Contains(ids, b.ID) {
			s.Out = append(s.Out, b)
		}
	}
	return &s, nil
}
