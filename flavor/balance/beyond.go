package balance

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/makeup"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
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
		f := Fault{Axis: x.Axis(), High: true, Odds: 1, Profile: x.Profile, Beyond: true, Own: x.Own, strange: x.Strange, foreign: x.Foreign}
		f.Deviation = leastDeviation
		if x.Edges >= 1 {
			f.Deviation = math.Max(leastDeviation, JND(f.Axis, math.Log(x.Amount/math.Max(x.Most, leastAmount))))
		}
		f.Text = beyondText(s, x)
		poured, _ := makeup.SameBottle(s, indexOf(s, x.Profile))
		f.mostML, f.usualML = mostML(poured, x), atShare(poured, x, math.Min(x.Usual, x.Most))
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
func (j *Judge) within(s *flavor.Spec, of *weigh.Judgement) judged {
	beyond := beyondFaults(s, of)
	if len(beyond) == 0 || of.Together {
		return judged{s, of}
	}
	out := s.Clone()
	for _, f := range beyond {
		poured, _ := makeup.SameBottle(s, indexOf(s, f.Profile))
		for i := range out.Pours {
			if p := &out.Pours[i]; p.Profile == f.Profile {
				share := f.usualML / poured
				if !f.Own {
					share = 0
				}
				p.Amount, p.ML = p.Amount*share, p.ML*share
			}
		}
	}
	out.Pours = slices.DeleteFunc(out.Pours, func(p flavor.Pour) bool { return p.ML <= 0 })
	build, err := j.set.Prepare(&out)
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
	pour := largestPour(s, x.Profile)
	ml, _ := makeup.SameBottle(s, indexOf(s, x.Profile))
	poured := measure.FormatAmount(pour.Amount, pour.Unit)
	if ml > pour.ML { // it is poured more than once
		poured = amountNear(s, ml, pour)
	}
	return wording.Beyond(x, &wording.Amounts{Poured: poured, Most: amountNear(s, mostML(ml, x), pour), Usual: amountNear(s, atShare(ml, x, x.Usual), pour)}, s.Method == flavor.Stir)
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

// amountNear says an amount of an ingredient in the unit that it is poured in or,
// where that is too coarse or too fine, in what a bartender takes instead.
func amountNear(s *flavor.Spec, ml float64, like *flavor.Pour) string {
	u := like.Unit
	per, ok := measure.MLPerUnit(u, like.Profile)
	switch {
	case ok && !fineUnit(u) && ml < measure.Step(u)*per:
		u = finestUnit(like.Profile, ml)
	case u == flavor.Dash && ml > mostFineML && like.Profile.Class.Part() != flavor.PartSeasoning:
		u = flavor.Ounce
		if measure.SystemOf(s) == measure.Metric {
			u = flavor.Millilitre
		}
	}
	u, amount := measure.Handy(ml, u, like.Profile)
	return measure.FormatAmount(amount, u)
}

// fineUnit reports whether a unit is one of seasoning.
func fineUnit(u flavor.Unit) bool {
	switch u {
	case flavor.Dash, flavor.Drop, flavor.Pinch, flavor.Leaf, flavor.Slice, flavor.Piece, flavor.Sprig, flavor.Gram:
		return true
	}
	return false
}

// finestUnit is the unit for a little of an ingredient: what its profile has a
// yield for, the barspoon for what is some millilitres or comes from no dasher, else the
// dash.
func finestUnit(p *flavor.Profile, ml float64) flavor.Unit {
	if u, ok := p.UsualUnit(flavor.Barspoon); ok && u != flavor.Gram && u != flavor.Barspoon {
		return u
	}
	dashes := p.Class.Part() == flavor.PartSeasoning || p.Class.Part() == flavor.PartModifier
	if per, ok := measure.MLPerUnit(flavor.Barspoon, p); ok && (ml >= per || !dashes) {
		return flavor.Barspoon
	}
	return flavor.Dash
}

// boundFaults tells what no drink has.
func boundFaults(s *flavor.Spec, j *weigh.Judgement) []Fault {
	var out []Fault
	for _, x := range j.Bounds {
		if x.Edges < 1 {
			continue
		}
		f := Fault{Axis: x.Axis, High: x.High, Odds: 1, Text: wording.Bound(&x), grams: x.Grams}
		if x.Grams {
			f.mostG = x.Bound
		}
		if x.Glass.Name != "" {
			f.room = x.Bound / x.Amount
		}
		f.Deviation = math.Max(leastDeviation, JND(x.Axis, math.Log(math.Max(x.Amount, x.Bound*leastShare)/x.Bound)))
		switch {
		case x.High && x.Glass.Name == "" && (x.Axis == ratio.Volume || x.Grams) && oddPour(s, j, x.Axis) != nil:
			f.blameOdd(s, oddPour(s, j, x.Axis))
		case x.Axis == ratio.Volume && x.High:
			f.Profile = largestOf(s).Profile
		case x.Axis < ratio.Axis(ratio.NumAxes) && !x.High: // nothing in it is to blame
			f.missing = true
		case x.Axis < ratio.Axis(ratio.NumAxes):
			if b := bearersOf(s, x.Axis); len(b) > 0 {
				f.Profile = b[0].pour.Profile
			}
		}
		out = append(out, f)
	}
	slices.SortStableFunc(out, func(a, b Fault) int {
		if a.forgotten() != b.forgotten() {
			if a.forgotten() {
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
	f.Profile, f.byOdd = odd.Profile, !ofRatio(odd)
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

// forgotten reports whether a fault is that nothing in the draft is there for strength,
// for sweetness or for acid, though drinks like it have it.
func (f *Fault) forgotten() bool {
	if f.High || f.Profile != nil {
		return false
	}
	return f.missing || f.Axis == ratio.Strong || f.Axis == ratio.Sweet || f.Axis == ratio.Sour
}

func indexOf(s *flavor.Spec, p *flavor.Profile) int {
	return slices.IndexFunc(s.Pours, func(o flavor.Pour) bool { return o.Profile == p })
}

// largestPour returns the largest pour of an ingredient.
func largestPour(s *flavor.Spec, p *flavor.Profile) *flavor.Pour {
	var out *flavor.Pour
	for i := range s.Pours {
		if o := &s.Pours[i]; o.Profile == p && (out == nil || o.ML > out.ML) {
			out = o
		}
	}
	return out
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
