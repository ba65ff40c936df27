package kitchen

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/measure"
)

// The volumes that a draft may be brought to, in mL.
const (
	LeastVolumeML = 20.0
	MostVolumeML  = 10000.0
)

// Scaled returns a spec with every pour so many times as large. What tops a glass
// up stays as it is.
func Scaled(s *flavor.Spec, by float64) flavor.Spec {
	to := s.Clone()
	for i := range to.Pours {
		if p := &to.Pours[i]; p.Unit != flavor.Top {
			p.Amount, p.ML = p.Amount*by, p.ML*by
		}
	}
	return to
}

// InUnit turns the pours in some units into another, each to the nearest amount
// that a hand pours: 2 oz are 60 mL. It is false if no pour comes in that unit.
func InUnit(s *flavor.Spec, from []flavor.Unit, unit flavor.Unit) (to flavor.Spec, changed bool) {
	to = s.Clone()
	for i := range to.Pours {
		if p := &to.Pours[i]; slices.Contains(from, p.Unit) {
			changed = handPoured(p, unit) || changed
		}
	}
	return to, changed
}

// handPoured brings a pour to the nearest amount of a unit that a hand pours. It
// is false, and changes nothing, if what is poured does not come in that unit.
func handPoured(p *flavor.Pour, unit flavor.Unit) bool {
	amount := measure.Snap(p.ML, unit, p.Profile)
	ml, err := measure.ToML(amount, unit, p.Profile)
	if amount <= 0 || err != nil {
		return false
	}
	p.Amount, p.Unit, p.ML = amount, unit, ml
	return true
}

// ToVolume brings a drink to a volume in the glass, in mL, each pour to the nearest
// amount that a hand pours. Ice water grows with the pours; a top stays as it is.
// A volume out of range, and one that the top alone fills, are faults at "volume".
// Judge scores a spec.
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
