package specbook

import (
	"context"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/naming"
)

// Incoming is a spec that was read, held against the house.
type Incoming struct {
	Spec house.Spec
	Was  *house.Spec // what it would replace; nil if it is new
	// Version is that of what it would replace; 0 if it is new.
	Version int64
}

// Same reports whether the house holds it already.
func (i *Incoming) Same() bool { return i.Was != nil && SameSpec(i.Was, &i.Spec) }

// Incoming holds the specs of a reading against the house, in their order, and
// writes nothing. As [Book.TakeIn] does, it gives specs other ids where
// theirs mean something else to a face.
func (c *Book) Incoming(ctx context.Context, reading *exchange.Reading) ([]Incoming, error) {
	unreserve(reading)
	all, err := house.All[house.Spec](ctx, c.Store)
	if err != nil {
		return nil, err
	}
	var out []Incoming
	for _, s := range reading.Specs() {
		one := Incoming{Spec: s}
		if at := slices.IndexFunc(all, func(k house.Kept[house.Spec]) bool { return k.Item.ID == s.ID }); at >= 0 {
			one.Was, one.Version = &all[at].Item, all[at].Version
		}
		out = append(out, one)
	}
	return out, nil
}

// TakeIn writes a reading to the house, as [exchange.Import] does.
func (c *Book) TakeIn(ctx context.Context, by house.By, reading *exchange.Reading, mode exchange.Mode) (exchange.Result, error) {
	unreserve(reading)
	return exchange.Import(ctx, c.Store, by, reading, mode)
}

// unreserve gives specs other ids where theirs mean something else to a face.
func unreserve(reading *exchange.Reading) {
	for i, item := range reading.Items {
		if s, ok := item.(house.Spec); ok && slices.Contains(reservedIDs, s.ID) {
			s.ID = SpecID(s.ID)
			reading.Items[i] = s
		}
	}
}

// mostNear is how many names are offered for one that nobody knows.
const mostNear = 3

// Suggester returns up to limit ingredients whose name goes on from what was
// written, the likeliest first.
type Suggester interface {
	Suggest(ctx context.Context, prefix string, limit int) ([]*flavor.Profile, error)
}

// OnShelf finds ingredients of a shelf by name, and names the nearest where it
// finds none. A spec that is kept is written as its ingredients are called, so that
// no slip of the pen is guessed at. It is for one request.
type OnShelf struct {
	Ctx   context.Context // of the request
	Shelf *house.Shelf
	Names Suggester
}

var _ naming.Placer = OnShelf{}

// Resolve finds the profile whose id, name or alias is written.
func (n OnShelf) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
	p, m, err := n.Shelf.Resolve(written)
	faults := flavor.FaultsOf(err)
	if len(faults) == 0 {
		return p, m, err
	}
	fault := *faults[0]
	fault.Suggest = n.Suggest(written, nil)
	if len(fault.Suggest) > 0 {
		fault.Message += "; the nearest are " + strings.Join(fault.Suggest, ", ")
	}
	return nil, m, &fault
}

// Named finds the profile whose id, name or alias is written, and searches for
// nothing.
func (n OnShelf) Named(written string) (*flavor.Profile, flavor.MatchHow, bool) {
	p, m, err := n.Shelf.Resolve(written)
	return p, m.How, err == nil
}

// Slip finds nothing.
func (n OnShelf) Slip(string, func(*flavor.Profile) bool) (*flavor.Profile, bool) { return nil, false }

// Suggest offers the nearest names; a search that fails only costs them.
func (n OnShelf) Suggest(written string, _ func(*flavor.Profile) bool) (near []string) {
	if written == "" {
		return nil
	}
	found, err := n.Names.Suggest(n.Ctx, written, mostNear)
	if err != nil {
		return nil
	}
	for _, p := range found {
		near = append(near, p.Name)
	}
	return near
}
