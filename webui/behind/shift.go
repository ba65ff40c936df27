package behind

import (
	"context"
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
)

// Shift is the state of the house during a shift.
type Shift struct {
	Menu  []HouseSpec
	Stock []*flavor.Profile
	Out   []*flavor.Profile // in the order of the shelves

	Bottles []house.Bottle // sorted by id

	Tastings []cover.Tasting
}

// IsOut reports whether an ingredient of the stock has run out.
func (s *Shift) IsOut(p *flavor.Profile) bool { return slices.Contains(s.Out, p) }

// Lacks reports whether a pour cannot be poured now: it ran out, or the house does not keep
// it. A house that keeps no stock list is taken to keep everything, and water is always there.
func (s *Shift) Lacks(p *flavor.Profile) bool {
	return s.IsOut(p) || len(s.Stock) > 0 && !p.Class.Free() && !slices.Contains(s.Stock, p)
}

// LackedBy lists the ids of what a drink pours and cannot be poured now.
func (s *Shift) LackedBy(drink *flavor.Spec) (ids []string) {
	for i := range drink.Pours {
		if p := drink.Pours[i].Profile; s.Lacks(p) {
			ids = append(ids, p.ID)
		}
	}
	return ids
}

// ShiftOf reads the state of the house.
func ShiftOf(ctx context.Context, h House) (*Shift, error) {
	s := Shift{Bottles: h.Inventory()}
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

// Several returns the bottle that an ingredient is poured from, if others of it are there too.
func (s *Shift) Several(id string) (poured house.Bottle, several bool) {
	there := s.there(id)
	return house.Wells(there)[id], len(there) > 1
}

// there lists the bottles of an ingredient that are there; none of what is out.
func (s *Shift) there(id string) (out []house.Bottle) {
	if slices.ContainsFunc(s.Out, func(p *flavor.Profile) bool { return p.ID == id }) {
		return nil
	}
	for _, b := range s.Bottles {
		if b.Ingredient == id && b.There() {
			out = append(out, b)
		}
	}
	return out
}

// Switch is a bottle that ran out, and the one that its ingredient is poured from now.
type Switch struct{ Out, Poured house.Bottle }

// Switches lists the bottles that ran out while others of their ingredient are poured, what
// ran out last first.
func (s *Shift) Switches() (out []Switch) {
	for _, b := range s.Bottles {
		if b.OutSince == nil {
			continue
		}
		if there := s.there(b.Ingredient); len(there) > 0 {
			out = append(out, Switch{b, house.Wells(there)[b.Ingredient]})
		}
	}
	slices.SortStableFunc(out, func(a, b Switch) int { return b.Out.OutSince.Compare(*a.Out.OutSince) })
	return out
}
