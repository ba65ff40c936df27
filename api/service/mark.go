package service

import (
	"context"
	"errors"
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
)

// markTries is how often a mark is tried when others mark the same thing at the
// same moment.
const markTries = 5

// MarkRequest notes what happened behind the bar, all of it or nothing.
type MarkRequest struct {
	Out      []string // ids of what ran out
	Back     []string // ids of what is there again
	Received []Received
}

// Received says how a cover was received that was poured for a drink of the house.
type Received struct {
	Drink   string // its slug
	Missing string // id of what had run out
	Served  *flavor.Spec
	Verdict house.Verdict
}

// Mark notes that ingredients of the stock ran out or are back, and how covers were
// received. What is back is there: if every bottle was counted as empty, the one
// that is poured counts as full. To mark what is marked already changes nothing. An
// id that is not in stock, one that is out and back at once, and a drink or an
// ingredient that the house does not know are faults.
func (v *Venue) Mark(ctx context.Context, by house.By, r MarkRequest) error {
	for _, id := range slices.Concat(r.Out, r.Back) {
		if !slices.ContainsFunc(v.Now().Stock, func(p *flavor.Profile) bool { return p.ID == id }) {
			return flavor.Unknown("id", id, nil, "the house does not keep %q; mark something that it keeps", id)
		}
		if slices.Contains(r.Out, id) && slices.Contains(r.Back, id) {
			return flavor.Invalid("id", id, "%q cannot be out and back at once; mark one of the two", id)
		}
	}
	var again error
	for range markTries {
		edits, err := v.marks(ctx, by, &r)
		if err != nil || len(edits) == 0 {
			return err
		}
		_, err = v.Store().Write(ctx, by, edits...)
		if !errors.Is(err, house.ErrConflict) && !errors.Is(err, house.ErrNotFound) {
			return err
		}
		again = err
	}
	return again
}

// marks is what it takes to note a request, in its order.
func (v *Venue) marks(ctx context.Context, by house.By, r *MarkRequest) (edits []house.Edit, err error) {
	add := func(more []house.Edit, err error) error {
		edits = append(edits, more...)
		return err
	}
	for _, id := range distinct(r.Out) {
		if err := add(v.gone(ctx, by, id)); err != nil {
			return nil, err
		}
	}
	for _, id := range distinct(r.Back) {
		if err := add(v.back(ctx, id)); err != nil {
			return nil, err
		}
	}
	for i := range r.Received {
		if err := add(v.received(ctx, by, &r.Received[i])); err != nil {
			return nil, err
		}
	}
	return edits, nil
}

// distinct is a list with each entry once, in its order.
func distinct(ids []string) []string {
	var out []string
	for _, id := range ids {
		if !slices.Contains(out, id) {
			out = append(out, id)
		}
	}
	return out
}

// received is what it takes to note how a cover was received.
func (v *Venue) received(ctx context.Context, by house.By, r *Received) ([]house.Edit, error) {
	spec, err := house.Get[house.Spec](ctx, v.inner, r.Drink)
	if errors.Is(err, house.ErrNotFound) {
		return nil, flavor.Unknown("drink", r.Drink, nil, "the house has no drink %q any more; open the board again", r.Drink)
	}
	if err != nil {
		return nil, err
	}
	if _, ok := v.Now().Shelf.ByID(r.Missing); !ok {
		return nil, flavor.Unknown("missing", r.Missing, nil, "the house does not know %q; open the board again", r.Missing)
	}
	return []house.Edit{house.Put(house.Cover{At: by.At, Spec: r.Drink, SpecVersion: spec.Version, Missing: r.Missing,
		Verdict: r.Verdict, Taster: by.Actor, Served: house.FromSpec(r.Drink, *r.Served).Pours}, 0)}, nil
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
