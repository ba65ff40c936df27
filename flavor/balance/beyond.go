package balance

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// beyondFaults tells what a draft carries beyond what good drinks do, the worst
// first, each ingredient once. What is poured by the jigger is a matter of the
// ratio first: it is told here only if the ratio is balanced.
func beyondFaults(s *flavor.Spec, j *template.Judgement) []Fault {
	worst := slices.Clone(j.Beyond)
	slices.SortStableFunc(worst, func(x, y template.Beyond) int { return cmp.Compare(y.Edges, x.Edges) })
	var out []Fault
	for i := range worst {
		x := &worst[i]
		if x.Edges < 1 || j.Ratio < template.BalancedFrom && ofRatio(x) || slices.ContainsFunc(out, func(f Fault) bool { return f.Profile == x.Profile }) {
			continue
		}
		f := Fault{Axis: x.Axis(), High: true, Odds: 1, Profile: x.Profile, Beyond: true}
		f.Deviation = math.Max(leastDeviation, JND(f.Axis, math.Log(x.Amount/math.Max(x.Most, 1e-9))))
		f.Text = beyondText(s, x)
		out = append(out, f)
	}
	return out
}

// beyondText says how much good drinks pour at most, or of which sense the pour
// brings too much.
func beyondText(s *flavor.Spec, x *template.Beyond) string {
	pour := largestPour(s, x.Profile)
	ml, _ := sameBottle(s, indexOf(s, x.Profile))
	most := ml * x.Most / x.Amount
	return fmt.Sprintf("too much %s: drinks like this have at most about %s of it", x.Profile.Name, amountNear(most, pour))
}

func indexOf(s *flavor.Spec, p *flavor.Profile) int {
	return slices.IndexFunc(s.Pours, func(o flavor.Pour) bool { return o.Profile == p })
}

func largestPour(s *flavor.Spec, p *flavor.Profile) *flavor.Pour {
	var out *flavor.Pour
	for i := range s.Pours {
		if o := &s.Pours[i]; o.Profile == p && (out == nil || o.ML > out.ML) {
			out = o
		}
	}
	return out
}

// ofRatio reports whether more of an ingredient shows in the ratio.
func ofRatio(x *template.Beyond) bool {
	switch x.Profile.Class.Part() {
	case flavor.PartBase, flavor.PartSweetener, flavor.PartSour, flavor.PartLength:
		return true
	}
	return false
}
