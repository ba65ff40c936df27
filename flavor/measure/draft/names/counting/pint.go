package counting

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/gauge"
)

// Bars that write millilitres pour imperial pints and gills, others those of the United States.

// ImperialPintML is the imperial pint in mL (Weights and Measures Act 1985, Schedule 1: 0.56826125 dm³),
// and ImperialGillML a quarter of it.
const (
	ImperialPintML = 568.26125
	ImperialGillML = ImperialPintML / 4
)

// pints makes pints and gills beside millilitres imperial ones, and takes "pt" for a pint where it is
// no part.
func (r *reader) pints() {
	short := r.partsML() < leastShort
	for _, t := range r.tasks {
		l := t.Line
		if (short || r.inVolumes()) && l.Pt && t.Unit == flavor.PartUnit && t.byPint() {
			l.Measure, l.Many = "pint", l.Amount
			l.OwnSize(pintOz, flavor.Ounce)
			t.Amount, t.Unit = l.Amount, l.Unit
			t.SetUnit(t.Unit, "“"+l.Asked+"” is read as pints, as of the United States, of 16 oz; the imperial one is 568 ml")
			l.Sized = false
		}
		imperial := map[string]float64{"pint": ImperialPintML, "gill": ImperialGillML}[gauge.Own(l.Measure)]
		pub := imperial != 0 && r.halfPints()
		if imperial == 0 || l.Many == 0 || l.Sized || !pub && !r.metric(t) && !r.inCentilitres() {
			continue
		}
		one := gauge.Own(l.Measure)
		beside := "a " + one + " beside millilitres"
		if pub {
			beside = "half a pint of beer"
		}
		l.OwnSize(imperial, flavor.Millilitre)
		t.Amount, t.Unit, t.Notes = l.Amount, l.Unit, nil
		t.SetUnit(t.Unit, beside+" is taken by the imperial "+one+", "+measure.FormatAmount(imperial, flavor.Millilitre)+"; that of the United States is less")
	}
}

// halfPints reports whether all that a draft measures is half pints, some of them of beer or cider: pubs pour so
// that draw imperial ones. Common practice, no source.
func (r *reader) halfPints() bool {
	drawn := false
	for _, t := range r.tasks {
		switch gauge.Own(t.Line.Measure) {
		case "pint":
			if t.Line.Pt || !(t.Line.Many == halfPint || t.Line.Many == 0 && t.Line.Sized) {
				return false
			}
			p := t.Base.Profile
			drawn = drawn || p != nil && (p.Class == flavor.ClassBeer || p.Class == flavor.ClassCider)
		default:
			if t.Unit.Jigger() {
				return false
			}
		}
	}
	return drawn
}

const halfPint = 0.5

// pintOz is a pint of the United States in oz.
const pintOz = 16.0

// partsML is what all parts of a draft come to in mL.
func (r *reader) partsML() float64 {
	sum := 0.0
	for _, t := range r.tasks {
		if t.Unit == flavor.PartUnit {
			sum += t.Amount * measure.PartML
		}
	}
	return sum
}

// inVolumes reports whether another pour states ounces or millilitres.
func (r *reader) inVolumes() bool {
	return slices.ContainsFunc(r.tasks, func(t *Task) bool { return t.Unit.Jigger() })
}

// byPint reports whether an ingredient is one that bars pour by the pint: sparkling, and no stronger than
// wine.
func (t *Task) byPint() bool {
	p := t.Base.Profile
	return p != nil && p.Carbonated && p.ABV.Value <= mostPintABV
}
