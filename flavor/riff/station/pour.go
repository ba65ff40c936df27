package station

import (
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

const tiny = 1e-12

// usualUnit is the unit in which a bartender pours p; false if it is in none.
func usualUnit(p *flavor.Profile, system measure.System) (flavor.Unit, bool) {
	unit, ok := p.UsualUnit(system.Unit())
	per, known := measure.MLPerUnit(unit, p)
	return unit, ok && known && per > 0
}

// Pour returns the pour of p nearest to ml millilitres that a hand can make.
func Pour(p *flavor.Profile, unit flavor.Unit, ml float64) (flavor.Pour, bool) {
	amount := measure.Snap(ml, unit, p)
	per, ok := measure.MLPerUnit(unit, p)
	if !ok || !(amount > 0) || math.IsNaN(per) {
		return flavor.Pour{}, false
	}
	return flavor.Pour{Profile: p, Amount: amount, Unit: unit, ML: amount * per,
		Match: flavor.Match{Asked: p.Name, How: flavor.MatchExact}}, true
}

// Count returns so many of a unit.
func Count(p *flavor.Profile, unit flavor.Unit, amount float64) (flavor.Pour, bool) {
	one, ok := Pour(p, unit, tiny)
	if !ok {
		return one, false
	}
	return Pour(p, unit, amount*one.ML/one.Amount)
}

// Snapped returns a spec with every amount one that a hand can pour.
func Snapped(s *flavor.Spec) flavor.Spec {
	out := s.Clone()
	out.Notes = nil
	for i := range out.Pours {
		p := &out.Pours[i]
		if made, ok := Pour(p.Profile, p.Unit, p.ML); ok && p.Unit != flavor.Top {
			p.Amount, p.ML = made.Amount, made.ML // a share of a pour still states the whole amount
		}
	}
	return out
}

// lengthML is the least of what lengthens a drink from which it is long by it, an ounce and a half
// as a jigger rounds it: common practice, no source.
const lengthML = 44.0

// Lengthens reports whether a pour is what a drink is long by.
func Lengthens(p *flavor.Pour) bool {
	return p.Profile.Class.Part() == flavor.PartLength && !p.Profile.Class.Solid() && p.Unit.Jigger() && p.ML >= lengthML
}

// Optional reports whether a drink stands without a part.
func Optional(p flavor.Part) bool {
	return p == flavor.PartSeasoning || p == flavor.PartTexture
}

// KeyOf names what is in a drink and how it is served, whatever the amounts.
func KeyOf(s *flavor.Spec) string {
	return MadeOf(s) + "/" + string(s.Method) + "/" + string(s.Service)
}

// MadeOf names the set of ingredients of a drink.
func MadeOf(s *flavor.Spec) string {
	ids := make([]string, len(s.Pours))
	for i := range s.Pours {
		ids[i] = s.Pours[i].Profile.ID
	}
	slices.Sort(ids)
	return strings.Join(slices.Compact(ids), " ")
}
