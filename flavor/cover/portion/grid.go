// Package portion knows which amounts a hand can pour: of a substitute in place of what
// is missing, and one step more or less of what stays.
package portion

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/measure"
)

// Amount is one amount that a hand can pour.
type Amount struct {
	Value float64
	Unit  flavor.Unit
	ML    float64
}

// Of returns the amount of p as a pour of its own.
func (a Amount) Of(p *flavor.Profile) flavor.Pour {
	return flavor.Pour{Profile: p, Amount: a.Value, Unit: a.Unit, ML: a.ML,
		Match: flavor.Match{Asked: p.Name, How: flavor.MatchExact}}
}

// Most that a substitute may be, beyond what it replaces.
const (
	mostDashes  = 6
	mostDrops   = 10
	mostPinches = 4
	mostPieces  = 3
	mostBerries = 8
	berryML     = 20.0 // a strawberry is as much
	mostGrams   = 12
	spareML     = 15.0 // room for a weaker substitute
	spareFactor = 2.0
)

// leastML is about the least that a jigger measures, in mL; below it is the barspoon.
const leastML = 7.0

// traceML is the mL up to which something is poured by the dash or rinses a glass, and
// traceDashes the most dashes of what is usually poured by more.
const (
	traceML     = 3.0
	traceDashes = 3
)

// Grid is the amounts that a bartender would pour in place of what is missing.
// Liquids share one list: their units do not depend on what is in them.
type Grid struct {
	liquid, dashes []Amount
	pieces         int // most of them
	goneML         float64
}

// NewGrid returns the grid for what is missing: its mL, how many pieces of it went, 0 if
// it was poured otherwise, and the unit that liquids are poured in.
//
// Where a trace went, up to [traceML], a liquid may be poured by the dash too; where drops
// went, what is strong is poured by the drop too.
func NewGrid(missingML float64, pieces int, unit flavor.Unit, drops bool) *Grid {
	g := &Grid{goneML: missingML, pieces: max(mostPieces, pieces+mostPieces), dashes: amountsIn(flavor.Dash, nil, measure.JiggerMarks(flavor.Dash, 1, mostDashes))}
	if missingML <= traceML {
		g.liquid = slices.Clone(g.dashes[:traceDashes])
	}
	if drops {
		g.dashes = slices.Concat(amountsIn(flavor.Drop, nil, whole(mostDrops)), g.dashes)
	}
	g.liquid = append(g.liquid, amountsIn(flavor.Barspoon, nil, []float64{1})...)
	per, _ := measure.MLPerUnit(unit, nil)
	g.liquid = append(g.liquid, amountsIn(unit, nil, measure.JiggerMarks(unit, leastML/per, (missingML*spareFactor+spareML)/per))...)
	return g
}

// amountsIn returns amounts of a unit, for a profile whose own yields may set what
// the unit gives; nil stands for any liquid.
func amountsIn(unit flavor.Unit, p *flavor.Profile, values []float64) []Amount {
	per, ok := measure.MLPerUnit(unit, p)
	if !ok || per <= 0 {
		return nil
	}
	out := make([]Amount, len(values))
	for i, n := range values {
		out[i] = Amount{n, unit, n * per}
	}
	return out
}

// Of returns the amounts of p, ascending: dashes of what is strong, pinches of dry salt, grams
// of sugar, pieces of what comes by the piece, else a barspoon and steps of the
// jigger. A sauce that is not strong, and egg out of its shell, go by the jigger.
func (g *Grid) Of(p *flavor.Profile) []Amount {
	switch p.Class.Measured() {
	case flavor.ByDash:
		if p.Class.Kin() == flavor.KinSavoury {
			return g.liquid
		}
		if measure.Dry(p) {
			return amountsIn(flavor.Pinch, p, whole(mostPinches))
		}
		if len(p.Yields) > 0 {
			return amountsIn(flavor.Dash, p, measure.JiggerMarks(flavor.Dash, 1, mostDashes))
		}
		return g.dashes
	case flavor.ByGram:
		return amountsIn(flavor.Gram, p, whole(mostGrams))
	case flavor.ByPiece:
		if len(p.Yields) == 0 {
			return nil
		}
		unit := p.Yields[0].Unit // the first is the usual one
		return amountsIn(unit, p, whole(max(g.pieces, g.piecesFor(p, unit))))
	}
	return g.liquid
}

// piecesFor returns how many pieces of p a hand counts out for as much as went: berries,
// where syrup is out, and neither whole fruits nor olives.
func (g *Grid) piecesFor(p *flavor.Profile, unit flavor.Unit) int {
	per, _ := measure.MLPerUnit(unit, p)
	if per <= 0 || per > berryML || role.Savoury(p) {
		return 0
	}
	return int(min(mostBerries, g.goneML/per))
}

// whole returns the numbers from one to most.
func whole(most int) []float64 {
	out := make([]float64, most)
	for i := range out {
		out[i] = float64(i + 1)
	}
	return out
}
