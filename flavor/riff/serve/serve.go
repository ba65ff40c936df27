package serve

import "counterpour/flavor"

// Volumes and counts that a drink keeps to: common practice, no source.
const (
	mostPours = 7
	longML    = 45.0  // of length make a drink long
	poolML    = 120.0 // in all do too
	shortML   = 90.0  // of soda at most in a drink on the rocks
	upML      = 260.0 // before ice at most in a drink served up
	curdlesML = 14.0  // of sour juice, a half ounce, curdle cream that no foam holds
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
	SoftML, StillML                                                         float64 // of sodas, and of length that does not sparkle
	HotML, TartML                                                           float64 // of what is poured hot into a hot drink, and of sour juice
}

// HeldBy reads off a drink what decides how it is mixed and served.
func HeldBy(s *flavor.Spec) Held {
	var h Held
	for i := range s.Pours {
		p := &s.Pours[i]
		class := p.Profile.Class
		kin := class.Kin()
		h.AllML += p.ML
		if kin == flavor.KinSourJuice {
			h.TartML += p.ML
		}
		if class.Heated() {
			h.HotML += p.ML
		}
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
			if !p.Profile.Carbonated {
				h.StillML += p.ML
			}
		}
		if class.Soft() && p.Profile.Carbonated {
			h.SoftML += p.ML
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
	drenched   Breach = "drenched"   // egg and foam are lengthened with what sparkles, never with tea or a glass of juice
	fizzed     Breach = "fizzed"     // what sparkles goes flat in a hot drink
	scalded    Breach = "scalded"    // a hot drink is built in its glass
	tepid      Breach = "tepid"      // a hot drink is lengthened with something hot
	curdled    Breach = "curdled"    // cream beside this much sour juice is held together by foam
	custardy   Breach = "custardy"   // an egg is lengthened with soda only beside something sour
)

// made is a drink as the rules of mixing and serving look at it.
type made struct {
	Held
	spec    *flavor.Spec
	shaken  bool // or blended, or whatever else beats air into it
	stirred bool // or thrown
	long    bool // much of it lengthens, or sparkles
}

func (m *made) by(method flavor.Method) bool  { return m.spec.Method == method }
func (m *made) served(as flavor.Service) bool { return m.spec.Service == as }

// rule is when a drink departs from a practice.
type rule struct {
	breach Breach
	broken func(m *made) bool
}

// rules hold for every drink, coldRules for those that are served cold, and hotRules for those
// that are served hot: common practice, no source. Breaches are told in this order.
var (
	rules = []rule{
		{crowded, func(m *made) bool { return len(m.spec.Pours) > mostPours }},
		{motley, func(m *made) bool { return m.Sodas > 1 }},
	}
	hotRules = []rule{
		{fizzed, func(m *made) bool { return m.Fizz }},
		{scalded, func(m *made) bool { return m.shaken }},
		{tepid, func(m *made) bool { return m.HotML < longML }},
	}
	coldRules = []rule{
		{flabby, func(m *made) bool { return m.White && !m.Sour }},
		{cloying, func(m *made) bool { return m.White && m.Sodas > 0 }},
		{drenched, func(m *made) bool { return m.Foam && m.StillML > longML && !m.Milk }},
		{curdled, func(m *made) bool { return m.Dairy && !m.Foam && m.TartML >= curdlesML }},
		{custardy, func(m *made) bool { return m.Foam && !m.Sour && m.SoftML > 0 }},
		{flat, func(m *made) bool { return m.by(flavor.Blend) && m.Fizz }},
		{deadened, func(m *made) bool { return m.stirred && m.Fizz && !m.served(flavor.Up) }},
		{needless, func(m *made) bool { return m.shaken && m.Fizz && m.Still == 1 }},
		{unbeaten, func(m *made) bool { return m.Foam && !m.shaken }},
		{unfoamed, func(m *made) bool { return m.by(flavor.DryShake) && !m.Foam }},
		{clouded, func(m *made) bool { return m.stirred && m.Cloudy }},
		{dull, func(m *made) bool { return m.stirred && m.Coffee }},
		{whole, func(m *made) bool { return m.stirred && m.Herb }},
		{bruised, func(m *made) bool { return m.shaken && !m.Cloudy && !m.Loose }},
		{bruised, func(m *made) bool { return m.by(flavor.Swizzle) && !m.Cloudy }},
		{churned, func(m *made) bool { return m.by(flavor.Swizzle) && m.Dairy }},
		{unmixed, func(m *made) bool {
			return m.by(flavor.Build) && m.Cloudy && !m.Milk && !m.long && !m.served(flavor.Crushed)
		}},
		{ungathered, func(m *made) bool {
			return m.by(flavor.Swizzle) && !m.served(flavor.Crushed) || m.stirred && m.served(flavor.Crushed)
		}},
		{bare, func(m *made) bool { return m.served(flavor.Long) && !m.long && m.AllML < poolML }},
		{sparse, func(m *made) bool { return m.served(flavor.Up) && m.Soda }},
		{brimming, func(m *made) bool { return m.served(flavor.Up) && m.AllML > upML }},
		{drowned, func(m *made) bool { return m.served(flavor.Rocks) && m.SodaML > shortML }},
		{watered, func(m *made) bool { return m.served(flavor.Crushed) && 2*m.WineML > m.AllML }},
	}
)

// BreachesOf lists how a drink is not mixed or served as the trade does.
func BreachesOf(s *flavor.Spec) []Breach {
	m := made{Held: HeldBy(s), spec: s, shaken: s.Method.Aerates(), stirred: s.Method == flavor.Stir || s.Method == flavor.Throw}
	m.long = m.LengthML >= longML || m.Fizz
	out := m.breaks(nil, rules)
	switch {
	case m.served(flavor.Hot):
		return m.breaks(out, hotRules)
	case m.served(flavor.Neat):
		return out
	}
	return m.breaks(out, coldRules)
}

// breaks appends the breaches of some rules.
func (m *made) breaks(to []Breach, rules []rule) []Breach {
	for _, r := range rules {
		if r.broken(m) {
			to = append(to, r.breach)
		}
	}
	return to
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
	case service == flavor.Hot && !h.Fizz:
		methods = []flavor.Method{flavor.Build, method}
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
