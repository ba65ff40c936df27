package riff

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/measure"
)

// MaxBottles is the most bottles that may be asked to move at once.
const MaxBottles = 24

// UseRequest asks for drinks that use bottles up.
type UseRequest struct {
	Bottles  []*flavor.Profile // that must move
	Stock    []*flavor.Profile // what may be poured beside them
	Guest    cover.Guest
	Toward   []Wish   // limits only; there is no drink to be more or less than
	Families []string // ids of the families wanted; none means all
	System   measure.System
	Limit    int // most drafts, 1 to MaxLimit; 0 means DefaultLimit
	Seed     uint64
}

// Use is how much of a bottle one drink takes.
type Use struct {
	Profile *flavor.Profile
	ML      float64
}

// UpDraft is a balanced draft that uses at least one of the bottles.
type UpDraft struct {
	Riff
	Uses []Use // in the order of the request
}

// UseResult is the drafts found, the best first, and the bottles that none of
// them uses.
type UseResult struct {
	Drafts  []UpDraft
	Unused  []*flavor.Profile
	Refused Refused
}

// UseUp returns balanced drafts that use bottles up, over the families of
// drinks. Each stands on the frame of a proven drink: the bottle takes the place
// of a pour that plays its part, what is not in stock is replaced, and the pours
// are sized so that the whole has its family's fitted ratio before the amounts
// are settled over the jigger. Drafts that use a bottle no other one uses come
// first. It fails if the request is out of range, if a family is not known, or
// if ctx ends.
func (r *Riffer) UseUp(ctx context.Context, req UseRequest) (*UseResult, error) {
	if req.Limit == 0 {
		req.Limit = DefaultLimit
	}
	if err := r.checkUse(&req); err != nil {
		return nil, err
	}
	limits, err := newLimits(&req.Guest, req.Toward)
	if err != nil {
		return nil, err
	}
	w := r.newWork(slices.Concat(req.Bottles, req.Stock), limits, req.System, req.Seed)
	u := &user{work: w, req: &req}
	pool, err := u.pool(ctx)
	if err != nil {
		return nil, err
	}
	return u.result(u.cover(pool))
}

func (r *Riffer) checkUse(req *UseRequest) error {
	switch {
	case req.Limit < 1 || req.Limit > MaxLimit:
		return outOfRange("limit", req.Limit, fmt.Sprintf("ask for 1 to %d", MaxLimit))
	case len(req.Bottles) < 1 || len(req.Bottles) > MaxBottles:
		return outOfRange("bottles", len(req.Bottles), fmt.Sprintf("name 1 to %d bottles that must move", MaxBottles))
	}
	for i := range req.Toward {
		if k := req.Toward[i].Kind; k == WishAxis || k == WishAroma {
			return &flavor.Fault{Kind: flavor.ErrInvalid, Location: "toward", Value: req.Toward[i].Word,
				Message: "there is no drink here to be more or less than; ask for limits only, such as \"no nuts\" or \"below 12 %\""}
		}
	}
	for _, id := range req.Families {
		if _, err := r.set.Centre(id); err != nil {
			return &flavor.Fault{Kind: flavor.ErrUnknown, Location: "families", Value: id, Message: fmt.Sprintf("%q is not a family known here", id)}
		}
	}
	for i, p := range req.Bottles {
		if p == nil {
			return &flavor.Fault{Kind: flavor.ErrInvalid, Location: fmt.Sprintf("bottles[%d]", i), Message: "has no ingredient"}
		}
	}
	return nil
}

// user is one request to use bottles up.
type user struct {
	work *work
	req  *UseRequest
}

// pool solves the likeliest frames of every bottle.
func (u *user) pool(ctx context.Context) ([]*solved, error) {
	var pool []*solved
	seen := map[string]bool{}
	for _, p := range u.req.Bottles {
		it, ok := u.work.has(p)
		if !ok {
			continue
		}
		for _, f := range u.frames(it) {
			if err := stopped(ctx); err != nil {
				return nil, err
			}
			key := keyOf(&f.spec)
			if seen[key] {
				continue
			}
			seen[key] = true
			sized, err := u.work.sized(&f)
			if err != nil {
				return nil, err
			}
			d := draft{spec: *sized, kind: Kind(f.family), moves: 1, likely: f.likely, rank: f.likely}
			s, err := u.work.solve(&d)
			if err != nil {
				return nil, err
			}
			if s != nil && u.work.good(s) {
				pool = append(pool, s)
			}
		}
	}
	return pool, nil
}

// newBottle is what a draft gains by a bottle that no chosen one uses.
const newBottle = 0.4

// cover chooses drafts as choose does, but lifts those that use a bottle that
// is still waiting.
func (u *user) cover(pool []*solved) []*solved {
	used := map[string]bool{}
	return u.work.pick(pool, u.req.Limit, func(s *solved) float64 {
		var gain float64
		for _, p := range u.req.Bottles {
			if !used[p.ID] && poured(&s.spec, p) {
				gain += newBottle
			}
		}
		return gain
	}, func(s *solved) {
		for i := range s.spec.Pours {
			used[s.spec.Pours[i].Profile.ID] = true
		}
	})
}

func (u *user) result(chosen []*solved) (*UseResult, error) {
	out, used := &UseResult{}, map[string]bool{}
	for _, s := range chosen {
		r, err := u.work.describe(s)
		if err != nil {
			return nil, err
		}
		d := UpDraft{Riff: r}
		d.Kind = KindBottle
		for _, p := range u.req.Bottles {
			if ml := poursOf(&s.spec, p); ml >= leastUse || ml > 0 && p.Class.Part() == flavor.PartSeasoning {
				used[p.ID] = true
				d.Uses = append(d.Uses, Use{p, ml})
			}
		}
		d.Text = useText(&d)
		out.Drafts = append(out.Drafts, d)
	}
	for _, p := range u.req.Bottles {
		if !used[p.ID] {
			out.Unused = append(out.Unused, p)
		}
	}
	out.Refused = u.work.left
	return out, nil
}

func poursOf(s *flavor.Spec, p *flavor.Profile) (ml float64) {
	for i := range s.Pours {
		if s.Pours[i].Profile.ID == p.ID {
			ml += s.Pours[i].ML
		}
	}
	return ml
}

func useText(d *UpDraft) string {
	parts := make([]string, len(d.Uses))
	for i, u := range d.Uses {
		parts[i] = fmt.Sprintf("%.0f ml of %s", u.ML, u.Profile.Name)
	}
	return fmt.Sprintf("%s that moves %s, %.0f %% vol", capital(article(strings.ToLower(d.Family))), strings.Join(parts, " and "), d.Drink.ABV)
}
