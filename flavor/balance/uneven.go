package balance

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/weigh"
)

// unevenFaults tells what is too much or too little to the rest of the draft, if its
// proportions are out.
func unevenFaults(s *flavor.Spec, j *weigh.Judgement) []Fault {
	x := &j.Uneven
	if x.Profile == nil || x.Edges < telling(j) {
		return nil
	}
	f := Fault{Axis: x.Axis(), High: x.Change < 0, Odds: 1, Profile: x.Profile}
	f.Deviation = math.Max(leastDeviation, JND(f.Axis, x.Change))
	ml, _ := makeup.SameBottle(s, indexOf(s, x.Profile))
	f.moveML = ml * math.Abs(math.Expm1(x.Change))
	f.poured = poured{spec: s, pour: largestPour(s, x.Profile), far: !f.High && f.moveML > farTimes*ml, haveML: ml * math.Exp(x.Change)}
	return []Fault{f}
}
