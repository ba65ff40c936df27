package shelf

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/asked"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/practice"
	"counterpour/flavor/cover/search"
)

// Habit is what a filling ranks nearer by for being what every hand reaches for.
func (s *Shelf) Habit(x *search.Filling) float64 {
	return s.weights.Habit * s.Practice.Habit(x.Parts)
}

// Customary reports whether the trade, or the house, pours a filling for what went, or
// for each of several things that lead one of its parts.
func (s *Shelf) Customary(x *search.Filling) bool {
	if len(s.Gap.Gone) < 2 || len(x.Parts) == 0 || s.Practice.Pours(x.Parts) {
		return s.Practice.Pours(x.Parts)
	}
	for m := range s.Gap.Gone {
		if s.leading(m) && !s.Practice.Alone(m, x.Parts[s.standsFor(x, m)]) {
			return false
		}
	}
	return true
}

// addKnown works out the standing of the combinations that are known for what
// they are: several ingredients that the trade pours together, what a guest who drinks no
// alcohol is poured for a liqueur, and what the house has tasted.
func (s *Shelf) addKnown(c gap.Customs) {
	if len(s.Gap.Gone) == 1 {
		first := -1
		for _, x := range c[0] {
			parts, ok := s.PlacesOf(x.Parts)
			if !ok {
				continue
			}
			if first < 0 {
				first = x.Place // what comes before it is not at hand
			}
			s.Practice.AddChoice(parts, x.Place-first, s.standingOfCustom(parts, x.Place))
		}
		for place, parts := range s.lengthened(0) { // behind what the trade pours for everybody
			s.Practice.AddBehind(parts, s.standingOfCustom(parts, place))
		}
	}
	s.addTastings()
}

// standingOfCustom is what ingredients that the trade pours together must earn:
// they count as one pour, which nobody has to think of, and are half as rare as by themselves:
// whoever knows the custom has them.
func (s *Shelf) standingOfCustom(parts []int, place int) float64 {
	w := &s.weights.Gap
	earn := min(w.Custom/2, w.Place*float64(place))
	for _, i := range parts {
		earn += s.Entries[i].Price / 2
	}
	return earn
}

// PlacesOf returns the places of ingredients among the candidates, ascending,
// and whether all are there.
func (s *Shelf) PlacesOf(ids []string) ([]int, bool) {
	parts := make([]int, 0, len(ids))
	for _, id := range ids {
		at, found := s.PlaceOf(id)
		if !found {
			return nil, false
		}
		parts = append(parts, at)
	}
	slices.Sort(parts)
	return parts, len(parts) <= s.MostParts
}

// PlaceOf returns the place of an ingredient among the candidates, and whether it is there.
func (s *Shelf) PlaceOf(id string) (int, bool) {
	return slices.BinarySearchFunc(s.Cands, id, func(c Candidate, id string) int { return strings.Compare(c.Profile.ID, id) })
}

// addTastings adds what the house's tastings are worth to the standing of the
// combinations that they are about. Tastings of other drinks with the same
// bottle out count too: it is the pair that was tasted.
func (s *Shelf) addTastings() {
	var tasted []practice.Tasted
	for _, x := range s.Req.Tastings {
		if parts, ok := s.about(&x); ok {
			tasted = append(tasted, practice.Tasted{Parts: parts, Liked: x.Liked})
		}
	}
	s.Practice.Heed(tasted, s.PlainProblem().Standing, s.weights.Gap.Custom)
}

// PlainProblem is the task as far as it says what combinations must earn that nobody knows.
func (s *Shelf) PlainProblem() *search.Problem {
	return &search.Problem{Parts: s.Entries, Costs: search.Costs{Part: s.weights.Part}}
}

// about returns the combination that a tasting is about, if its parts are
// candidates here and what was out then is out now.
func (s *Shelf) about(x *asked.Tasting) ([]int, bool) {
	missing := slices.ContainsFunc(s.Req.Missing, func(m *flavor.Profile) bool { return m.ID == x.Missing })
	if !missing || len(x.Parts) == 0 {
		return nil, false
	}
	return s.PlacesOf(x.Parts)
}
