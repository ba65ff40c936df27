package mend

import (
	"math"
	"slices"

	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// portion is so many of so many parts of a drink, nothing if it is not said.
type portion struct{ some, parts int }

func (p portion) share() float64 { return float64(p.some) / float64(p.parts) }

// portions of everything that are poured instead of a drink that is too large.
var portions = []portion{{2, 3}, {1, 2}, {1, 3}, {1, 4}}

// leastOfUsual is the share of the usual size of a drink that nobody pours less than.
// Judged.
const leastOfUsual = 0.6

// bySize makes a smaller drink, if its size or the alcohol in the glass is what is
// wrong.
func (f *fixing) bySize() {
	asked := slices.IndexFunc(f.faults, func(x fault.Fault) bool { return x.Axis == ratio.Volume && x.High || x.Grams })
	if asked < 0 {
		return
	}
	f.largerGlass(asked)
	usual := f.build.UsualML(f.ml) / f.spec.VolumeML()
	if room := f.faults[asked].Room; room > 0 {
		usual = math.Min(usual, room)
	}
	best := 0
	for i, p := range portions {
		if math.Abs(math.Log(p.share()/usual)) < math.Abs(math.Log(portions[best].share()/usual)) {
			best = i
		}
	}
	for i, p := range portions[best:] { // a smaller one, if the usual one is still too strong
		if i > 0 && p.share() < leastOfUsual*usual || f.scaled(asked, p, true) >= weigh.BalancedFrom {
			break
		}
	}
	if x := &f.faults[asked]; x.Axis != ratio.Strong || x.ByOdd {
		return
	}
	for _, p := range portions {
		if p.share() < 0.5 || f.scaled(asked, p, false) >= weigh.BalancedFrom {
			break // a drink without half of its base is another one
		}
	}
}

// scaled pours a portion of everything, else of all bases, and returns the score of that, 0
// if it is below that of the draft.
func (f *fixing) scaled(asked int, of portion, everything bool) float64 {
	c := candidate{asked: asked, steps: change.MostSteps}
	if everything {
		c.portion = of
	}
	for i := range f.spec.Pours {
		p := &f.spec.Pours[i]
		if !everything && !p.Profile.Base() {
			continue
		}
		to := measure.Snap(p.ML*of.share(), p.Unit, p.Profile)
		per, ok := measure.MLPerUnit(p.Unit, p.Profile)
		if !ok || to >= p.Amount {
			continue // a dash stays one
		}
		c.changes = append(c.changes, change.Change{Pour: i, Profile: p.Profile, Unit: p.Unit, From: p.Amount, To: to, FromML: p.ML, ToML: to * per})
	}
	if len(c.changes) == 0 {
		return 0
	}
	c.score, c.sure = f.scoreWith(c.changes, f.base), true
	f.keep(c)
	return c.score
}
