package riff

import (
	"context"
	"errors"
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
)

// Riffer varies drinks. It is safe for concurrent use.
type Riffer struct {
	mixer *mix.Mixer
	judge *balance.Judge
	set   *template.Set
	book  *book
}

// NewRiffer returns a riffer that judges by a set of families; proven drinks
// tell it what reads like a drink, and may be none.
func NewRiffer(mixer *mix.Mixer, judge *balance.Judge, set *template.Set, proven []template.Labelled) (*Riffer, error) {
	b, err := newBook(proven)
	if err != nil {
		return nil, err
	}
	return &Riffer{mixer: mixer, judge: judge, set: set, book: b}, nil
}

// Limits of a request.
const (
	MaxLimit     = 100
	DefaultLimit = 10
	MaxPours     = 16
	// LeastDistance is the least distance between any two riffs, and between a
	// riff and the drink it came from, in just-noticeable differences.
	LeastDistance = 3.0
)

// Request asks for riffs.
type Request struct {
	Spec  *flavor.Spec
	Stock []*flavor.Profile // what may be poured, and nothing else
	// Guest is who drinks it. What may hold an allergen that is avoided, or whose
	// allergens are unknown, is never poured. MaxCost is for the whole drink.
	Guest  cover.Guest
	Toward []Wish // every riff meets all of them; see ParseWishes
	Limit  int    // most riffs, 1 to MaxLimit; 0 means DefaultLimit
	Seed   uint64 // another seed, another list of much the same quality
}

// Riff is a variation in balance.
type Riff struct {
	Spec     flavor.Spec // without a name: that is for the bar to give
	Kind     Kind
	Score    float64 // 70 to 100
	FamilyID string  // the family it is likeliest to be now
	Family   string
	Distance float64          // from the drink asked about, in just-noticeable differences
	Changes  []balance.Change // Pour is an index into that drink; its length for a pour that came in
	Marks    []flavor.AllergenMark
	Cost     float64 // of all pours, by the guest's prices; 0 without any
	Drink    *mix.Drink
	Text     string // what to pour and what it does, in one line

	at place
}

// Refused counts what was left out and why.
type Refused struct {
	ByGuest  int // ingredients that the guest or a wish rules out
	Off      int // drafts that no amounts bring into balance
	ByLimit  int // balanced ones that are too strong, too weak or too dear
	Unmet    int // balanced ones that do not meet every wish
	TooAlike int // good ones that are too near to the drink or to a better riff
}

// Result is the riffs found, the best first.
type Result struct {
	Riffs   []Riff
	Refused Refused
}

// Riff returns variations of a drink. Fewer than the limit, or none, come back
// if no more are balanced, keep to every limit and differ enough; Refused says
// which it was. It fails if the request is out of range or if ctx ends.
func (r *Riffer) Riff(ctx context.Context, req Request) (*Result, error) {
	if req.Limit == 0 {
		req.Limit = DefaultLimit
	}
	if err := req.check(); err != nil {
		return nil, err
	}
	limits, err := newLimits(&req.Guest, req.Toward)
	if err != nil {
		return nil, err
	}
	w := r.newWork(req.Stock, limits, measure.SystemOf(req.Spec), req.Seed)
	if err := w.about(req.Spec); err != nil {
		return nil, err
	}
	pool, err := w.explore(ctx, req.Limit)
	if err != nil {
		return nil, err
	}
	chosen := w.choose(pool, req.Limit)
	out := &Result{}
	for _, s := range chosen {
		riff, err := w.describe(s)
		if err != nil {
			return nil, err
		}
		out.Riffs = append(out.Riffs, riff)
	}
	out.Refused = w.left
	return out, nil
}

func (req *Request) check() error {
	if req.Limit < 1 || req.Limit > MaxLimit {
		return outOfRange("limit", req.Limit, fmt.Sprintf("ask for 1 to %d", MaxLimit))
	}
	if len(req.Stock) == 0 {
		return &flavor.Fault{Kind: flavor.ErrInvalid, Location: "stock", Message: "nothing is in stock; name what may be poured"}
	}
	return checkSpec(req.Spec)
}

func checkSpec(s *flavor.Spec) error {
	switch {
	case s == nil || len(s.Pours) == 0:
		return &flavor.Fault{Kind: flavor.ErrInvalid, Location: "spec", Message: "a riff needs a drink to start from; write at least one pour"}
	case len(s.Pours) > MaxPours:
		return outOfRange("spec", len(s.Pours), fmt.Sprintf("a drink of so many pours is not riffed on; use at most %d", MaxPours))
	}
	for i := range s.Pours {
		if s.Pours[i].Profile == nil || !(s.Pours[i].ML > 0) {
			return &flavor.Fault{Kind: flavor.ErrInvalid, Location: fmt.Sprintf("pours[%d]", i),
				Message: "has no ingredient or no amount; write both"}
		}
	}
	return nil
}

// placed returns a fault with its place at one end of a walk.
func placed(end string, err error) error {
	var f *flavor.Fault
	if !errors.As(err, &f) {
		return err
	}
	own := *f
	own.Location = end
	if f.Location != "spec" {
		own.Location += "." + f.Location
	}
	return &own
}

func outOfRange(where string, value int, remedy string) error {
	return &flavor.Fault{Kind: flavor.ErrInvalid, Location: where, Value: fmt.Sprint(value),
		Message: fmt.Sprintf("%d is out of range; %s", value, remedy)}
}
