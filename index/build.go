package index

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/beside"
	"counterpour/flavor/measure/draft/names/naming"
)

// carriedFrom is the intensity from which an aroma counts as having a family, on the
// scale of [flavor.AromaFamilies].
const carriedFrom = 1.0

// Index finds ingredients. Make one with [New].
type Index struct {
	profiles []*flavor.Profile // sorted by id
	position map[string]int    // id to position in profiles
	animals  map[string]bool   // animal sources that occur
	names    *names
	recent   *recent
	kept     *naming.Kept
	favours  func(id string) float64 // nil: no preference; see [Index.Favouring]
	line     *line
}

// New returns an index over the profiles. Names can be looked up at once; [Index.Open],
// or the first search that needs it, builds the bleve index. The order of profiles does
// not matter. An id that is empty or occurs twice is an error. The index keeps the
// profiles but not the slice.
func New(profiles []*flavor.Profile) (*Index, error) {
	x, err := newIndex(profiles)
	if err == nil {
		x.line = newLine(x.profiles)
	}
	return x, err
}

// Build returns an index as [New] does, and opens it, both at once.
func Build(ctx context.Context, profiles []*flavor.Profile, progress Progress) (*Index, error) {
	x, err := nameless(profiles)
	if err != nil {
		return nil, err
	}
	x.line = newLine(x.profiles)
	named := beside.Run(func() error {
		x.names = newNames(x.profiles)
		return nil
	})
	return x, errors.Join(x.Open(ctx, progress), named())
}

// newIndex prepares everything except the bleve index.
func newIndex(profiles []*flavor.Profile) (*Index, error) {
	x, err := nameless(profiles)
	if err == nil {
		x.names = newNames(x.profiles)
	}
	return x, err
}

// nameless prepares what looks nothing up by name.
func nameless(profiles []*flavor.Profile) (*Index, error) {
	x := &Index{profiles: slices.Clone(profiles), position: make(map[string]int, len(profiles)),
		animals: map[string]bool{}, recent: newRecent(), kept: naming.NewKept()}
	if i := slices.Index(x.profiles, nil); i >= 0 {
		return nil, fmt.Errorf("index: profile %d is nil", i)
	}
	slices.SortFunc(x.profiles, func(a, b *flavor.Profile) int { return cmp.Compare(a.ID, b.ID) })
	for i, p := range x.profiles {
		if _, twice := x.position[p.ID]; twice || p.ID == "" {
			return nil, fmt.Errorf("index: id %q is empty or comes twice; every profile needs its own", p.ID)
		}
		x.position[p.ID] = i
		for _, a := range p.Animal {
			x.animals[fold(a)] = true
		}
	}
	return x, nil
}

// document returns the bleve document of a profile.
func document(p *flavor.Profile) map[string]any {
	aliases := make([]string, len(p.Aliases))
	for i, a := range p.Aliases {
		aliases[i] = fold(a)
	}
	name, id := fold(p.Name), fold(p.ID)
	families := familiesOf(p.Aroma)
	return map[string]any{
		fieldKey:      []string{name, id},
		fieldAliasKey: aliases,
		fieldName:     name,
		fieldAlias:    strings.Join(aliases, " "),
		fieldTyping:   strings.Join(append([]string{name, id}, aliases...), " "),
		fieldWords:    wordsOf(p, families),
		fieldClass:    string(p.Class),
		fieldFamily:   families,
		fieldAllergen: allergensOf(p),
		fieldABV:      p.ABV.Value,
		fieldBitter:   p.Bitter.Value,
	}
}

// familiesOf returns the families of an aroma: those with an intensity of carriedFrom or
// more, and the strongest ones, however weak.
func familiesOf(a flavor.Aroma) []string {
	var out []string
	lead := slices.Max(a[:])
	for f, v := range a {
		if v >= carriedFrom || v > 0 && v == lead {
			out = append(out, flavor.AromaFamily(f).String())
		}
	}
	return out
}

// allergensOf returns the allergens that p contains or may contain. An unstated one
// counts.
func allergensOf(p *flavor.Profile) []string {
	var out []string
	for _, a := range flavor.Allergens() {
		if _, has := p.Allergen(a); has {
			out = append(out, string(a))
		}
	}
	return out
}

// wordsOf returns the words by which p can be found beside its names.
func wordsOf(p *flavor.Profile, families []string) string {
	words := append([]string{string(p.Class), string(p.Class.Part()), p.Legal, p.Making}, families...)
	for _, m := range p.Materials {
		words = append(words, m.Material)
	}
	if p.Carbonated {
		words = append(words, "carbonated sparkling")
	}
	return strings.Join(foldAll(words), " ")
}

// Len returns the number of ingredients.
func (x *Index) Len() int { return len(x.profiles) }

// Profile returns the profile with an id.
func (x *Index) Profile(id string) (*flavor.Profile, bool) {
	i, ok := x.position[id]
	if !ok {
		return nil, false
	}
	return x.profiles[i], true
}
