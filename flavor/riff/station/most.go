package station

import "counterpour/flavor"

// Moves reports whether the amount of a pour is anyone's to change: what gives
// texture is poured as it is.
func Moves(p *flavor.Pour) bool {
	return p.Profile.Class.Part() != flavor.PartTexture && p.Unit != flavor.Top
}

// LeastBaseML is the smallest pour of a base that reads as one, a half ounce:
// common practice, no source.
const LeastBaseML = 14.5

// LeastOf is the smallest amount that a pour may come down to, in mL: a base is
// no dash, and a bottle that must move is moved.
func (j *Job) LeastOf(p *flavor.Pour) float64 {
	least := 0.0
	if p.Profile.Class.Part() == flavor.PartBase {
		least = LeastBaseML
	}
	if j.Must[p.Profile.ID] {
		least = max(least, LeastUse(p.Profile))
	}
	return min(least, p.ML)
}

// MostOf is the largest pour that reads as a bartender's, in mL; what is poured
// already may stay.
func MostOf(p *flavor.Pour) float64 {
	if p.Profile.Class.Part() == flavor.PartSeasoning {
		return max(MostUsual(p.Profile), 2*p.ML)
	}
	return max(MostUsual(p.Profile), p.ML)
}

// MostUsual is the largest pour of an ingredient in one drink, in mL: common
// practice, no source.
func MostUsual(p *flavor.Profile) float64 {
	switch p.Class.Part() {
	case flavor.PartBase:
		return 75
	case flavor.PartModifier:
		if p.Class.Kin() == flavor.KinWine {
			return 90
		}
		return 60
	case flavor.PartSweetener, flavor.PartSour:
		return 45
	case flavor.PartSeasoning:
		return 5
	}
	return 180
}

// The least of a bottle, in mL, that counts as moving it: a half ounce, or a
// quarter of what sweetens. Common practice, no source.
const (
	leastPourML  = 14.5
	leastSweetML = 7.0
)

// LeastUse is the least of p, in mL, that counts as moving it; of what seasons,
// all that is ever poured.
func LeastUse(p *flavor.Profile) float64 {
	switch p.Class.Part() {
	case flavor.PartSeasoning:
		return 0
	case flavor.PartSweetener:
		return leastSweetML
	}
	return leastPourML
}
