package cover

import (
	"counterpour/flavor"
	"counterpour/flavor/cover/search"
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

// leastML is about the least that a jigger measures, in mL; below it is the barspoon.
const leastML = 7.0

// grid is the amounts that a bartender would pour in place of what is missing.
// Liquids share one list: their units do not depend on what is in them.
type grid struct {
	liquid, dashes []amount
	pieces         int // most of them
}

func newGrid(missingML float64, pieces int, unit flavor.Unit) *grid {
	g := &grid{pieces: max(mostPieces, pieces+mostPieces), dashes: amountsIn(flavor.Dash, nil, measure.JiggerMarks(flavor.Dash, 1, mostDashes))}
	g.liquid = amountsIn(flavor.Barspoon, nil, []float64{1})
	per, _ := measure.MLPerUnit(unit, nil)
	g.liquid = append(g.liquid, amountsIn(unit, nil, measure.JiggerMarks(unit, leastML/per, (missingML*spareFactor+spareML)/per))...)
	return g
}

// amountsIn returns amounts of a unit, for a profile whose own yields may set what
// the unit gives; nil stands for any liquid.
func amountsIn(unit flavor.Unit, p *flavor.Profile, values []float64) []amount {
	per, ok := measure.MLPerUnit(unit, p)
	if !ok || per <= 0 {
		return nil
	}
	out := make([]amount, len(values))
	for i, n := range values {
		out[i] = amount{n, unit, n * per}
	}
	return out
}

// amountsOf returns the amounts of p, ascending: dashes of what is strong, grams
// of sugar, pieces of what comes by the piece, else a barspoon and steps of the
// jigger. A sauce that is not strong, and egg out of its shell, go by the jigger.
func (g *grid) amountsOf(p *flavor.Profile) []amount {
	switch p.Class.Measured() {
	case flavor.ByDash:
		if p.Class.Kin() == flavor.KinSavoury {
			return g.liquid
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
		return amountsIn(p.Yields[0].Unit, p, whole(g.pieces)) // the first unit is the usual one
	}
	return g.liquid
}

// whole returns the numbers from one to most.
func whole(most int) []float64 {
	out := make([]float64, most)
	for i := range out {
		out[i] = float64(i + 1)
	}
	return out
}

// leastShare is the share of what went that several parts pour together at the
// least: a barspoon of each stands for no ounce.
const leastShare = 0.6

// leadShare is the share of two spirits for one that the leading one pours at the least:
// the other seasons it, as a little smoky malt does a tequila in place of a mezcal.
const leadShare = 0.75

// led reports whether of several spirits that stand for one the first leads, unless
// they are what the trade or the house pours together.
func (t *task) led(x *search.Filling) bool {
	if len(x.Parts) < 2 || len(t.removed) > 1 || t.gapML < baseML || !t.spiritsAlone(x) || t.isKnown(x) {
		return true
	}
	var most, all float64
	for k, i := range x.Parts {
		ml := t.cands[i].amounts[x.Amounts[k]].ml
		most, all = max(most, ml), all+ml
	}
	return most >= leadShare*all
}

// isKnown reports whether the trade or the house pours the parts of a filling together.
func (t *task) isKnown(x *search.Filling) bool {
	key := search.Combine(x.Parts...)
	_, known := t.known[key]
	return known && !t.oneByOne[key]
}

// byCustom reports whether the trade or the house pours a filling for what went.
// What came back in this house is no custom of it.
func (t *task) byCustom(x *search.Filling) bool {
	if t.cameBack[search.Combine(x.Parts...)] {
		return false
	}
	return len(x.Parts) == 1 && t.custom[x.Parts[0]] || t.isKnown(x)
}

// enough reports whether several parts pour about as much as went. What went by the
// piece, to season or to sweeten is made up for by strength.
func (t *task) enough(x *search.Filling) bool {
	if !t.led(x) {
		return false
	}
	was := t.removed[0].Class
	if len(x.Parts) < 2 || len(t.removed) > 1 || t.gapML < seasoningML || was.Solid() || was.Kin() == flavor.KinSweetener {
		return true
	}
	var ml float64
	for k, i := range x.Parts {
		ml += t.cands[i].amounts[x.Amounts[k]].ml
	}
	return ml >= leastShare*t.gapML
}
