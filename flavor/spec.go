package flavor

import (
	"slices"
	"strings"
)

// Method is how a drink is mixed and chilled.
type Method string

// The methods of the bar.
const (
	Shake    Method = "shake"
	DryShake Method = "dry shake" // shaken without ice, then with it
	Stir     Method = "stir"
	Build    Method = "build"
	Blend    Method = "blend"
	Throw    Method = "throw"
	Swizzle  Method = "swizzle"
)

// Methods lists every method.
func Methods() []Method { return []Method{Shake, DryShake, Stir, Build, Blend, Throw, Swizzle} }

// Valid reports whether m is one of [Methods].
func (m Method) Valid() bool {
	for _, k := range Methods() {
		if m == k {
			return true
		}
	}
	return false
}

// Shaken reports whether a drink is shaken, with a dry shake first or without.
func (m Method) Shaken() bool { return m == Shake || m == DryShake }

// Aerates reports whether the method beats air into a drink.
func (m Method) Aerates() bool { return m.Shaken() || m == Blend }

// Service is how a drink is presented.
type Service string

// The services of the bar.
const (
	Up      Service = "up"      // strained, no ice
	Rocks   Service = "rocks"   // on cubes
	Crushed Service = "crushed" // on crushed ice
	Long    Service = "long"    // tall, on cubes
	Hot     Service = "hot"     // hot, no ice; see Spec.HotC
	Neat    Service = "neat"    // as it was poured: no ice, not chilled
)

// Services lists every service.
func Services() []Service { return []Service{Up, Rocks, Crushed, Long, Hot, Neat} }

// Valid reports whether s is one of [Services].
func (s Service) Valid() bool {
	for _, k := range Services() {
		if s == k {
			return true
		}
	}
	return false
}

// Match says how a written name was matched to a profile.
type Match struct {
	Asked    string
	How      MatchHow
	Inferred []string // what was not written and was worked out, see the Inferred words
	Steeped  string   // what a bar put into the bottle, where nobody has stated what that may carry
}

// What of a pour may be inferred.
const (
	InferredAmount = "amount" // none was written
	InferredUnit   = "unit"   // taken from the other lines
	InferredName   = "name"   // by its place in the drink: lime by the ounce is lime juice
)

// MatchHow is how a written name met a profile.
type MatchHow string

// A name is the profile's own, one of its aliases, or one near enough that
// only a slip of the pen divides them.
const (
	MatchExact MatchHow = "exact"
	MatchAlias MatchHow = "alias"
	MatchFuzzy MatchHow = "fuzzy"
)

// Heat is how warm a draft says that a pour is; empty if it says nothing.
type Heat string

// A pour is hot from the kettle, or cold.
const (
	HeatHot  Heat = "hot"
	HeatCold Heat = "cold"
)

// Valid reports whether h is empty, hot or cold.
func (h Heat) Valid() bool { return h == "" || h == HeatHot || h == HeatCold }

// Pour is an amount of one ingredient. Amount and Unit are as written; ML is
// the same amount in millilitres of the profile.
type Pour struct {
	Profile *Profile
	Amount  float64
	Unit    Unit
	ML      float64
	After   bool // goes in once the rest is mixed: topped, floated, rinsed or sprayed
	Heat    Heat // how warm the draft says that it is poured
	Match   Match
}

// Warmth returns how warm a pour is said to be: by the spec, or else cold by the
// name of the ingredient, as cold brew is.
func (p *Pour) Warmth() Heat {
	if p.Heat == "" && strings.HasPrefix(NormaliseName(p.Profile.Name), string(HeatCold)+" ") {
		return HeatCold
	}
	return p.Heat
}

// Called returns the name of the ingredient with how warm it is poured: "hot
// water". It reads back as both.
func (p *Pour) Called() string {
	name := p.Profile.Name
	if p.Heat == "" || strings.HasPrefix(NormaliseName(name), string(p.Heat)+" ") {
		return name
	}
	return string(p.Heat) + " " + name
}

// Spec is a drink as a bartender would write it down. Garnish, Glass, Rim and
// Steps are kept for whoever makes the drink; no number depends on them. What they bring to
// a guest is in Dressings.
type Spec struct {
	Name    string
	Method  Method
	Service Service
	Pours   []Pour
	HotC    float64 // °C at which a hot drink is served; zero: not stated
	Garnish string
	Glass   string
	Rim     string
	Steps   []string // further instructions, in order
	Notes   []string // what was assumed in reading it
	// Dressings are what garnish, rim, glass and steps name and what that carries. Dressed
	// says that they were looked up: until then a garnish may carry anything.
	Dressings []Dressing
	Dressed   bool
	LeftOff   []string // what is left off for the guest, see [Spec.Without]
	// Together says that the draft has everything mixed at once, what sparkles
	// too: "shake everything". Without it "shake" means all but the soda.
	Together bool
}

// Clone returns a copy whose pours can be changed without touching s.
func (s Spec) Clone() Spec {
	s.Pours = append([]Pour(nil), s.Pours...)
	s.Notes = append([]string(nil), s.Notes...)
	s.Steps = append([]string(nil), s.Steps...)
	s.Dressings = append([]Dressing(nil), s.Dressings...)
	s.LeftOff = append([]string(nil), s.LeftOff...)
	return s
}

// Has reports whether a pour of the drink is of some kind.
func (s Spec) Has(is func(*Profile) bool) bool {
	for i := range s.Pours {
		if is(s.Pours[i].Profile) {
			return true
		}
	}
	return false
}

// HasPart reports whether something in the drink plays a part.
func (s Spec) HasPart(part Part) bool {
	return s.Has(func(p *Profile) bool { return p.Class.Part() == part })
}

// HasKin reports whether the drink pours something of a kin.
func (s Spec) HasKin(k Kin) bool { return s.Has(func(p *Profile) bool { return p.Class.Kin() == k }) }

// HasClass reports whether the drink pours something of a class.
func (s Spec) HasClass(c Class) bool { return s.Has(func(p *Profile) bool { return p.Class == c }) }

// HasProfile reports whether the drink pours an ingredient, told by its id.
func (s *Spec) HasProfile(p *Profile) bool {
	for i := range s.Pours {
		if p.Is(s.Pours[i].Profile) {
			return true
		}
	}
	return false
}

// IndexOf returns the place of the first pour of an ingredient, told by its profile, -1 if there is
// none.
func (s *Spec) IndexOf(p *Profile) int {
	return slices.IndexFunc(s.Pours, func(o Pour) bool { return o.Profile == p })
}

// Largest returns the largest pour of an ingredient, the first of equals; nil if there is none.
func (s *Spec) Largest(p *Profile) *Pour {
	var out *Pour
	for i := range s.Pours {
		if o := &s.Pours[i]; o.Profile == p && (out == nil || o.ML > out.ML) {
			out = o
		}
	}
	return out
}

// MLOf returns the volume of the pours of some kind, in mL, before ice.
func (s *Spec) MLOf(is func(*Profile) bool) (ml float64) {
	for i := range s.Pours {
		if p := &s.Pours[i]; is(p.Profile) {
			ml += p.ML
		}
	}
	return ml
}

// VolumeML returns the volume of all pours, in mL, before ice.
func (s Spec) VolumeML() float64 {
	var v float64
	for _, p := range s.Pours {
		v += p.ML
	}
	return v
}
