package service

import (
	"context"
	"math/rand/v2"
	"slices"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/drill"
	"counterpour/flavor/lookup"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/useup"
	"counterpour/flavor/riff/walk"
	"counterpour/flavor/template"
)

// Bar answers what the pages ask of the science, by the house as it stands at
// each question.
type Bar struct{ Venue *Venue }

// PageCover asks what to pour in place of an ingredient, of a spec that has been
// read.
type PageCover struct {
	Spec    *flavor.Spec
	Missing string // name or id
	Avoid   []flavor.Allergen
	Stock   []string // ids that may be used; nil for the whole catalogue
	Parts   int      // most substitutes
	Limit   int      // most covers
}

// Range is one axis of a family at the size of one drink, in mL of the axis's
// equivalent (see template.Equivalents).
type Range struct {
	// Has is false if the family has no such part. Low and Centre are then
	// zero and High is the most that its good drinks carry all the same.
	Has               bool
	Low, Centre, High float64 // nine in ten of the family's good drinks lie between Low and High
	PlusMinus         float64 // one standard deviation of the drink's own amount
}

// Warning is a caution and where it comes from.
type Warning struct{ Text, Source string }

// Read reads a spec as text.
func (b Bar) Read(text string) (flavor.Spec, error) {
	return b.Venue.Now().Read(Draft{Text: &text})
}

// Score scores a spec and finds what would mend it.
func (b Bar) Score(s *flavor.Spec) (*balance.Result, []balance.Fix, error) {
	return b.Venue.Now().Mend(s)
}

// Judge scores a spec, without what would mend it.
func (b Bar) Judge(s *flavor.Spec) (*balance.Result, error) { return b.Venue.Now().Judge.Score(s) }

// Explain works out the score of a spec line by line.
func (b Bar) Explain(s *flavor.Spec) ([]balance.Step, error) { return b.Venue.Now().Judge.Explain(s) }

// Cover finds what to pour instead of an ingredient, and returns its profile.
func (b Bar) Cover(ctx context.Context, r PageCover) (*flavor.Profile, *cover.Result, error) {
	avoid := make([]string, len(r.Avoid))
	for i, a := range r.Avoid {
		avoid[i] = string(a)
	}
	a, err := b.Venue.Now().Cover(ctx, CoverRequest{Draft: Draft{Spec: r.Spec}, Missing: []string{r.Missing},
		Guest: Guest{Avoid: avoid}, Stock: r.Stock, Parts: r.Parts, Limit: r.Limit})
	if err != nil {
		return nil, nil, err
	}
	return a.Missing[0], a.Result, nil
}

// Outs finds what becomes of a menu when bottles run out. Who asks the same at once,
// or later, shares one search; the answer is read only.
func (b Bar) Outs(ctx context.Context, r cover.MenuRequest) (*cover.MenuResult, error) {
	now := b.Venue.Now()
	return b.Venue.menus.outs(ctx, now.Set.Palates(), r, func(ctx context.Context, r cover.MenuRequest) (*cover.MenuResult, error) {
		return now.Finder.Outs(ctx, r, nil)
	})
}

// Suggest returns up to limit ingredients whose name goes on from what was
// typed, the likeliest first.
func (b Bar) Suggest(ctx context.Context, prefix string, limit int) ([]*flavor.Profile, error) {
	r, err := b.Venue.Now().Index.Search(ctx, lookup.Query{Text: prefix, Limit: limit})
	if err != nil {
		return nil, err
	}
	out := make([]*flavor.Profile, len(r.Hits))
	for i, h := range r.Hits {
		out[i] = h.Profile
	}
	return out, nil
}

// Examples returns the specs of the menu.
func (b Bar) Examples() []flavor.Spec {
	menu := b.Venue.Now().Menu
	out := make([]flavor.Spec, len(menu))
	for i, d := range menu {
		out[i] = d.Spec
	}
	return out
}

// Families returns every family of drinks.
func (b Bar) Families() []template.Family {
	families, _ := b.Venue.Now().Set.Families()
	return families
}

// Family returns a family of drinks by its id.
func (b Bar) Family(id string) (template.Family, bool) {
	for _, f := range b.Families() {
		if f.ID == id {
			return f, true
		}
	}
	return template.Family{}, false
}

// Ranges returns what [Snapshot.Ranges] does.
func (b Bar) Ranges(s *flavor.Spec, family string) ([template.NumAxes]Range, bool) {
	return b.Venue.Now().Ranges(s, family)
}

// Ranges returns, for each axis, what the good drinks of a family carry at the
// size and make-up of a spec. It is false for an unknown family or a spec with
// nothing to weigh.
func (k *Kitchen) Ranges(s *flavor.Spec, family string) (out [template.NumAxes]Range, ok bool) {
	build, err := k.Set.Prepare(s)
	if err != nil {
		return out, false
	}
	bands, ok := build.Bands(family, build.Amounts())
	if !ok {
		return out, false
	}
	spreads := balance.AxisSpreads(s)
	e := build.Equivalents(build.Amounts())
	for a, band := range bands {
		out[a] = Range{Has: band.Has, Low: band.Low, Centre: band.Centre, High: band.High, PlusMinus: spreads[a] * e[a]}
	}
	return out, true
}

// Cautions returns what has to be said of the ingredients of a spec, each once.
func (b Bar) Cautions(s *flavor.Spec) (out []Warning) {
	for _, c := range b.Venue.Now().CautionsOf(s) {
		out = append(out, Warning{Text: c.Text, Source: c.Source})
	}
	return out
}

// AlcoholCautions returns what has to be said wherever alcohol is served.
func (b Bar) AlcoholCautions() (out []Warning) {
	for _, c := range b.Venue.Now().AlcoholCautions() {
		out = append(out, Warning{Text: c.Text, Source: c.Source})
	}
	return out
}

// Resolve finds the ingredient that a name means.
func (b Bar) Resolve(name string) (*flavor.Profile, flavor.Match, error) {
	return b.Venue.Now().Index.Resolve(name)
}

// Riff finds variations of a drink.
func (b Bar) Riff(ctx context.Context, r riff.Request) (*riff.Result, error) {
	return riff.Vary(ctx, b.Venue.Now().Station, r)
}

// Relatives returns the n proven drinks nearest to one, of those that the guest
// may have.
func (b Bar) Relatives(s *flavor.Spec, n int, guest cover.Guest) ([]station.Relative, error) {
	return b.Venue.Now().Station.Relatives(s, n, guest)
}

// UseUp drafts drinks that use bottles up.
func (b Bar) UseUp(ctx context.Context, r useup.Request) (*useup.Result, error) {
	return useup.Find(ctx, b.Venue.Now().Station, r)
}

// Walk finds drinks that lie between two.
func (b Bar) Walk(ctx context.Context, r walk.Request) ([]walk.Stop, error) {
	return walk.Find(ctx, b.Venue.Now().Station, r)
}

// Room is the house as the pages see it, as it stands at each question.
type Room struct{ Venue *Venue }

// About says whose house it is, in one line.
func (r Room) About() string {
	about := r.Venue.Now().About
	return strings.TrimSpace(about.Name + ". " + about.Description)
}

// Store keeps the house's records. What it has acknowledged, every method here
// knows of at once.
func (r Room) Store() house.Store { return r.Venue.Store() }

// Catalogue is what is known without the house.
func (r Room) Catalogue() *house.Shelf { return r.Venue.Catalogue() }

// Shelf is the catalogue with the house's bottles and makings laid over it.
func (r Room) Shelf() *house.Shelf { return r.Venue.Now().Shelf }

// Menu returns every drink of the house, by name.
func (r Room) Menu(context.Context) ([]Drink, error) { return slices.Clone(r.Venue.Now().Menu), nil }

// Find returns what [Snapshot.FindDrinks] does.
func (r Room) Find(ctx context.Context, q DrinkQuery) ([]Drink, error) {
	return r.Venue.Now().FindDrinks(ctx, q)
}

// Stock returns all that the house keeps, run dry or not.
func (r Room) Stock(context.Context) ([]*flavor.Profile, error) {
	return slices.Clone(r.Venue.Now().Stock), nil
}

// Outs returns the ids of what has run dry.
func (r Room) Outs(context.Context) (ids []string, err error) {
	for _, p := range r.Venue.Now().Out {
		ids = append(ids, p.ID)
	}
	return ids, nil
}

// Mark does what [Venue.Mark] does.
func (r Room) Mark(ctx context.Context, by house.By, m MarkRequest) error {
	return r.Venue.Mark(ctx, by, m)
}

// Prices returns what a millilitre of everything costs.
func (r Room) Prices(context.Context) (prep.Prices, error) {
	now := r.Venue.Now()
	return now.Prices, now.PricesFault
}

// Tastings returns how covers were received that were poured here.
func (r Room) Tastings(context.Context) ([]cover.Tasting, error) {
	return slices.Clone(r.Venue.Now().Tastings), nil
}

// Changes never fails: the venue follows its store by itself.
func (r Room) Changes(ctx context.Context) (<-chan struct{}, error) { return r.Venue.Changes(ctx), nil }

// Coach makes and grades rounds by the house as it stands. It remembers nobody.
type Coach struct {
	Now func() *Snapshot
	At  func() time.Time
}

// Next makes a round for a learner, of whom nothing may be known.
func (c Coach) Next(l drill.Learner, w RoundWish) (*drill.Round, error) {
	return c.Now().Round(RoundRequest{Learner: l, Wish: w, At: c.At(), Rand: rand.New(rand.NewPCG(rand.Uint64(), rand.Uint64()))})
}

// Again makes the round of a request once more.
func (c Coach) Again(r drill.RoundRequest) (*drill.Round, error) { return c.Now().RoundAgain(r) }

// Grade grades an answer.
func (c Coach) Grade(r *drill.Round, a drill.Answer) (*drill.Grade, error) {
	return c.Now().Grade(r, a)
}

// Flight plans a tasting flight.
func (c Coach) Flight(r drill.FlightRequest) (*drill.Flight, error) { return c.Now().Flight(r) }

// Card makes the card of a family, with examples from the specs given.
func (c Coach) Card(family string, specs []template.Labelled) (*drill.Card, error) {
	return c.Now().Card(family, specs)
}
