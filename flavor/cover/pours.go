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
	mostGrams   = 12
	spareML     = 15.0 // room for a weaker substitute
	spareFactor = 2.0
)

// grid is the amounts that a bartender would pour in place of what is missing.
// Liquids share one list: their units do not depend on what is in them.
type grid struct {
	liquid, dashes []amount
}

func newGrid(missingML float64, system measure.System) *grid {
	g := &grid{dashes: amountsIn(flavor.Dash, nil, 1, mostDashes, 1)}
	g.liquid = amountsIn(flavor.Barspoon, nil, 1, 1, 1)
	most := missingML*spareFactor + spareML
	unit, step := flavor.Ounce, 0.25
	if system == measure.Metric {
		unit, step = flavor.Millilitre, 7.5
		g.liquid = append(g.liquid, amountsIn(unit, nil, 5, 5, 1)...)
	}
	per, _ := measure.MLPerUnit(unit, nil)
	g.liquid = append(g.liquid, amountsIn(unit, nil, step, most/per, step)...)
	return g
}

// amountsIn lists from, from + step … to of a unit, for a profile whose own
// yields may set what the unit gives; nil stands for any liquid.
func amountsIn(unit flavor.Unit, p *flavor.Profile, from, to, step float64) []amount {
	per, ok := measure.MLPerUnit(unit, p)
	if !ok || per <= 0 {
		return nil
	}
	out := make([]amount, 0, max(0, int((to-from)/step)+1))
	for n := from; n <= to; n += step {
		out = append(out, amount{n, unit, n * per})
	}
	return out
}

// amountsOf returns the amounts of p, ascending: dashes of what is strong,
// pieces of what has yields, else a barspoon and steps of the jigger.
func (g *grid) amountsOf(p *flavor.Profile) []amount {
	switch p.Class {
	case flavor.ClassCocktailBitters, flavor.ClassTincture, flavor.ClassSaline:
		if len(p.Yields) > 0 {
			return amountsIn(flavor.Dash, p, 1, mostDashes, 1)
		}
		return g.dashes
	case flavor.ClassSugar:
		return amountsIn(flavor.Gram, p, 1, mostGrams, 1)
	case flavor.ClassFreshHerb, flavor.ClassFruit, flavor.ClassSpice:
		if len(p.Yields) == 0 {
			return nil
		}
		return amountsIn(p.Yields[0].Unit, p, 1, mostPieces, 1) // the first unit is the usual one
	}
	return g.liquid
}
