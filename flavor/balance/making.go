package balance

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// making is another way to make a drink; what is empty stays.
type making struct {
	method  flavor.Method
	service flavor.Service
	after   []*flavor.Profile // go in once the rest is mixed
	hot     []*flavor.Profile // are poured hot
	text    string
}

// stays reports whether nothing is made differently.
func (m *making) stays() bool { return m.text == "" }

func (m *making) same(o *making) bool { return m.text == o.text }

// apply makes a spec so.
func (m *making) apply(s *flavor.Spec) {
	if m.method != "" {
		s.Method = m.method
	}
	if m.service != "" {
		s.Service = m.service
	}
	for i := range s.Pours {
		p := &s.Pours[i]
		p.After = p.After || slices.Contains(m.after, p.Profile)
		if slices.Contains(m.hot, p.Profile) {
			p.Heat = flavor.HeatHot
		}
	}
}

// words say what is done, as parts of a sentence.
func (m *making) words() []string {
	if m.stays() {
		return nil
	}
	return []string{m.text}
}

// byMethod changes how the drink is made.
func (f *fixing) byMethod() {
	for i := range f.faults {
		x := &f.faults[i]
		switch {
		case x.Axis == template.Temperature && !x.High:
			f.tryMaking(i, heating(f.spec))
		case x.Method == template.Curdled && !x.shake:
			f.leaveOut(x.Profile, i)
		case x.Method == template.Flat:
			f.tryMaking(i, afterwards(f.spec))
		case x.Method != "":
			f.tryMaking(i, shaking(f.spec, x.Method == template.EggUnshaken))
		}
	}
}

// tryMaking keeps another way to make the drink.
func (f *fixing) tryMaking(asked int, m making) {
	if m.stays() {
		return
	}
	c := candidate{asked: asked, steps: 1, making: m}
	spec := c.apply(f.spec)
	if score, err := f.judge.ScoreOnly(&spec); err == nil {
		c.score = score
		f.keep(c)
	}
}

// heating pours hot what is said to be cold in a hot drink.
func heating(s *flavor.Spec) making {
	var m making
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Heat == flavor.HeatCold && !slices.Contains(m.hot, p.Profile) {
			m.hot = append(m.hot, p.Profile)
		}
	}
	if len(m.hot) > 0 {
		m.text = "use hot " + namesOf(m.hot)
	}
	return m
}

// afterwards adds what sparkles once the rest is shaken.
func afterwards(s *flavor.Spec) making {
	var m making
	if m.after = sparkling(s); len(m.after) > 0 {
		m.text = "add the " + namesOf(m.after) + " after the shake"
	}
	return m
}

// shaking shakes a drink, all but what sparkles. A hot drink is never shaken: a
// closed tin of it bursts.
func shaking(s *flavor.Spec, egg bool) making {
	if hotInside(s) {
		return making{}
	}
	m := making{method: flavor.Shake, text: "shake it", after: sparkling(s)}
	if egg {
		m.method, m.text = flavor.DryShake, "shake it, first without ice, then with ice"
	}
	if s.Service == flavor.Neat {
		m.service = flavor.Up
	}
	if len(m.after) > 0 {
		m.text += ", and add the " + namesOf(m.after) + " after the shake"
	}
	return m
}

// hotInside reports whether a drink is hot, or holds something that is poured hot.
func hotInside(s *flavor.Spec) bool {
	return s.Service == flavor.Hot || slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Heat == flavor.HeatHot })
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
	return strings.Join(names, " and ")
}
