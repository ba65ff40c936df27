package part

import (
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
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
