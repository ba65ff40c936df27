package form

import (
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// ReadAvoid reads the allergens that the guest must avoid. An unknown one is refused: to
// ignore it would endanger a guest.
func ReadAvoid(form url.Values) ([]flavor.Allergen, error) {
	return readAvoid(form, flavor.AllergensMeant)
}

func readAvoid(form url.Values, mean func(string) ([]flavor.Allergen, error)) ([]flavor.Allergen, error) {
	var avoid []flavor.Allergen
	for _, word := range form["avoid"] {
		meant, err := mean(word)
		if err != nil {
			return nil, fmt.Errorf("%w: %w", ErrUnreadable, err)
		}
		for _, a := range meant {
			if !slices.Contains(avoid, a) {
				avoid = append(avoid, a)
			}
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
	Strength string // % vol that the finished drink may have at most, in digits; empty for no limit
}

// low was the one limit on strength of old links, and meant lowABV.
const (
	low    = "low"
	lowABV = "12"
)

// The limits on strength that a guest may set, in % vol of the finished drink. Whoever
// drinks no alcohol keeps to a diet, which also looks at what is poured.
const (
	leastABV = 0.5
	mostABV  = 80
)

// noStrength was another limit, which asked for what the diet noAlcohol asks for; links of
// old still have it.
const (
	noStrength = "none"
	noAlcohol  = "alcohol-free"
	noTrace    = "0.0 % alcohol"
)

// ParseGuest parses the form of a request and reads the guest in it, as [Parse] and [ReadGuest] do.
func ParseGuest(r *http.Request) (Guest, error) {
	if err := Parse(r); err != nil {
		return Guest{}, err
	}
	return ReadGuest(r.Form)
}

// ReadGuest reads the guest's allergens and what else is avoided, see [flavor.Substances], diet and
// limit on strength. An unknown word is
// refused: to ignore it would endanger a guest.
func ReadGuest(form url.Values) (Guest, error) {
	avoid, err := readAvoid(form, flavor.AvoidanceMeant)
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
	switch d.Strength = strings.TrimSpace(form.Get("strength")); d.Strength {
	case "":
	case low:
		d.Strength = lowABV
	case noStrength:
		if d.Strength = ""; !slices.Contains(d.Diet, noAlcohol) {
			d.Diet = append(d.Diet, noAlcohol)
		}
	default:
		v, err := Quantity(d.Strength, "% vol")
		if err != nil || !(v >= leastABV && v <= mostABV) {
			return Guest{}, &spoken{ErrUnreadable, say.It("form.no-strength", "Typed", strconv.Quote(d.Strength), "Least", leastABV, "Most", mostABV)}
		}
		d.Strength = words.Plain(v)
	}
	return d, nil
}

// Limits returns the guest in the form that searches use.
func (d *Guest) Limits() guest.Guest {
	g := guest.Guest{Avoid: slices.Clone(d.Avoid)}
	for _, word := range d.Diet {
		_ = g.Keep(word) // cannot fail: it was read before
	}
	g.MaxABV, _ = strconv.ParseFloat(d.Strength, 64) // 0 if there is none; it was read before
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

// usualWish is a frequent wish of guests.
type usualWish struct {
	name string
	asks Guest
}

// usual lists frequent wishes: common practice, no source.
func usual() []usualWish {
	return []usualWish{
		{say.It("form.no-nuts"), Guest{Avoid: []flavor.Allergen{flavor.TreeNuts, flavor.Peanuts}}},
		{say.It("form.no-gluten"), Guest{Avoid: []flavor.Allergen{flavor.Gluten}}},
		{say.It("form.no-egg"), Guest{Diet: []string{"no egg"}}},
		{say.It("form.no-dairy"), Guest{Diet: []string{"no dairy"}}},
		{say.It("form.vegan"), Guest{Diet: []string{"vegan"}}},
		{say.It("form.alcohol-free", "Note", dietNote(noAlcohol)), Guest{Diet: []string{noAlcohol}}},
	}
}

// Usual lists frequent wishes. Each address is path for a guest with that wish beside all
// others of this guest.
func (d *Guest) Usual(path string) []Usual {
	var out []Usual
	for _, u := range usual() {
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

// Boxes are the checkboxes of allergens, and of what else a guest may have to avoid.
func (d *Guest) Boxes() []Box {
	var out []Box
	for _, a := range slices.Concat(flavor.Allergens(), flavor.Substances()) {
		out = append(out, Box{a, slices.Contains(d.Avoid, a)})
	}
	return out
}

// dietNote says how far a diet goes where its name leaves it open; empty where it does not.
func dietNote(diet string) string {
	switch diet {
	case noAlcohol:
		return say.It("form.at-most-strength", "Strength", words.Figure(flavor.NoAlcoholABV, 1))
	case noTrace:
		return say.It("form.only-what-states-it")
	}
	return ""
}

// Diets are the checkboxes of diets.
func (d *Guest) Diets() []Option {
	out := Options(flavor.DietNames(), d.Diet...)
	for i := range out {
		if note := dietNote(out[i].Value); note != "" {
			out[i].Name = say.It("form.diet-with-note", "Diet", out[i].Name, "Note", note)
		}
	}
	return out
}

// Ticked reports whether the guest has any wish.
func (d *Guest) Ticked() bool { return len(d.Avoid)+len(d.Diet) > 0 || d.Strength != "" }

// MindsTraces reports whether what touched the tools before matters to the guest. A limit on
// strength alone asks nothing of them.
func (d *Guest) MindsTraces() bool { return len(d.Avoid)+len(d.Diet) > 0 }

// Line describes the guest's wishes in a line; "" if there are none.
func (d *Guest) Line() string {
	parts := slices.Clone(d.Diet)
	for i, diet := range parts {
		if note := dietNote(diet); note != "" {
			parts[i] = say.It("form.diet-and-note", "Diet", diet, "Note", note)
		}
	}
	if len(d.Avoid) > 0 {
		parts = append(parts, say.It("form.without", "Allergens", words.List(words.Of(d.Avoid))))
	}
	if d.Strength != "" {
		parts = append(parts, say.It("form.at-most-strength", "Strength", d.Strength))
	}
	return strings.Join(parts, ", ")
}

// Sentence describes them in a sentence; "" if there are none.
func (d *Guest) Sentence() string {
	if line := d.Line(); line != "" {
		return say.It("form.for-a-guest", "Wishes", line)
	}
	return ""
}
