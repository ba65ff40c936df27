package walk

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/station"
)

// specOf pours each pair as far as it has turned, in the measure of the first
// drink.
func (k *walker) specOf(turned []int) flavor.Spec {
	out := flavor.Spec{Method: k.from.Method, Service: k.from.Service}
	if n := len(k.pairs); len(turned) > n && turned[n] == 2 || len(turned) == n {
		out.Method, out.Service = k.to.Method, k.to.Service
	}
	for i, x := range k.pairs {
		for _, j := range x.from {
			out.Pours = addPart(out.Pours, &k.from.Pours[j], float64(2-turned[i])/2)
		}
		for _, j := range x.to {
			out.Pours = addPart(out.Pours, &k.to.Pours[j], float64(turned[i])/2)
		}
	}
	out = k.inMeasure(&out)
	k.work.Refit(&out)
	return out
}

// inMeasure is a drink in the measure of the first, each amount one that a hand pours.
func (k *walker) inMeasure(s *flavor.Spec) flavor.Spec {
	unit := k.work.System.Unit()
	if at := slices.IndexFunc(k.from.Pours, func(p flavor.Pour) bool { return p.Unit.Jigger() }); at >= 0 {
		unit = k.from.Pours[at].Unit
	}
	out := s.Clone()
	for i := range out.Pours {
		if p := &out.Pours[i]; p.Unit.Jigger() && p.ML > spoonML {
			p.Unit = unit
		}
	}
	return station.Snapped(&out)
}

// spoonML is what no jigger in ounces reads: a bar spoon, and a little more.
const spoonML = 7.0

// addPart adds a share of a pour, to the pour of the same ingredient if there
// is one. Amounts are rounded once all shares are in.
func addPart(pours []flavor.Pour, p *flavor.Pour, share float64) []flavor.Pour {
	if share == 0 {
		return pours
	}
	for i := range pours {
		if pours[i].Profile.ID == p.Profile.ID {
			pours[i].ML += share * p.ML
			return pours
		}
	}
	part := *p
	part.ML *= share
	return append(pours, part)
}
