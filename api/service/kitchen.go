package service

import (
	"context"
	"fmt"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/template"
	"counterpour/index"
)

// Kitchen joins the catalogue, the index and the science. It is safe for
// concurrent use.
type Kitchen struct {
	Catalogue *data.Catalogue
	Index     *index.Index
	Set       *template.Set
	Proven    []template.Labelled // the drinks that the set rests on
	Mixer     *mix.Mixer
	Judge     *balance.Judge
	Finder    *cover.Finder
	Station   *station.Station
	House     *data.House // whose menu and stock it is
	// What the house has learnt of covers, and what its bottles cost per
	// millilitre, by ingredient; a house that keeps neither has none.
	Tastings []cover.Tasting
	Prices   map[string]float64
	Currency string // of Prices, as in ISO 4217

	usual map[string]bool // ids of what most bars stock
}

// NewKitchen loads the families and the demo house and builds the index over a
// catalogue. The progress of the index, if wanted, is told in ingredients done
// and in all.
func NewKitchen(ctx context.Context, c *data.Catalogue, progress func(done, total int)) (*Kitchen, error) {
	k := &Kitchen{Catalogue: c}
	var err error
	if k.House, err = c.Demo(); err != nil {
		return nil, err
	}
	if k.Set, k.Proven, err = c.Set(); err != nil {
		return nil, err
	}
	k.usual = usualIn(k.Proven, k.House)
	if k.Mixer, err = mix.NewMixer(); err != nil {
		return nil, err
	}
	if err := k.judgeBy(k.Set); err != nil {
		return nil, err
	}
	if k.Index, err = index.Build(ctx, c.Profiles(), progress); err != nil {
		return nil, fmt.Errorf("building the index: %w", err)
	}
	return k, nil
}

// judgeBy makes everything that judges go by a set of families.
func (k *Kitchen) judgeBy(s *template.Set) (err error) {
	k.Set = s
	k.Judge = balance.NewJudge(k.Mixer, s, k.Catalogue.Pantry())
	k.Finder = cover.NewFinder(k.Mixer, k.Judge, cover.DefaultWeights())
	k.Station, err = station.New(k.Mixer, k.Judge, s, k.Proven)
	return err
}

// Setup is what a house makes of a kitchen.
type Setup struct {
	Profiles []*flavor.Profile // the catalogue with the house laid over it
	House    *data.House
	Right    []template.Labelled // the drinks that it marked as right: its palate
	Tastings []cover.Tasting
	Prices   map[string]float64 // of a millilitre, by ingredient
	Currency string             // of Prices, as in ISO 4217
}

// For returns the kitchen of a house: its profiles in the index, which follows
// k's, its menu and stock, and families moved to its palate. k stays as it is;
// both share one index and are closed together.
func (k *Kitchen) For(ctx context.Context, s *Setup, progress func(done, total int)) (*Kitchen, error) {
	out := *k
	out.House, out.Tastings = s.House, s.Tastings
	out.Prices, out.Currency = s.Prices, s.Currency
	out.usual = usualIn(k.Proven, s.House)
	var err error
	if len(s.Right) > 0 || len(k.Set.Palates()) > 0 {
		set, err := k.Set.WithPalate(s.Right)
		if err != nil {
			return nil, err
		}
		if err := out.judgeBy(set); err != nil {
			return nil, err
		}
	}
	if out.Index, err = k.Index.Follow(ctx, s.Profiles, progress); err != nil {
		return nil, fmt.Errorf("bringing the index up to the house: %w", err)
	}
	return &out, nil
}

// usualIn returns the ids of what most bars stock: what proven drinks are made
// of, and what the house keeps.
func usualIn(book []template.Labelled, house *data.House) map[string]bool {
	usual := map[string]bool{}
	for i := range book {
		for _, p := range book[i].Spec.Pours {
			usual[p.Profile.ID] = true
		}
	}
	for _, p := range house.Stock {
		usual[p.ID] = true
	}
	return usual
}

// Close releases the index.
func (k *Kitchen) Close() error { return k.Index.Close() }

// Read reads a spec as text. Its faults name line and word.
func (k *Kitchen) Read(text string) (flavor.Spec, error) {
	draft, err := measure.Parse(text)
	if err != nil {
		return flavor.Spec{}, err
	}
	return measure.Resolve(draft, k.Index)
}

// Score scores a spec and finds what would mend it.
func (k *Kitchen) Score(s *flavor.Spec) (*balance.Result, []balance.Fix, error) {
	r, err := k.Judge.Score(s)
	if err != nil {
		return nil, nil, err
	}
	fixes, err := k.Judge.Fixes(s, r, balance.MaxFixes)
	return r, fixes, err
}

// CoverRequest asks what to pour in place of an ingredient.
type CoverRequest struct {
	Spec    flavor.Spec
	Missing string
	Guest   cover.Guest
	Stock   []string // ids that may be used; nil for the whole catalogue
	Parts   int
	Limit   int
}

// Cover finds covers among what the index lets through.
func (k *Kitchen) Cover(ctx context.Context, r CoverRequest) (*flavor.Profile, *cover.Result, index.Refused, error) {
	missing, _, err := k.Index.Resolve(r.Missing)
	if err != nil {
		return nil, nil, index.Refused{}, err
	}
	candidates, refused, err := k.Index.Candidates(ctx, index.Need{Avoid: r.Guest.Avoid, Stock: r.Stock, Exclude: []string{missing.ID},
		NoAlcohol: r.Guest.NoAlcohol, NoAnimal: r.Guest.NoAnimal})
	if err != nil {
		return nil, nil, refused, err
	}
	request := cover.Request{Spec: &r.Spec, Missing: []*flavor.Profile{missing},
		Candidates: candidates, Guest: r.Guest, Tastings: k.Tastings, Parts: r.Parts, Limit: r.Limit}
	if r.Stock == nil {
		request.Usual = k.usual
	}
	result, err := k.Finder.Find(ctx, request)
	return missing, result, refused, err
}
