package station

import (
	"slices"

	"counterpour/flavor"
)

// Volumes and counts that a drink keeps to: common practice, no source.
const (
	leastDrinkML  = 60.0
	leastBeforeML = 55.0 // before ice
	mostDrinkML   = 450.0
	mostPours     = 7

	carryML     = 29.0 // the least that what holds alcohol comes to, seasonings aside
	usualBaseML = 61.0
	mostBaseML  = 76.0 // of all bases, unless a given drink pours more
	moreBase    = 1.25
	longML      = 45.0  // of length make a drink long
	poolML      = 120.0 // in all do too
	shortML     = 90.0  // of soda at most in a drink on the rocks
	upML        = 260.0 // before ice at most in a drink served up
)

// held is what of a drink decides how it is mixed and served.
type held struct {
	// loose: herbs, fruit, coffee and cordials are shaken or not, as one likes
	foam, cloudy, milk, loose, coffee, fizz, soda bool
	sodas                                         int // flavoured ones
	sodaML, lengthML, allML                       float64
}

func heldBy(s *flavor.Spec) held {
	var h held
	for i := range s.Pours {
		p := &s.Pours[i]
		kin := p.Profile.Class.Kin()
		h.allML += p.ML
		h.foam = h.foam || kin == flavor.KinFoam
		h.milk = h.milk || kin == flavor.KinMilk || kin == flavor.KinCream
		h.cloudy = h.cloudy || p.Profile.Class.Shaken()
		h.coffee = h.coffee || p.Profile.Class == flavor.ClassCoffee
		h.loose = h.loose || kin == flavor.KinHerb || kin == flavor.KinFruit || p.Profile.Class == flavor.ClassCoffee || p.Profile.Class == flavor.ClassCordial
		if p.Profile.Carbonated {
			h.fizz = true
			if p.Profile.Class == flavor.ClassSoda && p.Profile.Sugar.Value > 0 {
				h.sodas++
			}
			if p.Profile.Class != flavor.ClassSparklingWine {
				h.soda = true
				h.sodaML += p.ML
			}
		}
		if p.Profile.Class.Part() == flavor.PartLength {
			h.lengthML += p.ML
		}
	}
	return h
}

// slip is one way in which a drink is not mixed or served as the trade does.
type slip string

// The slips.
const (
	flat       slip = "what sparkles goes flat in the blender"
	unbeaten   slip = "egg and foam need a shake"
	unfoamed   slip = "a dry shake needs egg or foam"
	clouded    slip = "juice, cream and what is sharp are not stirred"
	dull       slip = "coffee on ice is shaken, unless the drink is long"
	bruised    slip = "spirits alone are stirred, not shaken"
	unmixed    slip = "juice is shaken unless the drink is long"
	ungathered slip = "a swizzle is on crushed ice"
	bare       slip = "a long drink needs length"
	sparse     slip = "what is topped with soda is not served up"
	drowned    slip = "so much soda is served long"
	brimming   slip = "so much is not served up"
	crowded    slip = "too many things are poured"
	motley     slip = "one flavoured soda is enough"
	deadened   slip = "what sparkles is built, or goes on top of what is stirred up"
)

// slipsOf lists how a drink is not mixed or served as the trade does: common
// practice, no source.
func slipsOf(s *flavor.Spec) []slip {
	h := heldBy(s)
	var out []slip
	add := func(when bool, x slip) {
		if when {
			out = append(out, x)
		}
	}
	add(len(s.Pours) > mostPours, crowded)
	add(h.sodas > 1, motley)
	if s.Service == flavor.Hot || s.Service == flavor.Neat {
		return out
	}
	shaken := s.Method == flavor.Shake || s.Method == flavor.DryShake || s.Method == flavor.Blend
	stirred := s.Method == flavor.Stir || s.Method == flavor.Throw
	add(s.Method == flavor.Blend && h.fizz, flat)
	add(stirred && h.fizz && s.Service != flavor.Up, deadened)
	add(h.foam && !shaken, unbeaten)
	add(s.Method == flavor.DryShake && !h.foam, unfoamed)
	add(stirred && h.cloudy, clouded)
	add(stirred && h.coffee, dull)
	add(shaken && !h.cloudy && !h.loose, bruised)
	add(s.Method == flavor.Swizzle && !h.cloudy, bruised)
	long := h.lengthML >= longML || h.fizz
	add(s.Method == flavor.Build && h.cloudy && !h.milk && !long && s.Service != flavor.Crushed, unmixed)
	add(s.Method == flavor.Swizzle && s.Service != flavor.Crushed || stirred && s.Service == flavor.Crushed, ungathered)
	add(s.Service == flavor.Long && !long && h.allML < poolML, bare)
	add(s.Service == flavor.Up && h.soda, sparse)
	add(s.Service == flavor.Up && h.allML > upML, brimming)
	add(s.Service == flavor.Rocks && h.sodaML > shortML, drowned)
	return out
}

// Served reports whether a drink is mixed and served as the trade does, as far
// as the drinks that were given are.
func (j *Job) Served(s *flavor.Spec) bool {
	return !slices.ContainsFunc(slipsOf(s), func(x slip) bool {
		return !slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return slices.Contains(slipsOf(g), x) })
	})
}

// Refit mixes and serves a draft as what is in it asks for: as it is if that
// does, else in the way nearest to it. What sparkles goes in after the ice.
func (j *Job) Refit(s *flavor.Spec) {
	if !j.Served(s) {
		h := heldBy(s)
		for _, way := range waysFor(&h, s.Method, s.Service) {
			s.Method, s.Service = way.Method, way.Service
			if j.Served(s) {
				break
			}
		}
	}
	if s.Method == flavor.Shake && j.foamCame(s) {
		s.Method = flavor.DryShake
	}
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
		return p.Profile.Class.Kin() == flavor.KinFoam && !slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return Pours(g, p.Profile) })
	})
}

// Way is how a drink is mixed and served.
type Way struct {
	Method  flavor.Method
	Service flavor.Service
}

// waysFor lists ways to mix and serve what a drink holds, those nearest to how
// it is served first.
func waysFor(h *held, method flavor.Method, service flavor.Service) []Way {
	var methods []flavor.Method
	switch {
	case h.foam:
		methods = []flavor.Method{flavor.DryShake, flavor.Shake}
	case h.cloudy && h.soda:
		methods = []flavor.Method{method, flavor.Shake, flavor.Build}
	case h.cloudy:
		methods = []flavor.Method{method, flavor.Shake}
	case h.fizz:
		methods = []flavor.Method{flavor.Build, flavor.Stir}
	case h.coffee:
		methods = []flavor.Method{flavor.Shake, flavor.Build}
	case h.loose:
		methods = []flavor.Method{method, flavor.Build, flavor.Shake}
	default:
		methods = []flavor.Method{flavor.Stir, flavor.Build}
	}
	services := []flavor.Service{service, flavor.Up, flavor.Rocks, flavor.Long, flavor.Crushed}
	if h.soda {
		services = []flavor.Service{service, flavor.Long, flavor.Rocks}
	}
	var out []Way
	for _, v := range services {
		for _, m := range methods {
			out = append(out, Way{m, v})
		}
	}
	return out
}
