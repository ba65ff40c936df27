package idea

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/sense"
)

// Lost reports whether something that led is gone.
func (x *Idea) Lost() bool { return len(x.Gone) > 0 }

// lacks reports whether what goes by a name led, and is gone.
func (x *Idea) lacks(name string) bool {
	return slices.ContainsFunc(x.Gone, func(l sense.Lost) bool { return l.Material == name })
}

// leadsGone returns what led the missing ingredients and is not in the glass any
// more, each once. What no odorant tells is there as long as a part smells of it.
// A lead is gone too, though its odorants are there, where no part smells like what
// went: cream shares odorants with coconut, and raspberry with violet.
func (t *Task) leadsGone(x *search.Filling, glass *sense.Percept) []sense.Lost {
	var out []sense.Lost
	add := func(l sense.Lost) {
		if told := slices.ContainsFunc(out, func(o sense.Lost) bool { return o.Material == l.Material }); !told && !(t.Gap.Less && l.Material == sense.Ethanol.Lead()) {
			out = append(out, l)
		}
	}
	for m := range t.Gap.Gone {
		p := t.Gap.Gone[m].Profile
		if !t.Gap.Gone[m].Missing {
			continue
		}
		least := t.LeastApart(x, m)
		lost := t.Space.Lost(p, t.Glass, glass)
		for _, l := range lost {
			if len(l.Odorants) > 0 || least > role.AlikeTo {
				add(l)
			}
		}
		if leads := t.Space.Leads(p); t.Gap.Gone[m].Told && !t.Resembles(x, m) && len(leads) > 0 && !Pours(glass, leads[0].Name) {
			add(sense.Lost{Material: leads[0].Name})
		}
	}
	return out
}

// Pours reports whether a glass holds a material.
func Pours(glass *sense.Percept, material string) bool {
	return slices.ContainsFunc(glass.Materials, func(m flavor.MaterialShare) bool { return m.Material == material })
}

// missed is how much of [asked.Weights] a cover that has lost what led must earn: a quarter more
// if none of it is left, and nothing if the trade pours it, knowing that. Where several things
// are out, something is left of the drink that keeps one of them. Of several bottles that the
// trade pours together one must be like what went, unless they are its first choice.
func (t *Task) missed(x *Idea) float64 {
	const ofSeveral = 1.0 / 3
	switch {
	case !x.Lost():
		return 0
	case t.Practice.FirstChoice(x.Filling.Parts), t.Customary(&x.Filling) && (!t.Blends(&x.Filling) || t.LeastApart(&x.Filling, 0) <= role.AlikeTo):
		if len(t.Gap.Gone) > 1 {
			return ofSeveral
		}
		return 0
	case t.Gap.Any(func(p *flavor.Profile) bool { return t.Unled(x, p) }):
		return 1.25
	}
	return 1
}

// Unled reports whether all that led the smell of something is gone.
func (t *Task) Unled(x *Idea, p *flavor.Profile) bool {
	leads := t.Space.Leads(p)
	return len(leads) > 0 && !slices.ContainsFunc(leads, func(l sense.Lead) bool { return !x.lacks(l.Name) })
}

// KeepsNothing reports whether a cover has lost all that led one of the things out: what it
// was poured for to taste or to feel, and what it smelt of.
func (t *Task) KeepsNothing(x *Idea) bool {
	return t.Gap.Any(func(p *flavor.Profile) bool {
		lead, tastes := t.Space.LeadSense(p)
		return tastes && x.lacks(lead.Lead()) && t.Unled(x, p)
	})
}
