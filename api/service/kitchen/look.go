package kitchen

import (
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// Look is a drink as it stands on the bar.
type Look struct {
	Swatch  sense.Swatch
	Service flavor.Service
	Filling mix.Filling // in the glass that the spec names, or the smallest usual one that holds it, or the largest
}

// Look returns how a spec looks once it is poured. It fails as the mixer does.
func (k *Kitchen) Look(s *flavor.Spec) (*Look, error) {
	drink, glass, err := k.sensed(s)
	if err != nil {
		return nil, err
	}
	look := &Look{Swatch: glass.Swatch(), Service: mix.Standing(s)}
	look.Filling, err = mix.FillOf(drink.VolumeML, s)
	return look, err
}

// sensed mixes a spec, and senses what comes of it.
func (k *Kitchen) sensed(s *flavor.Spec) (*mix.Drink, *sense.Glass, error) {
	drink, err := k.Mixer.Mix(s)
	if err != nil {
		return nil, nil, err
	}
	return drink, k.Catalogue.Space().Glass(s, drink), nil
}

// Contrast is how a drink differs from the one that it comes from.
type Contrast struct {
	Steps  sense.Steps
	Notes  []sense.NoteChange // of the aroma, the largest change first; those of a third of a step or more
	Colour string             // "straw turns amber"; empty if nobody would say so
}

// leastNote is how far a note has to move to be named, in steps: judged.
const leastNote = 1.0 / 3

// Contrast compares two drinks as a guest would who has both. It fails as the
// mixer does.
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
