package service

import (
	"context"
	"slices"

	"counterpour/api/service/marking"
	"counterpour/data/house"
	"counterpour/flavor"
)

// Mark notes what ran out, what is back and how covers were received; see
// [marking.Pen.Mark]. [Venue.Now] includes it when Mark returns.
func (v *Venue) Mark(ctx context.Context, by house.By, r marking.Request) error {
	changes, err := v.pen.Mark(ctx, by, r)
	if err == nil && len(changes) > 0 {
		v.takeUp(ctx, changes[len(changes)-1])
	}
	return err
}

// shelved is a snapshot as a mark asks it.
type shelved struct{ *Snapshot }

func (s shelved) Keeps(id string) bool {
	return slices.ContainsFunc(s.Stock, func(p *flavor.Profile) bool { return p.ID == id })
}

func (s shelved) Knows(id string) bool {
	_, ok := s.Shelf.ByID(id)
	return ok
}

// Bottles returns the bottles of the house, sorted by id.
func (s *Snapshot) Bottles() []house.Bottle {
	if s.from == nil {
		return nil
	}
	return house.Items(s.from.Bottles)
}

// Poured returns the bottle that each ingredient is poured from, of those that are not out.
func (s *Snapshot) Poured() map[string]house.Bottle {
	out := house.Wells(s.Bottles())
	for _, p := range s.Out {
		delete(out, p.ID)
	}
	return out
}
