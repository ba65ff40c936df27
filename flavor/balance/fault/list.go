package fault

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
)

// Of lists what is worth telling of a draft that a set weighed: that it is no mixed drink, or how
// it is made, what it carries beyond habit, what is wrong with its ratio, and what is out of all
// bounds. What is wrong with the ratio is told of rest, the draft without what it carries beyond
// habit: brine that swamps a drink makes nothing else in it too much. None speaks against one
// before it.
func Of(s *flavor.Spec, j *weigh.Judgement, build *weigh.Build, set *weigh.Set) []Fault {
	if build.Straight() {
		return []Fault{{Axis: ratio.Aroma, Odds: 1, Deviation: leastDeviation, Text: wording.Straight}}
	}
	rest := within(s, j, set)
	var out []Fault
	bounds := boundFaults(s, j)
	first := 0 // without its base nothing else in a drink can be judged
	for first < len(bounds) && bounds[first].Forgotten() {
		first++
	}
	var odd []Fault // of the whole, by a pour that is odd: before the ratio, which it spoils
	for _, f := range bounds[first:] {
		if f.ByOdd {
			odd = append(odd, f)
		}
	}
	carried := beyondFaults(s, j)
	ratios := slices.DeleteFunc(ratioFaults(rest.spec, rest.judgement), func(f Fault) bool { return broughtBack(s, j, carried, &f) })
	if j.Together && len(j.Beyond) > 0 && j.RatioEdges() > slices.MaxFunc(j.Beyond, byEdges).Edges {
		carried, ratios = ratios, carried
	}
	if uneven := unevenFaults(s, j, build); j.Uneven.Told >= j.RatioEdges() && j.Uneven.Told >= j.Uneven.Edges {
		ratios = slices.Concat(uneven, ratios)
	} else {
		ratios = slices.Concat(ratios, uneven)
	}
	made := slices.DeleteFunc(methodFaults(s, j), func(f Fault) bool { // to shake what does not belong in it mends nothing
		return f.Method == technique.Unshaken && slices.ContainsFunc(carried, func(o Fault) bool { return o.Foreign && o.Profile == f.Profile })
	})
	for _, f := range slices.Concat(made, bounds[:first], carried, odd, ratios, bounds[first:]) {
		for i := range out {
			if f.Grams && out[i].Axis == f.Axis && out[i].High {
				out[i].Grams, out[i].MostG = true, f.MostG
			}
		}
		if len(out) < MaxFaults && !slices.ContainsFunc(out, func(o Fault) bool { return f.disagrees(&o) }) {
			out = append(out, f)
		}
	}
	if len(out) == 0 {
		return lacking(s, j, rest, build)
	}
	return out
}

// broughtShare is the share of an axis that a pour brings from which the draft lacks none of that
// beside too much of the pour. Judged.
const broughtShare = 0.3

// broughtBack reports whether a fault of the draft without what it carries beyond habit is that it
// has too little of an axis which that brings: to pour less of it is what makes the draft lack it.
func broughtBack(s *flavor.Spec, j *weigh.Judgement, carried []Fault, f *Fault) bool {
	if f.High || int(f.Axis) >= ratio.NumAxes {
		return false
	}
	return slices.ContainsFunc(carried, func(o Fault) bool {
		ml, _ := makeup.SameBottle(s, s.IndexOf(o.Profile))
		return o.Own && makeup.PerML(o.Profile)[f.Axis]*ml > broughtShare*j.Equivalents[f.Axis]
	})
}

// lacking says what may be wrong with a draft of which nothing else can be told: what
// proven drinks pour beside all that it has, else the likeliest cause however unsure it is,
// else what strays farthest.
func lacking(s *flavor.Spec, j *weigh.Judgement, rest judged, build *weigh.Build) []Fault {
	for _, c := range build.Forgotten().Companions(1) {
		if c.Like >= leastAlike && !c.Profile.Class.Free() { // ice waters every drink
			f := Fault{Axis: axisFor(c.Profile), Odds: 1, Deviation: leastDeviation, Missing: true, Beside: true}
			f.Text = wording.Missing(c.Profile.Name)
			return []Fault{f}
		}
	}
	for _, p := range rest.judgement.Pulls {
		f := Fault{Axis: p.Axis, High: p.Change < 0, Odds: p.Odds, Deviation: math.Max(leastDeviation, threshold.JND(p.Axis, p.Change))}
		if f.blame(rest.spec, rest.judgement, p) {
			return []Fault{f}
		}
	}
	return []Fault{{Axis: ratio.Aroma, Odds: 1, Deviation: leastDeviation, Text: wording.FarFromAll(j.Fits[0].Name)}}
}

// leastAlike is how like the draft the rest of proven drinks has to be for what they have
// beside it to be missing in it.
const leastAlike = 0.3

// axisFor is what a drink lacks that an ingredient is missing in.
func axisFor(p *flavor.Profile) ratio.Axis {
	for _, a := range []ratio.Axis{ratio.Strong, ratio.Sweet, ratio.Sour, ratio.Long} {
		if a.Part() == p.Class.Part() {
			return a
		}
	}
	return ratio.Aroma
}

func byEdges(x, y weigh.Beyond) int { return cmp.Compare(x.Edges, y.Edges) }

// telling is how far out something is, in edges, from where it is told.
func telling(j *weigh.Judgement) float64 {
	if j.Together {
		return weigh.TellingTogether
	}
	return 1
}
