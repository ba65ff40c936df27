// Package kitchen joins the catalogue, the index and the science, and answers every
// question that does not depend on a house.
package kitchen

import (
	"context"
	"fmt"
	"slices"

	"counterpour/api/admission"
	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/beside"
	"counterpour/flavor/cover"
	"counterpour/flavor/lookup"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// Index finds ingredients. [counterpour/index] is one.
type Index interface {
	// Resolve returns the ingredient that a written name means.
	Resolve(written string) (*flavor.Profile, flavor.Match, error)
	// Profile returns the ingredient with an id.
	Profile(id string) (*flavor.Profile, bool)
	// Search finds ingredients by words, filters and nearness.
	Search(ctx context.Context, q lookup.Query) (lookup.Result, error)
	// Complete returns the ingredients whose name a prefix may become, the likeliest
	// first.
	Complete(ctx context.Context, typed string, limit int) ([]*flavor.Profile, error)
	// Candidates returns the ingredients that may be poured, and how many were refused.
	Candidates(ctx context.Context, n lookup.Need) ([]*flavor.Profile, lookup.Refused, error)
	// Len returns the number of ingredients.
	Len() int
	// Open builds the full-text index that Search and Complete need, and reports
	// progress. If Open was not called, the first Search or Complete builds it.
	Open(ctx context.Context, progress Progress) error
	// Opened reports whether the full-text index is built.
	Opened() bool
	// Close releases the index and every index derived from it.
	Close() error
}

// follower is an index from which others can be derived. Follow returns an index over
// other profiles that shares all unchanged documents. Favouring returns one that suggests
// ingredients with a higher favour first.
type follower[I any] interface {
	Index
	Favouring(favour func(id string) float64) I
	Follow(ctx context.Context, profiles []*flavor.Profile, progress Progress) (I, error)
}

// Progress is called with the number of ingredients indexed and their total. A nil
// Progress is not called.
type Progress = func(done, total int)

// follow derives the next index, and the follow function for the one after it. It applies
// favour if another is true or if the profiles changed.
type follow func(ctx context.Context, profiles []*flavor.Profile, favour func(id string) float64, another bool, progress Progress) (Index, follow, error)

func following[I follower[I]](x I) follow {
	return func(ctx context.Context, profiles []*flavor.Profile, favour func(id string) float64, another bool, progress Progress) (Index, follow, error) {
		next, err := x.Follow(ctx, profiles, progress)
		if err != nil {
			return nil, nil, err
		}
		if another || any(next) != any(x) {
			next = next.Favouring(favour)
		}
		return next, following(next), nil
	}
}

// Kitchen joins the catalogue, the index and the science. It does not depend on a house,
// and is safe for concurrent use.
type Kitchen struct {
	Ingredients
	Set      *weigh.Set
	Proven   []template.Labelled // the proven drinks that Set was fitted to
	Mixer    *mix.Mixer
	Judge    *balance.Judge
	Finder   *cover.Finder
	Station  *station.Station
	Searches *admission.Pool // limits concurrent searches; nil for no limit

	follow   follow
	stock    []*flavor.Profile   // suggested first by the index
	customs  *flavor.Customs     // the customary substitutes of the trade
	carriers *wish.Carriers      // the ingredients that meet a wish
	serves   []template.Labelled // how bars pour what proven drinks hardly have a place for
	Common   *flavor.Commonness  // how common each ingredient is
}

// New loads the families and builds an index over the catalogue with newIndex, such as
// index.New.
func New[I follower[I]](c *data.Catalogue, newIndex func([]*flavor.Profile) (I, error)) (*Kitchen, error) {
	k := &Kitchen{Ingredients: Ingredients{Catalogue: c}}
	var x I
	indexed := beside.Run(func() (err error) {
		x, err = newIndex(c.Profiles())
		return err
	})
	set, proven, err := c.Set()
	if err != nil {
		return nil, err
	}
	k.Proven = proven
	if k.customs, err = c.Customs(); err != nil {
		return nil, err
	}
	if k.carriers, err = c.Carriers(); err != nil {
		return nil, err
	}
	if k.serves, err = c.Serves(); err != nil {
		return nil, err
	}
	if k.Common, err = c.Commonness(proven); err != nil {
		return nil, err
	}
	if k.Mixer, err = mix.NewMixer(); err != nil {
		return nil, err
	}
	if err := k.judgeBy(set); err != nil {
		return nil, err
	}
	if err := indexed(); err != nil {
		return nil, fmt.Errorf("making the index: %w", err)
	}
	x = x.Favouring(k.favour(nil))
	k.Index, k.follow = x, following(x)
	return k, nil
}

// judgeBy builds everything that depends on the set of families.
func (k *Kitchen) judgeBy(s *weigh.Set) (err error) {
	k.Set = s
	k.Judge = balance.NewJudge(k.Mixer, s, k.Catalogue.Pantry())
	k.Finder = cover.NewFinder(k.Mixer, k.Judge, k.Catalogue.Space(), k.customs, cover.DefaultWeights())
	k.Station, err = station.New(k.Mixer, k.Judge, s, k.Catalogue.Space(), station.Lore{Proven: k.Proven, Serves: k.serves, Carriers: k.carriers, Customs: k.customs})
	if err != nil {
		return err
	}
	k.Finder.Pour(k.Station.MostPoured)
	k.Finder.Know(k.sisters())
	return nil
}

// favour returns the rank of an ingredient among suggestions: 1 to 2 if it is in stock,
// otherwise 0 to 1. Within each range it grows with the number of proven drinks that pour
// it.
func (k *Kitchen) favour(stock []*flavor.Profile) func(id string) float64 {
	stocked := make(map[string]bool, len(stock))
	for _, p := range stock {
		stocked[p.ID] = true
	}
	return func(id string) float64 {
		n := float64(k.Common.Drinks(id))
		if stocked[id] {
			return 1 + n/(1+n)
		}
		return n / (1 + n)
	}
}

// For returns a kitchen for a house: over its profiles, with an index derived from k's
// that suggests the stock first, and with the families adjusted to a palate, which is the
// drinks that the house marked as right. k does not change. Both share one index; closing
// either closes both.
func (k *Kitchen) For(ctx context.Context, profiles, stock []*flavor.Profile, right []template.Labelled, progress Progress) (*Kitchen, error) {
	out := *k
	out.stock = stock
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
	if out.Index, out.follow, err = k.follow(ctx, profiles, k.favour(stock), !slices.Equal(k.stock, stock), progress); err != nil {
		return nil, fmt.Errorf("bringing the index up to the house: %w", err)
	}
	return &out, nil
}

// Mend scores a spec and finds fixes for it.
func (k *Kitchen) Mend(spec *flavor.Spec) (*balance.Result, []balance.Fix, error) {
	return k.Judge.Mend(spec, balance.MaxFixes)
}

// Admitting returns the same kitchen with a pool that limits its searches. Both share one
// index; closing either closes both.
func (k *Kitchen) Admitting(searches *admission.Pool) *Kitchen {
	out := *k
	out.Searches = searches
	return &out
}
