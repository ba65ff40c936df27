package mend

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
)

// A pour comes in the place of another if it is so many times as large, at least and at most: who
// takes the wrong bottle pours as much of it. Judged.
const leastInPlace, mostInPlace = 0.4, 2.0

// inPlace reports whether two changes pour one thing in the place of another. What lengthens a drink
// takes the place of nothing else.
func inPlace(out, in *change.Change) bool {
	if (out.Profile.Class.Part() == flavor.PartLength) != (in.Profile.Class.Part() == flavor.PartLength) {
		return false
	}
	return out.ToML == 0 && in.FromML == 0 && in.ToML >= leastInPlace*out.FromML && in.ToML <= mostInPlace*out.FromML
}

// carried returns what a fault says to be beyond habit, but for bases: it may stand in the place of what
// was forgotten.
func (f *fixing) carried() (out []*flavor.Profile) {
	for i := range f.faults {
		if x := &f.faults[i]; x.Beyond && x.Profile != nil && !x.Profile.Base() {
			out = append(out, x.Profile)
		}
	}
	return out
}

// besideBases returns all that is no base.
func (f *fixing) besideBases() (out []*flavor.Profile) {
	for i := range f.spec.Pours {
		if p := f.spec.Pours[i].Profile; !p.Base() && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// byMistaken takes what was forgotten from the right bottle: it pours that in the place of one of what
// may have been poured by mistake.
func (f *fixing) byMistaken(poured []*flavor.Profile) error {
	if !f.forgets() || f.bench.Pantry.empty() {
		return nil
	}
	for _, p := range poured {
		out := f.without(func(o *flavor.Profile) bool { return o == p })
		if len(out) != 1 || len(f.spec.Pours) < 2 {
			continue
		}
		if err := f.thenMend(&candidate{changes: out, asked: 0, score: f.scoreWith(out, 0), puts: true}, 1); err != nil {
			return err
		}
	}
	return nil
}
