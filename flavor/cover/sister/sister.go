// Package sister finds the proven drinks that a drink becomes when one of its pours is another
// bottle: what the trade has a name for is what a guest can be told.
package sister

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
)

// Book is the proven drinks. Its zero value, and nil, knows none. It is read-only and safe for
// concurrent use.
type Book struct {
	drinks  []proven
	customs *flavor.Customs
}

// Drink is a proven drink; Current if it stands in a list that bars go by today.
type Drink struct {
	Spec    *flavor.Spec
	Current bool
}

type proven struct {
	Drink
	name  string // "" if nobody orders by it
	large []int  // the pours that are no dash
}

// Sister is what takes the place of one pour, and which drink that makes.
type Sister struct {
	Profile *flavor.Profile // of what is poured
	Name    string          // of the drink, "" if it has none
	Current bool            // guests ask for it by its name
	ML      float64         // that the proven drink pours of it, for as much of the rest as stays
	// Apart is how far the amounts of what stays are from the proven ones: 1 for none, and the
	// factor between the two that are furthest apart.
	Apart float64
}

// dashML is the mL up to which a pour only seasons, and may be more or less of itself.
const dashML = 2.5

// sameRatio is the factor by which what stays may be poured otherwise than in the proven drink,
// each against the others, and sameMeasure the one by which a spirit may be that takes the place of
// one, or whatever stands beside one thing only (common practice, no source).
const (
	sameRatio   = 1.6
	sameMeasure = 2.0
)

// NewBook returns the book of some drinks, and of what the trade takes for the same thing.
func NewBook(drinks []Drink, customs *flavor.Customs) *Book {
	b := &Book{customs: customs}
	for _, d := range drinks {
		b.drinks = append(b.drinks, proven{Drink: d, name: calledBy(d.Spec.Name), large: large(d.Spec)})
	}
	return b
}

// calledBy is the name by which guests order a proven drink: without what says which of several
// it is, and none if it begins in small letters, which tell what is in a drink without a name.
func calledBy(name string) string {
	name, _, _ = strings.Cut(name, ",")
	if first, _ := utf8.DecodeRuneInString(name); !unicode.IsUpper(first) {
		return ""
	}
	return strings.TrimSpace(name)
}

// large lists the pours of a drink that are no dash.
func large(s *flavor.Spec) (out []int) {
	for i := range s.Pours {
		if s.Pours[i].ML > dashML {
			out = append(out, i)
		}
	}
	return out
}

// Of returns what a drink becomes without one of its pours and with another bottle: of each
// bottle the drink whose amounts are nearest, one with a name first. Those with a name come
// first, of them those of today, the nearest amounts first. A drink of which too little stays to
// tell it by has none.
func (b *Book) Of(s *flavor.Spec, gone *flavor.Profile) []Sister {
	if b == nil {
		return nil
	}
	var left rest
	left.of = s
	for _, i := range large(s) {
		if s.Pours[i].Profile.ID == gone.ID {
			left.gone, left.goneML = gone, left.goneML+s.Pours[i].ML
		} else {
			left.stays = append(left.stays, i)
		}
	}
	if left.gone == nil || len(left.stays) == 0 {
		return nil
	}
	best := map[string]Sister{}
	for i := range b.drinks {
		x, ok := b.swap(&left, &b.drinks[i])
		if !ok || x.Profile.ID == gone.ID || x.Name == calledBy(s.Name) && x.Name != "" {
			continue
		}
		if was, known := best[x.Profile.ID]; !known || order(x, was) < 0 {
			best[x.Profile.ID] = x
		}
	}
	out := make([]Sister, 0, len(best))
	for _, x := range best {
		out = append(out, x)
	}
	slices.SortFunc(out, order)
	return out
}

// order puts a name before none, and what guests ask for today before the rest.
func order(a, b Sister) int {
	standing := func(x Sister) int {
		switch {
		case x.Name == "":
			return 2
		case x.Current:
			return 0
		}
		return 1
	}
	return cmp.Or(standing(a)-standing(b), cmp.Compare(a.Apart, b.Apart), cmp.Compare(a.Profile.ID, b.Profile.ID), cmp.Compare(a.Name, b.Name))
}

// rest is a drink without one of its ingredients.
type rest struct {
	of     *flavor.Spec
	gone   *flavor.Profile
	goneML float64
	stays  []int // the pours that stay and are no dash
}

// swap returns what a proven drink pours beside what stays of another, if that is one thing and
// the rest is poured as it stays.
func (b *Book) swap(left *rest, d *proven) (Sister, bool) {
	if len(d.large) != len(left.stays)+1 || (d.Spec.Service == flavor.Hot) != (left.of.Service == flavor.Hot) {
		return Sister{}, false
	}
	free, least, most, mine, theirs := slices.Clone(d.large), 0.0, 0.0, 0.0, 0.0
	for _, i := range left.stays {
		p := &left.of.Pours[i]
		at := slices.IndexFunc(free, func(k int) bool { return b.Same(p.Profile, d.Spec.Pours[k].Profile) })
		if at < 0 {
			return Sister{}, false
		}
		of := d.Spec.Pours[free[at]].ML
		if ratio := p.ML / of; least == 0 || ratio < least {
			least = ratio
		}
		most, mine, theirs = max(most, p.ML/of), mine+p.ML, theirs+of
		free = slices.Delete(free, at, at+1)
	}
	x := &d.Spec.Pours[free[0]]
	out := Sister{Profile: x.Profile, Name: d.name, Current: d.Current, Apart: most / least, ML: x.ML * mine / theirs}
	return out, most <= sameRatio*least && left.measures(&out, d.Spec)
}

// measures reports whether a proven drink pours as much in the place of what went, where that is
// a spirit for a spirit. Beside one thing only it must be of the same kin, in such a measure, and
// the drink seasoned by the same kinds of things.
func (left *rest) measures(x *Sister, proven *flavor.Spec) bool {
	alone := len(left.stays) < 2
	kin := x.Profile.Class.Kin() == left.gone.Class.Kin()
	if alone && !kin {
		return false
	}
	if (alone || kin && left.gone.Class.Kin() == flavor.KinSpirit) && (x.ML > sameMeasure*left.goneML || left.goneML > sameMeasure*x.ML) {
		return false
	}
	return !alone || sameDashes(left.of, proven)
}

// Same reports whether two bottles make the same drink: they are one, or of one class and what the
// trade takes for each other. Lemon makes another drink than lime.
func (b *Book) Same(p, q *flavor.Profile) bool {
	if p.ID == q.ID {
		return true
	}
	return p.Class == q.Class && p.Class.Part() != flavor.PartSour && b.takenFor(p.ID, q.ID)
}

// nearlyTheSame is the place among customs up to which one thing is taken for another, whatever it
// is poured in.
const nearlyTheSame = 1

// takenFor reports whether the trade takes one bottle for another.
func (b *Book) takenFor(id, other string) bool {
	return slices.ContainsFunc(b.customs.For(other), func(x flavor.Custom) bool {
		return x.Place <= nearlyTheSame && len(x.Parts) == 1 && x.Parts[0] == id
	})
}

// sameDashes reports whether two drinks are seasoned by the same kinds of things: where one thing
// stays beside them, they are what tells the drink.
func sameDashes(a, b *flavor.Spec) bool {
	holds := func(s, in *flavor.Spec) bool {
		return !slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.ML <= dashML && !in.HasClass(p.Profile.Class) })
	}
	return holds(a, b) && holds(b, a)
}
