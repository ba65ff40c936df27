package service

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
)

// markTries is how often a mark is tried when others mark the same thing at the
// same moment.
const markTries = 5

// Mark notes that an ingredient of the stock ran out, or is back. What is back is
// there: if every bottle was counted as empty, the one that is poured counts as
// full. To mark what is marked already changes nothing; an id that is not in
// stock is a fault.
func (v *Venue) Mark(ctx context.Context, by house.By, id string, out bool) (err error) {
	if !slices.ContainsFunc(v.Now().Stock, func(p *flavor.Profile) bool { return p.ID == id }) {
		return &flavor.Fault{Kind: flavor.ErrUnknown, Location: "id", Value: id,
			Message: fmt.Sprintf("the house does not keep %q; mark something that it keeps", id)}
	}
	for range markTries {
		var edits []house.Edit
		if out {
			edits, err = v.gone(ctx, by, id)
		} else {
			edits, err = v.back(ctx, id)
		}
		if err != nil || len(edits) == 0 {
			return err
		}
		_, err = v.Store().Write(ctx, by, edits...)
		if !errors.Is(err, house.ErrConflict) && !errors.Is(err, house.ErrNotFound) {
			return err
		}
	}
	return err
}

// gone is what it takes for an ingredient to be out; nothing if it is.
func (v *Venue) gone(ctx context.Context, by house.By, id string) ([]house.Edit, error) {
	_, err := house.Get[house.Out](ctx, v.inner, id)
	if errors.Is(err, house.ErrNotFound) {
		return []house.Edit{house.Put(house.Out{Ingredient: id, Since: by.At}, 0)}, nil
	}
	return nil, err
}

// back is what it takes for an ingredient to be there again; nothing if it is.
func (v *Venue) back(ctx context.Context, id string) (edits []house.Edit, err error) {
	marked, err := house.Get[house.Out](ctx, v.inner, id)
	if err == nil {
		edits = append(edits, house.Remove(marked.Item.Ref(), marked.Version))
	} else if !errors.Is(err, house.ErrNotFound) {
		return nil, err
	}
	bottles, err := house.All[house.Bottle](ctx, v.inner)
	if err != nil {
		return nil, err
	}
	bottles = slices.DeleteFunc(bottles, func(b house.Kept[house.Bottle]) bool { return b.Item.Ingredient != id })
	if slices.ContainsFunc(bottles, func(b house.Kept[house.Bottle]) bool { return b.Item.Stock > 0 }) {
		return edits, nil
	}
	well := house.Wells(house.Items(bottles))[id]
	for _, b := range bottles {
		if b.Item.ID == well.ID {
			b.Item.Stock = 1
			edits = append(edits, house.Put(b.Item, b.Version))
		}
	}
	return edits, nil
}
