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
	turn := func(f *Fault) int {
		if f.Then {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(out, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(turn(&a), turn(&b)), cmp.Compare(b.Odds, a.Odds))
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
func unevenFaults(s *flavor.Spec, j *weigh.Judgement, build *weigh.Build) []Fault {
	x := &j.Uneven
	if x.Profile == nil || x.Edges < telling(j) {
		return nil
	}
	if f, ok := outrun(s, x, build); ok {
		return []Fault{f}
	}
	f := Fault{Axis: x.Axis(), High: x.Change < 0, Odds: 1, Profile: x.Profile}
	f.Deviation = math.Max(leastDeviation, threshold.JND(f.Axis, x.Change))
	ml, _ := makeup.SameBottle(s, s.IndexOf(x.Profile))
	f.MoveML = ml * math.Abs(math.Expm1(x.Change))
	f.poured = poured{spec: s, pour: s.Largest(x.Profile), far: !f.High && f.MoveML > farTimes*ml, haveML: ml * math.Exp(x.Change)}
	return []Fault{f}
}

// smallShare is the share of the usual size of a drink below which to pour less is no remedy: it is
// something else that there is too little of. Judged.
const smallShare = 0.5

// outrun tells too much of a pour as too little of the largest other one, if the drink would be
// hardly half as large as drinks of its kind with what goes with the rest.
func outrun(s *flavor.Spec, x *weigh.Uneven, build *weigh.Build) (Fault, bool) {
	all := s.VolumeML()
	ml, _ := makeup.SameBottle(s, s.IndexOf(x.Profile))
	if x.Change >= 0 || s.Service != flavor.Long || all-ml*-math.Expm1(x.Change) >= smallShare*build.UsualML(build.Amounts()) {
		return Fault{}, false
	}
	var most *flavor.Pour
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Profile != x.Profile && (most == nil || p.ML > most.ML) {
			most = p
		}
	}
	if most == nil {
		return Fault{}, false
	}
	f := Fault{Axis: ratio.Long, Odds: 1, Profile: most.Profile, Deviation: math.Max(leastDeviation, threshold.JND(ratio.Long, x.Change))}
	f.MoveML = most.ML * math.Expm1(-x.Change)
	f.poured = poured{spec: s, pour: most, far: f.MoveML > farTimes*most.ML, beside: x.Profile}
	return f, true
}
