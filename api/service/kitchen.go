package service

import (
	"context"
	"fmt"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/template"
	"counterpour/index"
)

// Kitchen joins the catalogue, the index and the science. It knows no house,
// and is safe for concurrent use.
type Kitchen struct {
	Catalogue *data.Catalogue
	Index     *index.Index
	Set       *template.Set
	Proven    []template.Labelled // the drinks that the set rests on
	Mixer     *mix.Mixer
	Judge     *balance.Judge
	Finder    *cover.Finder
	Station   *station.Station
}

// NewKitchen loads the families and builds the index over a catalogue. The
// progress of the index, if wanted, is told in ingredients done and in all.
func NewKitchen(ctx context.Context, c *data.Catalogue, progress func(done, total int)) (*Kitchen, error) {
	k := &Kitchen{Catalogue: c}
	set, proven, err := c.Set()
	if err != nil {
		return nil, err
	}
	k.Proven = proven
	if k.Mixer, err = mix.NewMixer(); err != nil {
		return nil, err
	}
	if err := k.judgeBy(set); err != nil {
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
	k.Station, err = station.New(k.Mixer, k.Judge, s, k.Catalogue.Space(), k.Proven)
	return err
}

// For returns a kitchen over other profiles, whose index follows k's, and with
// the families moved to a palate: the drinks that a house marked as right. k
// stays as it is; both share one index and are closed together.
func (k *Kitchen) For(ctx context.Context, profiles []*flavor.Profile, right []template.Labelled, progress func(done, total int)) (*Kitchen, error) {
	out := *k
	var err error
	if len(right) > 0 || len(k.Set.Palates()) > 0 {
		set, err := k.Set.WithPalate(right)
		if err != nil {
			return nil, err
		}
		if err := out.judgeBy(set); err != nil {
			return nil, err
		}
	}
	if out.Index, err = k.Index.Follow(ctx, profiles, progress); err != nil {
		return nil, fmt.Errorf("bringing the index up to the house: %w", err)
	}
	return &out, nil
}

// Close releases the index.
func (k *Kitchen) Close() error { return k.Index.Close() }
