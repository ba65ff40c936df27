package kitchen

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/measure"
)

// Limits of the volume to which a draft can be scaled, in mL.
const (
	LeastVolumeML = 20.0
	MostVolumeML  = 10000.0
)

// What tells a batch from one drink, in mL poured: common practice, no source.
const (
	mostOneDrinkML = 1000.0 // more than any glass holds
	oneDrinkML     = 100.0  // before ice, of a batch that is brought down to one drink
)

// OneOfBatch brings a draft that no glass holds down to one drink: each ounce, mL and cL in the
// nearest amount that a hand pours, centilitres as mL. batch is false if what is poured may be one
// drink; ml is all that is poured.
func OneOfBatch(s *flavor.Spec) (one flavor.Spec, ml float64, batch bool) {
	for i := range s.Pours {
		ml += s.Pours[i].ML
	}
	if ml <= mostOneDrinkML {
		return flavor.Spec{}, ml, false
	}
	one = Scaled(s, oneDrinkML/ml)
	one, _ = InUnit(&one, []flavor.Unit{flavor.Ounce}, flavor.Ounce)
	one, _ = InUnit(&one, []flavor.Unit{flavor.Millilitre, flavor.Centilitre}, flavor.Millilitre)
	return one, ml, true
}

// Scaled returns a spec with every pour multiplied by a factor. A pour that tops the
// glass up stays as it is.
func Scaled(s *flavor.Spec, by float64) flavor.Spec {
	to := s.Clone()
	for i := range to.Pours {
		if p := &to.Pours[i]; p.Unit != flavor.Top {
			p.Amount, p.ML = p.Amount*by, p.ML*by
		}
	}
	return to
}

// InUnit converts the pours in the units from to another unit, each rounded to the
// nearest amount that a hand pours: 2 oz become 60 mL. changed is false if no pour has
// such a unit.
func InUnit(s *flavor.Spec, from []flavor.Unit, unit flavor.Unit) (to flavor.Spec, changed bool) {
	to = s.Clone()
	for i := range to.Pours {
		if p := &to.Pours[i]; slices.Contains(from, p.Unit) {
			changed = handPoured(p, unit) || changed
		}
	}
	return to, changed
}

// handPoured rounds a pour to the nearest amount of a unit that a hand pours. It returns
// false and changes nothing if the ingredient is not poured in that unit.
func handPoured(p *flavor.Pour, unit flavor.Unit) bool {
	amount := measure.Snap(p.ML, unit, p.Profile)
	ml, err := measure.ToML(amount, unit, p.Profile)
	if amount <= 0 || err != nil {
		return false
	}
	p.Amount, p.Unit, p.ML = amount, unit, ml
	return true
}

// ToVolume scales a drink to a volume in the glass, in mL, with each pour rounded to the
// nearest amount that a hand pours. The water from the ice grows with the pours; a pour
// that tops the glass up stays as it is. It is a fault at "volume" if the volume is out
// of range or the top alone fills it. judge scores a spec.
func ToVolume(s *flavor.Spec, want float64, judge func(*flavor.Spec) (*balance.Result, error)) (flavor.Spec, error) {
	if !(want >= LeastVolumeML && want <= MostVolumeML) {
		return flavor.Spec{}, flavor.OutOfRange("volume", want, LeastVolumeML, MostVolumeML, "give the volume in mL")
	}
	judged, err := judge(s)
	if err != nil {
		return flavor.Spec{}, err
	}
	var tops float64
	for i := range s.Pours {
		if s.Pours[i].Unit == flavor.Top {
			tops += s.Pours[i].ML
		}
	}
	if want <= tops {
		return flavor.Spec{}, flavor.Invalid("volume", want, "the top alone is %.0f mL; ask for more", tops)
	}
	to := Scaled(s, (want-tops)/(judged.Drink.VolumeML-tops))
	for i := range to.Pours {
		if p := &to.Pours[i]; p.Unit != flavor.Top {
			handPoured(p, p.Unit)
		}
	}
	return to, nil
}
