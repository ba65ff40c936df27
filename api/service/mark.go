package service

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"counterpour/api/service/fault"
	"counterpour/data/house"
	"counterpour/flavor"
)

const (
	// marksAtOnce is how many marks this server writes concurrently.
	marksAtOnce = 64

	// markTries is how often a mark that conflicted with another is retried.
	markTries = 5
)

// MarkRequest notes what happened behind the bar. Either all of it is written or nothing.
type MarkRequest struct {
	Out         []string // names, aliases or ids of what ran out, every bottle of it
	Back        []string // names, aliases or ids of what is available again
	BottlesOut  []string // ids or names of single bottles that ran out
	BottlesBack []string // ids or names of single bottles that are available again
	Received    []Received
	// Tapped is when a mark was made that could not be sent then, at most MostLate ago; zero
	// for one that is made now.
	Tapped time.Time
}

// MostLate is how late a mark may be sent: what ran out longer ago than a shift is looked at
// again. Common practice, no source.
const MostLate = 24 * time.Hour

// TappedField is the place of the fault of a mark that is sent too late, or was overtaken.
const TappedField = "tapped"

// Empty reports whether a request notes nothing.
func (r *MarkRequest) Empty() bool {
	return len(r.Out)+len(r.Back)+len(r.BottlesOut)+len(r.BottlesBack)+len(r.Received) == 0
}

// Received says how a cover was received. The cover was poured for a drink of the house.
type Received struct {
	Drink     string // slug
	Missing   string // id of what had run out
	Served    *flavor.Spec
	Reception house.Reception
}

// Mark writes which ingredients of the stock, or which single bottles, ran out or are back,
// and how covers were received. An ingredient is poured from its other bottles after one of
// them ran out, and is out with the last. If no bottle of an ingredient that is back is
// there, one of them is now, and counts as full if it was counted as empty. Marking what is marked already changes nothing. It is a fault
// if the request is empty, if it is sent late and somebody marked the same in the meantime, if an ingredient is not in stock or is both out and back, or if
// the house does not know a drink or an ingredient. The error is [house.ErrConflict] if every retry conflicted
// with another write.
func (v *Venue) Mark(ctx context.Context, by house.By, r MarkRequest) error {
	if r.Empty() {
		return flavor.Invalid("out", "", "nothing is marked; name what ran out or what is back")
	}
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
	r.BottlesOut, r.BottlesBack = now.bottles("bottles_out", r.BottlesOut, &faults), now.bottles("bottles_back", r.BottlesBack, &faults)
	for i, id := range r.BottlesBack {
		if slices.Contains(r.BottlesOut, id) {
			faults = append(faults, flavor.Invalid(fmt.Sprintf("bottles_back[%d]", i), id, "bottle %s cannot be out and back at once; mark one of the two", id))
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

// write writes a mark, at first concurrently with others. If it conflicts, write retries
// it alone, so that only another server can conflict with it again.
func (v *Venue) write(ctx context.Context, by house.By, r *MarkRequest) ([]house.Change, error) {
	changes, err := v.tryMarks(ctx, by, r, 1)
	for range markTries {
		if !conflicted(err) {
			return changes, err
		}
		changes, err = v.tryMarks(ctx, by, r, marksAtOnce)
	}
	if !conflicted(err) {
		return changes, err
	}
	return nil, &house.Error{Kind: house.ErrConflict, Op: "mark", Message: "somebody else is marking the same now; look at what is out, and mark again", Cause: err}
}

// conflicted reports whether a write failed because another one came first.
func conflicted(err error) bool {
	return errors.Is(err, house.ErrConflict) || errors.Is(err, house.ErrNotFound)
}

// tryMarks computes the edits of a mark from the current records and writes them. It
// holds the given number of the marksAtOnce units of the semaphore meanwhile; with all of
// them it runs alone.
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

// inStock resolves names to ids of the stock. A name that is an id of the stock stands
// for itself. It adds a fault for each name that the house does not stock.
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

// marks returns the edits of a request, in its order.
func (v *Venue) marks(ctx context.Context, by house.By, r *MarkRequest) (edits []house.Edit, err error) {
	add := func(more []house.Edit, err error) error {
		edits = append(edits, more...)
		return err
	}
	onShelf, err := v.shelfMarks(ctx, by, r)
	if err := add(onShelf, err); err != nil {
		return nil, err
	}
	for i := range r.Received {
		if err := add(v.received(ctx, by, &r.Received[i])); err != nil {
			return nil, err
		}
	}
	return edits, nil
}

// distinct returns ids without duplicates, in order.
func distinct(ids []string) []string {
	var out []string
	for _, id := range ids {
		if !slices.Contains(out, id) {
			out = append(out, id)
		}
	}
	return out
}

// received returns the edit that records how a cover was received.
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
	return []house.Edit{house.Put(house.ServedCover{At: by.At, Spec: r.Drink, SpecVersion: spec.Version, Missing: r.Missing,
		Reception: r.Reception, Taster: by.Actor, Served: house.FromSpec(r.Drink, *r.Served).Pours}, 0)}, nil
}
