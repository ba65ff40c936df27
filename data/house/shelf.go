package house

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/naming"
)

// Shelf finds profiles by exact id, name or alias. The index package also handles
// misspellings.
type Shelf struct {
	list   []*flavor.Profile // sorted by id
	byID   map[string]*flavor.Profile
	byName map[string]*flavor.Profile
}

var _ naming.Finder = (*Shelf)(nil)

// NewShelf makes a shelf of profiles. If two profiles have the same id or name, the first
// one gets it.
func NewShelf(profiles []*flavor.Profile) *Shelf {
	s := &Shelf{byID: map[string]*flavor.Profile{}, byName: map[string]*flavor.Profile{}}
	for _, p := range profiles {
		if _, taken := s.byID[p.ID]; !taken {
			s.byID[p.ID] = p
			s.list = append(s.list, p)
		}
	}
	slices.SortFunc(s.list, func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) })
	// Ids and names take precedence over aliases.
	for _, p := range s.list {
		s.name(p, p.ID)
		s.name(p, p.Name)
	}
	for _, p := range s.list {
		for _, a := range p.Aliases {
			s.name(p, a)
		}
	}
	return s
}

func (s *Shelf) name(p *flavor.Profile, name string) {
	key := flavor.NormaliseName(name)
	if _, taken := s.byName[key]; !taken && key != "" {
		s.byName[key] = p
	}
}

// Profiles returns every profile, sorted by id.
func (s *Shelf) Profiles() []*flavor.Profile { return slices.Clone(s.list) }

// ByID returns the profile with an id.
func (s *Shelf) ByID(id string) (*flavor.Profile, bool) {
	p, ok := s.byID[id]
	return p, ok
}

// Resolve finds the profile whose id, name or alias is written.
func (s *Shelf) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
	key := flavor.NormaliseName(written)
	p, ok := s.byName[key]
	if !ok {
		return nil, flavor.Match{}, &flavor.DataFault{Kind: flavor.ErrUnknown, Location: "ingredient", Value: written,
			Message: fmt.Sprintf("%q is not an ingredient known here; check the spelling, or write its category", written)}
	}
	how := flavor.MatchAlias
	if key == flavor.NormaliseName(p.Name) || key == flavor.NormaliseName(p.ID) {
		how = flavor.MatchExact
	}
	return p, flavor.Match{Asked: written, How: how}, nil
}

// Pour returns the profile of a pour and its millilitres. It fails if the ingredient is
// unknown or is not poured in that unit.
func (s *Shelf) Pour(p Pour) (*flavor.Profile, float64, error) {
	profile, ok := s.byID[p.Ingredient]
	if !ok {
		return nil, 0, fmt.Errorf("there is no ingredient %q in the catalogue or among what the house makes", p.Ingredient)
	}
	ml, err := measure.ToML(p.Amount, p.Unit, profile)
	return profile, ml, err
}
