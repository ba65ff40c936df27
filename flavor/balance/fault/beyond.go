package fault

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/makeup"
	"counterpour/flavor/measure"
	"counterpour/flavor/weigh"
)

// beyondFaults tells what a draft carries beyond what good drinks do, the worst
// first, each ingredient once. What is poured by the jigger is a matter of the
// ratio first: it is told here only if the ratio is balanced.
func beyondFaults(s *flavor.Spec, j *weigh.Judgement) []Fault {
	worst := slices.Clone(j.Beyond)
	for i := range worst { // what is strange in itself is told as that, whatever else it brings
		if x := &worst[i]; x.Strange {
			for k := range worst {
				if o := &worst[k]; o.Profile == x.Profile && !o.Strange {
					x.Edges, o.Edges = math.Max(x.Edges, o.Edges), 0
				}
			}
		}
	}
	slices.SortStableFunc(worst, func(x, y weigh.Beyond) int { return cmp.Compare(y.Edges, x.Edges) })
	var out []Fault
	for i := range worst {
		x := &worst[i]
		if x.Edges < telling(j) || j.Ratio < weigh.BalancedFrom && ofRatio(x) && !x.Strange ||
			slices.ContainsFunc(out, func(f Fault) bool { return f.Profile == x.Profile }) {
			continue
		}
		f := Fault{Axis: x.Axis(), High: true, Odds: 1, Profile: x.Profile, Beyond: true, Own: x.Own, Strange: x.Strange, Foreign: x.Foreign}
		f.Deviation = leastDeviation
		if x.Edges >= 1 {
			f.Deviation = math.Max(leastDeviation, threshold.JND(f.Axis, math.Log(x.Amount/math.Max(x.Most, leastAmount))))
		}
		f.Text = beyondText(s, x)
		poured, _ := makeup.SameBottle(s, s.IndexOf(x.Profile))
		f.MostML, f.UsualML = mostML(poured, x), atShare(poured, x, math.Min(x.Usual, x.Most))
		out = append(out, f)
	}
	return out
}

// judged is a draft and what is thought of it.
type judged struct {
	spec      *flavor.Spec
	judgement *weigh.Judgement
}

// within judges a draft with what it carries beyond habit taken back to what good
// drinks have in the middle, or left out if none pours it; the draft itself if it carries
// nothing so or nothing would be left of it.
func within(s *flavor.Spec, of *weigh.Judgement, set *weigh.Set) judged {
	beyond := beyondFaults(s, of)
	if len(beyond) == 0 || of.Together {
		return judged{s, of}
	}
	out := s.Clone()
	for _, f := range beyond {
		poured, _ := makeup.SameBottle(s, s.IndexOf(f.Profile))
		for i := range out.Pours {
			if p := &out.Pours[i]; p.Profile == f.Profile {
				share := f.UsualML / poured
				if !f.Own {
					share = 0
				}
				p.Amount, p.ML = p.Amount*share, p.ML*share
			}
		}
	}
	out.Pours = slices.DeleteFunc(out.Pours, func(p flavor.Pour) bool { return p.ML <= 0 })
	build, err := set.Prepare(&out)
	if err != nil {
		return judged{s, of}
	}
	judgement := build.Judge(build.Amounts())
	return judged{&out, &judgement}
}

// leastAmount and leastShare keep a ratio to nothing finite.
const (
	leastAmount = 1e-9
	leastShare  = 0.1
)

// ofRatio reports whether more of an ingredient shows in the ratio.
func ofRatio(x *weigh.Beyond) bool {
	if x.ByDose {
		return true
	}
	switch x.Profile.Class.Part() {
	case flavor.PartBase, flavor.PartSweetener, flavor.PartSour, flavor.PartLength:
		return true
	}
	return false
}

// beyondText says how much good drinks have of a pour at most.
func beyondText(s *flavor.Spec, x *weigh.Beyond) string {
	pour := s.Largest(x.Profile)
	ml, _ := makeup.SameBottle(s, s.IndexOf(x.Profile))
	poured := measure.FormatAmount(pour.Amount, pour.Unit)
	if ml > pour.ML { // it is poured more than once
		poured = change.AmountNear(s, ml, pour)
	}
	return wording.Beyond(x, &wording.Amounts{Poured: poured, Most: change.AmountNear(s, mostML(ml, x), pour), Usual: change.AmountNear(s, atShare(ml, x, x.Usual), pour)}, s.Method == flavor.Stir)
}

// mostML returns the mL at which a pour is the most of the drink that good drinks
// have of it, the rest of the drink as it is; of a sense, by how much it brings.
func mostML(ml float64, x *weigh.Beyond) float64 { return atShare(ml, x, x.Most) }

// atShare returns the mL at which a pour is so much of the drink as of it is said to be, the
// rest of the drink as it is; of a sense, by how much it brings.
func atShare(ml float64, x *weigh.Beyond, share float64) float64 {
	if x.Sense || x.Amount >= 1 || share >= 1 {
		return ml * math.Min(1, share/x.Amount)
	}
	rest := ml/x.Amount - ml
	return rest * share / (1 - share)
}
