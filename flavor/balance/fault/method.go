package fault

import (
	"cmp"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
)

// methodFaults tells what is wrong with how a drink is made, the worst first.
func methodFaults(s *flavor.Spec, j *weigh.Judgement) []Fault {
	var out []Fault
	for _, x := range j.Method {
		if x.Edges < 1 || slices.ContainsFunc(out, func(f Fault) bool { return f.Method == x.Flaw }) {
			continue
		}
		out = append(out, Fault{Axis: ratio.Method, High: !neglects(x.Flaw), Odds: 1, Deviation: leastDeviation * x.Edges,
			Profile: x.Profile, Method: x.Flaw, Text: wording.Method(s.Method, &x), With: x.With})
	}
	slices.SortStableFunc(out, func(a, b Fault) int { return cmp.Compare(b.Deviation, a.Deviation) })
	return out
}

// neglects reports whether a flaw is that something was not done.
func neglects(f technique.Flaw) bool {
	return f == technique.EggUnshaken || f == technique.Unshaken || f == technique.Uniced
}

// Curdled lists the faults that an ingredient curdles milk, or is what curdles.
func Curdled(s *flavor.Spec, p *flavor.Profile, j *weigh.Judgement) []Fault {
	return slices.DeleteFunc(methodFaults(s, j), func(f Fault) bool {
		return f.Method != technique.Curdled || f.With != p && f.Profile != p
	})
}
