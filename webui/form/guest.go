package form

import (
	"fmt"
	"net/url"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/webui/words"
)

// ReadAvoid reads what the guest must not have. An allergen that is not known
// is refused, since a word passed over would be a guest unprotected.
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

// WithAvoid returns an address that keeps the guest in mind.
func WithAvoid(path string, avoid []flavor.Allergen) string {
	if len(avoid) == 0 {
		return path
	}
	return path + "?" + url.Values{"avoid": words.Of(avoid)}.Encode()
}

// Box is one allergen that a guest may avoid.
type Box struct {
	Allergen flavor.Allergen
	Ticked   bool
}

// Boxes are all allergens, those that are avoided ticked.
func Boxes(avoid []flavor.Allergen) []Box {
	var out []Box
	for _, a := range flavor.Allergens() {
		out = append(out, Box{a, slices.Contains(avoid, a)})
	}
	return out
}

// Guest is who drinks it, as a form says.
type Guest struct {
	Avoid []flavor.Allergen
	Diet  []string
}

// ReadGuest reads what the guest must not have and keeps to. A word that is
// not known is refused, since one passed over would be a guest unprotected.
func ReadGuest(form url.Values) (Guest, error) {
	avoid, err := ReadAvoid(form)
	if err != nil {
		return Guest{}, err
	}
	d := Guest{Avoid: avoid}
	var g cover.Guest
	for _, word := range form["diet"] {
		if err := g.Keep(word); err != nil {
			return Guest{}, fmt.Errorf("%w: %w", ErrUnreadable, err)
		}
		if word = strings.ToLower(strings.Join(strings.Fields(word), " ")); !slices.Contains(d.Diet, word) {
			d.Diet = append(d.Diet, word)
		}
	}
	return d, nil
}

// Limits are what the search for a drink is held to.
func (d *Guest) Limits() cover.Guest {
	g := cover.Guest{Avoid: slices.Clone(d.Avoid)}
	for _, word := range d.Diet {
		_ = g.Keep(word) // it was read once already
	}
	return g
}

// AddTo adds the guest to an address.
func (d *Guest) AddTo(v url.Values) {
	for _, a := range d.Avoid {
		v.Add("avoid", string(a))
	}
	for _, w := range d.Diet {
		v.Add("diet", w)
	}
}

// Boxes are the allergens to tick.
func (d *Guest) Boxes() []Box { return Boxes(d.Avoid) }

// Diets are the diets to tick.
func (d *Guest) Diets() []Option { return Options(cover.Diets(), d.Diet...) }

// Ticked reports whether anything is ticked.
func (d *Guest) Ticked() bool { return len(d.Avoid)+len(d.Diet) > 0 }

// Line says in a line who drinks it, empty for anybody.
func (d *Guest) Line() string {
	var parts []string
	if len(d.Avoid) > 0 {
		parts = append(parts, "without "+words.List(words.Of(d.Avoid)))
	}
	if len(d.Diet) > 0 {
		parts = append(parts, "for a guest who keeps to "+words.List(d.Diet))
	}
	return strings.Join(parts, ", ")
}
