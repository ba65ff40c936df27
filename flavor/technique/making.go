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
	Text    string            // says so to a bartender; empty if nothing is made differently
}

// Stays reports whether nothing is made differently.
func (m *Making) Stays() bool { return m.Text == "" }

// Same reports whether two ways are one.
func (m *Making) Same(o *Making) bool { return m.Text == o.Text }

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

// Words say what is done, as parts of a sentence.
func (m *Making) Words() []string {
	if m.Stays() {
		return nil
	}
	return []string{m.Text}
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
		m.Text = "use hot " + namesOf(m.Hot)
	}
	return m
}

// Afterwards adds what sparkles once the rest is shaken.
func Afterwards(s *flavor.Spec) Making {
	var m Making
	if m.After = sparkling(s); len(m.After) > 0 {
		m.Text = "add the " + namesOf(m.After) + " after the shake"
		if s.Method == flavor.Blend {
			m.Text = "blend the rest, and add the " + namesOf(m.After) + " after"
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
		return Making{Service: flavor.Hot, After: hot, Text: "shake the rest, and add the hot " + namesOf(hot) + " after, in the mug"}
	}
	if s.Method == flavor.Stir {
		return Making{Method: flavor.Build, Service: flavor.Hot, Text: "build it hot, without ice"}
	}
	return Making{Method: flavor.Build, Service: flavor.Hot, Text: "build it hot, without shaking"}
}

// Shaking shakes a drink, all but what sparkles. A hot drink is never shaken: a
// closed tin of it bursts.
func Shaking(s *flavor.Spec, egg bool) Making {
	if HotInside(s) {
		return Making{}
	}
	m := Making{Method: flavor.Shake, Text: "shake it", After: sparkling(s)}
	if egg {
		m.Method, m.Text = flavor.DryShake, "shake it, first without ice, then with ice"
	}
	if s.Service == flavor.Neat {
		m.Service = flavor.Up
	}
	if len(m.After) > 0 {
		m.Text += ", and add the " + namesOf(m.After) + " after the shake"
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

// namesOf joins names: "soda water and ginger beer".
func namesOf(of []*flavor.Profile) string {
	names := make([]string, len(of))
	for i, p := range of {
		names[i] = p.Name
	}
	return flavor.JoinAnd(names)
}
