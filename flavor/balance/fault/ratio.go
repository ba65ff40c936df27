package fault

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// ratioFaults lists what explains the ratio alone, the likeliest cause first, then
// what would still be wrong with the first mended. Nothing within the drink's own
// plus-or-minus is told.
func ratioFaults(s *flavor.Spec, j *weigh.Judgement) []Fault {
	if len(j.Pulls) == 0 {
		return nil
	}
	spread := makeup.Spreads(s)
	var out []Fault
	for i, p := range slices.Concat(j.Pulls, j.Then) {
		f := Fault{Axis: p.Axis, High: p.Change < 0, Odds: p.Odds, Then: i >= len(j.Pulls),
			Deviation: threshold.JND(p.Axis, p.Change), PlusMinus: threshold.JND(p.Axis, spread[p.Axis])}
		told := slices.ContainsFunc(out, func(o Fault) bool { return o.Axis == f.Axis })
		if told || p.Gain < leastGain || p.Odds < leastOdds || f.Deviation < leastDeviation || f.Deviation <= f.PlusMinus {
			continue
		}
		if !f.blame(s, j, p) {
			continue
		}
		if f.byTaste(s, &j.Equivalents); !slices.ContainsFunc(out, func(o Fault) bool { return o.Axis == f.Axis }) {
			out = append(out, f)
		}
	}
	odds := make([]float64, len(out))
	for i := range out {
		odds[i] = pourOdds(out, &out[i])
	}
	for i := range out {
		out[i].Odds = odds[i]
	}
	slices.SortStableFunc(out, func(a, b Fault) int {
		return cmp.Or(compareBool(a.Then, b.Then), cmp.Compare(b.Odds, a.Odds))
	})
	return eachPourOnce(withoutShadows(out))
}

// shadowShare is the share of the odds of the likeliest cause below which another cause of the
// same is its shadow. Of the spoilt drinks of the trial such a one is hardly ever what was
// spoilt.
const shadowShare = 0.2

// withoutShadows leaves out what would explain the same as the likeliest cause, and is far less
// likely: too much juice is not too little spirit as well.
func withoutShadows(faults []Fault) []Fault {
	return slices.DeleteFunc(faults, func(f Fault) bool { return !f.Then && f.Odds < shadowShare*faults[0].Odds })
}

// eachPourOnce leaves out a fault that moves a pour the way that another does, by another
// axis: too much of a mixer that sours a little is one fault, not two. Of the two that is
// told by which the trade pours it, else the likelier.
func eachPourOnce(faults []Fault) []Fault {
	var out []Fault
	for _, f := range faults {
		at := slices.IndexFunc(out, func(o Fault) bool { return o.MoveML > 0 && f.MoveML > 0 && o.Profile == f.Profile && o.High == f.High })
		switch {
		case at < 0:
			out = append(out, f)
		case f.ofItsPart() && !out[at].ofItsPart() && f.Then == out[at].Then:
			out[at] = f
		}
	}
	return out
}

// byTaste tells too much of a modifier, poured larger than all bases, by what it tastes
// of: that it is strong as well is the least of it.
func (f *Fault) byTaste(s *flavor.Spec, e *ratio.Equivalents) {
	if f.Axis != ratio.Strong || !f.High || f.Profile == nil || f.MoveML <= 0 || f.Profile.Class.Part() != flavor.PartModifier {
		return
	}
	if ml, _ := makeup.SameBottle(s, s.IndexOf(f.Profile)); ml <= s.MLOf((*flavor.Profile).Base) {
		return
	}
	taste := ratio.Sweet
	if f.Profile.Class.Kin() == flavor.KinBitter {
		taste = ratio.Bitter
	}
	brings := f.MoveML * makeup.PerML(f.Profile)[taste]
	if brings <= 0 || brings >= e[taste] {
		return
	}
	f.Axis, f.Deviation = taste, math.Max(leastDeviation, threshold.JND(taste, math.Log1p(-brings/e[taste])))
}

// pourOdds returns how probable it is that the pour that a fault names went wrong that
// way, of whatever axis it is told.
func pourOdds(faults []Fault, of *Fault) (odds float64) {
	if of.Profile == nil {
		return of.Odds
	}
	for i := range faults {
		if f := &faults[i]; f.Profile == of.Profile && f.High == of.High && f.Then == of.Then {
			odds += f.Odds
		}
	}
	return odds
}

// unevenFaults tells what is too much or too little to the rest of the draft, if its
// proportions are out.
func unevenFaults(s *flavor.Spec, j *weigh.Judgement) []Fault {
	x := &j.Uneven
	if x.Profile == nil || x.Edges < telling(j) {
		return nil
	}
	f := Fault{Axis: x.Axis(), High: x.Change < 0, Odds: 1, Profile: x.Profile}
	f.Deviation = math.Max(leastDeviation, threshold.JND(f.Axis, x.Change))
	ml, _ := makeup.SameBottle(s, s.IndexOf(x.Profile))
	f.MoveML = ml * math.Abs(math.Expm1(x.Change))
	f.poured = poured{spec: s, pour: s.Largest(x.Profile), far: !f.High && f.MoveML > farTimes*ml, haveML: ml * math.Exp(x.Change)}
	return []Fault{f}
}
