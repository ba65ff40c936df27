package service

import (
	"context"
	"math"

	"counterpour/api/admission"
	"counterpour/api/service/fault"
	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/walk"
)

// Limits of the small pours of a walk, in mL: common practice, no source.
const (
	DefaultSmallPourML = 60.0
	MinSmallPourML     = 10.0
	MaxSmallPourML     = 200.0
)

// WalkRequest asks for a path from one drink to another.
type WalkRequest struct {
	From, To Draft
	Steps    int     // balanced drinks between the two, 1 to walk.MaxSteps
	PourML   float64 // mL of each finished drink, MinSmallPourML to MaxSmallPourML
	Guest    Guest
	Stock    []string // ids of what proven drinks between the two may pour; nil for the stock of the house
}

// WalkAnswer is the path found.
type WalkAnswer struct {
	Stops    []Stop            // the first drink, those between, and the last
	Labels   []*flavor.Profile // what the guest may have only if its label clears it: without that no stop is safe
	VolumeML float64           // of all small pours together
	EthanolG float64           // in all small pours together
	Cautions []data.Caution
	Avoid    []flavor.Allergen // what the guest must not have
}

// Stop is one drink of a walk and its small pour.
type Stop struct {
	walk.Stop
	PouredML float64 // PourML, or the whole drink if it is smaller
	EthanolG float64 // in the small pour
}

// Walk finds a path from one drink to another.
func (s *Snapshot) Walk(ctx context.Context, r WalkRequest) (*WalkAnswer, error) {
	request, err := s.walkRequest(&r)
	if err != nil {
		return nil, err
	}
	if request.Stock, err = s.pourable(ctx, r.Stock); err != nil {
		return nil, err
	}
	found, err := admission.Search(ctx, s.Searches, func(ctx context.Context) (*walk.Result, error) { return walk.Find(ctx, s.Station, *request) })
	if err != nil {
		return nil, fault.Placed(err, func(l string) string {
			if l == "between" { // the name that package riff gives this location
				return "steps"
			}
			return l
		})
	}
	a, stops := &WalkAnswer{Avoid: request.Guest.Avoid, Labels: found.Labels}, found.Stops
	poured := make([]*flavor.Spec, len(stops))
	for i := range stops {
		stop := Stop{Stop: stops[i], PouredML: math.Min(r.PourML, stops[i].Drink.VolumeML)}
		stop.EthanolG = mix.EthanolG(stop.Drink.ABV, stop.PouredML)
		a.VolumeML += stop.PouredML
		a.EthanolG += stop.EthanolG
		a.Stops = append(a.Stops, stop)
		poured[i] = &stops[i].Spec
	}
	a.Cautions = s.AllCautions(poured...)
	return a, nil
}

func (s *Snapshot) walkRequest(r *WalkRequest) (*walk.Request, error) {
	out := &walk.Request{Between: r.Steps}
	var faults flavor.DataFaults
	fault.InRange(&faults, "steps", r.Steps, 1, walk.MaxSteps)
	if !(r.PourML >= MinSmallPourML && r.PourML <= MaxSmallPourML) {
		faults = append(faults, flavor.Invalid("pour_ml", r.PourML, "%g mL is out of range; pour %g to %g mL of each drink", r.PourML, MinSmallPourML, MaxSmallPourML))
	}
	for _, end := range []struct {
		name string
		of   Draft
		to   **flavor.Spec
	}{{"from", r.From, &out.From}, {"to", r.To, &out.To}} {
		spec, err := s.Read(end.of)
		err = fault.Placed(err, func(l string) string {
			if l == "" {
				return end.name
			}
			return end.name + "." + l
		})
		if err := fault.Collect(&faults, err); err != nil {
			return nil, err
		}
		*end.to = &spec
	}
	var found flavor.DataFaults
	out.Guest, found = s.guest(r.Guest)
	faults = append(faults, found...)
	if len(faults) > 0 {
		return nil, faults
	}
	return out, nil
}
