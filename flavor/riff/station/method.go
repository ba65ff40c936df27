package station

import (
	"slices"

	"counterpour/flavor"
)

// Cloudy reports whether a drink that is stirred or thrown holds what wants
// shaking: juice, egg or milk.
func Cloudy(s *flavor.Spec) bool {
	if s.Method != flavor.Stir && s.Method != flavor.Throw {
		return false
	}
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool {
		switch p.Profile.Class {
		case flavor.ClassSourJuice, flavor.ClassJuice, flavor.ClassPuree:
			return true
		}
		return p.Profile.Class.Part() == flavor.PartTexture
	})
}
