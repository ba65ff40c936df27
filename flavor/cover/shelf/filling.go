package shelf

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/asked"
	"counterpour/flavor/cover/fill"
	"counterpour/flavor/cover/search"
)

// Blends reports whether a filling pours more things than went.
func (s *Shelf) Blends(x *search.Filling) bool { return len(x.Parts) > len(s.Gap.Gone) }

// Unserved counts the things out that nothing is poured for: fewer bottles come near by
// leaving something out.
func (s *Shelf) Unserved(x *search.Filling) int { return max(0, len(s.Gap.Gone)-len(x.Parts)) }

// Idle counts the parts of a filling that stand for nothing that went: each thing is
// covered by the part that is least strange in its place, and what is left only helps.
// Of one thing the search itself asks what a further part must earn.
func (s *Shelf) Idle(x *search.Filling) int {
	if len(s.Gap.Gone) < 2 || len(x.Parts) == 0 {
		return 0
	}
	var stands [search.MaxParts]bool
	for m := range s.Gap.Gone {
		stands[s.standsFor(x, m)] = true
	}
	n := 0
	for k := range x.Parts {
		if !stands[k] {
			n++
		}
	}
	return n - max(0, len(x.Parts)-len(s.Gap.Gone)) // these the search has counted
}

// standsFor returns the place among the parts of the one that is least strange in place
// of removed m.
func (s *Shelf) standsFor(x *search.Filling, m int) int {
	least := 0
	for k, i := range x.Parts {
		if s.Entries[i].Strange[m] < s.Entries[x.Parts[least]].Strange[m] {
			least = k
		}
	}
	return least
}

// SpiritsAlone reports whether spirits went, and nothing else is poured for them.
func (s *Shelf) SpiritsAlone(x *search.Filling) bool {
	f := fill.Fill{Gap: s.Gap, Drink: s.Req.Spec, Parts: s.PartsOf(x, make([]fill.Portion, 0, asked.MaxParts))}
	return f.SpiritsAlone()
}

// PartsOf appends what a filling pours in the gap.
func (s *Shelf) PartsOf(x *search.Filling, to []fill.Portion) []fill.Portion {
	for k, i := range x.Parts {
		to = append(to, fill.Portion{Profile: s.Cands[i].Profile, ML: s.Cands[i].Amounts[x.Amounts[k]].ML})
	}
	return to
}

// Cost returns the price of the substitutes of a filling.
func (s *Shelf) Cost(x *search.Filling) float64 {
	var sum float64
	for k, i := range x.Parts {
		sum += s.Req.Guest.Prices[s.Cands[i].Profile.ID] * s.Cands[i].Amounts[x.Amounts[k]].ML
	}
	return sum
}

// mayDo reports whether the drink may do without removed m, where nothing stands for it:
// what only seasons it, or makes it soft.
func (s *Shelf) mayDo(m int) bool {
	p := s.Gap.Gone[m].Profile.Class.Part()
	return p == flavor.PartSeasoning || p == flavor.PartTexture
}

// stoodFor reports whether some candidate may stand for removed m: it is of its kin, or the
// trade pours it.
func (s *Shelf) stoodFor(m int) bool {
	was := s.Gap.Gone[m].Profile
	if slices.ContainsFunc(s.Cands, func(c Candidate) bool { return c.Profile.Class.Kin() == was.Class.Kin() }) {
		return true
	}
	return slices.ContainsFunc(s.Gap.CustomsFor(was), func(x flavor.Custom) bool {
		_, all := s.PlacesOf(x.Parts)
		return all
	})
}

// Spare returns what of several things that went the drink may do without: what nothing
// stands for or, with all, whatever stands for it. It is none if all of them are so.
func (s *Shelf) Spare(all bool) (out []*flavor.Profile) {
	for m := range s.Gap.Gone {
		if s.mayDo(m) && (all || !s.stoodFor(m)) {
			out = append(out, s.Gap.Gone[m].Profile)
		}
	}
	if len(out) == len(s.Gap.Gone) {
		return nil
	}
	return out
}
