package service

import (
	"context"
	"fmt"
	"slices"

	"counterpour/api/admission"
	"counterpour/api/service/fault"
	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/barred"
	"counterpour/flavor/cover/lookahead"
	"counterpour/flavor/cover/outs"
)

// menuEffort limits the work of the searches for a whole menu. The limit takes about four
// seconds.
const menuEffort = 4 * coverEffort

// OutsRequest asks for covers for a whole menu when bottles run out.
type OutsRequest struct {
	Out   []string         // names, aliases or ids
	Menu  []kitchen.Fields // nil for the menu of the house
	Guest Guest
	Stock []string // ids of what may be poured; nil for the stock of the house
	Parts int      // most substitutes in one cover, 1 to cover.MaxParts
}

// OutsAnswer is the drinks of the menu that lose a pour, with their covers.
type OutsAnswer struct {
	House  About // whose menu it is; zero if the menu was sent
	Result *outs.Result
	// Barred is what the trade would pour for each drink of Result and why nobody does now, see
	// [Snapshot.BarredFrom].
	Barred [][]barred.Way
}

// Outs finds covers for every drink of a menu that pours one of the bottles. For the
// house's own menu, everything that has run out counts as missing, also if the request
// does not name it.
func (s *Snapshot) Outs(ctx context.Context, r OutsRequest) (*OutsAnswer, error) {
	request, err := s.outsRequest(ctx, &r)
	if err != nil {
		return nil, err
	}
	a, asked := &OutsAnswer{}, slices.Clone(request.Out)
	if r.Menu == nil {
		a.House = s.About
		request.Specs = slices.DeleteFunc(request.Specs, func(spec *flavor.Spec) bool { return !pours(spec, asked) })
		request.Out = withEach(request.Out, s.Out)
	}
	a.Result, err = admission.Search(ctx, s.Searches, func(ctx context.Context) (*outs.Result, error) {
		return outs.Find(ctx, s.Finder, *request)
	})
	if err != nil {
		return nil, err
	}
	shelf := slices.DeleteFunc(slices.Clone(request.Stock), func(p *flavor.Profile) bool { return slices.Contains(request.Out, p) })
	for i := range a.Result.Touched {
		a.Barred = append(a.Barred, s.BarredFrom(&a.Result.Touched[i], &request.Guest, shelf))
	}
	a.Result.Fetch = slices.DeleteFunc(a.Result.Fetch, func(f outs.Fetch) bool { return !slices.Contains(asked, f.Profile) })
	return a, nil
}

// Outs finds covers for a whole menu when bottles run out, by a snapshot of the house.
// Requests with the same content share one search. The answer must not be changed.
func (v *Venue) Outs(ctx context.Context, now *Snapshot, r outs.Request) (*outs.Result, error) {
	r.Effort, r.Specs = menuEffort, outs.Touching(r.Specs, r.Out) // other drinks do not affect the result
	return v.menus.Outs(ctx, now.Set.Palates(), r, func(ctx context.Context, r outs.Request) (*outs.Result, error) {
		return admission.Search(ctx, now.Searches, func(ctx context.Context) (*outs.Result, error) { return outs.Find(ctx, now.Finder, r) })
	})
}

func (s *Snapshot) outsRequest(ctx context.Context, r *OutsRequest) (*outs.Request, error) {
	var faults flavor.DataFaults
	fault.InRange(&faults, "max_parts", r.Parts, 1, cover.MaxParts)
	out := &outs.Request{Parts: r.Parts, Tastings: s.Tastings, Effort: menuEffort}
	for i, name := range r.Out {
		p, err := s.Named(name)
		if err := fault.Collect(&faults, fault.At(fmt.Sprintf("out[%d]", i), err)); err != nil {
			return nil, err
		}
		out.Out = append(out.Out, p)
	}
	var found flavor.DataFaults
	out.Guest, found = s.guest(r.Guest)
	faults = append(faults, found...)
	var err error
	out.Specs, err = s.menu(r.Menu)
	if err := fault.Collect(&faults, err); err != nil {
		return nil, err
	}
	if len(faults) > 0 {
		return nil, faults
	}
	out.Stock, err = s.shelfFor(ctx, r.Stock, r.Menu == nil)
	return out, err
}

// withEach appends the elements of more that list does not contain yet.
func withEach(list, more []*flavor.Profile) []*flavor.Profile {
	for _, p := range more {
		if !slices.Contains(list, p) {
			list = append(list, p)
		}
	}
	return list
}

// pours reports whether a drink pours one of the bottles.
func pours(spec *flavor.Spec, bottles []*flavor.Profile) bool {
	return slices.ContainsFunc(spec.Pours, func(p flavor.Pour) bool { return slices.Contains(bottles, p.Profile) })
}

// CoverageRequest asks which bottles of a menu have no good cover.
type CoverageRequest struct {
	Menu  []kitchen.Fields // nil for the menu of the house
	Stock []string         // ids of what may be poured; nil for the stock of the house
}

// CoverageAnswer is the bottles that nothing in stock covers well, and what could be bought
// to cover them.
type CoverageAnswer struct {
	House About // whose menu it is; zero if the menu was sent
	*lookahead.Answer
}

// lookedAhead is what the menu of a snapshot leans on.
type lookedAhead struct {
	of     *Snapshot
	answer *CoverageAnswer
}

// Coverage finds what the menu of a snapshot of the house leans on, as [Snapshot.Coverage]
// does, and keeps the answer until the house changes; not one that ran out of time, since the
// next may say more. The answer must not be changed.
func (v *Venue) Coverage(ctx context.Context, now *Snapshot) (*CoverageAnswer, error) {
	if kept := v.ahead.Load(); kept != nil && kept.of == now {
		return kept.answer, nil
	}
	a, err := now.Coverage(ctx, CoverageRequest{})
	if err == nil && len(a.Left) == 0 {
		v.ahead.Store(&lookedAhead{now, a})
	}
	return a, err
}

// Coverage finds, for every bottle of the menu, the drinks that would have no good cover
// if it ran out, and which other bottle would close most of these gaps.
func (s *Snapshot) Coverage(ctx context.Context, r CoverageRequest) (*CoverageAnswer, error) {
	specs, err := s.menu(r.Menu)
	if err != nil {
		return nil, err
	}
	stock, err := s.shelfFor(ctx, r.Stock, r.Menu == nil)
	if err != nil {
		return nil, err
	}
	a := &CoverageAnswer{}
	if r.Menu == nil {
		a.House = s.About
	}
	a.Answer, err = admission.Search(ctx, s.Searches, func(ctx context.Context) (*lookahead.Answer, error) {
		return lookahead.Of(ctx, s.Finder, specs, stock, s.Shelf.Profiles(), coverEffort)
	})
	return a, err
}
