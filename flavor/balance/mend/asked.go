package mend

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
	"counterpour/flavor/mix"
	"counterpour/flavor/weigh"
)

// byFaults moves the pours that the faults name, as they say.
func (f *fixing) byFaults() {
	for i := range f.faults {
		x := &f.faults[i]
		if x.Method != "" || x.Forgotten() && i == 0 {
			continue
		}
		for _, pour := range x.Pours(f.spec) {
			p := &f.spec.Pours[pour]
			if x.High && f.watered(p) {
				f.tryWithout(i, 1, func(o *flavor.Profile) bool { return o == p.Profile })
				if f.mended() {
					continue
				}
			}
			ladder := f.served(change.Ladder(p, pour, !x.High, x.Beyond))
			if x.Beyond && !x.Own && !cuts(p.Profile) || x.Strange {
				ladder = nil // no proven drink pours it: leave it out
			}
			ladder = f.sober(ladder, x)
			if at, score := f.within(pour, ladder, x); at >= 0 {
				at, score = f.asSaid(pour, ladder, x, at, score)
				at, score = f.asUsual(pour, ladder, x, at, score)
				at, score = f.notPast(pour, ladder, x, at, score)
				f.keep(candidate{changes: []change.Change{ladder[at]}, asked: i, steps: at + 1, score: score})
			}
		}
		if (x.Beyond || x.High && x.Profile != nil) && len(f.spec.Pours) > 1 {
			f.leaveOut(x.Profile, i)
		}
	}
}

// cuts reports whether an ingredient may be what a drink is about, though no proven drink pours it:
// less of a spirit or a liqueur is still the drink that was meant.
func cuts(p *flavor.Profile) bool {
	return p.Base() || p.Class.Part() == flavor.PartModifier
}

// watered reports whether a pour is water that the ice brings anyway: nobody pours a
// little of it into what is shaken or stirred on ice.
func (f *fixing) watered(p *flavor.Pour) bool {
	s := f.spec
	return p.Profile.Class.Free() && (s.Service == flavor.Up || s.Service == flavor.Rocks) && s.Method != flavor.Build
}

// mostBaseML is how much of all bases a guest is served in one glass, a double and a
// little more. Judged.
const mostBaseML = 67.5

// served leaves of a ladder what pours no more alcohol than a fix may, and no more of the
// bases than a guest is served, or than the draft has.
func (f *fixing) served(ladder []change.Change) []change.Change {
	if len(ladder) == 0 || ladder[0].ToML < ladder[0].FromML {
		return ladder
	}
	most := math.Inf(1)
	if ladder[0].Profile.Base() && f.spec.VolumeML() < batchFromML {
		most = mostBaseML - (f.spec.MLOf((*flavor.Profile).Base) - ladder[0].FromML)
	}
	for i := range ladder {
		if ladder[i].ToML > most || f.heady(ladder[i:i+1]) {
			return ladder[:i]
		}
	}
	return ladder
}

// batchFromML is the mL from which a draft is for more than one guest.
const batchFromML = 500.0

// soberShare is the share of the most alcohol that drinks of a kind have, from which one
// glass of it has a usual amount. Judged.
const soberShare = 0.65

// sober leaves of a ladder, if there is too much alcohol in the glass, what brings it to
// a usual amount: to stop just below the most is no way to mend a double base.
func (f *fixing) sober(ladder []change.Change, x *fault.Fault) []change.Change {
	if !x.Grams || len(ladder) == 0 || !ladder[0].Profile.Base() {
		return ladder
	}
	all := ethanol(f.spec)
	for i := range ladder {
		c := &ladder[i]
		if all+(c.ToML-c.FromML)*c.Profile.ABV.Value/100*mix.EthanolDensity <= soberShare*x.MostG {
			return ladder[i:]
		}
	}
	return ladder
}

// Surely is the score from which an amount mends a draft as surely as any.
const Surely = 86.0

// asSaid takes the amount on the ladder of a pour that the fault says, in place of the
// one that was found, if it mends the draft as surely: what is said and what is done
// should agree.
func (f *fixing) asSaid(pour int, ladder []change.Change, x *fault.Fault, at int, score float64) (int, float64) {
	if x.MoveML <= 0 || f.spec.Pours[pour].Profile != x.Profile {
		return at, score
	}
	said, away := at, math.Inf(1)
	for i := range ladder {
		if d := math.Abs(math.Abs(ladder[i].ToML-ladder[i].FromML) - x.MoveML); d < away {
			said, away = i, d
		}
	}
	if said > at && x.Profile.Class.Part() == flavor.PartModifier || x.Holds(f.spec, pour) && ladder[said].ToML < f.leastOfBase(pour) {
		return at, score // of what modifies a drink the nearest amount that does is what a bar pours
	}
	if got, ok := f.reaches(pour, ladder[said].ToML, max(min(score, Surely), weigh.BalancedFrom)); ok {
		return said, got
	}
	return at, score
}

// within goes along the ladder of a pour that a fault names. It stops where the fault ends if
// that mends the draft. What is too much keeps at least half of the most that good drinks have
// of it, and the base at least half of what was ordered.
func (f *fixing) within(pour int, ladder []change.Change, x *fault.Fault) (at int, score float64) {
	least, enough := 0.0, comfortable
	switch {
	case x.Beyond:
		least, enough = math.Min(x.MostML/2, f.build.UsualPour(pour, f.ml)), plain
	case f.spec.Pours[pour].Profile.Base():
		least = f.leastOfBase(pour)
		if x.Grams && len(ladder) > 0 {
			least = math.Min(least, ladder[0].ToML)
		}
	}
	near := ladder
	for i := range ladder {
		if ladder[i].ToML < least-slack {
			near = ladder[:i]
			break
		}
	}
	if at, score = f.along(pour, near, enough); at >= 0 && score >= weigh.BalancedFrom || x.Holds(f.spec, pour) {
		return at, score
	}
	return f.along(pour, ladder, enough)
}

// leastOfBase returns the mL below which a fix takes no base: a drink without half of its base is
// another one, unless half of it is more than a guest is served.
func (f *fixing) leastOfBase(pour int) float64 {
	half := f.spec.Pours[pour].ML / 2
	if f.spec.VolumeML() >= batchFromML {
		return half
	}
	return math.Min(half, mostBaseML)
}
