package shelf

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
)

// CoversOfEach is how many bottles are looked at for each of several things that went.
const CoversOfEach = 3

// Union returns the members of both, ascending, each once.
func Union(a, b []int) []int {
	all := slices.Concat(a, b)
	slices.Sort(all)
	return slices.Compact(all)
}

// CustomFor returns the first choice of the trade, of what is at hand, in place of removed m,
// where no such choice is among some already: it may lie too far from the drink alone.
func (s *Shelf) CustomFor(m int, among [][]int) [][]int {
	custom := func(i int) bool { return s.Practice.Alone(m, i) }
	if slices.ContainsFunc(among, func(parts []int) bool { return slices.ContainsFunc(parts, custom) }) {
		return nil
	}
	for _, x := range s.Gap.CustomsFor(s.Gap.Gone[m].Profile) {
		if at, found := s.PlaceOf(x.Parts[0]); found && len(x.Parts) == 1 {
			return OneEach([]int{at})
		}
	}
	return nil
}

// BlendsFor returns what the trade pours together in place of one of several things out.
func (s *Shelf) BlendsFor(gone *flavor.Profile) (out [][]int) {
	for _, x := range s.Gap.CustomsFor(gone) {
		if parts, all := s.PlacesOf(x.Parts); all && len(parts) > 1 {
			out = append(out, parts)
		}
	}
	return out
}

// SugarFor returns the plain sweetener that is the least strange in place of a flavour with
// sugar, removed m: with the rest covered too it keeps the balance.
func (s *Shelf) SugarFor(m int) [][]int {
	best, least := -1, math.Inf(1)
	for i := range s.Cands {
		if cost := s.Entries[i].Strange[m] + s.Entries[i].Price; cost < least && role.OnlySweetens(s.Cands[i].Bottle, s.Gap.Gone[m].Profile.Class) {
			best, least = i, cost
		}
	}
	if best < 0 {
		return nil
	}
	return OneEach([]int{best})
}

// MadeAfter returns what holds no alcohol and is the least strange in place of removed m, as places among the candidates: what a guest who drinks none is poured for
// each thing that holds some.
func (s *Shelf) MadeAfter(m int) [][]int {
	var out []int
	for i := range s.Cands {
		dry := s.Gap.StandsDry(s.Cands[i].Profile.Class, s.Gap.Gone[m].Profile.Class) || s.Gap.PouredFor(s.Cands[i].Profile, s.Gap.Gone[m].Profile)
		if dry && s.Entries[i].Strange[m] < s.weights.Gap.Aroma {
			out = append(out, i)
		}
	}
	return OneEach(s.leastStrange(out, m))
}

// lengthened returns what a guest who drinks no alcohol is poured for the liqueur that a drink
// is made on, as places among the candidates: a sweetener, and what lengthens it.
func (s *Shelf) lengthened(m int) (out [][]int) {
	was := s.Gap.Gone[m].Profile
	if was.Class.Kin() != flavor.KinLiqueur {
		return nil
	}
	var long []int
	for i := range s.Cands {
		if s.Gap.PouredFor(s.Cands[i].Profile, was) {
			long = append(long, i)
		}
	}
	for _, sweet := range s.SweetFor(m) {
		for _, l := range s.leastStrange(long, m) {
			if parts := Union(sweet, []int{l}); len(parts) <= s.MostParts {
				out = append(out, parts)
			}
		}
	}
	return out
}

// SweetFor returns what sweetens in place of removed m, if that is a liqueur, for a guest who
// drinks no alcohol: the sweeteners that are the least strange in its place, and the plain one.
func (s *Shelf) SweetFor(m int) [][]int {
	if !s.Gap.Less || !s.Gap.NoAlcohol() || s.Gap.Gone[m].Profile.Class.Kin() != flavor.KinLiqueur {
		return nil
	}
	var sweet []int
	for i := range s.Cands {
		if p := s.Cands[i].Profile; p.Class.Kin() == flavor.KinSweetener && !role.ByPiece(p) && !math.IsInf(s.Entries[i].Strange[m], 1) {
			sweet = append(sweet, i)
		}
	}
	sweet = s.leastStrange(sweet, m)
	for _, plain := range s.SugarFor(m) {
		if !slices.Contains(sweet, plain[0]) {
			sweet = append(slices.Clip(sweet), plain[0])
		}
	}
	return OneEach(sweet)
}

// leastStrange returns the few of some candidates that are the least strange in place of removed m.
func (s *Shelf) leastStrange(of []int, m int) []int {
	cost := func(i int) float64 { return s.Entries[i].Strange[m] + s.Entries[i].Price }
	slices.SortStableFunc(of, func(a, b int) int { return cmp.Compare(cost(a), cost(b)) })
	return of[:min(len(of), CoversOfEach)]
}

// OneEach returns places as fillings of one part.
func OneEach(places []int) [][]int {
	out := make([][]int, len(places))
	for k, i := range places {
		out[k] = []int{i}
	}
	return out
}
