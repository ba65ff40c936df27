package webui

import (
	"fmt"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/webui/words"
)

// drinker is who drinks it, as a form says.
type drinker struct {
	Avoid []flavor.Allergen
	Diet  []string
}

// readDrinker reads what the guest must not have and keeps to. A word that is
// not known is refused, since one passed over would be a guest unprotected.
func readDrinker(form url.Values) (drinker, error) {
	avoid, err := readAvoid(form)
	if err != nil {
		return drinker{}, err
	}
	d := drinker{Avoid: avoid}
	var g cover.Guest
	for _, word := range form["diet"] {
		if err := g.Keep(word); err != nil {
			return drinker{}, fmt.Errorf("%w: %w", errBadForm, err)
		}
		if word = strings.ToLower(strings.Join(strings.Fields(word), " ")); !slices.Contains(d.Diet, word) {
			d.Diet = append(d.Diet, word)
		}
	}
	return d, nil
}

// guest is what the drinker may have.
func (d *drinker) guest() cover.Guest {
	g := cover.Guest{Avoid: slices.Clone(d.Avoid)}
	for _, word := range d.Diet {
		_ = g.Keep(word) // it was read once already
	}
	return g
}

// values adds the drinker to an address.
func (d *drinker) values(v url.Values) {
	for _, a := range d.Avoid {
		v.Add("avoid", string(a))
	}
	for _, w := range d.Diet {
		v.Add("diet", w)
	}
}

// Boxes are the allergens to tick.
func (d *drinker) Boxes() []guestBox { return guestBoxes(d.Avoid) }

// Diets are the diets to tick.
func (d *drinker) Diets() []pick { return picks(cover.Diets(), d.Diet...) }

// Ticked reports whether anything is ticked.
func (d *drinker) Ticked() bool { return len(d.Avoid)+len(d.Diet) > 0 }

// Line says in a line who drinks it, empty for anybody.
func (d *drinker) Line() string {
	var parts []string
	if len(d.Avoid) > 0 {
		parts = append(parts, "without "+words.List(words.Of(d.Avoid)))
	}
	if len(d.Diet) > 0 {
		parts = append(parts, "for a guest who keeps to "+words.List(d.Diet))
	}
	return strings.Join(parts, ", ")
}

// pick is one thing that can be chosen.
type pick struct {
	Value, Name string
	Chosen      bool
}

// picks are words to choose from, each its own name.
func picks(words []string, chosen ...string) []pick {
	out := make([]pick, len(words))
	for i, w := range words {
		out[i] = pick{w, w, slices.Contains(chosen, w)}
	}
	return out
}

// How many are listed.
const defaultRiffs = 10

var riffCounts = []int{5, 10, 20, 40}

// listing is how many are wanted, and which list of many.
type listing struct {
	Limit int
	Seed  uint64
}

// readListing reads a number and a seed; the seed of the button that asks for
// others comes before the one that is kept.
func readListing(form url.Values) (l listing, err error) {
	l.Limit = defaultRiffs
	if s := form.Get("limit"); s != "" {
		if l.Limit, err = strconv.Atoi(s); err != nil || !slices.Contains(riffCounts, l.Limit) {
			return l, fmt.Errorf("%w: limit %q", errBadForm, s)
		}
	}
	for _, field := range []string{"others", "seed"} {
		s := form.Get(field)
		if s == "" {
			continue
		}
		if l.Seed, err = strconv.ParseUint(s, 10, 64); err != nil {
			return l, fmt.Errorf("%w: %s %q", errBadForm, field, s)
		}
		break
	}
	return l, nil
}

func (l *listing) values(v url.Values) {
	if l.Limit != defaultRiffs {
		v.Set("limit", strconv.Itoa(l.Limit))
	}
	if l.Seed != 0 {
		v.Set("seed", strconv.FormatUint(l.Seed, 10))
	}
}

// again is what asks for another list: the form that is sent again, and the
// address of this one.
type again struct {
	Form, Link string
	List       listing
}

// Next is the seed of another list.
func (l listing) Next() uint64 { return l.Seed + 1 }

// Counts are the numbers to choose from.
func (l listing) Counts() []pick {
	var out []pick
	for _, n := range riffCounts {
		out = append(out, pick{strconv.Itoa(n), strconv.Itoa(n), n == l.Limit})
	}
	return out
}

// to is an address with a query, if it has one.
func to(path string, v url.Values) string {
	if len(v) == 0 {
		return path
	}
	return path + "?" + v.Encode()
}
