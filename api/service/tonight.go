package service

import (
	"context"
	"fmt"
	"slices"

	"counterpour/api/admission"
	"counterpour/api/service/evening"
	"counterpour/api/service/fault"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/outs"
)

// TonightRequest asks what can be poured of the menu of the house now.
type TonightRequest struct {
	Guest Guest
	Parts int // most substitutes in one cover, 1 to cover.MaxParts
}

// Tonight says what can be poured of the menu of the house now, and for whom. Its drinks
// stand in the order of the menu.
func (s *Snapshot) Tonight(ctx context.Context, r TonightRequest) (*evening.Answer, error) {
	var faults flavor.DataFaults
	fault.InRange(&faults, "max_parts", r.Parts, 1, cover.MaxParts)
	who, found := s.guest(r.Guest)
	if faults = append(faults, found...); len(faults) > 0 {
		return nil, faults
	}
	all := evening.Request{Stock: s.Stock, Out: s.Out, Guest: who, Tastings: s.Tastings, Parts: r.Parts}
	for i := range s.Menu {
		all.Menu = append(all.Menu, &s.Menu[i].Spec)
	}
	return evening.Of(ctx, shift{s}, all)
}

// TonightFlightRequest asks for a little of several drinks of the menu.
type TonightFlightRequest struct {
	Drinks []string // names or slugs
	EachML float64  // finished, of each drink for each guest
	Guests int
	Guest  Guest
}

// TonightFlight plans a tasting of several drinks of the house, each as it can be poured
// now. It fails as [evening.FlightOf] does, and with every drink that the house does not have.
func (s *Snapshot) TonightFlight(ctx context.Context, r TonightFlightRequest) (*evening.Flight, error) {
	now, err := s.Tonight(ctx, TonightRequest{Guest: r.Guest, Parts: DefaultMaxParts})
	var faults flavor.DataFaults
	if err := fault.Collect(&faults, err); err != nil {
		return nil, err
	}
	var drinks []*evening.Drink
	for i, name := range r.Drinks {
		d, err := s.Drink(name)
		if err != nil {
			if err := fault.Collect(&faults, fault.At(fmt.Sprintf("drinks[%d]", i), err)); err != nil {
				return nil, err
			}
			continue
		}
		if now != nil {
			at := slices.IndexFunc(s.Menu, func(m Drink) bool { return m.Slug == d.Slug })
			drinks = append(drinks, &now.Drinks[at])
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return evening.FlightOf(shift{s}, drinks, r.EachML, r.Guests)
}

// shift is a snapshot as [evening.Of] asks it.
type shift struct{ house *Snapshot }

func (k shift) Judge(spec *flavor.Spec) (*balance.Result, error) { return k.house.Judge.Score(spec) }

func (k shift) Outs(ctx context.Context, r outs.Request) (*outs.Result, error) {
	r.Effort, r.Specs = menuEffort, outs.Touching(r.Specs, r.Out)
	return admission.Search(ctx, k.house.Searches, func(ctx context.Context) (*outs.Result, error) {
		return outs.Find(ctx, k.house.Finder, r)
	})
}
