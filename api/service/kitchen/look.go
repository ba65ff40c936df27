package kitchen

import (
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// Look is how a finished drink looks.
type Look struct {
	Swatch  sense.Swatch
	Service flavor.Service
	Filling mix.FillLevel // in the glass of the spec; without one, in the smallest usual glass that holds the drink, or the largest
}

// Look returns how a spec looks when it is served. Its errors are those of [mix.Mixer].
func (k *Kitchen) Look(s *flavor.Spec) (*Look, error) {
	drink, glass, err := k.sensed(s)
	if err != nil {
		return nil, err
	}
	look := &Look{Swatch: glass.Swatch(), Service: mix.Standing(s)}
	look.Filling, err = mix.FillOf(drink.VolumeML, s)
	return look, err
}

// sensed mixes a spec and computes its sensory properties.
func (k *Kitchen) sensed(s *flavor.Spec) (*mix.Drink, *sense.Percept, error) {
	drink, err := k.Mixer.Mix(s)
	if err != nil {
		return nil, nil, err
	}
	return drink, k.Catalogue.Space().Percept(s, drink), nil
}

// Contrast is how a drink differs from the one that it is derived from.
type Contrast struct {
	Steps  sense.Steps
	Notes  []sense.NoteChange // notes of the aroma that change by leastNote or more, the largest change first
	Colour string             // such as "straw turns amber"; empty if the difference is not visible
}

// leastNote is the smallest change of a note that is named, in just-noticeable steps.
// Judged, no source.
const leastNote = 1.0 / 3

// Contrast compares two drinks as a guest would who has both. Its errors are those of
// [mix.Mixer].
func (k *Kitchen) Contrast(before, after *flavor.Spec) (*Contrast, error) {
	_, from, err := k.sensed(before)
	if err != nil {
		return nil, err
	}
	_, to, err := k.sensed(after)
	if err != nil {
		return nil, err
	}
	c := &Contrast{Steps: sense.Between(from, to), Notes: k.Catalogue.Space().NoteChanges(from, to, leastNote)}
	c.Colour, _ = sense.ColourChange(from, to)
	return c, nil
}
