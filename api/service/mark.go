package service

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"counterpour/api/service/fault"
	"counterpour/data/house"
	"counterpour/flavor"
)

const (
	// marksAtOnce is how many marks this server writes beside each other.
	marksAtOnce = 64

	// markTries is how often a mark is tried once more while other servers forestall it.
	markTries = 5
)

// MarkRequest notes what happened behind the bar, all of it or nothing.
type MarkRequest struct {
	Out      []string // names, aliases or ids of what ran out
	Back     []string // the same of what is there again
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
// that is poured counts as full. To mark what is marked already changes nothing.
// What is not in stock, what is out and back at once, and a drink or an ingredient
// that the house does not know are faults. It fails with [house.ErrConflict] if others
// marked the same each time that it was tried.
func (v *Venue) Mark(ctx context.Context, by house.By, r MarkRequest) error {
	now := v.Now()
	var faults flavor.Faults
	var err error
	if r.Out, err = now.inStock("out", r.Out, &faults); err != nil {
		return err
	}
	if r.Back, err = now.inStock("back", r.Back, &faults); err != nil {
		return err
	}
	for i, id := range r.Back {
		if slices.Contains(r.Out, id) {
			faults = append(faults, flavor.Invalid(fmt.Sprintf("back[%d]", i), id, "%s cannot be out and back at once; mark one of the two", now.NameOf(id)))
		}
	}
	if len(faults) > 0 {
		return faults
	}
	changes, err := v.write(ctx, by, &r)
	if err == nil && len(changes) > 0 {
		v.takeUp(ctx, changes[len(changes)-1])
	}
	return err
}

// write writes marks, first beside those of others. One that they forestalled is tried
// again alone, so that only another server can forestall it once more.
func (v *Venue) write(ctx context.Context, by house.By, r *MarkRequest) ([]house.Change, error) {
	changes, err := v.tryMarks(ctx, by, r, 1)
	for range markTries {
		if !forestalled(err) {
			return changes, err
		}
		changes, err = v.tryMarks(ctx, by, r, marksAtOnce)
	}
	if !forestalled(err) {
		return changes, err
	}
	return nil, &house.Error{Kind: house.ErrConflict, Op: "mark", Message: "others mark the same at this moment; look at what is out, and mark again", Cause: err}
}

// forestalled reports whether a write failed since somebody else was earlier.
func forestalled(err error) bool {
	return errors.Is(err, house.ErrConflict) || errors.Is(err, house.ErrNotFound)
}

// tryMarks writes what marks take, by what the store holds now, while it holds that many
// of marksAtOnce places.
func (v *Venue) tryMarks(ctx context.Context, by house.By, r *MarkRequest, places int64) ([]house.Change, error) {
	if err := v.marking.Acquire(ctx, places); err != nil {
		return nil, err
	}
	defer v.marking.Release(places)
	edits, err := v.marks(ctx, by, r)
	if err != nil || len(edits) == 0 {
		return nil, err
	}
	return v.inner.Write(ctx, by, edits...)
}

// inStock returns the ids of what names mean, each of which the house must keep;
// it adds a fault for any other. An id of the stock means itself.
func (s *Snapshot) inStock(field string, names []string, faults *flavor.Faults) (ids []string, err error) {
	keeps := func(id string) bool {
		return slices.ContainsFunc(s.Stock, func(p *flavor.Profile) bool { return p.ID == id })
	}
	for i, name := range names {
		location, id := fmt.Sprintf("%s[%d]", field, i), name
		if !keeps(name) {
			p, err := s.Named(name)
			if err := fault.Collect(faults, fault.At(location, err)); err != nil {
				return nil, err
			}
			if p == nil {
				continue
			}
			id = p.ID
		}
		if !keeps(id) {
			*faults = append(*faults, flavor.Unknown(location, name, nil, "the house does not keep %s; mark something that it keeps", s.NameOf(id)))
			continue
		}
		ids = append(ids, id)
	}
	return ids, nil
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
