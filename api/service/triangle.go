package service

import (
	"context"

	"counterpour/api/service/coaching"
	"counterpour/flavor"
	"counterpour/flavor/cover"
)

// Triangle plans a triangle test of a drink of this house, or of a proven one; see
// [coaching.Table.Triangle].
func (s *Snapshot) Triangle(ctx context.Context, r coaching.TriangleRequest) (*coaching.TriangleAnswer, error) {
	table := coaching.Table{Mixer: s.Mixer, Space: s.Catalogue.Space(), Drink: s.knownDrink, Pour: s.Shelf.Resolve, Instead: s.pouredInstead}
	return table.Triangle(ctx, r)
}

// drinkCalled returns the drink of the menu that has a name, nil if none has.
func (s *Snapshot) drinkCalled(name string) *flavor.Spec {
	key := flavor.NormaliseName(name)
	for i := range s.Menu {
		if flavor.NormaliseName(s.Menu[i].Spec.Name) == key {
			return &s.Menu[i].Spec
		}
	}
	return nil
}

// knownDrink returns the drink of the menu that has a name, else the proven one; nil if
// nobody here knows it.
func (s *Snapshot) knownDrink(name string) *flavor.Spec {
	if own := s.drinkCalled(name); own != nil {
		return own
	}
	return s.ProvenCalled(name)
}

// pouredInstead returns a drink with an ingredient in place of the pour that it covers best,
// and that pour.
func (s *Snapshot) pouredInstead(ctx context.Context, a *flavor.Spec, p *flavor.Profile) (*flavor.Spec, *flavor.Profile, error) {
	inside, leave, err := s.Searches.Enter(ctx)
	if err != nil {
		return nil, nil, err
	}
	defer leave()
	var best *cover.Cover
	var instead *flavor.Profile
	for i := range a.Pours {
		q := a.Pours[i].Profile
		found, err := s.Finder.Find(inside, cover.Request{Spec: a, Missing: []*flavor.Profile{q}, Candidates: []*flavor.Profile{p}, Parts: 1, Limit: 1, Effort: coverEffort})
		if err != nil {
			return nil, nil, err
		}
		if len(found.Covers) > 0 && (best == nil || found.Covers[0].Distance < best.Distance) {
			best, instead = &found.Covers[0], q
		}
	}
	if best == nil {
		return nil, nil, flavor.Invalid("cover", p.Name, "%s covers nothing in %s; name what could be poured in place of one of its pours, or another drink of the menu", p.Name, a.Name)
	}
	return &best.Spec, instead, nil
}
