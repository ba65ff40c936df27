package station

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/serve"
)

// Served reports whether a drink is mixed and served as the trade does, as far
// as the drinks that were given are.
func (j *Job) Served(s *flavor.Spec) bool {
	return !slices.ContainsFunc(serve.BreachesOf(s), func(x serve.Breach) bool {
		return !slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return slices.Contains(serve.BreachesOf(g), x) })
	})
}

// Refit mixes and serves a draft as what is in it asks for: as it is if that
// does, else in the way nearest to it. What sparkles goes in after the ice.
func (j *Job) Refit(s *flavor.Spec) {
	if !j.Served(s) {
		h := serve.HeldBy(s)
		for _, way := range serve.WaysFor(&h, s.Method, s.Service) {
			s.Method, s.Service = way.Method, way.Service
			if j.Served(s) {
				break
			}
		}
	}
	if s.Method == flavor.Shake && j.foamCame(s) {
		s.Method = flavor.DryShake
	}
	SparkleLast(s)
}

// SparkleLast has what sparkles go in after the ice, unless all is built in the glass.
func SparkleLast(s *flavor.Spec) {
	for i := range s.Pours {
		p := &s.Pours[i]
		if p.Profile.Carbonated {
			p.After = s.Method != flavor.Build
		}
	}
}

// foamCame reports whether a drink pours egg or foam that no given drink does: it is
// shaken dry first.
func (j *Job) foamCame(s *flavor.Spec) bool {
	return len(j.Given) > 0 && slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool {
		return p.Profile.Class.Kin() == flavor.KinFoam && !slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return g.HasProfile(p.Profile) })
	})
}
