package fault

import (
	"cmp"
	"counterpour/flavor/balance/change"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/makeup"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// bearer is an ingredient that brings an axis, in however many pours.
type bearer struct {
	pour *flavor.Pour // the largest of it
	ml   float64      // of all its pours
	per  float64      // of the axis, in a millilitre
	lead bool         // bringing the axis is its part in a drink
}

// bearersOf returns the ingredients that bring an axis: those whose part in a
// drink it is before the others, those that bring more of it first.
func bearersOf(s *flavor.Spec, a ratio.Axis) []bearer {
	var out []bearer
	for i := range s.Pours {
		p := &s.Pours[i]
		b := bearer{pour: p, per: makeup.PerML(p.Profile)[a], lead: leadsIn(p.Profile, a)}
		var first bool
		if b.ml, first = makeup.SameBottle(s, i); !first || b.per < leastPer {
			continue
		}
		for k := range s.Pours {
			if o := &s.Pours[k]; o.Profile.ID == p.Profile.ID && o.ML > b.pour.ML {
				b.pour = o
			}
		}
		out = append(out, b)
	}
	slices.SortStableFunc(out, func(x, y bearer) int {
		switch {
		case x.lead && !y.lead:
			return -1
		case y.lead && !x.lead:
			return 1
		}
		return cmp.Compare(y.per*y.ml, x.per*x.ml)
	})
	return out
}

// leadsIn reports whether bringing an axis is the part of an ingredient in a drink: of
// modifiers only what is bitter is moved for its bitterness.
func leadsIn(p *flavor.Profile, a ratio.Axis) bool {
	return p.Class.Part() == a.Part() && (a != ratio.Bitter || p.Class.Kin() == flavor.KinBitter)
}

// leastPer is the least of an axis, in a millilitre, that an ingredient is
// said to bring.
const leastPer = 0.05

// against is the axis that a bartender weighs another one by.
func against(a ratio.Axis) ratio.Axis {
	switch a {
	case ratio.Sweet:
		return ratio.Sour
	case ratio.Sour:
		return ratio.Sweet
	}
	return ratio.Strong
}

// mostTimes is how many times its own pour an ingredient is asked for more, unless
// bringing the axis is its part in the drink; from farTimes on there is far too little
// of it, and a figure would say no more.
const (
	mostTimes = 1.5
	farTimes  = 3.0
)

// mostOfDrink is the share of a drink from which nobody asks for more of a pour, unless
// bringing the axis is its part.
const mostOfDrink = 0.5

// blamed returns the first bearer that can answer for so many mL of an axis, in a drink
// of volume mL.
func blamed(bearers []bearer, high bool, ml, volume float64) (bearer, bool) {
	for _, b := range bearers {
		shift := ml / b.per
		if high && shift < b.ml || !high && (b.lead || shift <= mostTimes*b.ml && b.ml < mostOfDrink*volume) {
			return b, true
		}
	}
	return bearer{}, false
}

// oddFirst brings to the front, of those that bring an axis, what is poured beyond
// habit, the worst first.
func oddFirst(bearers []bearer, j *weigh.Judgement) {
	odd := func(b *bearer) (worst float64) {
		for i := range j.Beyond {
			if x := &j.Beyond[i]; x.Profile == b.pour.Profile && x.Edges >= oddEdges {
				worst = math.Max(worst, x.Edges)
			}
		}
		return worst
	}
	slices.SortStableFunc(bearers, func(x, y bearer) int { return cmp.Compare(odd(&y), odd(&x)) })
}

// outgrownFirst brings to the front, of what makes a drink strong, the modifiers that are
// poured larger than all bases: those have slipped sooner.
func outgrownFirst(bearers []bearer, s *flavor.Spec, a ratio.Axis) {
	base := s.MLOf((*flavor.Profile).Base)
	if a != ratio.Strong || base <= 0 {
		return
	}
	turn := func(b *bearer) int {
		if b.pour.Profile.Class.Part() == flavor.PartModifier && b.ml > base {
			return 0
		}
		return 1
	}
	slices.SortStableFunc(bearers, func(x, y bearer) int { return cmp.Compare(turn(&x), turn(&y)) })
}

// oddEdges is from where on a pour is odd, though not beyond all habit.
const oddEdges = 0.25

// answerable returns the first bearer of an axis that a bartender would move for it:
// no seasoning, nor a splash.
func answerable(bearers []bearer, s *flavor.Spec) (bearer, bool) {
	const splash = 0.04
	for _, b := range bearers {
		switch b.pour.Profile.Class.Part() {
		case flavor.PartSeasoning, flavor.PartTexture:
			continue
		}
		if b.ml >= splash*s.VolumeML() {
			return b, true
		}
	}
	return bearer{}, false
}

// blame finds out which ingredient was poured wrong, by how much, and how that is told.
// It is false of what is not worth telling.
func (f *Fault) blame(s *flavor.Spec, j *weigh.Judgement, p weigh.Pull) bool {
	bearers := bearersOf(s, p.Axis)
	if p.Axis == ratio.Strong && !f.High && missesBase(s, j) {
		f.Text = wording.NoBase(j.Fits[0].Name)
		return true
	}
	if p.Axis == ratio.Sour && !f.High { // what a bartender adds is citrus, not more of a fruit that has a little acid
		bearers = slices.DeleteFunc(bearers, func(b bearer) bool { return !b.lead })
	}
	if len(bearers) == 0 {
		f.Text = lacks(j, p)
		return f.Text != ""
	}
	if f.High {
		oddFirst(bearers, j)
		outgrownFirst(bearers, s, p.Axis)
	}
	ml := j.Equivalents[p.Axis] * math.Abs(math.Expm1(p.Change))
	b, ok := blamed(bearers, f.High, ml, s.VolumeML())
	far := !ok || !f.High && ml/b.per > farTimes*b.ml
	if !ok {
		b, ok = answerable(bearers, s)
		ok = ok && (f.High || b.lead)
	}
	if !ok {
		f.Text = wording.Altogether(p.Axis, f.High, plainAmount(s, ml))
		return true
	}
	if !far && !change.Measured(s, ml/b.per, b.pour) {
		return false
	}
	f.Profile, f.poured = b.pour.Profile, poured{spec: s, pour: b.pour, far: far}
	if !far {
		f.MoveML = ml / b.per
	}
	if o := bearersOf(s, against(p.Axis)); len(o) > 0 && !o[0].pour.Profile.Is(b.pour.Profile) {
		f.poured.beside = o[0].pour.Profile
	}
	return true
}

// leastLikely is the probability of a family from which what a drink lacks of it is worth
// telling.
const leastLikely = 0.2

// lacks says that nothing brings an axis, empty if the family that has it is hardly
// likely.
func lacks(j *weigh.Judgement, p weigh.Pull) string {
	for i := range j.Fits {
		if f := &j.Fits[i]; f.ID == p.Family && f.Probability >= leastLikely {
			return wording.Lacks(p.Axis, f.Name)
		}
	}
	return ""
}

// missesBase reports whether a drink has no base and half of those made like it do.
func missesBase(s *flavor.Spec, j *weigh.Judgement) bool {
	return !s.HasPart(flavor.PartBase) && slices.ContainsFunc(j.Bounds, func(x weigh.OutOfBounds) bool {
		return x.Axis == ratio.Strong && !x.High
	})
}

// plainAmount says an amount of no pour in particular in the units of a spec.
func plainAmount(s *flavor.Spec, ml float64) string {
	if measure.SystemOf(s) == measure.Metric {
		return measure.FormatAmount(math.RoundToEven(math.Max(1, ml)), flavor.Millilitre)
	}
	const perOunce = 29.5735
	return measure.FormatAmount(math.Max(0.25, math.Round(ml/perOunce*4)/4), flavor.Ounce)
}

// Pours returns the places of the pours that a fault is about: the largest of the
// ingredient that it names, or all that bring the axis if it names none, of warmth
// those that are hot.
func (x *Fault) Pours(s *flavor.Spec) []int {
	at := func(p *flavor.Pour) int {
		for i := range s.Pours {
			if &s.Pours[i] == p {
				return i
			}
		}
		return -1
	}
	if x.Profile != nil {
		return []int{at(s.Largest(x.Profile))}
	}
	var out []int
	if x.Axis == ratio.Temperature { // what is hot makes it warmer, and less of it cooler
		for i := range s.Pours {
			if s.Pours[i].Warmth() == flavor.HeatHot {
				out = append(out, i)
			}
		}
	}
	if x.Axis < ratio.Axis(ratio.NumAxes) {
		for _, b := range bearersOf(s, x.Axis) {
			if b.lead || b.pour.Profile.Class.Movable() {
				out = append(out, at(b.pour))
			}
		}
	}
	return out
}
