package station

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/sense"
)

// Apart returns how many just-noticeable differences lie between two glasses.
func Apart(a, b *sense.Percept) float64 {
	steps := sense.Between(a, b)
	return steps.Total()
}

// Told lists the aroma families that grew and shrank enough to be told since the
// drink asked about, those that were wished for first and then those that moved
// most.
func (j *Job) Told(after *mix.Drink) (more, less []flavor.AromaFamily) {
	moved := sense.AromasMoved(&j.FromDrink.Aroma, &after.Aroma, aim.TellsAroma)
	slices.SortStableFunc(moved, func(a, b sense.AromaMove) int {
		switch wa, wb := j.aimsAt(a.Family), j.aimsAt(b.Family); {
		case wa == wb:
			return 0
		case wa:
			return -1
		}
		return 1
	})
	for _, m := range moved {
		if m.Steps > 0 {
			more = append(more, m.Family)
		} else {
			less = append(less, m.Family)
		}
	}
	return more, less
}

// aimsAt reports whether a wish asks for the aroma of a family, or for less of it.
func (j *Job) aimsAt(f flavor.AromaFamily) bool {
	return slices.ContainsFunc(j.Limits.Aims, func(a aim.Aim) bool { return a.Of(f) })
}

// LostLeads lists the pours of the drink asked about whose leading material is
// gone from a glass, bases and modifiers only.
func (j *Job) LostLeads(after *sense.Percept) []*flavor.Profile {
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
