package service

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"counterpour/api/admission"
	"counterpour/api/service/fault"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/left"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/useup"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/riff/wording"
)

// Defaults of requests for riffs and for drafts from bottles.
const (
	DefaultRiffs  = 10
	DefaultUseUps = 10
)

// relatives is how many proven drinks are listed.
const relatives = 5

// RiffRequest asks for variations of a draft.
type RiffRequest struct {
	Draft
	Guest  Guest
	Toward []string // what each riff must satisfy, such as "more bitter" or "no nuts"
	Stock  []string // ids of what may be poured; nil for the stock of the house and the ingredients of the draft
	Limit  int      // most riffs, 1 to riff.MaxLimit
	Seed   uint64
}

// RiffAnswer is the variations found.
type RiffAnswer struct {
	Spec      flavor.Spec // the draft as it was read
	Result    *riff.Result
	Relatives []precedent.Relative // the nearest proven drinks that the guest may have
	Prices    map[string]float64   // per mL; used for the guest's limit on cost
	Currency  string               // of the prices; empty if the request sent prices
	Avoid     []flavor.Allergen    // what the guest must not have
}

// Riff finds variations of a draft that stay in balance. Its faults name the line of a
// text or the field.
func (s *Snapshot) Riff(ctx context.Context, r RiffRequest) (*RiffAnswer, error) {
	var faults flavor.DataFaults
	fault.InRange(&faults, "limit", r.Limit, 1, riff.MaxLimit)
	spec, err := s.Read(r.Draft)
	if err := fault.Collect(&faults, err); err != nil {
		return nil, err
	}
	r.Guest = s.priced(r.Guest, r.Stock)
	guest, found := s.guest(r.Guest)
	faults = append(faults, found...)
	wishes, err := wish.Parse(r.Toward, s.names())
	if err := fault.Collect(&faults, err); err != nil {
		return nil, err
	}
	if len(faults) > 0 {
		return nil, faults
	}
	stock, err := s.pourable(ctx, r.Stock, &spec)
	if err != nil {
		return nil, err
	}
	a := &RiffAnswer{Spec: spec, Prices: guest.Prices, Currency: s.currency(r.Guest.Prices), Avoid: guest.Avoid}
	request := riff.Request{Spec: &spec, Stock: stock, Out: s.Out, Guest: guest, Toward: wishes, Limit: r.Limit, Seed: r.Seed}
	a.Result, err = admission.Search(ctx, s.Searches, func(ctx context.Context) (*riff.Result, error) { return riff.Vary(ctx, s.Station, request) })
	if err != nil {
		return nil, err
	}
	if r.Stock == nil {
		s.tellOut(a.Result.LeftOut)
	}
	a.Relatives, err = s.Station.Relatives(&spec, relatives, guest)
	return a, err
}

// tellOut says of what a riff leaves out, as not at hand, that the house has marked it as out where
// it has.
func (s *Snapshot) tellOut(left []station.LeftOut) {
	for i := range left {
		if slices.Contains(s.Out, left[i].Profile) {
			left[i].Why = strings.Replace(left[i].Why, wording.NotAtHand, wording.RanOut, 1)
		}
	}
}

// names returns the lookup of ingredients for words in a wish.
func (s *Snapshot) names() wish.Names {
	return wish.NamesIn(append(s.Catalogue.Profiles(), s.Stock...))
}

// UseUpRequest asks for drinks that use up bottles.
type UseUpRequest struct {
	Bottles  []string // names, aliases or ids of the bottles to use up; 1 to useup.MaxBottles
	Guest    Guest
	Toward   []string // limits that every draft respects, such as "no smoke"
	Families []string // ids of families; empty for all
	Stock    []string // ids of what else may be poured; nil for the stock of the house
	Unit     string   // unit of the amounts: oz or ml; empty for oz
	Limit    int      // most drafts, 1 to riff.MaxLimit
	Seed     uint64
}

// UseUpAnswer is the drafts found.
type UseUpAnswer struct {
	House    About // whose stock it is; zero if the stock was sent
	Result   *useup.Result
	Prices   map[string]float64
	Currency string            // of the prices; empty if the request sent prices
	Avoid    []flavor.Allergen // what the guest must not have
}

// UseUp finds drafts that use up bottles. Its faults name the field.
func (s *Snapshot) UseUp(ctx context.Context, r UseUpRequest) (*UseUpAnswer, error) {
	request, err := s.useRequest(&r)
	if err != nil {
		return nil, err
	}
	if request.Stock, err = s.pourable(ctx, r.Stock); err != nil {
		return nil, err
	}
	a := &UseUpAnswer{Prices: request.Guest.Prices, Currency: s.currency(r.Guest.Prices), Avoid: request.Guest.Avoid}
	if r.Stock == nil {
		a.House = s.About
	}
	a.Result, err = admission.Search(ctx, s.Searches, func(ctx context.Context) (*useup.Result, error) { return useup.Find(ctx, s.Station, *request) })
	return a, err
}

func (s *Snapshot) useRequest(r *UseUpRequest) (*useup.Request, error) {
	out := &useup.Request{Families: r.Families, System: measure.System(r.Unit), Limit: r.Limit, Seed: r.Seed}
	var faults flavor.DataFaults
	fault.InRange(&faults, "limit", r.Limit, 1, riff.MaxLimit)
	if n := len(r.Bottles); n < 1 || n > useup.MaxBottles {
		faults = append(faults, flavor.Invalid("bottles", n, "%d is out of range; name 1 to %d bottles that must move", n, useup.MaxBottles))
	}
	if out.System == "" {
		out.System = measure.Imperial
	}
	if out.System != measure.Imperial && out.System != measure.Metric {
		faults = append(faults, flavor.Invalid("unit", r.Unit, "%q is no unit to measure in; use oz or ml", fault.Quotable(r.Unit)))
	}
	for i, name := range r.Bottles {
		p, err := s.Named(name)
		if _, bare, cut := left.Cut(name); cut && err != nil { // how much is left does not matter
			p, err = s.Named(bare)
		}
		if err := fault.Collect(&faults, fault.At(fmt.Sprintf("bottles[%d]", i), err)); err != nil {
			return nil, err
		}
		out.Bottles = append(out.Bottles, p)
	}
	var found flavor.DataFaults
	r.Guest = s.priced(r.Guest, r.Stock)
	out.Guest, found = s.guest(r.Guest)
	faults = append(faults, found...)
	var err error
	out.Toward, err = wish.Parse(r.Toward, s.names())
	if err := fault.Collect(&faults, err); err != nil {
		return nil, err
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return out, nil
}
