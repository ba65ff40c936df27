package counting

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/tongue"
)

// unitOf returns the unit of the bare numbers of a draft, or why it cannot be
// told.
func (r *reader) unitOf(open []*Task, stated []flavor.Unit) (flavor.Unit, string) {
	switch len(stated) {
	case 1:
		return stated[0], ""
	case 0:
		return r.unitAlone(open)
	}
	return "", "other lines are written in more than one"
}

// unfit says why a bare number cannot be in the unit of the draft; empty if it
// can.
func unfit(t *Task, u flavor.Unit) string {
	beside := "beside " + unitNames[u] + " it may be something else"
	a := t.Amount
	switch u {
	case flavor.Ounce:
		if a > MostOunces || a >= 1 && t.dosed() {
			return beside
		}
	case flavor.Millilitre:
		if t.Class() == flavor.ClassEgg && plural(t.Line.Name) && a < LeastMillis { // "5 eggs" beside a jigger of rum
			return beside
		}
		if a < leastOfMany && math.Abs(a-2.5) > partsOfWhole && !(a >= leastSweet && t.Class().Part() == flavor.PartSweetener && !t.Class().Solid()) {
			return beside
		}
	case flavor.Centilitre:
		if a > mostCentis {
			return beside
		}
	case flavor.PartUnit:
		if a > mostParts {
			return beside
		}
	}
	return ""
}

// leastSweet is from how many mL on a syrup is measured beside pours in millilitres, and not counted by the
// spoon; common practice.
const leastSweet = 3

// dosed reports whether the ingredient is one that bars count in dashes or drops, or
// rinse a glass with.
func (t *Task) dosed() bool { return t.Class().Dosed() }

// partsOfOne returns by what the amounts of a draft are whole, where they are fractions
// that make one drink together, as "2/3 gin, 1/3 lime cordial" do; 0 if they do not.
func partsOfOne(open []*Task) float64 {
	sum := 0.0
	for _, t := range open {
		sum += t.Amount
	}
	if len(open) < 2 || math.Abs(sum-1) > 0.02 {
		return 0
	}
	for n := 2.0; n <= mostParts; n++ {
		if !slices.ContainsFunc(open, func(t *Task) bool { return math.Abs(t.Amount*n-math.Round(t.Amount*n)) > 0.05 }) {
			return n
		}
	}
	return 0
}

// foreign reports whether the names of a draft are written in another tongue: where
// English is not, bars measure in centilitres; common practice.
func foreign(open []*Task) bool {
	return slices.ContainsFunc(open, func(t *Task) bool {
		return t.Base.Profile != nil && tongue.Foreign(t.Line.Name, t.Base.Profile.Name)
	})
}

// inHalves reports whether a name of the draft is written in a tongue whose bars measure
// in centilitres, and all amounts are whole or half ones: who measures in ounces pours
// quarters of them.
func (r *reader) inHalves(open []*Task) bool {
	return slices.ContainsFunc(r.tasks, func(t *Task) bool { return tongue.Continental(t.Line.Name) }) &&
		!slices.ContainsFunc(open, func(t *Task) bool { return math.Abs(t.Amount*2-math.Round(t.Amount*2)) > partsOfWhole })
}

// sums are the bare numbers of a draft taken together.
type sums struct {
	most   float64 // the largest
	poured float64 // all of them
	short  float64 // those that do not lengthen the drink
	base   float64 // those of spirits
	each   float64 // the largest of those
	whole  bool    // all are whole
	comma  bool    // one is written with a decimal comma
}

// sumOf adds up bare numbers.
func sumOf(open []*Task) sums {
	n := sums{whole: true}
	for _, t := range open {
		n.most = max(n.most, t.Amount)
		n.poured += t.Amount
		n.whole, n.comma = n.whole && t.Whole(), n.comma || t.Line.Comma
		if t.Class().Part() == flavor.PartBase {
			n.base += t.Amount
			n.each = max(n.each, t.Amount)
		}
		if t.Class().Part() != flavor.PartLength && !t.Line.After {
			n.short += t.Amount
		}
	}
	return n
}

// ounces reports whether all numbers are small enough to be ounces of one drink.
func (n *sums) ounces() bool {
	return n.most <= MostOunces && (n.base <= mostBase || n.blends()) && n.short <= mostAll
}

// blends reports whether the spirits are several that one drink may blend, in numbers that are
// not those of parts.
func (n *sums) blends() bool { return !n.whole && n.each <= mostOfEach && n.base <= mostBlend }

// fills reports whether the numbers, as centilitres, are a drink or more.
func (n *sums) fills() bool { return n.poured*measure.CentilitreML >= leastShort }

// centilitres reports whether the numbers may be centilitres of a short drink: who writes a decimal
// comma measures metric.
func (n *sums) centilitres() bool {
	return n.comma && n.fills() && n.poured*measure.CentilitreML <= mostShort
}

// inParts reads amounts that are fractions of one drink as whole parts; false if they are none.
func inParts(open []*Task) bool {
	n := partsOfOne(open)
	if n == 0 {
		return false
	}
	for _, t := range open {
		t.Amount *= n
		t.Notes = append(t.Notes, "“"+t.Line.Asked+"” is read as "+measure.FormatAmount(math.Round(t.Amount), flavor.PartUnit))
	}
	return true
}

// unitAlone reads the unit of a draft in which no jigger pour has one: ounces
// where all are small, millilitres where they are large, parts where they are
// whole and a drink of so many ounces would not fit its glass.
func (r *reader) unitAlone(open []*Task) (flavor.Unit, string) {
	if inParts(open) {
		return flavor.PartUnit, ""
	}
	n := sumOf(open)
	ounces, several := n.ounces(), len(open) > 1
	switch {
	case n.most >= LeastMillis && !(n.centilitres() && n.most <= mostCentis):
		return flavor.Millilitre, ""
	case n.most <= mostForeign && n.fills() && r.fromAbroad(open, &n):
		return flavor.Centilitre, ""
	case n.centilitres() && !ounces:
		return flavor.Centilitre, ""
	case n.centilitres():
		return "", "it may be centilitres or ounces"
	case ounces && !(n.whole && n.base >= mostBase && several):
		return flavor.Ounce, ""
	case n.whole && several:
		return flavor.PartUnit, ""
	case n.most > MostOunces:
		return "", "it is too much in ounces and too little in millilitres"
	}
	return "", "in ounces the drink would be very large"
}

// fromAbroad reports whether a draft is written where bars measure in centilitres.
func (r *reader) fromAbroad(open []*Task, n *sums) bool {
	return foreign(open) && (n.comma || !n.ounces()) || r.inHalves(open)
}
