package fault

import (
	"counterpour/flavor/balance/wording"
	"math"

	"counterpour/flavor"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/makeup"
	"counterpour/flavor/weigh"
)

// Misplaced says that an ingredient is out of place.
func Misplaced(s *flavor.Spec, p *flavor.Profile) Fault {
	const touch = 0.04 // of a drink; judged
	ml, _ := makeup.SameBottle(s, s.IndexOf(p))
	x := weigh.Beyond{Profile: p, Strange: true, Foreign: true, Amount: ml / s.VolumeML(), Usual: touch / 2, Most: touch, Edges: 1}
	f := Fault{Axis: x.Axis(), High: true, Odds: 1, Profile: p, Beyond: true, Strange: true, Foreign: true}
	f.Deviation = math.Max(leastDeviation, threshold.JND(f.Axis, math.Log(math.Max(x.Amount, touch)/touch)))
	f.Text = beyondText(s, &x)
	f.MostML, f.UsualML = mostML(ml, &x), atShare(ml, &x, x.Usual)
	return f
}

// Instead says that an ingredient is missing for which another is poured.
func Instead(p *flavor.Profile) Fault {
	return Fault{Axis: axisFor(p), Odds: 1, Deviation: leastDeviation, Missing: true, Beside: true, Text: wording.Missing(p.Name)}
}
