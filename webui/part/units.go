package part

import (
	"math"
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/edit"
)

// SpecInUnits returns a copy of a drink with its pours in the units of the house, to be
// shown; see [house.Settings.Pour].
func SpecInUnits(said house.Settings, s *flavor.Spec) *flavor.Spec {
	shown := s.Clone()
	for i := range shown.Pours {
		shown.Pours[i] = said.Pour(shown.Pours[i])
	}
	return &shown
}

// DraftInUnits writes a drink as a draft for the bench, in the units of the house. What no mark
// of its jigger is near to stays as it is written: a draft may be saved.
func DraftInUnits(said house.Settings, s *flavor.Spec) string {
	return edit.Format(*RewrittenInUnits(said, s))
}

// RewrittenInUnits returns a copy of a drink as its draft in the units of the house reads: as much
// is poured as is written.
func RewrittenInUnits(said house.Settings, s *flavor.Spec) *flavor.Spec {
	out := s.Clone()
	for i := range out.Pours {
		pour := said.Pour(out.Pours[i])
		ml, err := measure.ToML(pour.Amount, pour.Unit, pour.Profile)
		if err != nil || house.Rounded(pour) || pour.Unit == out.Pours[i].Unit {
			continue
		}
		pour.ML = ml
		out.Pours[i] = pour
	}
	return &out
}

// OnOunceMarks returns a copy of a drink with its pours in ounces on the marks of a jigger: of the marks
// next to an amount that no jigger has, such as ⅞ oz, the one with which the drink scores best, by score.
func OnOunceMarks(s *flavor.Spec, score func(*flavor.Spec) float64) flavor.Spec {
	out := s.Clone()
	for i := range out.Pours {
		p := &out.Pours[i]
		below, above := house.OunceMarks(p.Amount)
		if p.Unit != flavor.Ounce || below == above {
			continue
		}
		best, perOunce, mark := math.Inf(-1), p.ML/p.Amount, above
		for _, oz := range []float64{below, above} {
			p.Amount, p.ML = oz, oz*perOunce
			if oz == 0 {
				continue
			}
			if points := score(&out); points > best {
				best, mark = points, oz
			}
		}
		p.Amount, p.ML = mark, mark*perOunce
	}
	return out
}

// KeepUnits gives the pours of a draft that stand as [DraftInUnits] wrote those of a spec back
// the units and amounts of that spec, so that opening and saving it changes nothing.
func KeepUnits(said house.Settings, draft, was *flavor.Spec) {
	for i := range draft.Pours {
		p := &draft.Pours[i]
		for _, old := range was.Pours {
			if pour := said.Pour(old); pour.Profile.ID == p.Profile.ID && pour.Unit == p.Unit && math.Abs(pour.Amount-p.Amount) < sameAmount {
				p.Amount, p.Unit, p.ML = old.Amount, old.Unit, old.ML
				break
			}
		}
	}
}

// sameAmount is the difference of two amounts that are written alike.
const sameAmount = 1e-6

// coverInUnits returns a copy of a cover with its pours in the units of the house, to be
// shown.
func coverInUnits(said house.Settings, c *cover.Cover) *cover.Cover {
	shown := *c
	shown.Spec = *SpecInUnits(said, &c.Spec)
	shown.Parts, shown.Changes = slices.Clone(c.Parts), slices.Clone(c.Changes)
	for i := range shown.Parts {
		shown.Parts[i] = said.Pour(shown.Parts[i])
	}
	for i := range shown.Changes {
		m := &shown.Changes[i]
		to := said.Pour(flavor.Pour{Profile: m.Profile, Amount: m.To, Unit: m.Unit, ML: m.ToML})
		m.To, m.Unit = to.Amount, to.Unit
	}
	return &shown
}
