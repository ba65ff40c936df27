package mend

import (
	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/measure"
	"counterpour/flavor/weigh"
	"counterpour/flavor/weigh/forgotten"
)

// Exchanged returns the changes that pour what a proven drink has in the place of what it has not,
// if that is anything, as much as that drink pours, or a little less or more.
func Exchanged(s *flavor.Spec, x *forgotten.Exchange) [][]change.Change {
	jigger := flavor.Ounce
	if measure.SystemOf(s) == measure.Metric {
		jigger = flavor.Millilitre
	}
	u, ok := x.In.Profile.UsualUnit(jigger)
	if !ok {
		return nil
	}
	per, ok := measure.MLPerUnit(u, x.In.Profile)
	if !ok {
		return nil
	}
	var out [][]change.Change
	for _, times := range []float64{1, 0.75, 1.3} {
		if amount := measure.Snap(x.In.ML*times, u, x.In.Profile); amount > 0 {
			out = append(out, append(change.Without(s, func(o *flavor.Profile) bool { return o == x.Out }),
				change.Change{Pour: len(s.Pours), Profile: x.In.Profile, Unit: u, To: amount, ToML: amount * per}))
		}
	}
	return out
}

// lacksByName reports whether what is wrong first is that the draft lacks what the drink that it is called
// after has: what else goes with the rest makes another drink of it.
func (f *fixing) lacksByName() bool {
	return f.forgets() && f.faults[0].Beside && len(f.build.Forgotten().Lacking()) > 0
}

// byName pours what the drink that the draft is called after has beside all of it, where that is
// missing.
func (f *fixing) byName() {
	if f.bench.Pantry.empty() || !f.lacksByName() {
		return
	}
	steps := 0
	for _, x := range f.build.Forgotten().Lacking() {
		for _, changes := range Exchanged(f.spec, &x) {
			steps++
			f.keep(candidate{changes: changes, asked: 0, steps: steps, puts: true, sure: true, score: f.scoreWith(changes, weigh.BalancedFrom)})
		}
	}
}

// byExchange pours what the drink that the draft is called after has in the place of what is
// strange.
func (f *fixing) byExchange() {
	if !f.strange() {
		return
	}
	for _, x := range f.build.Forgotten().Exchanges() {
		if x.Out != f.faults[0].Profile {
			continue
		}
		for k, changes := range Exchanged(f.spec, &x) {
			f.keep(candidate{changes: changes, asked: 0, steps: k + 1, sure: true, score: f.scoreWith(changes, weigh.BalancedFrom)})
		}
	}
}
