package balance

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
)

// Fault is one thing that is wrong with a draft.
type Fault struct {
	Axis      ratio.Axis
	High      bool    // there is too much of it
	Deviation float64 // in just-noticeable differences, positive
	PlusMinus float64 // the drink's own, in the same unit; 0 for what does not show in the ratio
	Odds      float64 // how probable it is that this, of all, went wrong; of a pour, whatever it is told by
	Then      bool    // the odds are those once the first fault is mended
	// Profile is the ingredient that the text names as poured too much or too
	// little; nil if it names none.
	Profile *flavor.Profile
	// Beyond says that there is more of the ingredient than good drinks carry,
	// whatever the ratio; Own, that proven drinks do pour it.
	Beyond, Own bool
	Method      technique.Flaw // empty if the method is not what is wrong
	Text        string         // see [tell]

	strange bool    // hardly any drink of its kind has the ingredient at all
	foreign bool    // and that by its character, whatever is sweet or sour
	grams   bool    // there is more alcohol in the glass than any drink of its kind has
	mostG   float64 // g of alcohol that drinks of its kind have at most, if grams
	byOdd   bool    // what makes too much of the whole is poured beyond habit too
	missing bool    // nothing in it brings what nearly all drinks like it have
	beside  bool    // and that is told by what they pour beside all that it has
	moveML  float64 // mL of the ingredient that are too much or too little; 0 if that is not told
	poured  poured  // how that is told, until it is
	mostML  float64 // mL of the ingredient that good drinks have at most, of a fault beyond habit
	usualML float64 // the same, in the middle

	with *flavor.Profile // what turns the ingredient, of a fault of method; nil if nothing does
	room float64         // share of the drink that goes into its glass; 0 if the glass is not what is wrong
}

// MaxFaults is how many faults are told.
const MaxFaults = 3

// What is not worth calling a fault: less than a taster notices, an axis that
// hardly explains how far out the drink is, or one that hardly went wrong.
const (
	leastDeviation = 1.0
	leastGain      = 0.10
	leastOdds      = 0.02
)

// faultsOf lists what is worth telling: how the drink is made, what it carries
// beyond habit, what is wrong with its ratio, and what is out of all bounds.
// What is wrong with the ratio is told of rest, the draft without what it carries
// beyond habit: brine that swamps a drink makes nothing else in it too much. None
// speaks against one before it.
func faultsOf(s *flavor.Spec, j *weigh.Judgement, rest judged, build *weigh.Build) []Fault {
	var out []Fault
	bounds := boundFaults(s, j)
	first := 0 // without its base nothing else in a drink can be judged
	for first < len(bounds) && bounds[first].forgotten() {
		first++
	}
	var odd []Fault // of the whole, by a pour that is odd: before the ratio, which it spoils
	for _, f := range bounds[first:] {
		if f.byOdd {
			odd = append(odd, f)
		}
	}
	carried := beyondFaults(s, j)
	ratios := slices.DeleteFunc(ratioFaults(rest.spec, rest.judgement), func(f Fault) bool { return broughtBack(s, j, carried, &f) })
	if j.Together && len(j.Beyond) > 0 && j.RatioEdges() > slices.MaxFunc(j.Beyond, byEdges).Edges {
		carried, ratios = ratios, carried
	}
	if uneven := unevenFaults(s, j); j.Uneven.Told >= j.RatioEdges() && j.Uneven.Told >= j.Uneven.Edges {
		ratios = slices.Concat(uneven, ratios)
	} else {
		ratios = slices.Concat(ratios, uneven)
	}
	made := slices.DeleteFunc(methodFaults(s, j), func(f Fault) bool { // to shake what does not belong in it mends nothing
		return f.Method == technique.Unshaken && slices.ContainsFunc(carried, func(o Fault) bool { return o.foreign && o.Profile == f.Profile })
	})
	for _, f := range slices.Concat(made, bounds[:first], carried, odd, ratios, bounds[first:]) {
		for i := range out {
			if f.grams && out[i].Axis == f.Axis && out[i].High {
				out[i].grams, out[i].mostG = true, f.mostG
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
		ml, _ := makeup.SameBottle(s, indexOf(s, o.Profile))
		return o.Own && makeup.PerML(o.Profile)[f.Axis]*ml > broughtShare*j.Equivalents[f.Axis]
	})
}

// lacking says what may be wrong with a draft of which nothing else can be told: what
// proven drinks pour beside all that it has, else the likeliest cause however unsure it is,
// else what strays farthest.
func lacking(s *flavor.Spec, j *weigh.Judgement, rest judged, build *weigh.Build) []Fault {
	for _, c := range build.Forgotten().Companions(1) {
		if c.Like >= leastAlike && !c.Profile.Class.Free() { // ice waters every drink
			f := Fault{Axis: axisFor(c.Profile), Odds: 1, Deviation: leastDeviation, missing: true, beside: true}
			f.Text = wording.Missing(c.Profile.Name)
			return []Fault{f}
		}
	}
	for _, p := range rest.judgement.Pulls {
		f := Fault{Axis: p.Axis, High: p.Change < 0, Odds: p.Odds, Deviation: math.Max(leastDeviation, JND(p.Axis, p.Change))}
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

// disagrees reports whether a fault says again, or denies, what another says: of
// an axis once, and never that there is too much and too little of one pour.
func (f *Fault) disagrees(o *Fault) bool {
	if f.Axis == o.Axis && f.Method == o.Method && (!f.Beyond || !o.Beyond) {
		return true
	}
	if f.missing && o.missing && o.Axis == ratio.Long {
		return true // what lengthens it may bring that too
	}
	return f.Profile != nil && f.Profile == o.Profile && f.High != o.High
}

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
			Deviation: JND(p.Axis, p.Change), PlusMinus: JND(p.Axis, spread[p.Axis])}
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
	slices.SortStableFunc(out, func(a, b Fault) int {
		return cmp.Or(compareBool(a.Then, b.Then), cmp.Compare(b.Odds, a.Odds))
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
		at := slices.IndexFunc(out, func(o Fault) bool { return o.moveML > 0 && f.moveML > 0 && o.Profile == f.Profile && o.High == f.High })
		switch {
		case at < 0:
			out = append(out, f)
		case f.ofItsPart() && !out[at].ofItsPart() && f.Then == out[at].Then:
			out[at] = f
		}
	}
	return out
}

// ofItsPart reports whether a fault tells of a pour by what the trade pours it for.
func (f *Fault) ofItsPart() bool { return f.Profile.Class.Part() == f.Axis.Part() }

// byTaste tells too much of a modifier, poured larger than all bases, by what it tastes
// of: that it is strong as well is the least of it.
func (f *Fault) byTaste(s *flavor.Spec, e *ratio.Equivalents) {
	if f.Axis != ratio.Strong || !f.High || f.Profile == nil || f.moveML <= 0 || f.Profile.Class.Part() != flavor.PartModifier {
		return
	}
	if ml, _ := makeup.SameBottle(s, indexOf(s, f.Profile)); ml <= baseOf(s) {
		return
	}
	taste := ratio.Sweet
	if f.Profile.Class.Kin() == flavor.KinBitter {
		taste = ratio.Bitter
	}
	brings := f.moveML * makeup.PerML(f.Profile)[taste]
	if brings <= 0 || brings >= e[taste] {
		return
	}
	f.Axis, f.Deviation = taste, math.Max(leastDeviation, JND(taste, math.Log1p(-brings/e[taste])))
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
