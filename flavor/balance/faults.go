package balance

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// Fault is one axis that pulls a draft out of its family.
type Fault struct {
	Axis      template.Axis
	High      bool    // there is too much of it
	Deviation float64 // in just-noticeable differences, positive
	PlusMinus float64 // the drink's own, in the same unit
	Odds      float64 // how probable it is that this axis, of all, went wrong
	Then      bool    // the odds are those once the first fault is mended
	Beyond    bool    // there is more of the pour than good drinks carry, whatever the ratio
	// Profile is the ingredient that the text names as poured too much or too
	// little; nil if it names none.
	Profile *flavor.Profile
	Text    string
}

// What is not worth calling a fault: less than a taster notices, an axis that
// hardly explains how far out the drink is, or one that hardly went wrong.
const (
	leastDeviation = 1.0
	leastGain      = 0.10
	leastOdds      = 0.02
)

// faultsOf lists what is worth telling: what explains the drink alone, the
// likeliest cause first, then what would still be wrong with the first mended.
// Nothing within the drink's own plus-or-minus is told.
func faultsOf(s *flavor.Spec, j *template.Judgement) []Fault {
	spread := axisSpreads(s, &j.Equivalents)
	out := beyondFaults(s, j)
	for i, p := range slices.Concat(j.Pulls, j.Then) {
		f := Fault{Axis: p.Axis, High: p.Change < 0, Odds: p.Odds, Then: i >= len(j.Pulls),
			Deviation: JND(p.Axis, p.Change), PlusMinus: JND(p.Axis, spread[p.Axis])}
		told := slices.ContainsFunc(out, func(o Fault) bool { return o.Axis == f.Axis })
		if told || p.Gain < leastGain || p.Odds < leastOdds || f.Deviation < leastDeviation || f.Deviation <= f.PlusMinus {
			continue
		}
		f.Profile, f.Text = faultText(s, j, p)
		out = append(out, f)
	}
	return out
}
