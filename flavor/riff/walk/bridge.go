package walk

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/weigh"
)

// When a proven drink is a stop, in just-noticeable differences and, of the way, in
// shares: judged on walks between drinks of the trade.
const (
	longHop       = 6.0  // a longer hop is bridged if it can be
	provenToll    = 25.0 // cubed steps, so that it must make the hops more even
	leastProgress = 0.04 // of the way, to a proven drink and on from it
)

// oddToll is what a whole unit of strangeness costs a walk, in cubed steps.
const oddToll = 30.0

// longest is the longest hop of a walk.
func longest(stops []Stop) (most float64) {
	for i := range stops {
		most = max(most, stops[i].Hop)
	}
	return most
}

// between is how far on the way from one glass to another a third lies, 0 to 1: its foot
// on the line through them, by the law of cosines.
func between(apart, from, to float64) float64 {
	if apart <= 0 {
		return 0
	}
	return (from*from - to*to + apart*apart) / (2 * apart * apart)
}

// bridge adds the proven drinks that the guest may have and that lie between the ends.
func (k *walker) bridge(req *Request) error {
	may := map[string]bool{}
	for _, p := range req.Stock {
		may[p.ID] = req.Guest.Accepts(p)
	}
	for _, end := range k.work.Given {
		for i := range end.Pours {
			may[end.Pours[i].Profile.ID] = true
		}
	}
	first, last := k.states[0], k.states[len(k.states)-1]
	apart := station.Apart(first.at, last.at)
	ends := len(k.states) - 1
	k.states = k.states[:ends]
	for i := range k.work.Station.Proven() {
		proven := &k.work.Station.Proven()[i].Spec
		if !k.pourable(proven, may) {
			continue
		}
		s, ok, err := k.proven(proven)
		if err != nil {
			return err
		}
		if ok && max(station.Apart(first.at, s.at), station.Apart(s.at, last.at)) < apart {
			k.states = append(k.states, s)
		}
	}
	k.states, k.hops = append(k.states, last), nil
	return nil
}

// pourable reports whether a proven drink is poured from what may be poured, served as
// one of the ends is, and brings alcohol only where an end does.
func (k *walker) pourable(s *flavor.Spec, may map[string]bool) bool {
	laced := func(s *flavor.Spec) bool {
		return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.ABV.Value > flavor.NoAlcoholABV })
	}
	some := func(so func(*flavor.Spec) bool) bool { return slices.ContainsFunc(k.work.Given, so) }
	served := func(end *flavor.Spec) bool { return end.Service == s.Service }
	return len(s.Pours) <= station.MaxPours && some(served) && k.akin(s) && (!laced(s) || some(laced)) &&
		!slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return !may[p.Profile.ID] })
}

// strangersMost is how many things a proven drink on the way pours, seasonings aside, of a
// class that neither end pours.
const strangersMost = 1

// akin reports whether a proven drink is of the kind of the ends: on no spirit that neither
// is on, and with little that neither pours.
func (k *walker) akin(s *flavor.Spec) bool {
	strangers := 0
	for i := range s.Pours {
		p := s.Pours[i].Profile
		if p.Class.Part() == flavor.PartSeasoning || slices.ContainsFunc(k.work.Given, func(end *flavor.Spec) bool { return end.HasClass(p.Class) }) {
			continue
		}
		if strangers++; p.Base() || strangers > strangersMost {
			return false
		}
	}
	return true
}

// proven is a proven drink as a state, in the measure of the first drink; false if it is
// not balanced or beyond a limit.
func (k *walker) proven(s *flavor.Spec) (state, bool, error) {
	spec := k.inMeasure(s)
	spec.Name = s.Name
	station.SparkleLast(&spec)
	drink, err := k.work.Station.Mixer.Mix(&spec)
	if err != nil {
		return state{}, false, err
	}
	x := station.Settled{Sketch: station.Sketch{Spec: spec}, Drink: drink}
	if x.Score, err = k.work.Station.Judge.ScoreOnly(&spec); err != nil {
		return state{}, false, err
	}
	if x.Score < weigh.BalancedFrom || !k.work.Limits.Keeps(&x.Spec, x.Drink) {
		return state{}, false, nil
	}
	return state{spec: spec, score: x.Score, drink: drink, at: k.work.Station.Space.Percept(&spec, drink), toll: provenToll}, true, nil
}
