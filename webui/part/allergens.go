package part

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/webui/words"
)

// LabelPath is the address at which what a bottle's label says of allergens is stated.
const LabelPath = "/stock/label"

// Allergens is the allergens of a drink, by certainty.
type Allergens struct {
	Contains []Allergen
	May      []Allergen
	Unstated []string // names of pours with unstated allergens

	unclear []string // those of them that may contain what the guest avoids
}

// Allergen is one allergen and the pours that contain it.
type Allergen struct {
	Allergen flavor.Allergen
	From     []string
	Avoided  bool // the guest avoids it
}

// Line returns the allergen with its pours.
func (a Allergen) Line() string { return string(a.Allergen) + " (" + words.List(a.From) + ")" }

// InLine returns all allergens in a line, without their pours.
func (v Allergens) InLine() string {
	var parts []string
	say := func(word string, list []Allergen) {
		var names []string
		for _, a := range list {
			names = append(names, string(a.Allergen))
		}
		if len(names) > 0 {
			parts = append(parts, word+" "+words.List(names))
		}
	}
	say("contains", v.Contains)
	say("may contain", v.May)
	if len(v.Unstated) > 0 {
		parts = append(parts, "anything may be in the "+words.List(v.Unstated))
	}
	if len(parts) == 0 {
		return "No allergen is recorded; read the labels."
	}
	return words.Sentence(strings.Join(parts, "; "))
}

// None reports whether no allergen is recorded or unstated.
func (v Allergens) None() bool { return len(v.Contains)+len(v.May)+len(v.Unstated) == 0 }

// AllergensOf collects the allergens of a drink, in the order of the law. A pour with
// unstated allergens may contain any, and is listed separately.
func AllergensOf(s *flavor.Spec, avoid []flavor.Allergen) Allergens {
	var v Allergens
	for i := range s.Pours {
		if p := s.Pours[i].Profile; !p.AllergensKnown && !slices.Contains(v.Unstated, p.Name) {
			v.Unstated = append(v.Unstated, p.Name)
			if slices.ContainsFunc(avoid, func(a flavor.Allergen) bool { c, _ := p.Allergen(a); return c == flavor.Unstated }) {
				v.unclear = append(v.unclear, p.Name)
			}
		}
	}
	for _, a := range flavor.Allergens() {
		contains := Allergen{Allergen: a, Avoided: slices.Contains(avoid, a)}
		may := contains
		for i := range s.Pours {
			for _, m := range s.Pours[i].Profile.AllergenMarks {
				if m.Allergen != a {
					continue
				}
				to := &contains
				if m.Certainty != flavor.Contains {
					to = &may
				}
				if name := s.Pours[i].Profile.Name; !slices.Contains(to.From, name) {
					to.From = append(to.From, name)
				}
			}
		}
		if len(contains.From) > 0 {
			v.Contains = append(v.Contains, contains)
		}
		if len(may.From) > 0 {
			v.May = append(v.May, may)
		}
	}
	return v
}

// Clashes lists what of the drink the guest must not be served, one line each. A pour
// with unstated allergens clashes with every allergen except those that it is stated to
// be free of.
func (v *Allergens) Clashes() []string {
	var out []string
	add := func(word string, list []Allergen) {
		for _, a := range list {
			if a.Avoided {
				out = append(out, word+" "+a.Line())
			}
		}
	}
	add("contains", v.Contains)
	add("may contain", v.May)
	if len(v.unclear) > 0 {
		out = append(out, "nobody has stated the allergens of "+words.List(v.unclear))
	}
	return out
}

// MarksLine returns the allergens of an ingredient in a line; "" if none is recorded.
func MarksLine(p *flavor.Profile) string {
	var sure, may, parts []string
	for _, m := range p.AllergenMarks {
		if m.Certainty == flavor.Contains {
			sure = append(sure, string(m.Allergen))
		} else {
			may = append(may, string(m.Allergen))
		}
	}
	if len(sure) > 0 {
		parts = append(parts, "contains "+words.List(sure))
	}
	if len(may) > 0 {
		parts = append(parts, "may contain "+words.List(may))
	}
	if !p.AllergensKnown {
		parts = append(parts, "allergens not stated")
	}
	return strings.Join(parts, "; ")
}
