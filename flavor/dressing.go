package flavor

import (
	"slices"
	"strings"
)

// Spot is where a thing dresses a drink.
type Spot string

// A thing is laid on the drink, stuck to the rim of its glass, or named by a step, its glass
// or the like.
const (
	OnDrink Spot = "garnish"
	OnRim   Spot = "rim"
	InStep  Spot = "step"
)

// Dressing is one thing that is served with a drink and is none of its pours. Its profile
// tells of allergens, animals and alcohol as that of a pour does, under a name and an id that
// say where it is and how it was written: "garnish: toasted hazelnuts".
type Dressing struct {
	Spot    Spot
	Said    string     // its words as written
	Step    int        // the index of its step, for what a step says
	Laid    bool       // it can be left off, and the drink is the same
	Profile *Profile   // never nil
	Records []*Profile // of the ingredients that its words name
}

// undressed is what stands for words of a garnish, a rim or a step that nobody has looked up:
// they may bring anything.
var undressed = &Profile{ID: "garnish", Name: "garnish", Unread: true}

// Undressed is the profile of what dresses a drink and was never looked up.
func Undressed() *Profile { return undressed }

// Held lists what a guest takes in with the drink: its pours, in order, then what is laid on
// it. A drink whose garnish or rim was never looked up holds [Undressed]; what a bar put into a bottle of its own
// may carry anything where nobody has stated it.
func (s *Spec) Held() []*Profile {
	out := make([]*Profile, 0, len(s.Pours)+len(s.Dressings))
	for i := range s.Pours {
		out = append(out, s.Pours[i].Profile)
		if w := s.Pours[i].Match.Steeped; w != "" {
			name := w + " in " + s.Pours[i].Profile.Name
			out = append(out, &Profile{ID: name, Name: name, Unread: true})
		}
	}
	for i := range s.Dressings {
		out = append(out, s.Dressings[i].Profile)
	}
	if len(s.Dressings) == 0 && (s.Garnish != "" || s.Rim != "") && !s.Dressed {
		out = append(out, undressed)
	}
	return out
}

// Without returns the drink without what is laid on it of which may is false, and says in
// LeftOff what that is. What cannot be left off stays.
func (s *Spec) Without(may func(*Profile) bool) *Spec {
	off := func(d *Dressing) bool { return d.Laid && !may(d.Profile) }
	if !slices.ContainsFunc(s.Dressings, func(d Dressing) bool { return off(&d) }) {
		return s
	}
	out := s.Clone()
	var garnish, rim []string
	steps := map[int]bool{}
	out.Dressings = nil
	for i := range s.Dressings {
		d := &s.Dressings[i]
		switch {
		case off(d):
			out.LeftOff = append(out.LeftOff, d.words())
			steps[d.Step] = steps[d.Step] || d.Spot == InStep
			continue
		case d.Spot == OnDrink:
			garnish = append(garnish, d.Said)
		case d.Spot == OnRim:
			rim = append(rim, d.Said)
		}
		out.Dressings = append(out.Dressings, *d)
	}
	out.Garnish, out.Rim, out.Steps = strings.Join(garnish, ", "), strings.Join(rim, ", "), nil
	for i, step := range s.Steps {
		if !steps[i] {
			out.Steps = append(out.Steps, step)
		}
	}
	return &out
}

// words are the thing as it was written, and where it lies.
func (d *Dressing) words() string {
	where := d.Spot
	if where == InStep {
		where = OnDrink
	}
	return "“" + d.Said + "” (" + string(where) + ")"
}

// LeaveOff says what is left off a drink for the guest, in words that begin a line or go on
// from one; empty if nothing is.
func (s *Spec) LeaveOff() string {
	if len(s.LeftOff) == 0 {
		return ""
	}
	return "leave off " + JoinAnd(s.LeftOff)
}
