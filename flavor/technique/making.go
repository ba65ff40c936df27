package technique

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Making is another way to make a drink; what is empty stays.
type Making struct {
	Method  flavor.Method
	Service flavor.Service
	After   []*flavor.Profile // go in once the rest is mixed
	Hot     []*flavor.Profile // are poured hot
	Glass   string            // that it is poured into
	Do      Action
}

// Action is what is done differently.
type Action int

// The actions.
const (
	Stay             Action = iota // nothing
	UseHot                         // pour hot what is to be
	AddAfterShake                  // what goes in afterwards
	AddAfterBlend                  // the same
	AddHotAfterShake               // the same, what is hot
	BuildInPlaceOfStir
	BuildInPlaceOfShake
	ShakeIt
	ShakeTwice // first without ice
	StirIt
	StirWithoutJuice // if none is meant to be in it
	PourInto         // a glass
)

// Stays reports whether nothing is made differently.
func (m *Making) Stays() bool { return m.Do == Stay }

// Same reports whether two ways are one.
func (m *Making) Same(o *Making) bool {
	return m.Do == o.Do && m.Service == o.Service && m.Glass == o.Glass && slices.Equal(m.After, o.After) && slices.Equal(m.Hot, o.Hot)
}

// Apply makes a spec so.
func (m *Making) Apply(s *flavor.Spec) {
	if m.Method != "" {
		s.Method = m.Method
	}
	if m.Service != "" {
		s.Service = m.Service
	}
	if m.Glass != "" {
		s.Glass = m.Glass
	}
	for i := range s.Pours {
		p := &s.Pours[i]
		p.After = p.After || slices.Contains(m.After, p.Profile)
		if slices.Contains(m.Hot, p.Profile) {
			p.Heat = flavor.HeatHot
		}
	}
}

// Heating pours hot what is said to be cold in a hot drink.
func Heating(s *flavor.Spec) Making {
	var m Making
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Warmth() == flavor.HeatCold && !slices.Contains(m.Hot, p.Profile) {
			m.Hot = append(m.Hot, p.Profile)
		}
	}
	if len(m.Hot) > 0 {
		m.Do = UseHot
	}
	return m
}

// Afterwards adds what sparkles once the rest is shaken.
func Afterwards(s *flavor.Spec) Making {
	var m Making
	if m.After = sparkling(s); len(m.After) > 0 {
		m.Do = AddAfterShake
		if s.Method == flavor.Blend {
			m.Do = AddAfterBlend
		}
	}
	return m
}

// BuiltHot builds a drink hot. What wants shaking is shaken without what is hot,
// which goes in afterwards.
func BuiltHot(s *flavor.Spec) Making {
	if s.Method != flavor.Stir && s.HasClass(flavor.ClassEgg) {
		var hot []*flavor.Profile
		for i := range s.Pours {
			if p := &s.Pours[i]; mix.Heats(s, p) && !slices.Contains(hot, p.Profile) {
				hot = append(hot, p.Profile)
			}
		}
		return Making{Service: flavor.Hot, After: hot, Do: AddHotAfterShake}
	}
	if s.Method == flavor.Stir {
		return Making{Method: flavor.Build, Service: flavor.Hot, Do: BuildInPlaceOfStir}
	}
	return Making{Method: flavor.Build, Service: flavor.Hot, Do: BuildInPlaceOfShake}
}

// Shaking shakes a drink, all but what sparkles. A hot drink is never shaken: a
// closed tin of it bursts.
func Shaking(s *flavor.Spec, egg bool) Making {
	if HotInside(s) {
		return Making{}
	}
	m := Making{Method: flavor.Shake, Do: ShakeIt, After: sparkling(s)}
	if egg {
		m.Method, m.Do = flavor.DryShake, ShakeTwice
	}
	if s.Service == flavor.Neat {
		m.Service = flavor.Up
	}
	return m
}

// HotInside reports whether a drink is hot, or holds something that is poured hot.
func HotInside(s *flavor.Spec) bool {
	return s.Service == flavor.Hot || slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Warmth() == flavor.HeatHot })
}

// sparkling lists what sparkles and does not go in afterwards yet.
func sparkling(s *flavor.Spec) []*flavor.Profile {
	var out []*flavor.Profile
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Profile.Carbonated && !p.After && !p.Unit.After() && !slices.Contains(out, p.Profile) {
			out = append(out, p.Profile)
		}
	}
	return out
}
