package station

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/aim"
)

// What a riff changes that no wish asks for. Who says what to change wants the smallest step
// that does it: the same glass, the same spirit, nothing beside, and nothing that a guest may
// not have who could have the drink. Common practice, no source.

// serves reports whether what came in does what is wished: it meets a wish for more or less,
// is named by one, or steps in for what is not there. Without wishes all that comes in does.
func (j *Job) serves(p *flavor.Profile) bool {
	if j.stepsIn(p) || j.Limits.Wants(p) {
		return true
	}
	if len(j.Limits.Aims) == 0 {
		return !j.Limits.Wished()
	}
	return j.Serves(p)
}

// idle counts what comes in and serves no wish, what stands in for a pour that is not
// there aside.
func (j *Job) idle(s *flavor.Spec) (n int) {
	for i := range s.Pours {
		if p := s.Pours[i].Profile; !j.From.HasProfile(p) && !j.wished.Spec.HasProfile(p) && !j.serves(p) && !holdsCream(s, p) {
			n++
		}
	}
	return n
}

// holdsCream reports whether an ingredient is the white of an egg that keeps the cream of a sour
// drink from curdling.
func holdsCream(s *flavor.Spec, p *flavor.Profile) bool {
	return p.Whitens() && s.HasPart(flavor.PartSour) && s.Has(func(x *flavor.Profile) bool { return x.Class.Curdles() })
}

// strays reports whether a drink pours a spirit of another class than the drink asked about
// does, where wishes say what to change and that spirit serves none: who wants it drier or stronger
// wants no other drink.
func (j *Job) strays(s *flavor.Spec) bool {
	if !j.Limits.Wished() || j.Limits.Lighter() {
		return false
	}
	return slices.ContainsFunc(s.Pours, func(x flavor.Pour) bool {
		p := x.Profile
		return p.Base() && !j.From.HasClass(p.Class) && !(j.serves(p) && !j.onlyStronger(p))
	})
}

// onlyStronger reports whether strength is the one wish that a spirit serves: that is met by more
// of the spirit in the drink, or by one of its class that is bottled stronger.
func (j *Job) onlyStronger(p *flavor.Profile) bool {
	if !j.Limits.Stronger() || j.stepsIn(p) || j.Limits.Wants(p) {
		return false
	}
	return !slices.ContainsFunc(j.Limits.Aims, func(a aim.Aim) bool { return !a.OfStrength() && a.Serves(j.Station.Space, p) })
}

// sheds reports whether a drink lacks a pour of the drink asked about that is at hand and that a
// bartender meets a wish for more with, and pours nothing in its part that meets it as well.
func (j *Job) sheds(s *flavor.Spec) bool {
	return slices.ContainsFunc(j.From.Pours, func(was flavor.Pour) bool {
		if _, there := j.Has(was.Profile); !there || s.HasProfile(was.Profile) {
			return false
		}
		return slices.ContainsFunc(j.Limits.Aims, func(a aim.Aim) bool {
			instead := func(p *flavor.Profile) bool { return p.Class.Part() == was.Profile.Class.Part() && a.Carries(p) }
			return a.CarriesFirst(was.Profile) && !s.Has(instead)
		})
	})
}

// swerves reports whether a drink is mixed or served otherwise than the drink asked about,
// though neither a wish nor what is poured now asks for it.
func (j *Job) swerves(s *flavor.Spec) bool {
	from := j.wished.Spec
	if !j.Limits.Wished() || s.Method == from.Method && s.Service == from.Service || j.Limits.Regauged() {
		return false
	}
	if s.Method == flavor.DryShake && j.foamCame(s) && s.Service == from.Service {
		return false
	}
	same := *s
	same.Method, same.Service = from.Method, from.Service
	return j.Served(&same)
}

// burdens counts the allergens that what came in carries for certain and the drink asked about
// does not, where wishes say what to change and none names what carries them.
func (j *Job) burdens(s *flavor.Spec) (n int) {
	if !j.Limits.Wished() {
		return 0
	}
	for i := range s.Pours {
		p := s.Pours[i].Profile
		if j.From.HasProfile(p) || j.Limits.Wants(p) || j.stepsIn(p) {
			continue
		}
		for _, m := range p.AllergenMarks {
			if m.Certainty == flavor.Contains && !carriesFor(j.From, m.Allergen) {
				n++
			}
		}
	}
	return n
}

// carriesFor reports whether a pour of a drink may carry an allergen.
func carriesFor(s *flavor.Spec, a flavor.Allergen) bool {
	return slices.ContainsFunc(s.Pours, func(x flavor.Pour) bool {
		_, may := x.Profile.Allergen(a)
		return may
	})
}
