package specbook

import (
	"context"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
)

// Incoming is an imported spec, compared with the house.
type Incoming struct {
	Spec house.Spec
	Was  *house.Spec // the spec that it would replace; nil if it is new
	// Version of the spec that it would replace; 0 if it is new.
	Version int64
}

// Same reports whether the house has an equal spec already.
func (i *Incoming) Same() bool { return i.Was != nil && SameSpec(i.Was, &i.Spec) }

// Incoming compares the specs of an import with the house, in order, and writes nothing.
// Like [Editor.TakeIn], it changes reserved ids.
func (c *Editor) Incoming(ctx context.Context, reading *exchange.Reading) ([]Incoming, error) {
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

// TakeIn writes an import to the house, as [exchange.Import] does.
func (c *Editor) TakeIn(ctx context.Context, by house.By, reading *exchange.Reading, mode exchange.Mode) (exchange.Result, error) {
	unreserve(reading)
	return exchange.Import(ctx, c.Store, by, reading, mode)
}

// unreserve gives other ids to specs whose id is reserved.
func unreserve(reading *exchange.Reading) {
	for i, item := range reading.Items {
		if s, ok := item.(house.Spec); ok && slices.Contains(reservedIDs, s.ID) {
			s.ID = specID(s.ID)
			reading.Items[i] = s
		}
	}
}

// mostNear is how many suggestions are made for an unknown name.
const mostNear = 3

// Suggester returns up to limit ingredients whose name begins with prefix, the likeliest
// first.
type Suggester interface {
	Suggest(ctx context.Context, prefix string, limit int) ([]*flavor.Profile, error)
}

// OnShelf resolves the names of ingredients on a shelf, and suggests the nearest for an
// unknown one. Stored specs use the exact names of their ingredients, so misspellings are
// not guessed. Use one OnShelf per request.
type OnShelf struct {
	Ctx   context.Context // of the request, for suggestions
	Shelf *house.Shelf
	Names Suggester
}

var _ naming.Placer = OnShelf{}

// Resolve finds the profile whose id, name or alias is written. An unknown name is a
// fault with suggestions.
func (n OnShelf) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
	p, m, err := n.Shelf.Resolve(written)
	faults := flavor.DataFaultsOf(err)
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

// Named finds the profile whose id, name or alias is written, without suggestions.
func (n OnShelf) Named(written string) (*flavor.Profile, flavor.MatchHow, bool) {
	p, m, err := n.Shelf.Resolve(written)
	return p, m.How, err == nil
}

// Slip never finds anything: misspellings are not guessed.
func (n OnShelf) Slip(string, func(*flavor.Profile) bool) (*flavor.Profile, bool) { return nil, false }

// Suggest returns the nearest names. It returns none if the search fails.
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
