package part

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// LabelPath is the address at which what a bottle's label says of allergens is stated.
const LabelPath = "/stock/label"

// Allergens is the allergens of a drink, by certainty.
type Allergens struct {
	Contains []Allergen
	May      []Allergen
	Unstated []Unstated // what nobody has stated, in the order of the pours
}

// Unstated is allergens that nobody has stated, and the pours that may carry them.
type Unstated struct {
	What    string // the allergens in words
	From    []string
	Avoided bool // one of them is what the guest avoids

	avoided []string // those that the guest avoids
}

// Line returns the allergens with their pours.
func (u Unstated) Line() string {
	return say.It("part.with-its-pours", "What", u.What, "From", words.List(u.From))
}

// Allergen is one allergen and the pours that contain it.
type Allergen struct {
	Allergen flavor.Allergen
	From     []string
	Avoided  bool // the guest avoids it
}

// Line returns the allergen with its pours.
func (a Allergen) Line() string {
	return say.It("part.with-its-pours", "What", a.Allergen, "From", words.List(a.From))
}

// InLine returns all allergens in a line, without their pours.
func (v Allergens) InLine() string {
	var parts []string
	if len(v.Contains) > 0 {
		parts = append(parts, say.It("part.contains", "What", v.ContainsWords()))
	}
	if may := v.MayWords(); may != "" {
		parts = append(parts, say.It("part.may-contain", "What", may))
	}
	for _, u := range v.Unstated {
		parts = append(parts, say.It("part.not-stated", "What", u.Line()))
	}
	if len(parts) == 0 {
		return say.It("part.no-allergen-recorded")
	}
	return words.Sentence(strings.Join(parts, "; "))
}

// ContainsWords lists the allergens that it contains, without their pours.
func (v Allergens) ContainsWords() string { return namesOf(v.Contains) }

// MayWords lists the allergens that it may contain, without their pours and without those
// that it contains.
func (v Allergens) MayWords() string {
	return namesOf(slices.DeleteFunc(slices.Clone(v.May), func(m Allergen) bool {
		return slices.ContainsFunc(v.Contains, func(c Allergen) bool { return c.Allergen == m.Allergen })
	}))
}

// namesOf lists allergens.
func namesOf(list []Allergen) string {
	var names []string
	for _, a := range list {
		names = append(names, string(a.Allergen))
	}
	return words.List(names)
}

// None reports whether no allergen is recorded or unstated.
func (v Allergens) None() bool { return len(v.Contains)+len(v.May)+len(v.Unstated) == 0 }

// AllergensOf collects the allergens of a drink, in the order of the law. What nobody has
// stated of a pour is listed separately.
func AllergensOf(s *flavor.Spec, avoid []flavor.Allergen) Allergens {
	var v Allergens
	held := s.Held()
	for i, p := range held {
		if !slices.Contains(held[:i], p) {
			v.leaveOpen(p, avoid)
		}
	}
	for _, a := range flavor.Allergens() {
		contains := Allergen{Allergen: a, Avoided: slices.Contains(avoid, a)}
		may := contains
		for _, p := range held {
			for _, m := range p.AllergenMarks {
				if m.Allergen != a {
					continue
				}
				to := &contains
				if m.Certainty != flavor.Contains {
					to = &may
				}
				if name := p.Name; !slices.Contains(to.From, name) {
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

// AddBeyond adds what an ingredient carries beside what its parts are listed for: what steeps in a syrup
// may bring more than its own name says.
func (v *Allergens) AddBeyond(whole *flavor.Profile) {
	for _, m := range whole.AllergenMarks {
		to := &v.Contains
		if m.Certainty != flavor.Contains {
			to = &v.May
		}
		is := func(a Allergen) bool { return a.Allergen == m.Allergen }
		if !slices.ContainsFunc(v.Contains, is) && !slices.ContainsFunc(*to, is) {
			*to = append(*to, Allergen{Allergen: m.Allergen, From: []string{whole.Name}})
		}
	}
}

// leaveOpen adds what nobody has stated of a pour to that of others of which the same is
// open.
func (v *Allergens) leaveOpen(p *flavor.Profile, avoid []flavor.Allergen) {
	open := p.Open()
	if len(open) == 0 {
		return
	}
	what := openWords(p)
	at := slices.IndexFunc(v.Unstated, func(u Unstated) bool { return u.What == what })
	if at < 0 {
		at = len(v.Unstated)
		v.Unstated = append(v.Unstated, Unstated{What: what})
	}
	u := &v.Unstated[at]
	u.From = append(u.From, p.Name)
	for _, a := range avoid {
		if slices.Contains(open, a) && !slices.Contains(u.avoided, string(a)) {
			u.Avoided, u.avoided = true, append(u.avoided, string(a))
		}
	}
}

// openWords says which allergens of an ingredient nobody has stated; "" if none.
func openWords(p *flavor.Profile) string {
	var onRecord []flavor.Allergen
	for _, m := range p.AllergenMarks {
		onRecord = append(onRecord, m.Allergen)
	}
	return flavor.OpenWords(p.Open(), onRecord)
}

// Clashes lists what of the drink the guest must not be served, one line each. What
// nobody has stated of a pour clashes.
func (v *Allergens) Clashes() []string {
	var out []string
	for _, a := range v.Contains {
		if a.Avoided {
			out = append(out, say.It("part.contains", "What", a.Line()))
		}
	}
	for _, a := range v.May {
		if a.Avoided {
			out = append(out, say.It("part.may-contain", "What", a.Line()))
		}
	}
	for _, u := range v.Unstated {
		if u.Avoided {
			out = append(out, say.It("part.may-carry", "What", flavor.JoinOr(u.avoided), "From", words.List(u.From)))
		}
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
		parts = append(parts, say.It("part.contains", "What", words.List(sure)))
	}
	if len(may) > 0 {
		parts = append(parts, say.It("part.may-contain", "What", words.List(may)))
	}
	if open := openWords(p); open != "" {
		parts = append(parts, say.It("part.not-stated", "What", open))
	}
	return strings.Join(parts, "; ")
}
