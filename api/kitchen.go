package api

import (
	"context"
	"fmt"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff"
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
	Riffer    *riff.Riffer
	House     *data.House // whose menu and stock it is
	// What the house has learnt of covers, and what its bottles cost per
	// millilitre, by ingredient; a house that keeps neither has none.
	Tastings []cover.Tasting
	Prices   map[string]float64

	usual map[string]bool // ids of what most bars stock
}

// NewKitchen loads the families and the demo house and builds the index over a
// catalogue. The
// progress of the index, if wanted, is told in ingredients done and in all.
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
	k.Judge = balance.NewJudge(k.Mixer, k.Set, c.Pantry())
	k.Finder = cover.NewFinder(k.Mixer, k.Judge, cover.DefaultWeights())
	if k.Riffer, err = riff.NewRiffer(k.Mixer, k.Judge, k.Set, k.Proven); err != nil {
		return nil, err
	}
	if k.Index, err = index.Build(ctx, c.Profiles(), progress); err != nil {
		return nil, fmt.Errorf("building the index: %w", err)
	}
	return k, nil
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
