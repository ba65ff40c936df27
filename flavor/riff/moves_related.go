package riff

import (
	"counterpour/flavor"
	"counterpour/flavor/riff/station"
)

// How many of the nearest proven drinks a drink is led toward, and the least share of what
// lengthens it that stays where one of them pours something long beside it.
const (
	relativesTried = 8
	leastStays     = 0.5
)

// related pours what one of the nearest proven drinks, or a way in which bars pour what the drink is made on,
// pours beside what both do, and the drink has not: tomato in a lager with lime and sauces, or a
// mezcal. Only what is one thing away is poured, and what lengthens takes the place of as much of
// what is long already.
func (w *work) related(from *station.Parent) ([]station.Sketch, error) {
	if from.Moves > 0 {
		return nil, nil
	}
	kin, err := w.Station.Relatives(w.From, relativesTried, w.Limits.Guest)
	if err != nil {
		return nil, err
	}
	var all []*flavor.Spec
	for i := range kin {
		all = append(all, &kin[i].Proven.Spec)
	}
	serves := w.Station.Serves()
	for i := range serves {
		if s := &serves[i].Spec; from.Spec.HasProfile(mostOf(s)) {
			all = append(all, s)
		}
	}
	var out []station.Sketch
	for _, near := range all {
		at, only := onlyNew(near, &from.Spec)
		if !only {
			continue
		}
		it, ok := w.Has(near.Pours[at].Profile)
		if !ok {
			continue
		}
		s, ok := joined(&from.Spec, near, at, it)
		if !ok {
			continue
		}
		o := w.consider(from, s, KindAdd, it, nil, nil)
		o.Frame = near
		out = append(out, o.Sketch)
	}
	return out, nil
}

// mostOf returns what a drink pours most of.
func mostOf(s *flavor.Spec) *flavor.Profile {
	most := 0
	for i := range s.Pours {
		if s.Pours[i].ML > s.Pours[most].ML {
			most = i
		}
	}
	return s.Pours[most].Profile
}

// onlyNew returns the only pour of one drink that another has not, seasonings aside, and whether
// there is one and they share more than one pour.
func onlyNew(near, s *flavor.Spec) (at int, only bool) {
	at = -1
	shared := 0
	for i := range near.Pours {
		switch p := near.Pours[i].Profile; {
		case s.HasProfile(p):
			shared++
		case p.Class.Part() == flavor.PartSeasoning:
		case at >= 0:
			return -1, false
		default:
			at = i
		}
	}
	return at, at >= 0 && shared > 1
}

// joined is a drink with a pour of another, in the share that it has there.
func joined(s, near *flavor.Spec, at int, it *station.Item) (flavor.Spec, bool) {
	came := &near.Pours[at]
	out := s.Clone()
	ml := came.ML * s.VolumeML() / near.VolumeML()
	if long := largest(s, flavor.PartLength); it.Part == flavor.PartLength && long >= 0 {
		old := &out.Pours[long]
		rest, ok := station.Pour(old.Profile, old.Unit, max(leastStays*old.ML, old.ML-ml))
		if !ok {
			return out, false
		}
		rest.After = old.After
		out.Pours[long] = rest
	}
	p, ok := station.Pour(it.Profile, it.Unit, ml)
	out.Pours = append(out.Pours, p)
	return out, ok
}
