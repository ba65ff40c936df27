package bench

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/webui/form"
	"counterpour/webui/words"
)

// The volumes that a draft may be brought to, in mL.
const (
	leastVolume = 20.0
	mostVolume  = 10000.0
)

// scaleForm asks for the draft at another volume in the glass.
type scaleForm struct {
	Asked  bool
	Volume string // mL, as typed
}

// toVolume brings a drink to the volume that was typed, each pour to the nearest
// amount that a hand pours. Ice water grows with the pours; a top stays as it
// is. A volume that cannot be read or reached is a fault.
func (p *pages) toVolume(s *flavor.Spec, typed string) (flavor.Spec, error) {
	fault := func(message string) (flavor.Spec, error) {
		return flavor.Spec{}, &flavor.Fault{Kind: flavor.ErrInvalid, Location: "volume", Value: typed, Message: message}
	}
	want, err := form.Number(strings.TrimSpace(typed), "in mL")
	if err != nil || !(want >= leastVolume && want <= mostVolume) {
		return fault("Write the volume in mL, " + words.Figure(leastVolume, 0) + " to " + words.Figure(mostVolume, 0) + ", such as 150.")
	}
	judged, err := p.bar.Judge(s)
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
		return fault("What tops it up is " + words.Millilitres(tops) + " mL alone; ask for more.")
	}
	return handPoured(scaled(s, (want-tops)/(judged.Drink.VolumeML-tops))), nil
}

// handPoured brings every pour to the nearest amount that a hand pours in its
// own unit.
func handPoured(s flavor.Spec) flavor.Spec {
	for i := range s.Pours {
		pour := &s.Pours[i]
		amount := measure.Snap(pour.ML, pour.Unit, pour.Profile)
		ml, err := measure.ToML(amount, pour.Unit, pour.Profile)
		if amount > 0 && err == nil && pour.Unit != flavor.Top {
			pour.Amount, pour.ML = amount, ml
		}
	}
	return s
}
