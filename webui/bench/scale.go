package bench

import (
	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// scaleForm asks for the draft at another volume in the glass.
type scaleForm struct {
	Asked  bool
	Volume string // mL, as typed
}

// toVolume brings a drink to the volume that was typed. A volume that cannot be
// read or reached is a fault at "volume".
func (p *pages) toVolume(s *flavor.Spec, typed string) (flavor.Spec, error) {
	want, err := form.Quantity(typed, "mL")
	if err != nil {
		return flavor.Spec{}, flavor.Invalid("volume", typed, "%s", volumeHint())
	}
	return kitchen.ToVolume(s, want, p.bar.Judge)
}

// volumeHint says what to write for a volume.
func volumeHint() string {
	return say.It("bench.write-the-volume", "Least", words.Figure(kitchen.LeastVolumeML, 0), "Most", words.Figure(kitchen.MostVolumeML, 0))
}

// volumeFault is what to say of a fault at the volume.
func volumeFault(f *flavor.DataFault) string {
	if f.Bounds != nil {
		return volumeHint()
	}
	return words.Sentence(f.Message)
}
