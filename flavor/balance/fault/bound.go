package fault

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// boundFaults tells what no drink has.
func boundFaults(s *flavor.Spec, j *weigh.Judgement) []Fault {
	var out []Fault
	for _, x := range j.Bounds {
		if x.Edges < 1 {
			continue
		}
		f := Fault{Axis: x.Axis, High: x.High, Odds: 1, Text: wording.Bound(&x), Grams: x.Grams}
		if x.Grams {
			f.MostG = x.Bound
		}
		if x.Glass.Name != "" {
			f.Room = x.Bound / x.Amount
		}
		f.Deviation = math.Max(leastDeviation, threshold.JND(x.Axis, math.Log(math.Max(x.Amount, x.Bound*leastShare)/x.Bound)))
		switch {
		case x.High && x.Glass.Name == "" && (x.Axis == ratio.Volume || x.Grams) && oddPour(s, j, x.Axis) != nil:
			f.blameOdd(s, oddPour(s, j, x.Axis))
		case x.Axis == ratio.Volume && x.High:
			f.Profile = largestOf(s).Profile
		case x.Axis < ratio.Axis(ratio.NumAxes) && !x.High: // nothing in it is to blame
			f.Missing = true
		case x.Axis < ratio.Axis(ratio.NumAxes):
			if b := bearersOf(s, x.Axis); len(b) > 0 {
				f.Profile = b[0].pour.Profile
			}
		}
		out = append(out, f)
	}
	slices.SortStableFunc(out, func(a, b Fault) int {
		if a.Forgotten() != b.Forgotten() {
			if a.Forgotten() {
				return -1
			}
			return 1
		}
		return cmp.Compare(b.Deviation, a.Deviation)
	})
	return out
}

// blameOdd lays a fault of the whole to a pour that is odd, and tells too large a drink by
// what that pour tastes of: who drinks it notices that first.
func (f *Fault) blameOdd(s *flavor.Spec, odd *weigh.Beyond) {
	f.Profile, f.ByOdd = odd.Profile, !ofRatio(odd)
	if f.Axis == ratio.Volume {
		f.Axis, f.Text = odd.Axis(), beyondText(s, odd)
	}
}

// oddPour returns what is poured farthest beyond habit though not beyond all of it, but
// for what the ratio tells of, and of what is strong if it is strength that is asked for;
// nil if nothing is. Of the largest pour, which makes the drink too large, its taste may
// be odd though the ratio tells of the pour.
func oddPour(s *flavor.Spec, j *weigh.Judgement, a ratio.Axis) *weigh.Beyond {
	var worst *weigh.Beyond
	for i := range j.Beyond {
		x := &j.Beyond[i]
		tasted := a == ratio.Volume && x.Sense && !x.Level.OfRatio() && x.Profile == largestOf(s).Profile
		if x.Edges < oddEdges || ofRatio(x) && !tasted || a == ratio.Strong && x.Profile.ABV.Value <= 0 {
			continue
		}
		if worst == nil || x.Edges > worst.Edges {
			worst = x
		}
	}
	return worst
}

// largestOf returns the largest pour of all.
func largestOf(s *flavor.Spec) *flavor.Pour {
	out := &s.Pours[0]
	for i := range s.Pours {
		if s.Pours[i].ML > out.ML {
			out = &s.Pours[i]
		}
	}
	return out
}
