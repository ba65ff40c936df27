package counting

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/tongue"
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
		if a < leastOfMany && math.Abs(a-2.5) > partsOfWhole {
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

// unitAlone reads the unit of a draft in which no jigger pour has one: ounces
// where all are small, millilitres where they are large, parts where they are
// Whole and a drink of so many ounces would not fit its glass.
func (r *reader) unitAlone(open []*Task) (flavor.Unit, string) {
	most, all, base, poured := 0.0, 0.0, 0.0, 0.0
	whole, comma := true, false
	if n := partsOfOne(open); n > 0 {
		for _, t := range open {
			t.Amount *= n
			t.Notes = append(t.Notes, "“"+t.Line.Asked+"” is read as "+measure.FormatAmount(math.Round(t.Amount), flavor.PartUnit))
		}
		return flavor.PartUnit, ""
	}
	for _, t := range open {
		most = max(most, t.Amount)
		poured += t.Amount
		whole, comma = whole && t.Whole(), comma || t.Line.Comma
		if t.Class().Part() == flavor.PartBase {
			base += t.Amount
		}
		if t.Class().Part() != flavor.PartLength && !t.Line.After {
			all += t.Amount
		}
	}
	ounces := most <= MostOunces && base <= mostBase && all <= mostAll
	centilitres := comma && poured*measure.CentilitreML >= leastShort && poured*measure.CentilitreML <= mostShort
	switch {
	case most >= LeastMillis && !(centilitres && most <= mostCentis):
		return flavor.Millilitre, ""
	case most <= mostForeign && poured*measure.CentilitreML >= leastShort && (foreign(open) && (comma || !ounces) || r.inHalves(open)):
		return flavor.Centilitre, ""
	case centilitres && !ounces: // who writes a decimal comma measures metric
		return flavor.Centilitre, ""
	case centilitres:
		return "", "it may be centilitres or ounces"
	case ounces && !(whole && base >= mostBase && len(open) > 1):
		return flavor.Ounce, ""
	case whole && len(open) > 1:
		return flavor.PartUnit, ""
	case most > MostOunces:
		return "", "it is too much in ounces and too little in millilitres"
	}
	return "", "in ounces the drink would be very large"
}
