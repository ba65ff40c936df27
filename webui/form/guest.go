package form

import (
	"fmt"
	"net/url"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/webui/words"
)

// ReadAvoid reads the allergens that the guest must avoid. An unknown one is refused: to
// ignore it would endanger a guest.
func ReadAvoid(form url.Values) ([]flavor.Allergen, error) {
	var avoid []flavor.Allergen
	for _, word := range form["avoid"] {
		a, err := flavor.ParseAllergen(word)
		if err != nil {
			return nil, fmt.Errorf("%w: %w", ErrUnreadable, err)
		}
		if !slices.Contains(avoid, a) {
			avoid = append(avoid, a)
		}
	}
	return avoid, nil
}

// Box is an allergen with its checkbox.
type Box struct {
	Allergen flavor.Allergen
	Ticked   bool
}

// Guest is the guest as described in a form.
type Guest struct {
	Avoid    []flavor.Allergen
	Diet     []string
	Strength string // a word of strengths; empty for no limit
}

// strength is a limit on the strength of a drink.
type strength struct {
	word, name string
	most       float64 // % vol
}

// strengths are the limits that a guest may choose, in % vol of the finished drink.
var strengths = []strength{
	{"low", "at most 12 % vol", 12},
	{"none", "no alcohol (at most 0.5 % vol)", flavor.NoAlcoholABV},
}

// ReadGuest reads the guest's allergens, diet and limit on strength. An unknown word is
// refused: to ignore it would endanger a guest.
func ReadGuest(form url.Values) (Guest, error) {
	avoid, err := ReadAvoid(form)
	if err != nil {
		return Guest{}, err
	}
	d := Guest{Avoid: avoid}
	var g guest.Guest
	for _, word := range form["diet"] {
		if err := g.Keep(word); err != nil {
			return Guest{}, fmt.Errorf("%w: %w", ErrUnreadable, err)
		}
		if word = strings.ToLower(strings.Join(strings.Fields(word), " ")); !slices.Contains(d.Diet, word) {
			d.Diet = append(d.Diet, word)
		}
	}
	if d.Strength = form.Get("strength"); d.Strength != "" && !slices.ContainsFunc(strengths, func(s strength) bool { return s.word == d.Strength }) {
		return Guest{}, fmt.Errorf("%w: no strength is %q", ErrUnreadable, d.Strength)
	}
	return d, nil
}

// Limits returns the guest in the form that searches use.
func (d *Guest) Limits() guest.Guest {
	g := guest.Guest{Avoid: slices.Clone(d.Avoid)}
	for _, word := range d.Diet {
		_ = g.Keep(word) // cannot fail: it was read before
	}
	for _, s := range strengths {
		if s.word == d.Strength {
			g.MaxABV = s.most
			g.NoAlcohol = g.NoAlcohol || s.most <= flavor.NoAlcoholABV
		}
	}
	return g
}

// AddTo adds the guest to a query.
func (d *Guest) AddTo(v url.Values) {
	for _, a := range d.Avoid {
		v.Add("avoid", string(a))
	}
	for _, w := range d.Diet {
		v.Add("diet", w)
	}
	if d.Strength != "" {
		v.Set("strength", d.Strength)
	}
}

// OnlyGuest reports whether a query says nothing but who the guest is, if that.
func OnlyGuest(v url.Values) bool {
	for field := range v {
		if field != "avoid" && field != "diet" && field != "strength" {
			return false
		}
	}
	return true
}

// Address returns a path with the guest in its query.
func (d *Guest) Address(path string) string {
	v := url.Values{}
	d.AddTo(v)
	return Link(path, v)
}

// Field is a name and a value of a form.
type Field struct{ Name, Value string }

// Fields returns the fields of a form that describe the guest.
func (d *Guest) Fields() []Field {
	var out []Field
	for _, a := range d.Avoid {
		out = append(out, Field{"avoid", string(a)})
	}
	for _, w := range d.Diet {
		out = append(out, Field{"diet", w})
	}
	if d.Strength != "" {
		out = append(out, Field{"strength", d.Strength})
	}
	return out
}

// Usual is a frequent wish of guests, with a link that adds it.
type Usual struct{ Name, Address string }

// usual lists frequent wishes: common practice, no source.
var usual = []struct {
	name string
	asks Guest
}{
	{"No nuts", Guest{Avoid: []flavor.Allergen{flavor.TreeNuts, flavor.Peanuts}}},
	{"No gluten", Guest{Avoid: []flavor.Allergen{flavor.Gluten}}},
	{"No egg", Guest{Diet: []string{"no egg"}}},
	{"No dairy", Guest{Diet: []string{"no dairy"}}},
	{"Vegan", Guest{Diet: []string{"vegan"}}},
	{"No alcohol", Guest{Diet: []string{"alcohol-free"}}},
}

// Usual lists frequent wishes. Each address is path for a guest with that wish beside all
// others of this guest.
func (d *Guest) Usual(path string) []Usual {
	var out []Usual
	for _, u := range usual {
		both := Guest{Avoid: slices.Clone(d.Avoid), Diet: slices.Clone(d.Diet), Strength: d.Strength}
		for _, a := range u.asks.Avoid {
			if !slices.Contains(both.Avoid, a) {
				both.Avoid = append(both.Avoid, a)
			}
		}
		for _, w := range u.asks.Diet {
			if !slices.Contains(both.Diet, w) {
				both.Diet = append(both.Diet, w)
			}
		}
		out = append(out, Usual{u.name, both.Address(path)})
	}
	return out
}

// Boxes are the checkboxes of allergens.
func (d *Guest) Boxes() []Box {
	var out []Box
	for _, a := range flavor.Allergens() {
		out = append(out, Box{a, slices.Contains(d.Avoid, a)})
	}
	return out
}

// Diets are the checkboxes of diets.
func (d *Guest) Diets() []Option { return Options(flavor.DietNames(), d.Diet...) }

// Strengths are the choices of a limit on strength.
func (d *Guest) Strengths() []Option {
	out := []Option{{Value: "", Name: "any strength", Chosen: d.Strength == ""}}
	for _, s := range strengths {
		out = append(out, Option{Value: s.word, Name: s.name, Chosen: s.word == d.Strength})
	}
	return out
}

// Ticked reports whether the guest has any wish.
func (d *Guest) Ticked() bool { return len(d.Avoid)+len(d.Diet) > 0 || d.Strength != "" }

// Line describes the guest's wishes in a line; "" if there are none.
func (d *Guest) Line() string {
	parts := slices.Clone(d.Diet)
	if len(d.Avoid) > 0 {
		parts = append(parts, "without "+words.List(words.Of(d.Avoid)))
	}
	for _, s := range strengths {
		if s.word == d.Strength {
			parts = append(parts, s.name)
		}
	}
	return strings.Join(parts, ", ")
}

// Sentence describes them in a sentence; "" if there are none.
func (d *Guest) Sentence() string {
	if line := d.Line(); line != "" {
		return "For a guest: " + line + "."
	}
	return ""
}
