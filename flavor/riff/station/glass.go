package station

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/sense"
)

// Distance returns how far apart two drinks are in the glass, in just-noticeable
// differences over every sense. It is symmetric, and zero for a drink and itself.
func (s *Station) Distance(a, b *flavor.Spec) (float64, error) {
	da, err := s.Mixer.Mix(a)
	if err != nil {
		return 0, err
	}
	db, err := s.Mixer.Mix(b)
	if err != nil {
		return 0, err
	}
	return Apart(s.Space.Glass(a, da), s.Space.Glass(b, db)), nil
}

// Apart returns how many just-noticeable differences lie between two glasses.
func Apart(a, b *sense.Glass) float64 {
	steps := sense.Between(a, b)
	return steps.Total()
}

// Told lists the aroma families that grew and shrank enough to be told since the
// drink asked about, those that were wished for first and then those that moved
// most.
func (j *Job) Told(after *mix.Drink) (more, less []flavor.Family) {
	var moved [flavor.NumFamilies]float64
	for f := range flavor.NumFamilies {
		moved[f] = sense.StepsBetween(sense.Aroma, j.FromDrink.Aroma[f], after.Aroma[f])
		switch {
		case moved[f] >= tellsAroma:
			more = append(more, flavor.Family(f))
		case moved[f] <= -tellsAroma:
			less = append(less, flavor.Family(f))
		}
		for i := range j.Limits.Aims {
			if a := &j.Limits.Aims[i]; a.kind == wish.Aroma && slices.Contains(a.families, flavor.Family(f)) {
				moved[f] = math.Copysign(math.Inf(1), moved[f])
			}
		}
	}
	most := func(a, b flavor.Family) int { return cmp.Compare(math.Abs(moved[b]), math.Abs(moved[a])) }
	slices.SortStableFunc(more, most)
	slices.SortStableFunc(less, most)
	return more, less
}

// LostLeads lists the pours of the drink asked about whose leading material is
// gone from a glass, bases and modifiers only.
func (j *Job) LostLeads(after *sense.Glass) []*flavor.Profile {
	var out []*flavor.Profile
	for i := range j.From.Pours {
		p := j.From.Pours[i].Profile
		if part := p.Class.Part(); part != flavor.PartBase && part != flavor.PartModifier {
			continue
		}
		if len(j.Station.Space.Lost(p, j.FromGlass, after)) > 0 {
			out = append(out, p)
		}
	}
	return out
}
