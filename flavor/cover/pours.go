package cover

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
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
	mostBerries = 8
	berryML     = 20.0 // a strawberry is as much
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
	goneML         float64
}

func newGrid(missingML float64, pieces int, unit flavor.Unit) *grid {
	g := &grid{goneML: missingML, pieces: max(mostPieces, pieces+mostPieces), dashes: amountsIn(flavor.Dash, nil, measure.JiggerMarks(flavor.Dash, 1, mostDashes))}
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
		unit := p.Yields[0].Unit // the first is the usual one
		return amountsIn(unit, p, whole(max(g.pieces, g.piecesFor(p, unit))))
	}
	return g.liquid
}

// piecesFor returns how many pieces of p a hand counts out for as much as went: berries,
// where syrup is out, and neither whole fruits nor olives.
func (g *grid) piecesFor(p *flavor.Profile, unit flavor.Unit) int {
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

// leastShare is the share of what went that several parts pour together at the
// least: a barspoon of each stands for no ounce.
const leastShare = 0.6

// leadShare is the share of two spirits for one that the leading one pours at the least:
// the other seasons it, as a little smoky malt does a tequila in place of a mezcal.
const leadShare = 0.8

// led reports whether of several spirits that stand for one the first leads.
func (t *task) led(x *search.Filling) bool {
	if len(x.Parts) < 2 || len(t.removed) > 1 || t.gapML < baseML || !t.spiritsAlone(x) {
		return true
	}
	var most, all float64
	for k, i := range x.Parts {
		ml := t.cands[i].amounts[x.Amounts[k]].ml
		most, all = max(most, ml), all+ml
	}
	return most >= leadShare*all
}

// measureSlack is the share by which the spirits that stand for a base, with other
// things out beside it, may be more or less than it, in volume or in alcohol.
const measureSlack = 0.1

// fullMeasure reports whether, with several things out, a base spirit is covered by its
// full measure of spirit, in volume or in alcohol.
func (t *task) fullMeasure(x *search.Filling) bool {
	if len(t.removed) < 2 || t.wantsDry() || t.req.Guest.MaxABV > 0 {
		return true
	}
	var was, is struct{ ml, alcohol float64 }
	for i := range t.req.Spec.Pours {
		if p := &t.req.Spec.Pours[i]; p.Profile.Class.Kin() == flavor.KinSpirit && slices.Contains(t.removed, p.Profile) {
			was.ml, was.alcohol = was.ml+p.ML, was.alcohol+p.ML*p.Profile.ABV.Value
		}
	}
	if was.ml < baseML {
		return true
	}
	for k, i := range x.Parts {
		if c := &t.cands[i]; c.Profile.Class.Kin() == flavor.KinSpirit {
			ml := c.amounts[x.Amounts[k]].ml
			is.ml, is.alcohol = is.ml+ml, is.alcohol+ml*c.Profile.ABV.Value
		}
	}
	return max(is.ml/was.ml, is.alcohol/was.alcohol) >= 1-measureSlack && min(is.ml/was.ml, is.alcohol/was.alcohol) <= 1+measureSlack
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

// isObvious reports whether a filling is what a bar pours as a matter of course: one
// bottle of the class of what went, or what the trade or the house pours for it.
func (t *task) isObvious(x *search.Filling) bool {
	return len(x.Parts) == 1 && t.obvious[x.Parts[0]] || t.byCustom(x)
}

// customary reports whether the trade, or the house, pours a filling for what went, or
// for each of several things one of its parts.
func (t *task) customary(x *search.Filling) bool {
	if len(t.removed) < 2 || len(x.Parts) == 0 || t.byCustom(x) {
		return t.byCustom(x)
	}
	for m := range t.removed {
		if !t.customFor[m][x.Parts[t.standsFor(x, m)]] {
			return false
		}
	}
	return true
}

// enough reports whether several parts pour about as much as went. What went by the
// piece, to season or to sweeten is made up for by strength.
func (t *task) enough(x *search.Filling) bool {
	if !t.led(x) || !t.fullMeasure(x) {
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
