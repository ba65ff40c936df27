package service

import (
	"context"
	"errors"

	"counterpour/api/service/fault"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/weigh"
)

// PalateAnswer is the palate of a house: the drinks that it marked as right, and how far
// they move the families.
type PalateAnswer struct {
	Right   []RightDrink
	Palates []weigh.Palate // of the families that are moved
}

// RightDrink is a drink marked as right.
type RightDrink struct {
	Slug    string
	Name    string
	Version int64 // version of the record that was tasted
}

// Palate returns the palate of the house.
func (s *Snapshot) Palate() *PalateAnswer {
	a := &PalateAnswer{Palates: s.Set.Palates()}
	for _, m := range s.rights {
		one := RightDrink{Slug: m.Spec, Name: m.Spec, Version: m.SpecVersion}
		if d, err := s.Drink(m.Spec); err == nil {
			one.Name = d.Spec.Name
		}
		a.Right = append(a.Right, one)
	}
	return a
}

// RightRequest marks the current version of a drink as right for the house.
type RightRequest struct {
	Drink string // name or slug
	Undo  bool   // remove the mark
}

// Right marks a drink as right, or removes the mark.
func (v *Venue) Right(ctx context.Context, by house.By, r RightRequest) error {
	d, err := v.Now().Drink(r.Drink)
	if err != nil {
		return fault.At("drink", err)
	}
	kept, err := house.Get[house.Right](ctx, v.inner, d.Slug)
	if err != nil && !errors.Is(err, house.ErrNotFound) {
		return err
	}
	edit := house.Put(house.Right{Spec: d.Slug, SpecVersion: d.Version, Note: kept.Item.Note}, kept.Version)
	if r.Undo {
		if kept.Version == 0 {
			return flavor.Invalid("drink", r.Drink, "%q is not marked, so that there is no mark to take off", d.Spec.Name)
		}
		edit = house.Remove(kept.Item.Ref(), kept.Version)
	}
	_, err = v.Store().Write(ctx, by, edit)
	return err
}
