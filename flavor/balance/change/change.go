package change

import (
	"cmp"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// Change is one pour moved, added or left out.
type Change struct {
	Pour     int // index in the spec; len(spec.Pours) for a pour that is added
	Profile  *flavor.Profile
	Unit     flavor.Unit
	FromUnit flavor.Unit // of From, if it is another; empty if it is the same
	From, To float64     // in the units; From is 0 for a pour that is added, To for one left out
	FromML   float64
	ToML     float64
	Heat     flavor.Heat // how warm the draft pours it; empty if it does not say
}

// Called returns the name of the ingredient with how warm it is poured.
func (c *Change) Called() string {
	return (&flavor.Pour{Profile: c.Profile, Heat: c.Heat}).Called()
}

// Before says the amount that there was, empty for a pour that is added.
func (c *Change) Before() string {
	if c.FromML <= 0 {
		return ""
	}
	return measure.FormatAmount(c.From, cmp.Or(c.FromUnit, c.Unit))
}

// To is a pour taken to another amount.
func To(p *flavor.Pour, at int, u flavor.Unit, amount, ml float64) Change {
	c := Change{Pour: at, Profile: p.Profile, Unit: u, From: p.Amount, To: amount, FromML: p.ML, ToML: ml, Heat: p.Heat}
	if u != p.Unit {
		c.FromUnit = p.Unit
	}
	return c
}

// Apply returns the spec with changes made.
func Apply(s *flavor.Spec, changes []Change) flavor.Spec {
	out := s.Clone()
	for _, c := range changes {
		if c.Pour == len(out.Pours) {
			out.Pours = append(out.Pours, flavor.Pour{Profile: c.Profile,
				Match: flavor.Match{Asked: c.Profile.Name, How: flavor.MatchExact}})
		}
		p := &out.Pours[c.Pour]
		p.Amount, p.Unit, p.ML = c.To, c.Unit, c.ToML
	}
	out.Pours = slices.DeleteFunc(out.Pours, func(p flavor.Pour) bool { return p.ML == 0 })
	return out
}

// Without leaves every pour of some ingredients out of a spec.
func Without(s *flavor.Spec, is func(*flavor.Profile) bool) []Change {
	var out []Change
	for i := range s.Pours {
		if o := &s.Pours[i]; is(o.Profile) {
			out = append(out, Change{Pour: i, Profile: o.Profile, Unit: o.Unit, From: o.Amount, FromML: o.ML})
		}
	}
	return out
}
