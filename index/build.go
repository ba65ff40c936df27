package index

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
)

// carriedFrom is the intensity from which a family counts as carried, on the
// scale of [flavor.Families].
const carriedFrom = 1.0

// Index finds ingredients. Make one with [New].
type Index struct {
	profiles []*flavor.Profile // by id
	position map[string]int    // id to position in profiles
	animals  map[string]bool   // animal words that are in use
	names    *names
	favours  func(id string) float64 // nil: none before another; see [Index.Favouring]
	line     *line
}

// New returns an index over the profiles. Names are known at once; what bleve holds
// is made by [Index.Open], or by the first search that needs it. The order of the
// profiles does not matter; an id that is empty or comes twice is an error. The slice
// is not kept, the profiles are.
func New(profiles []*flavor.Profile) (*Index, error) {
	x, err := newIndex(profiles)
	if err == nil {
		x.line = newLine(x.profiles)
	}
	return x, err
}

// Build returns an index as [New] does, and opens it.
func Build(ctx context.Context, profiles []*flavor.Profile, progress Progress) (*Index, error) {
	x, err := New(profiles)
	if err != nil {
		return nil, err
	}
	return x, x.Open(ctx, progress)
}

// newIndex prepares everything but bleve.
func newIndex(profiles []*flavor.Profile) (*Index, error) {
	x := &Index{profiles: slices.Clone(profiles), position: make(map[string]int, len(profiles)),
		animals: map[string]bool{}}
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
	x.names = newNames(x.profiles)
	return x, nil
}

// document is what bleve is told of a profile.
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

// familiesOf returns the families that an aroma carries: those of intensity
// carriedFrom or more, and the leading one, or ones, however faint.
func familiesOf(a flavor.Aroma) []string {
	var out []string
	lead := slices.Max(a[:])
	for f, v := range a {
		if v >= carriedFrom || v > 0 && v == lead {
			out = append(out, flavor.Family(f).String())
		}
	}
	return out
}

// allergensOf returns the allergens that may be in p: all of them if nobody
// has said.
func allergensOf(p *flavor.Profile) []string {
	var out []string
	for _, a := range flavor.Allergens() {
		if _, has := p.Allergen(a); has {
			out = append(out, string(a))
		}
	}
	return out
}

// wordsOf returns what else may be said of p, beside its names.
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

// Len returns how many ingredients are indexed.
func (x *Index) Len() int { return len(x.profiles) }

// Profile returns the profile with an id.
func (x *Index) Profile(id string) (*flavor.Profile, bool) {
	i, ok := x.position[id]
	if !ok {
		return nil, false
	}
	return x.profiles[i], true
}
