// Package marking notes what happened behind the bar: what ran out, what is back, and how
// covers were received.
package marking

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"golang.org/x/sync/semaphore"

	"counterpour/api/service/fault"
	"counterpour/data/house"
	"counterpour/flavor"
)

const (
	// atOnce is how many marks this server writes concurrently.
	atOnce = 64

	// tries is how often a mark that conflicted with another is retried.
	tries = 5
)

// Request notes what happened behind the bar. Either all of it is written or nothing.
type Request struct {
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
func (r *Request) Empty() bool {
	return len(r.Out)+len(r.Back)+len(r.BottlesOut)+len(r.BottlesBack)+len(r.Received) == 0
}

// Received says how a cover was received. The cover was poured for a drink of the house.
type Received struct {
	Drink     string // slug
	Missing   string // id of what had run out
	Served    *flavor.Spec
	Reception house.Reception
}

// House is what a mark asks of a house as it is now.
type House interface {
	// Keeps reports whether the house keeps the ingredient with an id, out or not.
	Keeps(id string) bool
	// Knows reports whether the house knows an ingredient with an id, kept or not.
	Knows(id string) bool
	// Named finds the ingredient that a name or an alias means.
	Named(name string) (*flavor.Profile, error)
	// NameOf returns the name of the ingredient with an id; the id if there is none.
	NameOf(id string) string
	// Bottles returns the bottles of the house, sorted by id.
	Bottles() []house.Bottle
}

// Pen writes marks to the store of a house. It is safe for concurrent use.
type Pen struct {
	store house.Store
	now   func() House
	turns *semaphore.Weighted // atOnce units: a mark holds one, a retried mark all
}

// NewPen returns the pen of a house with a store; now returns the house as it is at the call.
func NewPen(store house.Store, now func() House) *Pen {
	return &Pen{store: store, now: now, turns: semaphore.NewWeighted(atOnce)}
}

// Mark writes which ingredients of the stock, or which single bottles, ran out or are back,
// and how covers were received. It returns the changes, none if all is marked so already.
//
// An ingredient is poured from its other bottles after one of them ran out, and is out with
// the last. An ingredient that comes back without a bottle that is there gets one: its bottle
// is there again, and counts as full if it was counted as empty.
//
// It is a fault if the request is empty; if it is sent late, and somebody marked the same in
// the meantime; if an ingredient is not in stock, or is both out and back; or if the house
// does not know a drink or an ingredient. The error is [house.ErrConflict] if every retry
// conflicted with another write.
func (p *Pen) Mark(ctx context.Context, by house.By, r Request) ([]house.Change, error) {
	if r.Empty() {
		return nil, flavor.Invalid("out", "", "nothing is marked; name what ran out or what is back")
	}
	if err := r.resolve(p.now()); err != nil {
		return nil, err
	}
	return p.write(ctx, by, &r)
}

// resolve puts ids in place of the names of a request. Its faults name every word that
// nothing is kept of, and whatever is out and back at once.
func (r *Request) resolve(now House) error {
	var faults flavor.DataFaults
	var err error
	if r.Out, err = ofStock(now, "out", r.Out, &faults); err != nil {
		return err
	}
	if r.Back, err = ofStock(now, "back", r.Back, &faults); err != nil {
		return err
	}
	for i, id := range r.Back {
		if slices.Contains(r.Out, id) {
			faults = append(faults, flavor.Invalid(fmt.Sprintf("back[%d]", i), id, "%s cannot be out and back at once; mark one of the two", now.NameOf(id)))
		}
	}
	r.BottlesOut, r.BottlesBack = bottles(now, "bottles_out", r.BottlesOut, &faults), bottles(now, "bottles_back", r.BottlesBack, &faults)
	for i, id := range r.BottlesBack {
		if slices.Contains(r.BottlesOut, id) {
			faults = append(faults, flavor.Invalid(fmt.Sprintf("bottles_back[%d]", i), id, "bottle %s cannot be out and back at once; mark one of the two", id))
		}
	}
	if len(faults) > 0 {
		return faults
	}
	return nil
}

// write writes a mark, at first concurrently with others. If it conflicts, write retries
// it alone, so that only another server can conflict with it again.
func (p *Pen) write(ctx context.Context, by house.By, r *Request) ([]house.Change, error) {
	changes, err := p.try(ctx, by, r, 1)
	for range tries {
		if !conflicted(err) {
			return changes, err
		}
		changes, err = p.try(ctx, by, r, atOnce)
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

// try computes the edits of a mark from the current records and writes them. It holds the
// given number of turns meanwhile; with all of them it runs alone.
func (p *Pen) try(ctx context.Context, by house.By, r *Request, turns int64) ([]house.Change, error) {
	if err := p.turns.Acquire(ctx, turns); err != nil {
		return nil, err
	}
	defer p.turns.Release(turns)
	edits, err := p.edits(ctx, by, r)
	if err != nil || len(edits) == 0 {
		return nil, err
	}
	return p.store.Write(ctx, by, edits...)
}

// edits returns the edits of a request: of the shelf, then of covers, in its order.
func (p *Pen) edits(ctx context.Context, by house.By, r *Request) ([]house.Edit, error) {
	edits, err := p.onShelf(ctx, by, r)
	if err != nil {
		return nil, err
	}
	for i := range r.Received {
		edit, err := p.received(ctx, by, &r.Received[i])
		if err != nil {
			return nil, err
		}
		edits = append(edits, edit)
	}
	return edits, nil
}

// ofStock resolves names to ids of what the house keeps. A name that is such an id stands for
// itself. It adds a fault for each name of something that the house does not keep.
func ofStock(now House, field string, names []string, faults *flavor.DataFaults) (ids []string, err error) {
	for i, name := range names {
		location, id := fmt.Sprintf("%s[%d]", field, i), name
		if !now.Keeps(name) {
			p, err := now.Named(name)
			if err := fault.Collect(faults, fault.At(location, err)); err != nil {
				return nil, err
			}
			if p == nil {
				continue
			}
			id = p.ID
		}
		if !now.Keeps(id) {
			*faults = append(*faults, flavor.Unknown(location, name, nil, "the house does not keep %s; mark something that it keeps", now.NameOf(id)))
			continue
		}
		ids = append(ids, id)
	}
	return ids, nil
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
func (p *Pen) received(ctx context.Context, by house.By, r *Received) (house.Edit, error) {
	spec, err := house.Get[house.Spec](ctx, p.store, r.Drink)
	if errors.Is(err, house.ErrNotFound) {
		return house.Edit{}, flavor.Unknown("drink", r.Drink, nil, "the house has no drink %q any more; open the board again", r.Drink)
	}
	if err != nil {
		return house.Edit{}, err
	}
	if !p.now().Knows(r.Missing) {
		return house.Edit{}, flavor.Unknown("missing", r.Missing, nil, "the house does not know %q; open the board again", r.Missing)
	}
	return house.Put(house.ServedCover{At: by.At, Spec: r.Drink, SpecVersion: spec.Version, Missing: r.Missing,
		Reception: r.Reception, Taster: by.Actor, Served: house.FromSpec(r.Drink, *r.Served).Pours}, 0), nil
}
