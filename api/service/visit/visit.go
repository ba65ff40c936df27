// Package visit is the house during one request for a page.
package visit

import (
	"context"
	"math/rand/v2"
	"slices"
	"strings"
	"sync/atomic"
	"time"

	"counterpour/api/admission"
	"counterpour/api/service"
	"counterpour/api/service/coaching"
	"counterpour/api/service/kitchen"
	"counterpour/api/service/marking"
	"counterpour/api/service/remedy"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/balance/arithmetic"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/barred"
	"counterpour/flavor/cover/instead"
	"counterpour/flavor/cover/lookahead"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/drill"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/useup"
	"counterpour/flavor/riff/walk"
	"counterpour/flavor/template"
)

// Visit is the house during one request for a page: the snapshot at its start and, after
// each write of the request, the latest one. It may be used concurrently, but by one
// request only.
type Visit struct {
	venue *service.Venue
	now   atomic.Pointer[service.Snapshot]
}

// Of begins a visit to a house.
func Of(v *service.Venue) *Visit {
	visit := &Visit{venue: v}
	visit.refresh()
	return visit
}

// refresh takes the latest snapshot, after a write of this request.
func (v *Visit) refresh() { v.now.Store(v.venue.Now()) }

// CoverRequest asks for covers of ingredients of a spec that has been read already, together.
type CoverRequest struct {
	Spec    *flavor.Spec
	Missing []string // names, aliases or ids
	Guest   service.Guest
	Stock   []string // ids of what may be poured; nil for the whole catalogue
	Parts   int      // most substitutes
	Limit   int      // most covers
}

// Warning is a caution and its source.
type Warning struct{ Text, Source string }

// Read reads a spec as text.
func (v *Visit) Read(text string) (flavor.Spec, error) {
	return v.now.Load().Read(service.Draft{Text: &text})
}

// ReadRest reads the lines of a text that can be read; the reading holds the faults of the
// others.
func (v *Visit) ReadRest(text string) (reading.Reading, error) {
	return v.now.Load().ReadRest(text)
}

// Remedies returns what mends each fault of a draft.
func (v *Visit) Remedies(r remedy.Request) ([]remedy.Remedies, error) {
	return v.now.Load().Remedies(r)
}

// MeaningsOf returns what else the name of a line that was read may mean that the guest may
// have.
func (v *Visit) MeaningsOf(r *reading.Reading, line int, g guest.Guest) remedy.Meanings {
	return v.now.Load().MeaningsOf(r, line, g)
}

// Score scores a spec and finds how to fix it.
func (v *Visit) Score(s *flavor.Spec) (*balance.Result, []balance.Fix, error) {
	return v.now.Load().Mend(s)
}

// Judge scores a spec, without looking for fixes.
func (v *Visit) Judge(s *flavor.Spec) (*balance.Result, error) { return v.now.Load().Judge.Score(s) }

// Explain works out the score of a spec line by line.
func (v *Visit) Explain(s *flavor.Spec) ([]arithmetic.Step, error) {
	return v.now.Load().Judge.Explain(s)
}

// Cover finds what to pour instead of an ingredient.
func (v *Visit) Cover(ctx context.Context, r CoverRequest) (*service.CoverAnswer, error) {
	return v.now.Load().Cover(ctx, service.CoverRequest{Draft: service.Draft{Spec: r.Spec}, Missing: r.Missing,
		Guest: r.Guest, Stock: r.Stock, Parts: r.Parts, Limit: r.Limit})
}

// Nearest returns the drink of the menu nearest to a spec, among those that the stock can
// pour and the guest may have; nil if there is none.
func (v *Visit) Nearest(s *flavor.Spec, stock []*flavor.Profile, g guest.Guest) (*instead.Offered, error) {
	return v.now.Load().Nearest(s, stock, g)
}

// Outs does what [service.Venue.Outs] does, with the snapshot of the visit.
func (v *Visit) Outs(ctx context.Context, r outs.Request) (*outs.Result, error) {
	return v.venue.Outs(ctx, v.now.Load(), r)
}

// BarredFrom does what [service.Snapshot.BarredFrom] does, with the snapshot of the visit.
func (v *Visit) BarredFrom(t *outs.Touched, g guest.Guest, shelf []*flavor.Profile) []barred.Way {
	return v.now.Load().BarredFrom(t, &g, shelf)
}

// Coverage does what [service.Venue.Coverage] does, with the snapshot of the visit.
func (v *Visit) Coverage(ctx context.Context) (*lookahead.Answer, error) {
	a, err := v.venue.Coverage(ctx, v.now.Load())
	if err != nil {
		return nil, err
	}
	return a.Answer, nil
}

// Batch does what [service.Snapshot.Batch] does.
func (v *Visit) Batch(ctx context.Context, r service.BatchRequest) (*service.BatchAnswer, error) {
	return v.now.Load().Batch(ctx, r)
}

// Fresh returns why the visit may be out of date, as [service.Venue.Ready] does; nil if it
// is not.
func (v *Visit) Fresh() error { return v.venue.Ready() }

// Suggest returns up to limit ingredients whose name begins with prefix, the likeliest
// first.
func (v *Visit) Suggest(ctx context.Context, prefix string, limit int) ([]*flavor.Profile, error) {
	return v.now.Load().Index.Complete(ctx, prefix, limit)
}

// Examples returns the specs of the menu.
func (v *Visit) Examples() []flavor.Spec {
	menu := v.now.Load().Menu
	out := make([]flavor.Spec, len(menu))
	for i, d := range menu {
		out[i] = d.Spec
	}
	return out
}

// Families returns every family of drinks.
func (v *Visit) Families() []template.Family {
	families, _ := v.now.Load().Set.Families()
	return families
}

// Family returns a family of drinks by its id.
func (v *Visit) Family(id string) (template.Family, bool) {
	for _, f := range v.Families() {
		if f.ID == id {
			return f, true
		}
	}
	return template.Family{}, false
}

// Ranges returns what [service.Snapshot.Ranges] does.
func (v *Visit) Ranges(s *flavor.Spec, family string) ([ratio.NumAxes]kitchen.Range, bool) {
	return v.now.Load().Ranges(s, family)
}

// Look returns how a spec looks when it is served.
func (v *Visit) Look(s *flavor.Spec) (*kitchen.Look, error) { return v.now.Load().Look(s) }

// Contrast compares two drinks as a guest would who has both.
func (v *Visit) Contrast(before, after *flavor.Spec) (*kitchen.Contrast, error) {
	return v.now.Load().Contrast(before, after)
}

// Cautions returns the cautions of the ingredients of a spec, without duplicates.
func (v *Visit) Cautions(s *flavor.Spec) (out []Warning) {
	for _, c := range v.now.Load().CautionsOf(s) {
		out = append(out, Warning{Text: c.Text, Source: c.Source})
	}
	return out
}

// Named finds the ingredient that a name means, see [service.Snapshot.Named].
func (v *Visit) Named(name string) (*flavor.Profile, error) { return v.now.Load().Named(name) }

// Riff finds variations of a drink.
func (v *Visit) Riff(ctx context.Context, r riff.Request) (*riff.Result, error) {
	now := v.now.Load()
	r.Out = now.Out
	return admission.Search(ctx, now.Searches, func(ctx context.Context) (*riff.Result, error) { return riff.Vary(ctx, now.Station, r) })
}

// Relatives returns the n proven drinks nearest to a spec that the guest may have.
func (v *Visit) Relatives(s *flavor.Spec, n int, g guest.Guest) ([]precedent.Relative, error) {
	return v.now.Load().Station.Relatives(s, n, g)
}

// UseUp drafts drinks that use bottles up.
func (v *Visit) UseUp(ctx context.Context, r useup.Request) (*useup.Result, error) {
	now := v.now.Load()
	return admission.Search(ctx, now.Searches, func(ctx context.Context) (*useup.Result, error) { return useup.Find(ctx, now.Station, r) })
}

// Walk finds drinks that lie between two drinks.
func (v *Visit) Walk(ctx context.Context, r walk.Request) (*walk.Result, error) {
	now := v.now.Load()
	r.Stock = now.InStock()
	return admission.Search(ctx, now.Searches, func(ctx context.Context) (*walk.Result, error) { return walk.Find(ctx, now.Station, r) })
}

// About says whose house it is, in one line.
func (v *Visit) About() string {
	about := v.now.Load().About
	return strings.TrimSpace(about.Name + ". " + about.Description)
}

// Settings returns how the house wants things written.
func (v *Visit) Settings() house.Settings { return v.now.Load().Settings }

// Store returns the house's store. After a write through it, all methods of the visit
// include the write.
func (v *Visit) Store() house.Store { return &visitStore{v.venue.Store(), v} }

// visitStore is a store that refreshes its visit after each write.
type visitStore struct {
	house.Store
	visit *Visit
}

func (s *visitStore) Write(ctx context.Context, by house.By, edits ...house.Edit) ([]house.Change, error) {
	defer s.visit.refresh()
	return s.Store.Write(ctx, by, edits...)
}

func (s *visitStore) Undo(ctx context.Context, by house.By, ref house.Ref, version int64) (house.Change, error) {
	defer s.visit.refresh()
	return s.Store.Undo(ctx, by, ref, version)
}

// Catalogue returns the shelf without the house's bottles and makings.
func (v *Visit) Catalogue() *house.Shelf { return v.venue.Catalogue() }

// Shelf returns the catalogue, overlaid with the house's bottles and makings.
func (v *Visit) Shelf() *house.Shelf { return v.now.Load().Shelf }

// Menu returns every drink of the house, sorted by name.
func (v *Visit) Menu(context.Context) ([]service.Drink, error) {
	return slices.Clone(v.now.Load().Menu), nil
}

// Find returns what [service.Snapshot.FindDrinks] does.
func (v *Visit) Find(ctx context.Context, q service.DrinkQuery) ([]service.Drink, error) {
	return v.now.Load().FindDrinks(ctx, q)
}

// Stock returns everything that the house keeps, also what has run out.
func (v *Visit) Stock(context.Context) ([]*flavor.Profile, error) {
	return slices.Clone(v.now.Load().Stock), nil
}

// Inventory returns the bottles of the house, sorted by id.
func (v *Visit) Inventory() []house.Bottle { return v.now.Load().Bottles() }

// RunOut returns the ids of what has run out.
func (v *Visit) RunOut(context.Context) (ids []string, err error) {
	for _, p := range v.now.Load().Out {
		ids = append(ids, p.ID)
	}
	return ids, nil
}

// Mark does what [service.Venue.Mark] does.
func (v *Visit) Mark(ctx context.Context, by house.By, m marking.Request) error {
	defer v.refresh()
	return v.venue.Mark(ctx, by, m)
}

// Names lists the house's own words in alphabetical order.
func (v *Visit) Names() []service.Named { return v.now.Load().Names() }

// Name does what [service.Venue.Name] does.
func (v *Visit) Name(ctx context.Context, by house.By, r service.NameRequest) error {
	defer v.refresh()
	return v.venue.Name(ctx, by, r)
}

// Prices returns prices per millilitre.
func (v *Visit) Prices(context.Context) (prep.Prices, error) {
	now := v.now.Load()
	return now.Prices, now.PricesFault
}

// Tastings returns how covers poured in this house were received.
func (v *Visit) Tastings(context.Context) ([]cover.Tasting, error) {
	return slices.Clone(v.now.Load().Tastings), nil
}

// Changes returns what [service.Venue.Changes] does. The error is always nil.
func (v *Visit) Changes(ctx context.Context) (<-chan struct{}, error) {
	return v.venue.Changes(ctx), nil
}

// Usual lists what most proven drinks pour, the commonest first, at most n.
func (v *Visit) Usual(n int) []*flavor.Profile { return v.now.Load().Usual(n) }

// Starters suggests up to n proven drinks for a first menu that what is in stock can pour;
// see [kitchen.Kitchen.Starters].
func (v *Visit) Starters(n int) []template.Labelled {
	now := v.now.Load()
	return now.Starters(now.InStock(), n)
}

// Next makes a round for a learner, who may have no results yet.
func (v *Visit) Next(l drill.Learner, w coaching.RoundWish) (*drill.Round, error) {
	return v.now.Load().Round(coaching.RoundRequest{Learner: l, Wish: w, At: time.Now(), Rand: rand.New(rand.NewPCG(rand.Uint64(), rand.Uint64()))})
}

// Again makes the same round again from its request; see [coaching.Again].
func (v *Visit) Again(r drill.RoundRequest, looked []byte) (*drill.Round, error) {
	return v.now.Load().RoundAgain(r, looked)
}

// Grade grades an answer.
func (v *Visit) Grade(r *drill.Round, a drill.Answer) (*drill.Grade, error) {
	return v.now.Load().Grade(r, a)
}

// Flight plans a tasting flight.
func (v *Visit) Flight(r tasting.FlightRequest) (*tasting.Flight, error) {
	return v.now.Load().Flight(r)
}

// Triangle plans a triangle test.
func (v *Visit) Triangle(ctx context.Context, r coaching.TriangleRequest) (*coaching.TriangleAnswer, error) {
	return v.now.Load().Triangle(ctx, r)
}

// Card makes the card of a family, with examples from the specs given.
func (v *Visit) Card(family string, specs []template.Labelled) (*drill.Card, error) {
	return v.now.Load().Card(family, specs)
}
