package serve

import "counterpour/flavor"

// Volumes and counts that a drink keeps to: common practice, no source.
const (
	mostPours = 7
	longML    = 45.0  // of length make a drink long
	poolML    = 120.0 // in all do too
	shortML   = 90.0  // of soda at most in a drink on the rocks
	upML      = 260.0 // before ice at most in a drink served up
)

// Long reports whether so much length, in mL, makes a drink long.
func Long(ml float64) bool { return ml >= longML }

// Held is what of a drink decides how it is mixed and served.
type Held struct {
	// loose: herbs, fruit, coffee and cordials are shaken or not, as one likes
	// White is the white of an egg, or what foams like it, without the yolk; Sour is what sours
	White, Sour, Foam, Cloudy, Milk, Dairy, Loose, Coffee, Herb, Fizz, Soda bool
	Sodas                                                                   int     // flavoured ones
	Still                                                                   int     // pours that do not sparkle
	SodaML, WineML, LengthML, AllML                                         float64 // WineML is sparkling wine
}

// HeldBy reads off a drink what decides how it is mixed and served.
func HeldBy(s *flavor.Spec) Held {
	var h Held
	for i := range s.Pours {
		p := &s.Pours[i]
		class := p.Profile.Class
		kin := class.Kin()
		h.AllML += p.ML
		h.White = h.White || p.Profile.Whitens()
		h.Sour = h.Sour || class.Part() == flavor.PartSour || class.Tart()
		h.Foam = h.Foam || kin == flavor.KinFoam
		h.Milk = h.Milk || kin == flavor.KinMilk || kin == flavor.KinCream
		h.Dairy = h.Dairy || p.Profile.Class.Curdles()
		h.Cloudy = h.Cloudy || p.Profile.Class.Shaken()
		h.Herb = h.Herb || kin == flavor.KinHerb
		h.Coffee = h.Coffee || class.Roasted()
		h.Loose = h.Loose || kin == flavor.KinHerb || kin == flavor.KinFruit || class.Roasted() || class.Tart()
		if !p.Profile.Carbonated {
			h.Still++
		} else {
			h.Fizz = true
			if class.Soft() && p.Profile.Sugar.Value > 0 {
				h.Sodas++
			}
			if !class.Vinous() || class.Brewed() {
				h.Soda = true
				h.SodaML += p.ML
			} else {
				h.WineML += p.ML
			}
		}
		if p.Profile.Class.Part() == flavor.PartLength {
			h.LengthML += p.ML
		}
	}
	return h
}

// Breach is one way in which a drink is not mixed or served as the trade does.
type Breach string

// The breaches, each with the practice that it departs from: common practice, no source.
const (
	flat       Breach = "flat"       // what sparkles goes flat in the blender
	unbeaten   Breach = "unbeaten"   // egg and foam need a shake
	unfoamed   Breach = "unfoamed"   // a dry shake needs egg or foam
	clouded    Breach = "clouded"    // juice, cream and what is sharp are not stirred
	dull       Breach = "dull"       // coffee on ice is shaken, unless the drink is long
	whole      Breach = "whole"      // herbs give little where they are stirred: shake, build or crush them
	bruised    Breach = "bruised"    // spirits alone are stirred, not shaken
	unmixed    Breach = "unmixed"    // juice is shaken unless the drink is long
	churned    Breach = "churned"    // cream is shaken or blended, not swizzled
	ungathered Breach = "ungathered" // a swizzle is on crushed ice
	bare       Breach = "bare"       // a long drink needs length
	sparse     Breach = "sparse"     // what is topped with soda is not served up
	drowned    Breach = "drowned"    // a drink with this much soda is served long
	brimming   Breach = "brimming"   // a drink this large is not served up
	crowded    Breach = "crowded"    // too many things are poured
	motley     Breach = "motley"     // one flavoured soda is enough
	watered    Breach = "watered"    // sparkling wine is not served on crushed ice
	needless   Breach = "needless"   // one thing under what sparkles is poured, not shaken
	flabby     Breach = "flabby"     // the white of an egg is shaken with something sour
	cloying    Breach = "cloying"    // over the white of an egg goes plain soda, not a sweet one
	deadened   Breach = "deadened"   // what sparkles is built, or goes on top of what is stirred up
)

// BreachesOf lists how a drink is not mixed or served as the trade does: common
// practice, no source.
func BreachesOf(s *flavor.Spec) []Breach {
	h := HeldBy(s)
	var out []Breach
	add := func(when bool, x Breach) {
		if when {
			out = append(out, x)
		}
	}
	add(len(s.Pours) > mostPours, crowded)
	add(h.Sodas > 1, motley)
	if s.Service == flavor.Hot || s.Service == flavor.Neat {
		return out
	}
	add(h.White && !h.Sour, flabby)
	add(h.White && h.Sodas > 0, cloying)
	shaken := s.Method.Aerates()
	stirred := s.Method == flavor.Stir || s.Method == flavor.Throw
	add(s.Method == flavor.Blend && h.Fizz, flat)
	add(stirred && h.Fizz && s.Service != flavor.Up, deadened)
	add(shaken && h.Fizz && h.Still == 1, needless)
	add(h.Foam && !shaken, unbeaten)
	add(s.Method == flavor.DryShake && !h.Foam, unfoamed)
	add(stirred && h.Cloudy, clouded)
	add(stirred && h.Coffee, dull)
	add(stirred && h.Herb, whole)
	add(shaken && !h.Cloudy && !h.Loose, bruised)
	add(s.Method == flavor.Swizzle && !h.Cloudy, bruised)
	add(s.Method == flavor.Swizzle && h.Dairy, churned)
	long := h.LengthML >= longML || h.Fizz
	add(s.Method == flavor.Build && h.Cloudy && !h.Milk && !long && s.Service != flavor.Crushed, unmixed)
	add(s.Method == flavor.Swizzle && s.Service != flavor.Crushed || stirred && s.Service == flavor.Crushed, ungathered)
	add(s.Service == flavor.Long && !long && h.AllML < poolML, bare)
	add(s.Service == flavor.Up && h.Soda, sparse)
	add(s.Service == flavor.Up && h.AllML > upML, brimming)
	add(s.Service == flavor.Rocks && h.SodaML > shortML, drowned)
	add(s.Service == flavor.Crushed && 2*h.WineML > h.AllML, watered)
	return out
}

// Way is how a drink is mixed and served.
type Way struct {
	Method  flavor.Method
	Service flavor.Service
}

// WaysFor lists ways to mix and serve what a drink holds, those nearest to how
// it is served first.
func WaysFor(h *Held, method flavor.Method, service flavor.Service) []Way {
	var methods []flavor.Method
	switch {
	case h.Foam:
		methods = []flavor.Method{flavor.DryShake, flavor.Shake}
	case h.Fizz && h.Still == 1:
		methods = []flavor.Method{method, flavor.Build}
	case h.Cloudy && h.Soda:
		methods = []flavor.Method{method, flavor.Shake, flavor.Build}
	case h.Cloudy:
		methods = []flavor.Method{method, flavor.Shake}
	case h.Fizz:
		methods = []flavor.Method{flavor.Build, flavor.Stir}
	case h.Coffee:
		methods = []flavor.Method{flavor.Shake, flavor.Build}
	case h.Loose:
		methods = []flavor.Method{method, flavor.Build, flavor.Shake}
	default:
		methods = []flavor.Method{flavor.Stir, flavor.Build}
	}
	services := []flavor.Service{service, flavor.Up, flavor.Rocks, flavor.Long, flavor.Crushed}
	if h.Soda {
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
