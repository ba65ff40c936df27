// Package kitchen joins the catalogue, the index and the science, and answers what
// can be asked of them whatever the house is.
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
	// Resolve returns the one ingredient that a written name means.
	Resolve(written string) (*flavor.Profile, flavor.Match, error)
	// Profile returns the ingredient with an id.
	Profile(id string) (*flavor.Profile, bool)
	// Search finds ingredients by words, filters and nearness.
	Search(ctx context.Context, q lookup.Query) (lookup.Result, error)
	// Complete returns what a name that is being typed may become, the likeliest first.
	Complete(ctx context.Context, typed string, limit int) ([]*flavor.Profile, error)
	// Candidates returns what may be poured, and how many were refused.
	Candidates(ctx context.Context, n lookup.Need) ([]*flavor.Profile, lookup.Refused, error)
	// Len returns how many ingredients there are.
	Len() int
	// Open makes what Search and Complete need, if nobody has yet, and tells how far
	// it is; else the first of these does it.
	Open(ctx context.Context, progress Progress) error
	// Opened reports whether that is made.
	Opened() bool
	// Close frees the index and all that follow it.
	Close() error
}

// follower is an index that others can follow: Follow returns one over other
// profiles, which shares with it what is the same, and Favouring one that
// suggests what has the higher favour first.
type follower[I any] interface {
	Index
	Favouring(favour func(id string) float64) I
	Follow(ctx context.Context, profiles []*flavor.Profile, progress Progress) (I, error)
}

// Progress is told how many ingredients are done, of how many; nil is told nothing.
type Progress = func(done, total int)

// follow makes the next index, with what it favours if that is another, and what
// makes the one after it.
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

// Kitchen joins the catalogue, the index and the science. It knows no house,
// and is safe for concurrent use.
type Kitchen struct {
	Catalogue *data.Catalogue
	Index     Index
	Set       *weigh.Set
	Proven    []template.Labelled // the drinks that the set rests on
	Mixer     *mix.Mixer
	Judge     *balance.Judge
	Finder    *cover.Finder
	Station   *station.Station
	Searches  *admission.Pool // lets searches in; nil lets in all

	follow   follow
	stock    []*flavor.Profile  // what the index suggests first
	customs  *flavor.Customs    // what the trade pours in place of what is out
	carriers *wish.Carriers     // what a bartender meets a wish with
	Common   *flavor.Commonness // how common everything is
}

// New loads the families and makes an index over a catalogue, such as with
// index.New.
func New[I follower[I]](c *data.Catalogue, newIndex func([]*flavor.Profile) (I, error)) (*Kitchen, error) {
	k := &Kitchen{Catalogue: c}
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

// judgeBy makes everything that judges go by a set of families.
func (k *Kitchen) judgeBy(s *weigh.Set) (err error) {
	k.Set = s
	k.Judge = balance.NewJudge(k.Mixer, s, k.Catalogue.Pantry())
	k.Finder = cover.NewFinder(k.Mixer, k.Judge, k.Catalogue.Space(), k.customs, cover.DefaultWeights())
	k.Station, err = station.New(k.Mixer, k.Judge, s, k.Catalogue.Space(), k.Proven, k.carriers)
	return err
}

// favour ranks what is suggested: 1 and more for what a house stocks, and below
// 1 the more, the more proven drinks pour it.
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

// For returns a kitchen over other profiles, whose index follows k's and
// suggests first what is in stock, and with the families moved to a palate: the
// drinks that a house marked as right. k stays as it is; both share one index
// and are closed together.
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

// Mend scores a spec and finds how to fix it.
func (k *Kitchen) Mend(spec *flavor.Spec) (*balance.Result, []balance.Fix, error) {
	return k.Judge.Mend(spec, balance.MaxFixes)
}

// Admitting returns the same kitchen with a pool that lets its searches in. Both
// share one index and are closed together.
func (k *Kitchen) Admitting(searches *admission.Pool) *Kitchen {
	out := *k
	out.Searches = searches
	return &out
}

// Close releases the index.
func (k *Kitchen) Close() error { return k.Index.Close() }
