package cover

import (
	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// amount is one amount that a hand can pour.
type amount struct {
	value float64
	unit  flavor.Unit
	ml    float64
}

// Most that a substitute may be, beyond what it replaces.
const (
	mostDashes  = 6
	mostPieces  = 3
	spareML     = 15.0 // room for a weaker substitute
	spareFactor = 2.0
)

// amountsOf returns the amounts of p that a bartender would pour in place of
// missingML, ascending: dashes of what is strong, pieces of what has yields,
// else a barspoon and steps of the jigger.
func amountsOf(p *flavor.Profile, missingML float64, system measure.System) []amount {
	var out []amount
	add := func(value float64, unit flavor.Unit) {
		per, ok := measure.MLPerUnit(unit, p)
		if ok && per > 0 {
			out = append(out, amount{value, unit, value * per})
		}
	}
	switch p.Class {
	case flavor.ClassCocktailBitters, flavor.ClassTincture, flavor.ClassSaline:
		for n := 1.0; n <= mostDashes; n++ {
			add(n, flavor.Dash)
		}
		return out
	case flavor.ClassSugar:
		for n := 1.0; n <= 12; n++ {
			add(n, flavor.Gram)
		}
		return out
	case flavor.ClassFreshHerb, flavor.ClassFruit, flavor.ClassSpice:
		for _, y := range p.Yields {
			for n := 1.0; n <= mostPieces; n++ {
				add(n, y.Unit)
			}
			return out // the first unit listed is the usual one
		}
		return nil
	}
	most := missingML*spareFactor + spareML
	add(1, flavor.Barspoon)
	unit, step := flavor.Ounce, 0.25
	if system == measure.Metric {
		unit, step = flavor.Millilitre, 7.5
		if per := 5.0; most >= per {
			add(per, unit)
		}
	}
	for n := step; ; n += step {
		per, ok := measure.MLPerUnit(unit, p)
		if !ok || n*per > most {
			return out
		}
		add(n, unit)
	}
}
