package balance

import (
	"math"
	"slices"

	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// parts of everything that are poured instead of a drink that is too large.
var parts = []struct {
	share float64
	word  string
}{{2.0 / 3, "two thirds"}, {0.5, "half"}, {1.0 / 3, "a third"}, {0.25, "a quarter"}}

// leastOfUsual is the share of the usual size of a drink that nobody pours less than.
// Judged.
const leastOfUsual = 0.6

// bySize makes a smaller drink, if its size or the alcohol in the glass is what is
// wrong.
func (f *fixing) bySize() {
	asked := slices.IndexFunc(f.faults, func(x Fault) bool { return x.Axis == ratio.Volume && x.High || x.grams })
	if asked < 0 {
		return
	}
	f.largerGlass(asked)
	usual := f.build.UsualML(f.ml) / f.spec.VolumeML()
	if room := f.faults[asked].room; room > 0 {
		usual = math.Min(usual, room)
	}
	best := 0
	for i, p := range parts {
		if math.Abs(math.Log(p.share/usual)) < math.Abs(math.Log(parts[best].share/usual)) {
			best = i
		}
	}
	for i, p := range parts[best:] { // a smaller one, if the usual one is still too strong
		if i > 0 && p.share < leastOfUsual*usual || f.scaled(asked, p.share, p.word) >= weigh.BalancedFrom {
			break
		}
	}
	if x := &f.faults[asked]; x.Axis != ratio.Strong || x.byOdd {
		return
	}
	for _, p := range parts {
		if p.share < 0.5 || f.scaled(asked, p.share, "") >= weigh.BalancedFrom {
			break // a drink without half of its base is another one
		}
	}
}

// scaled pours a share of everything, if there is a word for it, else of all bases, and
// returns the score of that.
func (f *fixing) scaled(asked int, share float64, word string) float64 {
	c := candidate{asked: asked, steps: mostSteps, part: word}
	for i := range f.spec.Pours {
		p := &f.spec.Pours[i]
		if word == "" && !p.Profile.Base() {
			continue
		}
		to := measure.Snap(p.ML*share, p.Unit, p.Profile)
		per, ok := measure.MLPerUnit(p.Unit, p.Profile)
		if !ok || to >= p.Amount {
			continue // a dash stays one
		}
		c.changes = append(c.changes, Change{Pour: i, Profile: p.Profile, Unit: p.Unit, From: p.Amount, To: to, FromML: p.ML, ToML: to * per})
	}
	if len(c.changes) == 0 {
		return 0
	}
	c.score, c.sure = f.scoreWith(c.changes), true
	f.keep(c)
	return c.score
}
