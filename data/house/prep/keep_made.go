package prep

import (
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// MadeKeep is how long the trade keeps something made, and why.
type MadeKeep struct {
	Keep
	Steeped bool      // as long as the milk of nuts, seeds or grain, which the days alone tell
	Syrup   *mix.Keep // by its sugar, of which Days is the most; nil if by the most delicate thing in it
}

// steepedDays is how long what is steeped with nuts, seeds or grain keeps, unless it is strong, as
// their milk does: common practice, no source.
const steepedDays = 5

// KeepOfMade returns how long the trade keeps something made, given its profile, its recipe as a
// drink and all that the house makes: a syrup of water and what is sugar itself, be it white, honey
// or nectar, by its sugar, anything else by the most delicate thing in it.
func KeepOfMade(m *house.Made, profile *flavor.Profile, recipe flavor.Spec, made []house.Made) MadeKeep {
	if len(m.Steeped) > 0 && profile.ABV.Value < strongABV {
		return MadeKeep{Keep: Keep{Days: steepedDays}, Steeped: true}
	}
	recipe = unstrained(recipe)
	plainSyrup := !slices.ContainsFunc(recipe.Pours, func(p flavor.Pour) bool {
		return p.Profile.Class.Measured() != flavor.ByGram && !p.Profile.Class.Free() && !keptBySugar(p.Profile, made)
	})
	if keep, err := mix.Keeping(brixOf(profile), false); plainSyrup && err == nil {
		return MadeKeep{Keep: Keep{Days: keep.ToDays}, Syrup: &keep}
	}
	return MadeKeep{Keep: KeepOf(recipe, profile.ABV.Value, nil)}
}

// keptBySugar reports whether an ingredient is a syrup that its own sugar keeps. What is made in
// the house is not: its recipe may hold what is fresh. Nor is cane juice, which is too thin.
func keptBySugar(p *flavor.Profile, made []house.Made) bool {
	own := slices.ContainsFunc(made, func(m house.Made) bool { return m.ID == p.ID })
	return p.Class == flavor.ClassSyrup && p.ABV.Value == 0 && brixOf(p) >= mix.KeptFromBrix && !own
}

// brixOf is the sugar of an ingredient in per cent of its mass.
func brixOf(p *flavor.Profile) float64 { return 100 * p.Sugar.Value / (1000 * p.DensityGPerML) }

// unstrained is a recipe without what is strained out of it.
func unstrained(s flavor.Spec) flavor.Spec {
	out := s.Clone()
	out.Pours = slices.DeleteFunc(out.Pours, func(p flavor.Pour) bool { return p.Profile.Class == "" || house.Strained(p.Profile, p.Unit) })
	return out
}
