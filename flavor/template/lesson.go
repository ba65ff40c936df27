package template

import (
	"math"
	"slices"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// Lesson is what one proven drink teaches, whatever the others are: the same for every fit that
// learns from it.
type Lesson struct {
	Drink       *Labelled
	Kin         makeup.Kinship
	Equivalents ratio.Equivalents
	size        float64  // logarithm of its mL before ice
	signals     []signal // those that are not zero
}

// LessonsOf reads the proven drinks, in their order. They are shared, and must not be changed.
func LessonsOf(proven []Labelled) []Lesson {
	out := make([]Lesson, len(proven))
	for i := range proven {
		spec := &proven[i].Spec
		parts, ml := makeup.PartsIn(spec), makeup.AmountsOf(spec)
		signals := makeup.SignalsOf(spec, parts, ml)
		out[i] = Lesson{Drink: &proven[i], Kin: makeup.KinshipOf(parts, ml), Equivalents: makeup.EquivalentsOf(spec),
			size: math.Log(spec.VolumeML()), signals: given(&signals)}
	}
	return out
}

// LearnWithout fits every family from proven drinks but one, given what was fitted to all of
// them: the other families' drinks are the same, so only the family of the one that is left out
// is fitted anew, and the signs are sought from where they were.
func LearnWithout(families []Family, lessons []Lesson, left int, t Tuning, whole []Fitted) ([]Fitted, error) {
	rest := slices.Delete(slices.Clone(lessons), left, left+1)
	out := slices.Clone(whole)
	for i := range families {
		if families[i].ID != lessons[left].Drink.Family {
			continue
		}
		f, err := fitFamily(&families[i], rest, &t)
		if err != nil {
			return nil, err
		}
		out[i] = f
	}
	return out, fitSigns(families, out, rest, &t, whole)
}
