package balance

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
)

// making is another way to make a drink; what is empty stays.
type making struct {
	method  flavor.Method
	service flavor.Service
	after   []*flavor.Profile // go in once the rest is mixed
	hot     []*flavor.Profile // are poured hot
	glass   string            // that it is poured into
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
	if m.glass != "" {
		s.Glass = m.glass
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

// byMethod changes how the drink is made, or leaves out what suffers.
func (f *fixing) byMethod() {
	for i := range f.faults {
		x := &f.faults[i]
		if x.Axis == ratio.Temperature && !x.High {
			f.tryMaking(i, heating(f.spec))
		}
		if x.Axis == ratio.Sour && x.missing && f.spec.Method == flavor.Shake { // or it was meant without, and clear
			f.tryStirring(i)
		}
		switch x.Method {
		case technique.EggUnshaken:
			f.tryMaking(i, shaking(f.spec, true))
			f.leaveOutPart(i, x.Profile.Class.Part())
		case technique.Uniced:
			if f.clear() {
				f.tryMaking(i, making{method: flavor.Stir, text: "stir it"})
				continue
			}
			f.tryMaking(i, shaking(f.spec, false))
		case technique.Unshaken:
			f.tryMaking(i, shaking(f.spec, false))
		case technique.Clouded:
			f.tryMaking(i, making{method: flavor.Stir, text: "stir it"})
		case technique.Flat:
			f.tryMaking(i, afterwards(f.spec))
		case technique.HotOnIce:
			f.tryMaking(i, builtHot(f.spec))
		case technique.FatSet:
			f.tryWithout(i, 1, func(p *flavor.Profile) bool { return p == x.Profile })
		case technique.Curdled:
			f.uncurdle(i, x)
		}
	}
}

// leaveOutPart leaves out every pour of a part.
func (f *fixing) leaveOutPart(asked int, part flavor.Part) {
	f.tryWithout(asked, mostSteps, func(p *flavor.Profile) bool { return p.Class.Part() == part })
}

// What decides which of two pours that do not go together is the odd one: what fewer of
// the drinks with the same rest have. The drink is one of milk from this share of it on,
// or where there is coffee, which takes milk and no citrus. Common practice, no source.
const milkyShare = 0.45

// uncurdle leaves out the milk or what turns it, first the odd one of the two unless
// only the other way mends the draft.
func (f *fixing) uncurdle(asked int, x *Fault) {
	dairy := func(p *flavor.Profile) bool { return p == x.Profile }
	acid := func(p *flavor.Profile) bool {
		return p == x.with || x.with.Class.Part() == flavor.PartSour && p.Class.Part() == flavor.PartSour
	}
	odd, other := dairy, acid
	if f.milky(dairy) {
		odd, other = acid, dairy
	}
	first, second := f.parted(asked, 1, odd), f.parted(asked, mostSteps, other)
	if first.score < weigh.NearFrom && second.score >= weigh.BalancedFrom {
		first.steps, second.steps = second.steps, first.steps
	}
	f.keep(first)
	if !first.balanced() {
		f.keep(second)
	}
}

// parted leaves out one of two pours that do not go together, and shakes the rest if only
// that mends it.
func (f *fixing) parted(asked, steps int, is func(*flavor.Profile) bool) candidate {
	c := candidate{changes: f.without(is), asked: asked, steps: steps, sure: true}
	if len(c.changes) == len(f.spec.Pours) {
		return candidate{}
	}
	c.score = f.scoreWith(c.changes)
	if c.balanced() {
		return c
	}
	shaken := c
	shaken.making = shaking(f.spec, false)
	if shaken.making.stays() {
		return c
	}
	spec := shaken.apply(f.spec)
	if shaken.score = f.scoreOf(&spec); shaken.balanced() {
		return shaken
	}
	return c
}

// milky reports whether a drink is one of milk rather than a sour with milk in it.
func (f *fixing) milky(dairy func(*flavor.Profile) bool) bool {
	ml := 0.0
	for i := range f.spec.Pours {
		p := &f.spec.Pours[i]
		if p.Profile.Class == flavor.ClassCoffee {
			return true
		}
		if dairy(p.Profile) {
			ml += p.ML
		}
	}
	return ml >= milkyShare*f.spec.VolumeML() || f.build.Milky()
}

// scoreWith is that of the draft with changes made, 0 if nothing is left to weigh.
func (f *fixing) scoreWith(changes []Change) float64 {
	spec := apply(f.spec, changes)
	return f.scoreOf(&spec)
}

// scoreOf is that of a spec, 0 if there is nothing in it to weigh.
func (f *fixing) scoreOf(s *flavor.Spec) float64 {
	score, err := f.judge.ScoreOnly(s)
	if err != nil {
		return 0
	}
	return score
}

// tryWithout keeps the draft without the pours of some ingredients.
func (f *fixing) tryWithout(asked, steps int, is func(*flavor.Profile) bool) {
	c := candidate{changes: f.without(is), asked: asked, steps: steps}
	if len(c.changes) == len(f.spec.Pours) || len(c.changes) == 0 {
		return
	}
	c.score, c.sure = f.scoreWith(c.changes), true
	f.keep(c)
}

// tryMaking keeps another way to make the drink.
func (f *fixing) tryMaking(asked int, m making) {
	if m.stays() {
		return
	}
	c := candidate{asked: asked, steps: 1, making: m}
	spec := c.apply(f.spec)
	if score, err := f.judge.ScoreOnly(&spec); err == nil {
		c.score, c.sure = score, true
		f.keep(c)
	}
}

// clear reports whether nothing in the draft wants shaking.
func (f *fixing) clear() bool {
	return !slices.ContainsFunc(f.spec.Pours, func(p flavor.Pour) bool { return technique.WantsShaking(p.Profile) })
}

// tryStirring keeps the draft stirred, after what puts back the juice for which it is shaken,
// if nothing in it wants shaking.
func (f *fixing) tryStirring(asked int) {
	if !f.clear() {
		return
	}
	c := candidate{asked: asked, steps: mostSteps, making: making{method: flavor.Stir, text: "stir it, if no juice is meant to be in it"}, sure: true}
	spec := c.apply(f.spec)
	if c.score = f.scoreOf(&spec); c.balanced() {
		f.keep(c)
	}
}

// heating pours hot what is said to be cold in a hot drink.
func heating(s *flavor.Spec) making {
	var m making
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Warmth() == flavor.HeatCold && !slices.Contains(m.hot, p.Profile) {
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
		if s.Method == flavor.Blend {
			m.text = "blend the rest, and add the " + namesOf(m.after) + " after"
		}
	}
	return m
}

// builtHot builds a drink hot. What wants shaking is shaken without what is hot,
// which goes in afterwards.
func builtHot(s *flavor.Spec) making {
	if s.Method != flavor.Stir && slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.Class == flavor.ClassEgg }) {
		var hot []*flavor.Profile
		for i := range s.Pours {
			if p := &s.Pours[i]; mix.Heats(s, p) && !slices.Contains(hot, p.Profile) {
				hot = append(hot, p.Profile)
			}
		}
		return making{service: flavor.Hot, after: hot, text: "shake the rest, and add the hot " + namesOf(hot) + " after, in the mug"}
	}
	if s.Method == flavor.Stir {
		return making{method: flavor.Build, service: flavor.Hot, text: "build it hot, without ice"}
	}
	return making{method: flavor.Build, service: flavor.Hot, text: "build it hot, without shaking"}
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

// largerGlass pours the drink into the smallest larger glass that holds it.
func (f *fixing) largerGlass(asked int) {
	room := f.faults[asked].room
	named, ok := mix.GlassNamed(f.spec.Glass)
	if room <= 0 || !ok {
		return
	}
	standing := mix.Standing(f.spec)
	ml := named.RoomML(standing) / room
	if standing == flavor.Up {
		f.pourInto(asked, stemmed, standing, "", ml)
		if slices.ContainsFunc(f.spec.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated }) {
			f.pourInto(asked, tumblers, flavor.Long, flavor.Long, ml)
		}
		return
	}
	f.pourInto(asked, tumblers, standing, "", ml)
}

// pourInto pours the drink into the first of some glasses that holds so many mL as it
// stands, served otherwise if a service is given, if that mends it: else it is the drink
// that is too large.
func (f *fixing) pourInto(asked int, glasses []string, standing, service flavor.Service, ml float64) {
	for _, name := range glasses {
		if g, _ := mix.GlassNamed(name); g.RoomML(standing) >= ml {
			m := making{glass: name, service: service, text: "pour it into a " + name}
			if service != "" {
				m.text += ", over ice"
			}
			if spec := (&candidate{making: m}).apply(f.spec); f.scoreOf(&spec) >= roomy {
				f.tryMaking(asked, m)
			}
			return
		}
	}
}

// The glasses that every bar has, the smallest first; common practice.
var (
	stemmed  = []string{"wine glass", "balloon glass"}
	tumblers = []string{"rocks glass", "highball glass", "collins glass", "pint glass"}
)
